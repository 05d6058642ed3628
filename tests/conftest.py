"""What holds for every test: no window on anybody's screen, no clock in the judgement.

Two sorts of test are run only when asked for, with ``-m sweep`` or ``-m journey``: the long
sweep over many random benches, and journeys through a real window, which need an X server.
"""

from __future__ import annotations

import os

import pytest
from hypothesis import HealthCheck, settings

from tests.working_groups import working_group

if not (os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY")):
    # Read when the first QApplication is made; without it Qt ends the whole test run.
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

# How fast a machine is says nothing about whether a law holds.  In continuous integration the
# same examples are tried each time, so that a change is judged and not the dice.
settings.register_profile("here", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.register_profile("ci", settings.get_profile("here"), derandomize=True, print_blob=True)
settings.load_profile("ci" if os.environ.get("CI") else "here")

ON_REQUEST = {
    "sweep": "many random benches; run it with -m sweep",
    "journey": "a real window under an X server of its own; run it with -m journey",
}


def pytest_configure(config: pytest.Config) -> None:
    for name, meaning in ON_REQUEST.items():
        config.addinivalue_line("markers", f"{name}: {meaning}")


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Leave out what was not asked for, and say which tests go to one worker."""
    asked = config.getoption("markexpr")
    unasked = {name for name in ON_REQUEST if name not in asked}
    left_out = [item for item in items if any(item.get_closest_marker(name) for name in unasked)]
    if left_out:
        config.hook.pytest_deselected(items=left_out)
        items[:] = [item for item in items if item not in set(left_out)]
    for item in items:
        item.add_marker(pytest.mark.xdist_group(working_group(item)))
