#!/bin/sh
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Installs what is missing, builds twice (as shipped, and with the address and undefined-behaviour
# sanitizers) and runs every test. The last line is "N passed, N failed", N counting single cases.
set -u
here=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
cd "$here" || exit 1
logs=$here/_build-logs
mkdir -p "$logs"

step () {
  echo "== $1"
}

give_up () {
  echo "$1 (log: $2)" >&2
  tail -n 30 "$2" >&2
  echo "0 passed, 1 failed"
  exit 1
}

. "$here/.ci/packages"
install_missing test "$logs/install.log" || give_up "Installing packages failed" "$logs/install.log"

jobs=$(nproc 2>/dev/null || echo 2)

build () { # folder, options of meson
  folder=$1
  shift
  step "Building $(basename "$folder")"
  if [ ! -f "$folder/build.ninja" ]; then
    meson setup "$folder" "$@" >"$logs/$(basename "$folder").log" 2>&1 \
      || give_up "meson setup failed" "$logs/$(basename "$folder").log"
  fi
  ninja -j "$jobs" -C "$folder" >>"$logs/$(basename "$folder").log" 2>&1 \
    || give_up "The build failed" "$logs/$(basename "$folder").log"
}

build "$here/_build-test" -Dwerror=true
# Not werror: under the sanitizers gcc warns of null formats that it made up itself.
build "$here/_build-asan" -Db_sanitize=address,undefined -Doptimization=1 -Db_lundef=false

step "Testing _build-test"
meson test -C "$here/_build-test" --no-rebuild --num-processes "$jobs" >"$logs/test.log" 2>&1
step "Testing _build-asan"
sanitized () { # 1 unwinds by frame pointers: fast, but blind through Debian's libraries
  fast=$1
  shift
  ASAN_OPTIONS=detect_leaks=1:fast_unwind_on_malloc=$fast \
    UBSAN_OPTIONS=halt_on_error=1:print_stacktrace=1 \
    LSAN_OPTIONS="suppressions=$here/tests/lsan.supp:print_suppressions=0" \
    meson test -C "$here/_build-asan" --no-rebuild --num-processes "$jobs" \
    --timeout-multiplier 4 "$@" >>"$logs/test-asan.log" 2>&1
}
: >"$logs/test-asan.log"
sanitized 0 --suite unit --logbase testlog-unit
sanitized 1 --suite property --suite fuzz --logbase testlog-property
sanitized 1 views-alone --logbase testlog-views

step "Result"
/usr/bin/python3 tests/summary.py "$here/_build-test" "$here/_build-asan"
