#!/usr/bin/env bash
# Runs every check of the house, installing first what this machine lacks.
#
#   scripts/test.sh [PYTEST ARGUMENT ...]
#
# With no argument: style, direction of imports, types, then all quick tests.  With arguments, only
# pytest with them.  Windows are drawn where nobody sees them.
set -euo pipefail
cd "$(dirname "$0")/.."
. scripts/prepare.sh

need_libraries "${DRAWING_LIBRARIES[@]}"
need_program '.[test]'
export PATH=$PWD/.venv/bin:$PATH QT_QPA_PLATFORM=${QT_QPA_PLATFORM:-offscreen}

if [ $# -gt 0 ]; then
  exec python -m pytest "$@"
fi

failed=()
check() {
  local title=$1
  shift
  say "== $title: $*"
  "$@" || failed+=("$title")
}
check "style" ruff check --quiet --output-format concise .
check "imports" lint-imports --no-cache
check "types" mypy
check "tests" python -m pytest -n 2 --dist loadgroup --no-loadscope-reorder

[ ${#failed[@]} -eq 0 ] || stop "Not in order: ${failed[*]}."
say "All in order: style, imports, types, tests."
