#!/usr/bin/env bash
# Opens Settlewright on a sample bench, installing first what this machine lacks.
#
#   scripts/try.sh [FILE]
#
# Where there is no screen, it writes the whole pack of the sample and a picture of the window into
# out/ instead.  Run it as often as you like: the second time it only opens the window.
set -euo pipefail
file=$(realpath -- "${1:-$(dirname "$0")/../sample_projects/reading_room_bench.settle}")
cd "$(dirname "$0")/.."
. scripts/prepare.sh

has_screen() {
  [ "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ] || return 1
  .venv/bin/python -c 'from PySide6.QtGui import QGuiApplication as A; A([])' 2>/dev/null
}

need_libraries "${DRAWING_LIBRARIES[@]}"
[ -z "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ] || need_libraries "${SCREEN_LIBRARIES[@]}"
need_program .

if has_screen; then
  exec .venv/bin/settlewright "$file"
fi
.venv/bin/settlewright pack "$file" --out out/pack
.venv/bin/python -m app.window.portrait "$file" out/window.png
say
say "There is no screen here, so no window was opened. Look at these instead:"
say "  out/pack        drawings, templates, cut list, cutting files, meshes and facts"
say "  out/window.png  a picture of the window"
