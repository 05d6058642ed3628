"""The joints: one joint, one file; each cuts both of its parts from the same numbers."""
