"""What is on the screen, computed without Qt: from a project to marks, rows and notes."""
