#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""plumbhold-calc report against reference.py: every example rig and many random ones, each number
to relative 1e-9. Usage: test_reference.py CALC DATA_FOLDER [HOW_MANY]."""

import glob
import json
import os
import subprocess
import sys
import tempfile

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
import random_rigs
import reference

CALC, DATA = sys.argv[1], sys.argv[2]
HOW_MANY = int(sys.argv[3]) if len(sys.argv) > 3 else 400

# Absolute floors beside the relative 1e-9: where a number is a difference of larger ones, its
# last digits are those of the larger ones. 1e-12 of the size that goes into each kind of number.
FLOOR = {"com_mm": 1e-9, "moment": 1e-12, "inertia": 1e-13, "deg": 1e-10, "default": 1e-11}


def floor(path):
    for word in ("com_mm", "moment", "inertia", "deg"):
        if word in path:
            return FLOOR[word]
    return FLOOR["default"]


def differences(got, want, path=""):
    if isinstance(want, dict):
        for key, value in want.items():
            if not isinstance(got, dict) or key not in got:
                yield f"{path}.{key} is missing"
            else:
                yield from differences(got[key], value, f"{path}.{key}")
    elif isinstance(want, list):
        if not isinstance(got, list) or len(got) != len(want):
            yield f"{path}: {got} against {want}"
            return
        for i, value in enumerate(want):
            yield from differences(got[i], value, f"{path}[{i}]")
    elif isinstance(want, bool) or want is None or isinstance(want, str):
        if got != want:
            yield f"{path}: {got!r} against {want!r}"
    elif got is None or abs(got - want) > 1e-9 * abs(want) + floor(path):
        yield f"{path}: {got!r} against {want!r}"


def close_moments(want):
    """Two principal moments so near that their axes are not fixed to nine digits."""
    a, b, c = want["principal_kg_m2"]
    return min(b - a, c - b) < 1e-5 * c


def compare(path):
    run = subprocess.run([CALC, "report", path, "--json"], capture_output=True, text=True)
    if run.returncode:
        return [f"exit {run.returncode}: {run.stderr.strip()[:300]}"]
    with open(path, encoding="utf-8") as f:
        want = reference.report(json.load(f))
    if close_moments(want):
        del want["principal_axes"]
    return list(differences(json.loads(run.stdout), want))


def case(name, path):
    wrong = compare(path)
    for line in wrong[:6]:
        print(f"# {name}: {line}")
    print(f"{'FAILED' if wrong else 'ok'} report_of_{name}_agrees_with_the_reference", flush=True)
    return not wrong


def main():
    good = True
    for path in sorted(glob.glob(os.path.join(DATA, "*.rig.json"))):
        good &= case(os.path.basename(path)[:-len(".rig.json")].replace("-", "_"), path)
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(HOW_MANY):
            path = os.path.join(folder, f"{seed}.rig.json")
            with open(path, "w", encoding="utf-8") as f:
                json.dump(random_rigs.rig(seed, 60 if seed % 10 == 0 else 24), f)
            good &= case(f"random_rig_{seed}", path)
    return 0 if good else 1


sys.exit(main())
