"""Frames, vectors and line-and-arc paths."""
