"""The desktop program and the command line beside it."""
