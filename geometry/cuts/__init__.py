"""The cuts that turn a blank into a part: one kind of cut, one file."""
