"""The program's door: ``settlewright`` and ``python -m app``.

Nothing heavy is imported here, so that the window and the commands each load only what they use.
"""

from __future__ import annotations

import sys
from collections.abc import Sequence

from app.command_line import run


def main(argv: Sequence[str] | None = None) -> int:
    """Do what the arguments say (those of the process when None); the exit code."""
    return run(sys.argv[1:] if argv is None else argv)


def console() -> None:
    """The entry point of the installed program."""
    sys.exit(main())


if __name__ == "__main__":
    console()
