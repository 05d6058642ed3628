"""Mouse gestures as plain generators: press, move, release, read top to bottom.  No Qt."""
