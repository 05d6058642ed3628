"""Orthographic views with visible and hidden lines."""
