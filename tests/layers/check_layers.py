#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Reads every #include under src against the table of floors, and the pages against the tree.
Usage: check_layers.py REPOSITORY"""

import os
import re
import sys

ROOT = sys.argv[1]
FLOORS = ["base", "math", "physics", "model", "store", "scene", "render", "document", "widgets",
          "app"]
# What each floor may include of the project's own, beside itself.
MAY = {
    "base": [], "math": ["base"], "physics": ["base", "math"],
    "model": ["base", "math", "physics"], "store": ["base", "math", "physics", "model"],
    "scene": ["base", "math", "physics", "model"], "render": ["base", "math", "scene"],
    "document": ["base", "math", "physics", "model", "store"],
    "widgets": ["base", "math", "physics", "model", "store", "scene", "render", "document"],
    "app": FLOORS[:-1], "cli": ["base", "math", "physics", "model", "store"],
}
# Which library belongs to which floors, by the first part of its header's name.
LIBRARIES = {
    "gsl": ["math", "physics"], "cjson": ["store"], "cglm": ["scene", "render", "widgets"],
    "epoxy": ["render", "widgets"], "gtk": ["widgets", "app"], "glib": ["document", "widgets", "app"],
    "glib-object": ["document", "widgets", "app"], "gio": ["document", "widgets", "app"],
    "gdk": ["widgets", "app"], "pango": ["widgets", "app"], "cairo": ["widgets", "app"],
}
# The one widget that may know GL, for the context.
GL_WIDGET = re.compile(r"src/widgets/(gl|rig)-view[^/]*\.[ch]$")
INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]', re.M)


def sources():
    for folder, _, names in os.walk(os.path.join(ROOT, "src")):
        for name in sorted(names):
            if name.endswith((".c", ".h")):
                path = os.path.join(folder, name)
                yield os.path.relpath(path, ROOT)


def wrong_includes(path):
    floor = path.split("/")[1]
    with open(os.path.join(ROOT, path), encoding="utf-8") as f:
        text = f.read()
    for bracket, header in INCLUDE.findall(text):
        first = re.split(r"[/.]", header)[0]
        if bracket == '"' and first in MAY and "/" in header:
            if first != floor and first not in MAY[floor]:
                yield f"{path} includes {header}: {floor} stands below or beside it"
        elif bracket == '"' and "/" not in header and header != "config.h":
            yield f'{path} includes "{header}": name the floor, "{floor}/{header}"'
        elif bracket == "<" and first in LIBRARIES and floor not in LIBRARIES[first]:
            yield f"{path} includes <{header}>: not for {floor}"
        elif bracket == "<" and first == "epoxy" and floor == "widgets" and not GL_WIDGET.search(path):
            yield f"{path} includes <{header}>: only the view widget knows GL"


def wrong_folders():
    allowed = {"README.md", "DEVELOPERS.md", "LICENSE", "meson.build", "src", "data", "ui", "tests",
               "po", "screenshots"}
    for name in os.listdir(ROOT):
        if not name.startswith((".", "_build", "build")) and name not in allowed:
            yield f"{name} does not belong at the top level"
    for name in os.listdir(os.path.join(ROOT, "src")):
        if name not in FLOORS + ["cli", "run.sh", "meson.build"]:
            yield f"src/{name} is no floor"


def wrong_lengths():
    """Sources of at most 500 lines, .ui of at most 300; more needs a sentence of reason."""
    for path in sources():
        with open(os.path.join(ROOT, path), encoding="utf-8") as f:
            text = f.read()
        if text.count("\n") > 500 and "Longer than 500 lines because" not in text:
            yield f"{path} has {text.count(chr(10))} lines: split it, or say why in its head"
    for name in os.listdir(os.path.join(ROOT, "ui")):
        if name.endswith(".ui"):
            with open(os.path.join(ROOT, "ui", name), encoding="utf-8") as f:
                text = f.read()
            if text.count("\n") > 300 and "Longer than 300 lines because" not in text:
                yield f"ui/{name} has {text.count(chr(10))} lines"


def wrong_heads():
    for path in sources():
        with open(os.path.join(ROOT, path), encoding="utf-8") as f:
            head = f.read(400)
        if "SPDX-License-Identifier: GPL-3.0-or-later" not in head:
            yield f"{path} lacks its SPDX lines"


def wrong_names_in_pages():
    """Files that the pages name must be there."""
    for page in ("README.md", "DEVELOPERS.md"):
        with open(os.path.join(ROOT, page), encoding="utf-8") as f:
            text = f.read()
        for name in re.findall(r"`((?:src|data|ui|tests|po|screenshots)/[\w./-]+)`", text):
            if not os.path.exists(os.path.join(ROOT, name)):
                yield f"{page} names {name}, which is not there"


def case(name, wrong):
    wrong = list(wrong)
    for line in wrong[:20]:
        print(f"# {line}")
    print(f"{'FAILED' if wrong else 'ok'} {name}")
    return not wrong


results = [
    case("includes_go_downward_only", [w for p in sources() for w in wrong_includes(p)]),
    case("top_level_and_floors_are_as_agreed", wrong_folders()),
    case("files_are_short_or_say_why", wrong_lengths()),
    case("every_source_carries_its_licence", wrong_heads()),
    case("pages_name_files_that_exist", wrong_names_in_pages()),
]
sys.exit(0 if all(results) else 1)
