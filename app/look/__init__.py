"""Colours, palettes and type: how the program looks, by role."""
