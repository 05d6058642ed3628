"""How often Python looks for what nothing holds any more.

Under the hand everything is made anew some sixty times a second out of values that hold no one
in a circle, so that hardly anything is ever found; but each full look takes longer than painting.
"""

from __future__ import annotations

import gc

_NEW_OBJECTS = 50_000  # between two looks: a drag of some seconds


def collect_rarely() -> None:
    """Leave out of every later look what is there for good; call it when all is loaded."""
    gc.collect()
    gc.freeze()
    gc.set_threshold(_NEW_OBJECTS, 20, 20)


def wait_for_the_hand() -> None:
    """No look while a hand moves a value: each would be felt."""
    gc.disable()


def the_hand_is_off() -> None:
    """Look again; what the hand left behind is looked at once, within the next moments."""
    gc.enable()


def collect_all() -> None:
    """Look at everything again, so that at the end nothing is left behind."""
    gc.unfreeze()
    gc.collect()
