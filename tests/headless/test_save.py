#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Saving from outside, through rig-rewrite: what comes back, what is kept, and what a failed save
leaves. JSON is read by Python's own reader. Usage: test_save.py REWRITE DATA_FOLDER GOLDEN_FOLDER"""

import glob
import json
import os
import random
import resource
import stat
import struct
import sys

from common import case, main, path_of, read, run, small, write

REWRITE, DATA, GOLDEN = (os.path.abspath(a) for a in sys.argv[1:4])
EXAMPLES = sorted(glob.glob(os.path.join(DATA, "*.rig.json")))
VERSIONS = sorted(glob.glob(os.path.join(GOLDEN, "versions", "*.rig.json")))


def save(path, out=None, *options, **how):
    out = out or path_of("saved.rig.json")
    done = run(REWRITE, *options, path, out, **how)
    assert done.returncode == 0, done.stderr
    return json.loads(read(out))


def refuse(path, out, **how):
    before = sorted(os.listdir(os.path.dirname(out)))
    done = run(REWRITE, path, out, **how)
    assert done.returncode == 3, (done.returncode, done.stderr)
    line = done.stderr.decode()
    assert line.startswith(f"{out}: ") and line.count("\n") == 1, line
    assert sorted(os.listdir(os.path.dirname(out))) == before, "something was left beside it"
    return line


@case
def saved_file_has_the_keys_and_values_of_the_loaded_one():
    for path in EXAMPLES + VERSIONS:
        with open(path, encoding="utf-8") as f:
            want = json.load(f)
        assert save(path) == want, path


@case
def second_save_writes_the_same_bytes():
    for path in EXAMPLES + VERSIONS:
        save(path)
        first = read(path_of("saved.rig.json"))
        save(path_of("saved.rig.json"), path_of("again.rig.json"))
        assert read(path_of("again.rig.json")) == first, path
        assert first.endswith(b"}\n") and b"\t" not in first and b"\r" not in first


@case
def every_fixture_of_an_old_version_still_loads():
    assert VERSIONS
    for path in VERSIONS:
        save(path)


@case
def random_doubles_come_back_bit_by_bit():
    r = random.Random(7)
    for _ in range(60):
        values = []
        while len(values) < 90:
            value = struct.unpack("<d", struct.pack("<Q", r.getrandbits(64)))[0]
            if abs(value) <= 3000:
                values.append(value)
        rig = small(lambda g: (g["bow"].update(com_mm=values[:3]),
                               g["bow"]["mounts"][0].update(at_mm=values[3:6]), g.update(x=values)))
        got = save(write(rig))
        pairs = zip(got["x"] + got["bow"]["com_mm"], values + values[:3])
        assert all(struct.pack("<d", a) == struct.pack("<d", b) for a, b in pairs)


@case
def unknown_keys_of_any_shape_are_kept():
    odd = {"a": [1, {"b": None}], "": True, "é\n\"": "\u0001\U0001d11e", "big": 12345678901234567890,
           "deep": [[[[[]]]], {}], "n": 0.1}

    def change(rig):
        rig.update(odd)
        rig["archer"] = dict(odd, hand=dict(odd))
        rig["bow"].update(odd)
        rig["bow"]["mounts"][0].update(odd)
        rig["parts"][0].update(odd, limits=dict(odd, swing_deg=[-1, 1]), count=3, along_mm="x",
                               price=dict(odd, amount=1, currency="EUR"))
    want = small(change)
    assert save(write(want)) == want


@case
def shared_layout_has_no_archer():
    got = save(os.path.join(DATA, "v-bars.rig.json"), None, "--share")
    assert "archer" not in got and "book" not in got and len(got["parts"]) == 10
    got = save(os.path.join(DATA, "left-handed.rig.json"), None, "--share")
    assert got["archer"] == {"bow_hand": "right"}


@case
def mode_is_kept_and_links_are_followed():
    target, link = path_of("target.rig.json"), path_of("link.rig.json")
    write("old", "target.rig.json")
    os.chmod(target, 0o604)
    os.symlink("target.rig.json", link)
    save(EXAMPLES[0], link)
    assert os.path.islink(link) and stat.S_IMODE(os.stat(target).st_mode) == 0o604
    assert json.loads(read(target))["format"] == "plumbhold-rig"


@case
def full_disk_leaves_the_old_file_as_it_was():
    out = write("the old file", "full.rig.json")

    def limit():
        resource.setrlimit(resource.RLIMIT_FSIZE, (100, resource.RLIM_INFINITY))
    line = refuse(EXAMPLES[0], out, preexec_fn=limit)
    assert "larger than is allowed" in line and read(out) == b"the old file"


@case
def place_that_cannot_be_written_gets_one_clear_line():
    os.mkdir(path_of("sub"))
    assert "folder" in refuse(EXAMPLES[0], path_of("sub"))
    os.mkfifo(path_of("pipe"))
    assert "pipe or device" in refuse(EXAMPLES[0], path_of("pipe"))
    if os.geteuid() != 0:
        os.chmod(path_of("sub"), 0o500)
        assert "no permission" in refuse(EXAMPLES[0], path_of("sub/new.rig.json"))
        os.chmod(path_of("sub"), 0o700)
        os.chmod(write("old", "locked"), 0o444)
        assert "only be read" in refuse(EXAMPLES[0], path_of("locked"))


@case
def catalogue_is_sound():
    done = run(REWRITE, "--catalogue", os.path.join(DATA, "catalogue.json"))
    assert done.returncode == 0 and not done.stderr, done.stderr


main()
