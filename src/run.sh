#!/bin/sh
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Installs what is missing, builds, and opens the example rig, or what is passed on to the program:
# sh src/run.sh [FILE]. Where there is no display the same window runs on a virtual one, and a
# picture of it and the rig's report are left in a folder.
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd) || exit 1
build=$here/_build
logs=$here/_build-logs
mkdir -p "$logs" || exit 1

give_up () { # what failed, its log
  echo "$1. The end of its log ($2):" >&2
  tail -n 20 "$2" >&2
  exit 1
}

. "$here/.ci/packages"

install () { # run|virtual
  : >"$logs/install.log"
  install_missing "$1" "$logs/install.log" \
    || give_up "Installing the missing packages failed" "$logs/install.log"
}

build_program () {
  log=$logs/run-build.log
  echo "Building in $build (log: $log)"
  if [ ! -f "$build/build.ninja" ]; then
    meson setup "$build" "$here" >"$log" 2>&1 || give_up "Setting up the build failed" "$log"
  else
    : >"$log"
  fi
  # Not the tests, which are many.
  targets="src/app/plumbhold src/cli/plumbhold-calc data/gschemas.compiled"
  for language in $(grep -v '^#' "$here/po/LINGUAS"); do
    targets="$targets po/$language/LC_MESSAGES/plumbhold.mo"
  done
  # shellcheck disable=SC2086
  ninja -C "$build" $targets >>"$log" 2>&1 || give_up "The build failed" "$log"
}

# The rig that the arguments name; the example when they name none.
rig_of () {
  for argument in "$@"; do
    case $argument in
      -*) ;;
      *) echo "$argument" && return ;;
    esac
  done
  echo "$here/data/demo.rig.json"
}

run_without_display () {
  out=$here/_build-pictures
  rig=$(rig_of "$@")
  echo "There is no display here: running the window on a virtual one."
  install virtual
  mkdir -p "$out" || exit 1
  XDG_RUNTIME_DIR=$(mktemp -d) || exit 1
  export XDG_RUNTIME_DIR GDK_BACKEND=x11
  xvfb-run -a -s "-screen 0 1600x1000x24 -nolisten tcp" dbus-run-session -- \
    "$program" --screenshot "$out/window.png" --size 1280x800 "$@" >"$logs/run.log" 2>&1
  code=$?
  rm -rf "$XDG_RUNTIME_DIR"
  [ "$code" -eq 0 ] || give_up "The window failed" "$logs/run.log"
  "$calc" report "$rig" >"$out/report.txt" && "$calc" report --json "$rig" >"$out/report.json" \
    || exit 1
  echo "Left in $out:"
  echo "  window.png   the window"
  echo "  report.txt   the rig's numbers as a table"
  echo "  report.json  the same for programs"
}

install run
build_program
program=$build/src/app/plumbhold
calc=$build/src/cli/plumbhold-calc
export PLUMBHOLD_DATA_DIR="$here/data" PLUMBHOLD_LOCALE_DIR="$build/po" \
  GSETTINGS_SCHEMA_DIR="$build/data"
[ $# -gt 0 ] || set -- --demo

if [ -z "${DISPLAY:-}" ] && [ -z "${WAYLAND_DISPLAY:-}" ]; then
  run_without_display "$@"
else
  exec "$program" "$@"
fi
