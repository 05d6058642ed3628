"""Solids from blanks and cuts; the package ``kernel`` is the only place that knows manifold3d."""
