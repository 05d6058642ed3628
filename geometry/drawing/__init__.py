"""Marks on a sheet, and the metrics of the drawing font."""
