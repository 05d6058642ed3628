"""How far pieces bend and how much of their strength is used: statics, and a bench's members."""
