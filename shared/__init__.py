"""Units, tolerances, reference tables and words that every layer shares.

Imports nothing of the project, and nothing beyond the standard library and numpy.
"""
