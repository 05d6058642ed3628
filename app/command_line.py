"""The command line: the window, or the same work with no screen.

    settlewright [FILE]
    settlewright pack FILE --out DIR [--set NAME=VALUE ...] [--units mm|in] [--paper ...]
                      [--square LONG SHORT]
    settlewright check FILE [--set NAME=VALUE ...] [--json]
    settlewright facts FILE [--set NAME=VALUE ...]
    settlewright checks [--units mm|in] [--json]

A first word ``pack``, ``check``, ``facts`` or ``checks`` is the command; a project file of that
name is opened as ``./pack``.  Exit codes: 0 done; 1 ``check`` found something that means 'do not
cut' and is not set aside; 2 wrong usage, or a file or value that cannot be read, built or written;
3 a fault of the program itself.

Imports stand where they are used: a command needs no window library and the window starts sooner
without the exporters.
"""

from __future__ import annotations

import argparse
import contextlib
import json
import os
import sys
import traceback
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from shared.errors import MakerError, UnreadableValue
from shared.paper import PAPERS
from shared.units import SHOWN_IN16, SHOWN_MM, Shown, in_units, read_length

if TYPE_CHECKING:
    from geometry.design.finding import Finding
    from geometry.design.project import Project

DONE, DO_NOT_CUT, REFUSED, OUR_FAULT, INTERRUPTED = 0, 1, 2, 3, 130


@dataclass(frozen=True, slots=True)
class Outcome:
    """What a command ends with: the exit code, and what goes to the two outputs."""

    code: int
    output: str = ""
    remark: str = ""


def run(arguments: Sequence[str]) -> int:
    """Do what the arguments say; the exit code.  Never raises and never ends the process."""
    commands = {"pack": _pack, "check": _check, "facts": _facts, "checks": _checks}
    try:
        if not arguments or arguments[0] not in commands:
            return _open(_window_parser().parse_args(arguments))
        command = arguments[0]
        options = _command_parser(command).parse_args(arguments[1:])
        try:
            outcome = commands[command](options)
        except MakerError as error:
            outcome = Outcome(REFUSED, remark=in_units(str(error), _shown(options)))
        if outcome.remark:
            sys.stderr.write(f"settlewright: {outcome.remark}\n")
        return _say(outcome)
    except SystemExit as ended:
        # Wrong usage, or --help; the parser has said what there is to say.
        return ended.code if isinstance(ended.code, int) else REFUSED
    except KeyboardInterrupt:
        return INTERRUPTED
    except Exception:
        traceback.print_exc()
        sys.stderr.write("settlewright: this is a fault of the program, not of your file.\n")
        return OUR_FAULT


def _window_parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="settlewright",
        description="Opens the window. With pack, check or facts as the first word it works "
        "without one: 'settlewright pack --help' says more.",
        allow_abbrev=False,
    )
    parser.add_argument("file", metavar="FILE", nargs="?", type=Path, help="a project to open")
    return parser


def _command_parser(command: str) -> argparse.ArgumentParser:
    description = {
        "pack": "Writes drawings, templates, cut list, cutting files, meshes and facts.",
        "check": "Prints the findings; exit code 1 when one of them means 'do not cut'.",
        "checks": "Prints what is looked for, why, and by which limits.",
        "facts": "Prints parameters, derived sizes, parts, joints, findings and advice as JSON.",
    }
    parser = argparse.ArgumentParser(
        prog=f"settlewright {command}", description=description[command], allow_abbrev=False
    )
    if command != "checks":
        parser.add_argument("file", metavar="FILE", type=Path, help="the project")
        _take_settings(parser)
    if command in ("check", "checks", "pack"):
        parser.add_argument(
            "--units",
            choices=("mm", "in"),
            default="mm",
            help="of sizes shown, and of bare numbers",
        )
    if command in ("check", "checks"):
        parser.add_argument("--json", action="store_true", help="the same as data, in millimetres")
    if command == "pack":
        parser.add_argument(
            "--out", metavar="DIR", type=_folder, required=True, help="the folder to write to"
        )
        parser.add_argument("--paper", choices=tuple(PAPERS), default="A4", help="size of sheets")
        parser.add_argument(
            "--square",
            nargs=2,
            metavar=("LONG", "SHORT"),
            default=("100 mm", "100 mm"),
            help="what your printer makes of the templates' 100 mm check square, printed without "
            "correction: along the long edge of the paper, and along the short one",
        )
    return parser


def _take_settings(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--set",
        metavar="NAME=VALUE",
        dest="settings",
        action="append",
        default=[],
        help="a value to change first, read as if typed on the screen, such as flare=2 1/2; "
        "may be given several times",
    )


def _folder(text: str) -> Path:
    """An empty name, such as that of a variable nobody set, is not the folder one stands in."""
    if not text.strip():
        raise argparse.ArgumentTypeError("the folder has no name; write . for this one")
    return Path(text)


def _open(options: argparse.Namespace) -> int:
    if not _has_screen():
        sys.stderr.write(
            "settlewright: there is no screen here to open a window on (neither DISPLAY nor "
            "WAYLAND_DISPLAY is set). Use pack, check or facts, which need none.\n"
        )
        return REFUSED
    try:
        from app.main import run as run_window
    except ImportError as error:
        if not (error.name or "").startswith("PySide6"):
            raise
        sys.stderr.write(
            f"settlewright: the window library cannot be loaded ({error}). "
            "Install it, or use pack, check or facts, which need none.\n"
        )
        return REFUSED
    return run_window(options.file)


def _has_screen() -> bool:
    """False only where it is sure: without one the window library would end the process."""
    named = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")
    return not sys.platform.startswith("linux") or any(os.environ.get(name) for name in named)


def _pack(options: argparse.Namespace) -> Outcome:
    from exporters.pack import PackOptions, write_pack
    from geometry.bench.build import build
    from geometry.checks.all_checks import wholly_judged

    project = _project(options)
    shown = _shown(options)
    long, short = (read_length(text, shown) for text in options.square)
    choices = PackOptions(paper=PAPERS[options.paper], shown=shown, square=(long, short))
    written = write_pack(project, options.out, choices, _today())
    found = wholly_judged(build(project.spec), project.judging, project.brief, choices.shown)
    alarms = [finding for finding in found if _means_do_not_cut(finding)]
    remark = f"Do not cut yet: {len(alarms)} of the findings say so." if alarms else ""
    return Outcome(DONE, f"{len(written)} files written to {options.out}\n", remark)


def _check(options: argparse.Namespace) -> Outcome:
    from exporters.facts import facts_text, finding_fact
    from geometry.bench.build import build
    from geometry.checks.all_checks import wholly_judged

    project = _project(options)
    bench = build(project.spec)
    shown = _shown(options)
    found = wholly_judged(bench, project.judging, project.brief, shown)
    code = DO_NOT_CUT if any(_means_do_not_cut(finding) for finding in found) else DONE
    if options.json:
        return Outcome(code, facts_text({"findings": [finding_fact(one) for one in found]}))
    text = "".join(_finding_lines(finding, shown) for finding in found) or "Nothing found.\n"
    return Outcome(code, in_units(text, shown))


def _checks(options: argparse.Namespace) -> Outcome:
    from app.scene.checked import checks_facts, checks_text
    from app.scene.preferences import Preferences

    if options.json:
        return Outcome(DONE, json.dumps({"checks": checks_facts()}, indent=2) + "\n")
    return Outcome(DONE, checks_text(Preferences(shown=_shown(options))))


def _facts(options: argparse.Namespace) -> Outcome:
    from exporters.facts import facts, facts_text
    from geometry.bench.build import build
    from geometry.checks.all_checks import wholly_judged

    project = _project(options)
    bench = replace(build(project.spec), judged_by=project.judging.limits)
    found = wholly_judged(bench, project.judging, project.brief)
    return Outcome(DONE, facts_text(facts(project, bench, found)))


def _project(options: argparse.Namespace) -> Project:
    """The file's project with the values of ``--set``, all changed at once."""
    from app.scene.typed_value import read_value
    from exporters.project_file import load
    from geometry.bench.catalogue import parameter
    from geometry.bench.limits import set_values

    project = load(options.file)
    changes: dict[str, float | str] = {}
    for setting in options.settings:
        name, equals, value_text = setting.partition("=")
        if not equals:
            raise UnreadableValue(
                "A value is missing.", where=f"--set {setting}", remedy="Write NAME=VALUE."
            )
        try:
            changes[name] = read_value(parameter(name), value_text, _shown(options))
        except MakerError as error:
            raise type(error)(error.what, where=f"--set {setting}", remedy=error.remedy) from error
    return replace(project, spec=set_values(project.spec, changes)) if changes else project


def _shown(options: argparse.Namespace) -> Shown:
    return SHOWN_IN16 if getattr(options, "units", "mm") == "in" else SHOWN_MM


def _means_do_not_cut(finding: Finding) -> bool:
    from geometry.design.finding import Level

    return finding.level is Level.DO_NOT_CUT and not finding.set_aside


def _finding_lines(finding: Finding, shown: Shown) -> str:
    """The same that the data hold: level, sentence, parts, amount beside limit, reasons, mend."""
    from app.scene.finding_words import measure_text
    from app.scene.preferences import Preferences

    level = finding.level.value
    of = f" [{', '.join(finding.parts)}]" if finding.parts else ""
    lines = [f"{f'set aside ({level})' if finding.set_aside else level}: {finding.message}{of}"]
    measure = measure_text(finding, Preferences(shown=shown))
    if measure:
        lines.append(f"    {measure}")
    if finding.set_aside:
        lines.append(f"    because: {finding.set_aside}")
    elif finding.worse:
        lines.append(f"    {finding.worse}")
    if finding.mend and not finding.set_aside:
        lines.append(f"    {finding.mend.sentence}")
    return "".join(f"{line}\n" for line in lines)


def _today() -> date:
    """The date for the drawings; SOURCE_DATE_EPOCH fixes it, for packs that must be repeatable.

    Source of that variable: reproducible-builds.org, seconds since 1970 in UTC.
    """
    fixed = os.environ.get("SOURCE_DATE_EPOCH", "")
    if not fixed:
        return datetime.now().astimezone().date()
    try:
        return datetime.fromtimestamp(int(fixed), tz=UTC).date()
    except (ValueError, OverflowError, OSError) as error:
        raise UnreadableValue(
            f"{fixed[:40]!r} is no number of seconds.",
            where="SOURCE_DATE_EPOCH",
            remedy="Set it right, or unset it.",
        ) from error


def _say(outcome: Outcome) -> int:
    """Write the output; a reader that has gone away (``| head``) is no trouble."""
    encoding = sys.stdout.encoding or "utf-8"
    try:
        sys.stdout.write(outcome.output.encode(encoding, "replace").decode(encoding))
        sys.stdout.flush()
    except OSError as error:
        # The interpreter flushes once more at its end; let that go nowhere.
        with contextlib.suppress(OSError):
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        if not isinstance(error, BrokenPipeError):
            sys.stderr.write(f"settlewright: the output cannot be written ({error.strerror}).\n")
            return REFUSED
    return outcome.code
