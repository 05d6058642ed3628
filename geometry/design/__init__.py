"""What the maker decides, and what a part, a joint and a finding are."""
