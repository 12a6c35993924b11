#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Counts single cases over the test logs of several build folders and prints what failed, the
counts last. Usage: summary.py BUILD_FOLDER [BUILD_FOLDER ...]; exit 1 when anything failed."""

import glob
import json
import os
import sys


def results(folder):
    """Every test of every log of a build folder."""
    paths = sorted(glob.glob(os.path.join(folder, "meson-logs", "testlog*.json")))
    if not paths:
        yield {"name": f"{folder}: no test log", "result": "FAIL", "stdout": ""}
    for path in paths:
        with open(path, encoding="utf-8", errors="replace") as f:
            for line in f:
                yield json.loads(line)


def main():
    passed = failed = skipped = 0
    for folder in sys.argv[1:]:
        for test in results(folder):
            lines = test.get("stdout", "").splitlines()
            good = sum(line.startswith("ok ") for line in lines)
            bad = [line for line in lines if line.startswith("FAILED ")]
            whole = test["result"] in ("OK", "EXPECTEDFAIL")
            if test["result"] == "SKIP":
                skipped += 1
                continue
            if whole and not bad:
                passed += good or 1
                continue
            passed += good
            failed += len(bad) or 1
            print(f"--- {os.path.basename(folder)}: {test['name']}: {test['result']}")
            wanted = [line for line in lines if line.startswith(("# ", "FAILED "))]
            print("\n".join((wanted or lines)[-60:]))
            print("\n".join(test.get("stderr", "").splitlines()[-40:]))
    tail = f", {skipped} skipped" if skipped else ""
    print(f"{passed} passed, {failed} failed{tail}")
    return 1 if failed or not passed else 0


sys.exit(main())
