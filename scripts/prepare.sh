# Sourced by try.sh and test.sh: brings a machine to where the program can run.
#
#   need_libraries LIBRARY...   installs those of the tables below that are missing
#   need_program WHAT           leaves .venv with the program in it; WHAT is "." or ".[test]"
#
# Run from the checkout.  Nothing is installed that is already there.  What is installed comes from
# the distribution (apt) and, into .venv only, from the Python package index.
#
# Written for Debian 12 and 13 and Ubuntu 22.04 and 24.04.  Elsewhere it works when Python and the
# libraries are there already, and says what is missing when they are not.
# shellcheck shell=bash

# The minor numbers of Python 3 that will do; the newest is set by the window library.
readonly OLDEST_PYTHON=11 NEWEST_PYTHON=14

# The file a library is known by, then the packages that bring it: the newest distribution's first.
# Source: doc.qt.io/qt-6/linux-requirements.html, cut to what a bare Debian 12 and 13 turned out to
# lack.
# shellcheck disable=SC2034  # used where this is sourced
readonly DRAWING_LIBRARIES=(
  "libGL.so.1 libgl1"
  "libEGL.so.1 libegl1"
  "libglib-2.0.so.0 libglib2.0-0t64 libglib2.0-0"
  "libfontconfig.so.1 libfontconfig1"
  "libxkbcommon.so.0 libxkbcommon0"
  "libdbus-1.so.3 libdbus-1-3"
)
# shellcheck disable=SC2034
readonly SCREEN_LIBRARIES=(
  "libxcb-cursor.so.0 libxcb-cursor0"
  "libxcb-icccm.so.4 libxcb-icccm4"
  "libxcb-keysyms.so.1 libxcb-keysyms1"
  "libxcb-shape.so.0 libxcb-shape0"
  "libxcb-xkb.so.1 libxcb-xkb1"
  "libxkbcommon-x11.so.0 libxkbcommon-x11-0"
  "libwayland-cursor.so.0 libwayland-cursor0"
  "libwayland-egl.so.1 libwayland-egl1"
)

say() { printf '%s\n' "$*"; }

stop() {
  printf '\n%s\n' "$*" >&2
  exit 1
}

# --- the distribution -----------------------------------------------------------------------------

need_libraries() {
  local known row file packages missing=()
  known=$(PATH=$PATH:/sbin:/usr/sbin ldconfig -p 2>/dev/null) || known=
  for row in "$@"; do
    read -r file packages <<<"$row"
    [[ $known == *"$file "* ]] || missing+=("$packages")
  done
  [ ${#missing[@]} -eq 0 ] || install_packages "${missing[@]}"
}

# Each argument is one thing wanted, as the names that packages of it go by.
install_packages() {
  local row name found names=()
  may_install || {
    say "These packages are missing, by the names they have in Debian and Ubuntu:" >&2
    printf '  %s\n' "${@// / or }" >&2
    stop "You may not install them here. Have them installed, then run this again."
  }
  renew_lists
  for row in "$@"; do
    found=
    for name in $row; do
      if is_offered "$name"; then
        found=$name
        break
      fi
    done
    [ "$found" ] || stop "This distribution offers no package ${row// / or }."
    names+=("$found")
  done
  say "Installing ${names[*]} ..."
  as_root env DEBIAN_FRONTEND=noninteractive apt-get -qq -o DPkg::Lock::Timeout=120 \
    -o Dpkg::Use-Pty=0 install -y --no-install-recommends "${names[@]}" >/dev/null ||
    stop "apt-get could not install them; its own words are above."
}

lists_are_new=
renew_lists() {
  [ "$lists_are_new" ] && return
  as_root apt-get -qq update || say "The package lists could not be renewed; going on with the old."
  lists_are_new=yes
}

is_offered() {
  [[ $(LC_ALL=C apt-cache policy "$1" 2>/dev/null) =~ Candidate:\ [^\(] ]]
}

may_install() {
  command -v apt-get >/dev/null && { [ "$(id -u)" -eq 0 ] || command -v sudo >/dev/null; }
}

as_root() {
  if [ "$(id -u)" -eq 0 ]; then
    "$@"
  else
    sudo "$@"
  fi
}

# --- Python ---------------------------------------------------------------------------------------

need_program() {
  local what=$1 python key
  python=$(usable_python) || {
    install_packages_of_python
    python=$(usable_python) || stop "Python was installed, but it does not run."
  }
  key="$PWD $("$python" -c 'import sys; print(sys.version)' | tr -d '\n') $(cksum <pyproject.toml)"
  if grep -qsxF "$key $what" .venv/filled && .venv/bin/python -c 'import app, PySide6' 2>/dev/null
  then
    return
  fi
  # Another Python by now, or a checkout that was moved or copied: its scripts point elsewhere.
  if ! grep -qsF "$PWD/.venv/" .venv/bin/pip || ! .venv/bin/pip --version >/dev/null 2>&1; then
    rm -rf .venv
    "$python" -m venv .venv || stop "Python could not make its folder .venv here."
  fi
  rm -f .venv/filled
  say "Fetching the libraries into .venv (about 250 MB the first time) ..."
  .venv/bin/python -m pip install --quiet --disable-pip-version-check --editable "$what" ||
    stop "The libraries could not be fetched; pip's own words are above. Is the network there?"
  # The tests' libraries include the program's.
  printf '%s\n' "$key $what" "$key ." >.venv/filled
}

# The first Python on the path that is new enough, not too new, and can make a .venv.
usable_python() {
  local name
  for name in python3 python3.{13,12,11,14}; do
    if "$name" -c "import sys, venv, ensurepip
sys.exit(not (3, $OLDEST_PYTHON) <= sys.version_info[:2] <= (3, $NEWEST_PYTHON))" 2>/dev/null; then
      command -v "$name"
      return
    fi
  done
  return 1
}

# Distributions offer one or two versions; the newest of those will do.
install_packages_of_python() {
  local minor version
  may_install ||
    stop "Python 3.$OLDEST_PYTHON to 3.$NEWEST_PYTHON with venv is missing. Have it installed, then run this again."
  renew_lists
  for ((minor = NEWEST_PYTHON; minor >= OLDEST_PYTHON; minor--)); do
    version=python3.$minor
    if is_offered "$version-venv"; then
      install_packages "$version" "$version-venv"
      return
    fi
  done
  stop "This needs Python 3.$OLDEST_PYTHON or newer, and this distribution offers none: install one from python.org."
}
