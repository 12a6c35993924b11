#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Start to first frame and memory of the window, beside the smallest GTK 4 window with two
GtkGLAreas in the same run. Prints figures and targets; never fails.
Usage: bench_start.py PROGRAM SMALLEST SHIM DATA_FOLDER SCHEMA_FOLDER"""

import os
import re
import statistics
import subprocess
import sys
import tempfile
import time

RUNS = 9


def environment(folder, data, schemas):
    env = dict(os.environ, HOME=folder, XDG_CONFIG_HOME=folder, XDG_STATE_HOME=folder,
               XDG_RUNTIME_DIR=folder, GDK_BACKEND="x11", GSETTINGS_BACKEND="memory",
               PLUMBHOLD_DATA_DIR=data, GSETTINGS_SCHEMA_DIR=schemas)
    return env


def memory_mib(pid):
    """(RSS, PSS) of a process, in MiB."""
    with open(f"/proc/{pid}/smaps_rollup", encoding="ascii") as f:
        text = f.read()
    return tuple(int(re.search(rf"^{key}:\s+(\d+) kB", text, re.M)[1]) / 1024
                 for key in ("Rss", "Pss"))


def once(command, shim, env):
    env = dict(env, LD_PRELOAD=shim, FIRST_FRAME_START=str(time.monotonic_ns() // 1000))
    process = subprocess.Popen(command, env=env, stderr=subprocess.PIPE, text=True)
    first = None
    for line in process.stderr:
        found = re.search(r"FIRST-FRAME ([\d.]+)", line)
        if found:
            first = float(found[1])
            break
    time.sleep(1.5)
    figures = memory_mib(process.pid)
    process.terminate()
    process.wait()
    process.stderr.close()
    return first, *figures


def main():
    program, smallest, shim, data, schemas = sys.argv[1:6]
    rows = {"window": [], "smallest": []}
    with tempfile.TemporaryDirectory() as folder:
        env = environment(folder, data, schemas)
        for _ in range(RUNS):
            rows["window"].append(once([program, "--demo"], shim, env))
            rows["smallest"].append(once([smallest], shim, env))
    ours, theirs = ([statistics.median(column) for column in zip(*rows[k])]
                    for k in ("window", "smallest"))
    print(f"first frame   {ours[0]:.0f} ms, smallest window {theirs[0]:.0f} ms: "
          f"{ours[0] / theirs[0]:.2f} times (target 1.25)")
    print(f"RSS           {ours[1]:.0f} MiB, smallest window {theirs[1]:.0f} (target 180)")
    print(f"PSS           {ours[2]:.0f} MiB, smallest window {theirs[2]:.0f} (target 145)")


if __name__ == "__main__":
    if os.environ.get("BENCH_INNER"):
        main()
    else:
        os.environ["BENCH_INNER"] = "1"
        sys.exit(subprocess.call(["xvfb-run", "-a", "-s", "-screen 0 1400x900x24 -nolisten tcp",
                                  "dbus-run-session", "--", "/usr/bin/python3", *sys.argv]))
