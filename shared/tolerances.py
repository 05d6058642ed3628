"""Every tolerance of the program, named once, each with its reason.  Millimetres and degrees."""

from __future__ import annotations

CHORD_ERROR = 0.1
"""How far an arc may be off its chords in the solids: less than the thinnest line at full size.
Drawings for cutting keep true arcs; finer chords only make solids and views slower."""

COPLANAR = 1e-6
"""Faces nearer than this lie in one plane: far below a shaving, far above rounding at 10 m."""

SHARP_EDGE_DEG = 0.5
"""Faces that meet at a smaller angle are one smooth face and show no edge between them; the
slightest lean or taper worth cutting is more.  Chords of one arc are known by their cutter, as
they turn by more than many a flared front leans: 14° at 6.35 mm radius."""

MERGE = 1e-4
"""Points and lines of a drawing nearer than this are the same: no printer or plotter shows it,
and it is a hundred times what rounding leaves after turning a part into a view."""

SHORTEST_SEGMENT = 0.01
"""A shorter line in a cutting file is an accident and makes a machine stutter."""

SHARED_VOLUME = 1e-3
"""Two parts that share less, in mm³, only touch: the kernel's rounding over a 2 m face."""

PRINTED_EXACTLY = 0.05
"""A printed size this near the true one can be cut to; further off the sheet must say so.
Half of the last printed decimal of a millimetre, and less than a knife line."""
