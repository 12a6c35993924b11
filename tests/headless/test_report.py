#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""plumbhold-calc report from outside: exit codes, error lines, keys, nulls, the table. The numbers
themselves are held in tests/golden. Usage: test_report.py CALC DATA_FOLDER SEEDS_FOLDER"""

import glob
import json
import math
import os
import re
import subprocess
import sys

from common import case, main, path_of, run, seconds, small, write

CALC, DATA, SEEDS = (os.path.abspath(a) for a in sys.argv[1:4])
DEMO = os.path.join(DATA, "demo.rig.json")

# The order of the headless contract.
KEYS = ["name", "mass_g", "com_mm", "inertia_com_kg_m2", "inertia_grip_kg_m2", "principal_kg_m2",
        "parts", "roll", "pitch", "hold", "clearance", "principal_axes", "bars", "notes"]
PART = ["id", "mass_g", "com_mm", "roll_moment_nm", "pitch_moment_nm"]
ROLL = ["moment_nm", "below_axis_mm", "gravity_stiffness_nm_per_rad", "hand_stiffness_nm_per_rad",
        "hand_bias_nm", "hand_is", "cant_deg", "bubble_deg", "cant_90_deg", "stable"]
PITCH = ["moment_nm", "nock_load_n", "bow_arm_load_n", "shoulder_moment_nm", "release_pitch_rad_s2"]
HOLD = ["inertia_nock_kg_m2", "cross_coupling"]
BAR = ["id", "droop_mm", "slope_deg", "clamped_hz"]


def report(rig, *options):
    done = run(CALC, "report", write(rig) if isinstance(rig, dict) else rig, "--json", *options)
    assert done.returncode == 0 and not done.stderr, (done.returncode, done.stderr)
    return json.loads(done.stdout)


def errors(content, name="rig.rig.json"):
    """The error lines without the file's name; every rule about them is checked on the way."""
    path = write(content, name)
    done = run(CALC, "report", path, "--json")
    assert done.returncode == 1, (done.returncode, done.stdout[:200])
    assert done.stdout == b"", done.stdout[:200]
    lines = done.stderr.decode().splitlines()
    assert lines and done.stderr.endswith(b"\n")
    for line in lines:
        assert line.startswith(path + ": "), line
        assert len(line) <= 1000, len(line)
    return [line[len(path) + 2:] for line in lines]


@case
def keys_stand_in_the_order_of_the_contract():
    got = report(DEMO)
    assert list(got) == KEYS, list(got)
    assert all(list(part) == PART for part in got["parts"])
    assert list(got["roll"]) == ROLL
    assert list(got["pitch"]) == PITCH
    assert list(got["hold"]) == HOLD
    assert list(got["clearance"]) == ["mm", "part"]
    assert all(list(bar) == BAR for bar in got["bars"]) and got["bars"]
    assert [len(got[k]) for k in ("com_mm", "inertia_com_kg_m2", "principal_kg_m2")] == [3, 6, 3]
    assert [len(axis) for axis in got["principal_axes"]] == [3, 3, 3]


@case
def parts_stand_in_file_order_after_the_bow_without_what_is_off():
    def change(rig):
        rig["parts"].reverse()
    assert [p["id"] for p in report(small(change))["parts"]] == ["bow", "disc", "rod"]
    assert [p["id"] for p in report(small(lambda r: r["parts"][0].update(off=True)))["parts"]] == ["bow"]
    ids = [p["id"] for p in report(DEMO)["parts"]]
    assert ids == ["bow", "sight", "front-bar", "front-stack", "block", "back-bar", "back-stack"], ids


@case
def shares_add_up_to_the_whole():
    for path in sorted(glob.glob(os.path.join(DATA, "*.rig.json"))):
        got = report(path)
        for key, total in (("mass_g", got["mass_g"]), ("roll_moment_nm", got["roll"]["moment_nm"]),
                           ("pitch_moment_nm", got["pitch"]["moment_nm"])):
            assert math.isclose(sum(p[key] for p in got["parts"]), total, rel_tol=1e-9, abs_tol=1e-12)
        assert got["notes"] == [] and got["roll"]["stable"], path


@case
def what_cannot_be_computed_is_null():
    got = report(small(lambda r: r["parts"][1].update(count=0)))
    assert got["parts"][2]["com_mm"] is None and got["parts"][2]["mass_g"] == 0
    got = report(small(lambda r: r["bow"].pop("brace_height_mm")))
    assert got["clearance"] == {"mm": None, "part": None}
    got = report(small(lambda r: r.update(parts=[])))
    assert got["clearance"] == {"mm": None, "part": None} and got["bars"] == []
    assert report(small())["roll"]["cant_90_deg"] is None


@case
def rig_that_topples_says_so_instead_of_a_number():
    got = report(small(lambda r: (r["bow"].update(com_mm=[0, 0, 900]), r.update(parts=[]))))
    assert list(got["roll"]) == ROLL + ["reason"], list(got["roll"])
    assert [got["roll"][k] for k in ("cant_deg", "bubble_deg", "cant_90_deg")] == [None] * 3
    assert got["roll"]["stable"] is False and "topples" in got["roll"]["reason"]
    table = run(CALC, "report", path_of("rig.rig.json")).stdout.decode()
    assert "topples" in table and "nan" not in table.lower(), table


@case
def hand_is_assumed_until_a_check_is_in_use():
    got = report(small())["roll"]
    assert (got["hand_is"], got["hand_stiffness_nm_per_rad"], got["hand_bias_nm"]) == ("assumed", 2, 0)
    got = report(DEMO)["roll"]
    assert got["hand_is"] == "fitted" and len(got["cant_90_deg"]) == 2
    assert got["cant_90_deg"][0] < got["cant_deg"] < got["cant_90_deg"][1]
    test = json.load(open(DEMO))["archer"]["hand"]["bubble_tests"][0]

    def aside(rig):
        rig["archer"] = {"hand": {"bubble_tests": [{**test, "aside": True}]}}
    assert report(small(aside))["roll"]["hand_is"] == "assumed"


@case
def notes_name_the_part_or_the_key():
    got = report(small(lambda r: (r["parts"][0].update(flavour=1), r.update(x=[]))))
    assert len(got["notes"]) == 2 and got["notes"][0].startswith("x: ")
    assert got["notes"][1].startswith("part rod: flavour: ")

    def near(rig):
        rig["bow"]["mounts"][0].update(at_mm=[-150, 0, 0], axis=[-1, 0, 0])
    got = report(small(near))
    assert got["clearance"]["mm"] < 15 and got["clearance"]["part"] in ("rod", "disc")
    assert any(line.startswith(f"part {got['clearance']['part']}: ") for line in got["notes"])
    got = report(small(lambda r: r["bow"].update(gyration_mm=[300, 10, 10])))
    assert [n for n in got["notes"] if n.startswith("bow: gyration_mm: ")]


@case
def rig_without_a_name_has_its_files():
    done = run(CALC, "report", write(small(), "harbour.rig.json"), "--json")
    assert json.loads(done.stdout)["name"] == "harbour"
    done = run(CALC, "report", write(small(), os.fsdecode(b"h\xff.rig.json")), "--json")
    assert json.loads(done.stdout)["name"] == "h?"
    assert report(small(lambda r: r.update(name="Ada's \"best\"\n")))["name"] == "Ada's \"best\"\n"


@case
def numbers_have_every_digit():
    got = report(small(lambda r: r["bow"].update(mass_g=1950.1234567890123)))
    total = 1950.1234567890123 + 165 + 8 * 28.35
    assert math.isclose(got["mass_g"], total, rel_tol=4e-16), repr(got["mass_g"])


@case
def errors_name_part_and_key():
    assert errors(small(lambda r: r["parts"][0].update(mass_g=-3)))[0].startswith("part rod: mass_g: ")
    assert errors(small(lambda r: r["parts"][0].pop("id")))[0].startswith("part #1: id: ")
    assert errors(small(lambda r: r["bow"].pop("mass_g")))[0].startswith("bow: mass_g: ")
    assert errors(small(lambda r: r.update(archer={"stature_mm": 0})))[0].startswith("archer: stature_mm: ")
    assert errors(small(lambda r: r.pop("format")))[0].startswith("format: ")
    assert errors(small(lambda r: r.update(version=2)))[0].startswith("version: ")
    assert errors(small(lambda r: r["parts"][0].update(on="disc")))[0].startswith("part rod: on: ")
    assert errors(small(lambda r: r["parts"][0].update(mass_g=float("nan"))))[0].startswith(
        "part rod: mass_g: ")
    assert errors("{\n}}")[0].startswith("line 2, column 2: ")
    assert errors("{\"format\": 01}")[0].startswith("line 1, column 12: ")


@case
def several_errors_are_all_told_and_very_many_are_cut():
    def three(rig):
        rig["bow"]["mass_g"] = "heavy"
        rig["parts"][0]["lift_deg"] = 200
        rig["parts"][1].pop("count")
    lines = errors(small(three))
    assert len(lines) == 3, lines
    assert [line.split(":")[0] for line in lines] == ["bow", "part rod", "part disc"], lines
    lines = errors(small(lambda r: r.update(parts=[{"id": f"p{i}"} for i in range(200)])))
    assert len(lines) == 51 and lines[-1] == "150 more errors are not listed here", lines[-1]


@case
def long_ids_keys_and_paths_are_cut_to_a_line():
    lines = errors(small(lambda r: r["parts"][0].update(id="x" * 900, on="y" * 90000)))
    assert all("x" * 81 not in line and "y" * 81 not in line for line in lines)
    errors(small(lambda r: r.update({"k" * 5000: 1})))
    errors(small(lambda r: r["parts"][0].update({"k\n" * 100: float("inf")})))
    deep = os.path.join(path_of(""), *(["d" * 200] * 6))
    done = run(CALC, "report", os.path.join(deep, "none.rig.json"))
    line = done.stderr.decode()
    assert done.returncode == 1 and len(line) <= 1001 and line.count("\n") == 1, line
    assert "no such file" in line


@case
def every_bad_seed_is_refused_within_a_second():
    seeds = sorted(glob.glob(os.path.join(SEEDS, "bad-*")))
    assert len(seeds) > 40
    for seed in seeds:
        start = seconds()
        done = run(CALC, "report", seed)
        took = seconds() - start
        assert done.returncode == 1 and done.stdout == b"", (seed, done.returncode)
        assert took < 1, (seed, took)
        for line in done.stderr.decode().splitlines():
            assert line.startswith(seed + ": ") and len(line) <= 1000, line


@case
def what_is_no_rig_file_gets_one_clear_line():
    def line_of(path):
        start = seconds()
        done = run(CALC, "report", path)
        assert done.returncode == 1 and seconds() - start < 1, path
        text = done.stderr.decode()
        assert text.startswith(f"{path}: ") and text.count("\n") == 1, text
        return text
    assert "no such file" in line_of(path_of("nothing"))
    assert "folder" in line_of(path_of(""))
    assert "pipe or device" in line_of("/dev/zero")
    os.mkfifo(path_of("pipe"))
    assert "pipe or device" in line_of(path_of("pipe"))
    assert "empty" in line_of(write("", "empty"))
    assert "too large" in line_of(write(b" " * (1024 * 1024 + 1), "large"))
    if os.geteuid() != 0:
        os.chmod(write("{}", "secret"), 0)
        assert "no permission" in line_of(path_of("secret"))


@case
def largest_file_is_read_within_a_second():
    rig = small(lambda r: r.update(notes="é" * 520000))
    text = json.dumps(rig, ensure_ascii=False)
    text += " " * (1024 * 1024 - len(text.encode()))
    start = seconds()
    assert report(write(text))["mass_g"] > 0
    assert seconds() - start < 1


@case
def wrong_command_lines_exit_2():
    for arguments in ([], ["nothing"], ["report"], ["report", DEMO, DEMO], ["report", DEMO, "--yaml"],
                      ["report", DEMO, "--units"], ["report", DEMO, "--units", "cubits"],
                      ["report", DEMO, "--json=1"], ["report", "--"], ["--nothing"],
                      ["report", DEMO, "-j"]):
        done = run(CALC, *arguments)
        assert done.returncode == 2, (arguments, done.returncode)
        assert done.stdout == b"" and done.stderr.decode().count("\n") == 1, (arguments, done.stderr)
        assert b"--help" in done.stderr


@case
def help_and_version_are_on_standard_output():
    for arguments in (["--help"], ["report", "--help"], ["--version"], ["report", DEMO, "--help"]):
        done = run(CALC, *arguments)
        assert done.returncode == 0 and done.stdout and not done.stderr, arguments
    assert b"--units" in run(CALC, "report", "--help").stdout
    assert re.fullmatch(rb"plumbhold-calc \d+\.\d+\.\d+\n", run(CALC, "--version").stdout)


@case
def options_may_stand_anywhere_and_a_file_may_begin_with_a_dash():
    first = run(CALC, "report", "--units", "trade", DEMO).stdout
    assert first == run(CALC, "report", DEMO, "--units=trade").stdout and b" lb" in first
    write(small(), "-rig")
    done = run(CALC, "report", "--json", "--", "-rig", cwd=path_of(""))
    assert done.returncode == 0 and json.loads(done.stdout)["name"] == "-rig"


@case
def table_is_for_a_person():
    table = run(CALC, "report", DEMO).stdout.decode()
    for words in ("Harbour club indoor", "Balance point", "Lean", "Arm load", "feels like", "Back bar",
                  "learnt from the bubble checks"):
        assert words in table, words
    for word in ("swing", "lift", "disturbance", "nan", "inf", "null", "-0.00", "-0 ", "-0.0 "):
        assert not re.search(rf"\b{re.escape(word)}\b", table.replace("nod, swing", "nod")), word
    assert not re.search(r"[ \t]$", table, re.M)
    assert "assumed hand: K 2.0" in run(CALC, "report", write(small())).stdout.decode()
    metric, trade, mixed = (run(CALC, "report", DEMO, "--units", u).stdout.decode()
                            for u in ("metric", "trade", "mixed"))
    assert metric == table and "2.974 kg" in metric and "6.56 lb" in trade
    assert "2.974 kg" in mixed and "oz" in mixed and "8.0 oz" in trade


@case
def output_is_the_same_in_any_locale():
    want = run(CALC, "report", DEMO, "--json").stdout
    for locale in ("C", "de_DE.UTF-8", "tr_TR.UTF-8"):
        done = run(CALC, "report", DEMO, "--json", env={"LC_ALL": locale, "LANG": locale})
        assert done.stdout == want


@case
def output_that_cannot_be_written_is_an_error():
    with open("/dev/full", "w") as full:
        done = subprocess.run([CALC, "report", DEMO, "--json"], stdout=full, stderr=subprocess.PIPE)
    assert done.returncode == 1 and b"cannot be written" in done.stderr


@case
def reading_changes_no_file():
    with open(DEMO, "rb") as f:
        before = f.read()
    stamp = os.stat(DEMO).st_mtime_ns
    report(DEMO)
    with open(DEMO, "rb") as f:
        assert f.read() == before
    assert os.stat(DEMO).st_mtime_ns == stamp


main()
