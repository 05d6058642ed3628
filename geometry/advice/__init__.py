"""What a brief asks of a bench: advice with its reasons, and the measures behind it."""
