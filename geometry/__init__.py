"""The engine: from the numbers a maker decides to parts, joints, solids and drawings.

Knows no screen and no file format.  Lengths are millimetres, angles degrees.

Bench frame: X to the right along the length, Y toward the back (the back edges lie in
y = 0, the maker stands on the side of negative y), Z up from the floor.
"""
