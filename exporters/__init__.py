"""Writers: one module a format.  Each takes a bench and what was derived from it."""
