"""Solids from blanks and cuts; the only place that knows the solid kernel."""
