#!/bin/sh
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Makes every picture of this folder anew from the rigs in data/: sh screenshots/make.sh BUILD
# BUILD is a build folder (src/run.sh leaves _build). Needs xvfb-run and dbus-run-session.
set -eu
here=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
build=$(CDPATH='' cd -- "${1:-$here/_build}" && pwd)
program=$build/src/app/plumbhold
PLUMBHOLD_DATA_DIR=$here/data
PLUMBHOLD_LOCALE_DIR=$build/po
GSETTINGS_SCHEMA_DIR=$build/data
export PLUMBHOLD_DATA_DIR PLUMBHOLD_LOCALE_DIR GSETTINGS_SCHEMA_DIR
export GSETTINGS_BACKEND=memory GDK_BACKEND=x11 LC_ALL=C.UTF-8

# NAME SIZE light|dark SCALE [options and rig of the program]
shoot () {
  name=$1 size=$2 theme=$3 scale=$4
  shift 4
  home=$(mktemp -d)
  mkdir -p "$home/gtk-4.0"
  if [ "$theme" = dark ]; then
    printf '[Settings]\ngtk-application-prefer-dark-theme=1\n' >"$home/gtk-4.0/settings.ini"
  fi
  HOME=$home XDG_CONFIG_HOME=$home XDG_STATE_HOME=$home XDG_RUNTIME_DIR=$home GDK_SCALE=$scale \
    xvfb-run -a -s "-screen 0 4000x2400x24 -nolisten tcp" dbus-run-session -- \
    "$program" --screenshot "$here/screenshots/$name.png" --size "$size" "$@" 2>"$home/log" || {
      cat "$home/log" >&2
      exit 1
    }
  rm -rf "$home"
  echo "$name.png"
}

data=$here/data
for theme in light dark; do
  for size in 1280x800 1920x1080; do
    shoot "window-$size-$theme" "$size" "$theme" 1 --demo
    for rig in v-bars recurve barebow left-handed heavy-front; do
      shoot "$rig-$size-$theme" "$size" "$theme" 1 "$data/$rig.rig.json"
    done
  done
  for rig in demo v-bars recurve barebow left-handed heavy-front; do
    shoot "free-$rig-$theme" 1280x800 "$theme" 1 --place free "$data/$rig.rig.json"
  done
  shoot "hand-$theme" 1280x800 "$theme" 1 --place hand --demo
  shoot "why-$theme" 1280x800 "$theme" 1 --demo --place why
  shoot "level-$theme" 1280x800 "$theme" 1 --place level --demo
done
for rig in demo recurve; do
  shoot "$rig-2x-light" 1280x800 light 2 "$data/$rig.rig.json"
done
