"""The work in hand: its history, its file, its autosave."""
