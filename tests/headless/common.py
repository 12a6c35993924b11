# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""What the headless tests share: cases that print "ok NAME" or "FAILED NAME", and running programs."""

import copy
import json
import os
import subprocess
import sys
import tempfile
import traceback

SMALL = {
    "format": "plumbhold-rig", "version": 1,
    "bow": {"mass_g": 1950, "com_mm": [-18, -3, 12], "gyration_mm": [290, 295, 60],
            "axle_to_axle_mm": 940, "brace_height_mm": 178,
            "mounts": [{"id": "front", "at_mm": [62, 0, -72], "axis": [1, 0, 0]}]},
    "parts": [{"id": "rod", "kind": "bar", "on": "bow:front", "length_mm": 762, "outer_mm": 18,
               "inner_mm": 16, "mass_g": 165},
              {"id": "disc", "kind": "weights", "on": "rod", "count": 8, "each_g": 28.35,
               "diameter_mm": 25.4, "each_mm": 7.2}]}

folder = tempfile.TemporaryDirectory(prefix="plumbhold-")
_cases = []


def case(function):
    """Decorator: runs with main()."""
    _cases.append(function)
    return function


def main():
    good = True
    for function in _cases:
        try:
            function()
            print(f"ok {function.__name__}", flush=True)
        except Exception:
            good = False
            for line in traceback.format_exc().splitlines()[-6:]:
                print(f"# {line}")
            print(f"FAILED {function.__name__}", flush=True)
    folder.cleanup()
    sys.exit(0 if good and _cases else 1)


def run(*command, **options):
    return subprocess.run(command, capture_output=True, timeout=20, **options)


def seconds():
    """Processor time of all programs run so far: what a busy machine does not change. That nothing
    is waited for for ever is seen to by run()."""
    times = os.times()
    return times.children_user + times.children_system


def path_of(name):
    return os.path.join(folder.name, name)


def small(change=None):
    rig = copy.deepcopy(SMALL)
    if change:
        change(rig)
    return rig


def write(content, name="rig.rig.json"):
    """Bytes, text or anything that json can write, as a file; its path."""
    path = path_of(name)
    if not isinstance(content, (bytes, str)):
        content = json.dumps(content)
    with open(path, "wb") as f:
        f.write(content if isinstance(content, bytes) else content.encode())
    return path


def read(path):
    with open(path, "rb") as f:
        return f.read()
