"""The window, its actions and its dialogs."""
