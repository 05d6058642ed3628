"""Memory that is kept from one step of a drag to the next.

The C library of Linux gives a large block back to the system as soon as it is free, and the next
step pays for all its pages anew: a fifth of its time.  It goes by the largest block that it has
seen freed, up to 32 MiB: as large ones, and twice as much in all, it keeps (mallopt(3), on
M_MMAP_THRESHOLD).  So it is shown one.  Nothing else happens, and elsewhere nothing at all.
"""

from __future__ import annotations

import numpy as np

_BLOCK = 30 * 2**20  # bytes; as nothing is written into them no memory is taken


def keep_memory() -> None:
    """From now on keep what a step has used; call it when the program starts."""
    np.empty(_BLOCK, dtype=np.uint8)
