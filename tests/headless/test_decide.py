#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""steps, level and hand of plumbhold-calc from outside: what they promise is done to the file and
reported again; the next check is worked out a second time from reports alone.
Usage: test_decide.py PLUMBHOLD-CALC DATA-FOLDER"""

import copy
import json
import math
import os
import subprocess
import sys
import tempfile

CALC, DATA = sys.argv[1], sys.argv[2]
DEMOS = ["demo", "heavy-front", "left-handed", "recurve", "barebow", "v-bars"]
FOLDER = tempfile.mkdtemp(prefix="plumbhold-decide-")
failures = []


def expect(condition, what):
    if not condition:
        failures.append(what)
        print(f"# {what}")


def near(got, want, allowed, what):
    if got is None or want is None:
        expect(got is want, f"{what}: got {got}, want {want}")
    else:
        expect(abs(got - want) <= allowed, f"{what}: got {got!r}, want {want!r}")


def run(*arguments):
    return subprocess.run([CALC, *arguments], capture_output=True, text=True, check=False)


def ask(*arguments):
    done = run(*arguments, "--json")
    expect(done.returncode == 0, f"{arguments}: exit {done.returncode}: {done.stderr}")
    return json.loads(done.stdout) if done.returncode == 0 else {}


def write(rig, name="rig"):
    path = os.path.join(FOLDER, name + ".rig.json")
    with open(path, "w", encoding="utf-8") as f:
        json.dump(rig, f)
    return path


def demo(name):
    with open(os.path.join(DATA, name + ".rig.json"), encoding="utf-8") as f:
        return json.load(f)


def changed(rig, changes):
    rig = copy.deepcopy(rig)
    for change in changes:
        part = next(p for p in rig["parts"] if p["id"] == change["part"])
        expect(part.get(change["key"], 0) == change["from"], f"{change}: not from what it is")
        part[change["key"]] = change["to"]
    return rig


def report(rig):
    return ask("report", write(rig))


def step_effects_are_those_of_the_file():
    for name in DEMOS:
        rig = demo(name)
        now = report(rig)
        for one in ask("steps", write(rig))["adjustables"]:
            ends, span = [], 0
            for k in (1, -1):
                value = one["now"] + k * one["step"]
                inside = one["lo"] <= value <= one["hi"]
                change = {"part": one["part"], "key": one["key"], "from": one["now"], "to": value}
                ends.append(report(changed(rig, [change])) if inside else now)
                span += inside
            where = f"{name} {one['part']} {one['key']}"
            hi, lo = ends
            for key, get in (("bubble_deg_per_step", lambda r: r["roll"]["bubble_deg"]),
                             ("front_pull_nm_per_step", lambda r: r["pitch"]["moment_nm"]),
                             ("arm_load_n_per_step", lambda r: r["pitch"]["bow_arm_load_n"]),
                             ("mass_g_per_step", lambda r: r["mass_g"])):
                both = get(hi) is not None and get(lo) is not None
                near(one[key], (get(hi) - get(lo)) / span if both else None, 1e-9, f"{where} {key}")
            for axis in range(3):
                want = 100 * (hi["inertia_grip_kg_m2"][axis] - lo["inertia_grip_kg_m2"][axis])
                near(one["inertia_percent_per_step"][axis],
                     want / span / now["inertia_grip_kg_m2"][axis], 1e-9, f"{where} inertia {axis}")


def answers_written_to_the_file_keep_their_promise():
    for name in DEMOS:
        rig = demo(name)
        for options in ([], ["--target", "1.25", "--tolerance", "0.003"], ["--target", "-4"],
                        ["--lighter", "--tolerance", "8"], ["--most", "3"]):
            level = ask("level", write(rig), *options)
            expect((level["reason"] is None) == bool(level["answers"]), f"{name} {options}: reason")
            near(level["now_deg"], report(rig)["roll"]["bubble_deg"], 1e-12, f"{name} now")
            expect(len(level["answers"]) <= (3 if "--most" in options else 10), f"{name}: too many")
            for answer in level["answers"]:
                then = report(changed(rig, answer["changes"]))
                where = f"{name} {options} {answer['changes']}"
                near(answer["bubble_deg"], then["roll"]["bubble_deg"], 1e-9, where)
                near(answer["mass_g"], then["mass_g"], 1e-9, where)
                near(answer["front_pull_nm"], then["pitch"]["moment_nm"], 1e-10, where)
                near(answer["arm_load_n"], then["pitch"]["bow_arm_load_n"], 1e-10, where)
                for axis in range(3):
                    near(answer["inertia_grip_kg_m2"][axis], then["inertia_grip_kg_m2"][axis],
                         1e-11, where)


def other_side_mirrors_a_bar():
    # A lone bar in the bow's plane's left: mirrored it is the same bar swung to the right.
    rig = demo("demo")
    rig["archer"].pop("hand")
    rig["parts"] = [p for p in rig["parts"] if p["id"] in ("sight", "back-bar", "back-stack")]
    bar = next(p for p in rig["parts"] if p["id"] == "back-bar")
    bar["on"] = "bow:rear"
    bar["swing_deg"] = 40
    other = copy.deepcopy(rig)
    next(p for p in other["parts"] if p["id"] == "back-bar")["swing_deg"] = -40
    wanted = report(other)["roll"]["bubble_deg"]
    level = ask("level", write(rig), "--other-side", "--target", repr(wanted))
    expect(len(level["answers"]) == 1, f"one answer: {level}")
    answer = level["answers"][0]
    expect(answer["changes"] == [{"part": "back-bar", "key": "mirror", "from": False, "to": True}],
           str(answer["changes"]))
    near(answer["bubble_deg"], wanted, 1e-9, "mirrored bubble")
    for axis in range(3):
        near(answer["inertia_grip_kg_m2"][axis], report(other)["inertia_grip_kg_m2"][axis], 1e-12,
             "mirrored inertia")


# The next check, from reports alone.

def half_width(covariance, cant, roll):
    kk, kb, bb = covariance
    # k at the solution by the torque's own slope: tau = -side cos + top sin.
    side = -roll["moment_nm"]
    top = -roll["gravity_stiffness_nm_per_rad"]
    k = -side * math.sin(cant) - top * math.cos(cant)
    variance = cant * cant * kk - 2 * cant * kb + bb
    return math.degrees(1.6448536269514722 * math.sqrt(variance)
                        / (roll["hand_stiffness_nm_per_rad"] + k))


def after_reading(covariance, roll):
    """Inverse of the information with one row more."""
    kk, kb, bb = covariance
    det = kk * bb - kb * kb
    a, b, c = bb / det, -kb / det, kk / det
    s = (roll["hand_stiffness_nm_per_rad"] + roll["gravity_stiffness_nm_per_rad"]) \
        * math.radians(0.3)
    x, y = math.radians(roll["cant_deg"]) / s, -1 / s
    a, b, c = a + x * x, b + x * y, c + y * y
    det = a * c - b * b
    return c / det, -b / det, a / det


def candidates(rig, now):
    yield 0, []
    for one in ask("steps", write(rig))["adjustables"]:
        down = math.floor(one["now"] - one["lo"] + 1e-9)
        up = math.floor(one["hi"] - one["now"] + 1e-9)
        if one["key"] == "count":
            steps = [k for k in (-4, -2, 2, 4) if -down <= k <= up]
        else:
            steps = sorted({-down, -(down // 2), up, up // 2} - {0})
        for k in steps:
            change = [{"part": one["part"], "key": one["key"], "from": one["now"],
                       "to": one["now"] + k}]
            then = report(changed(rig, change))
            bubble, keep = then["roll"]["bubble_deg"], now["clearance"]["mm"]
            if bubble is None or abs(bubble) > 6:
                continue
            if keep is not None and then["clearance"]["mm"] is not None:
                if then["clearance"]["mm"] < (15 if keep >= 15 else keep - 1e-6):
                    continue
            yield abs(k), change


def next_checks(rig):
    now, hand = report(rig), ask("hand", write(rig))
    covariance = hand["covariance"]
    target = now["roll"]
    level = ask("level", write(rig), "--most", "1000")
    singles = [a for a in level["answers"] if len(a["changes"]) == 1]
    if singles:
        target = report(changed(rig, singles[0]["changes"]))["roll"]
    cant = math.radians(target["cant_deg"])
    found = []
    for steps, change in candidates(rig, now):
        roll = report(changed(rig, change))["roll"]
        found.append((half_width(after_reading(covariance, roll), cant, target), steps, change))
    best = min(f[0] for f in found)
    found.sort(key=lambda f: (0, f[1], f[0]) if f[0] <= 1.1 * best else (1, f[0], 0))
    wide = half_width(covariance, cant, target)
    return wide, found, wide < 0.3 or wide - best < 0.05 * wide, hand


def next_check_is_that_of_a_second_computation():
    for name in DEMOS:
        rig = demo(name)
        rig["archer"].setdefault("hand", {})
        now = report(rig)
        tests = []
        for bubble, aside in ((1.4, 4), (-0.7, -3), (0.3, 1)):
            tests.append({"mass_g": now["mass_g"], "com_mm": [now["com_mm"][0], aside, -40],
                          "draw_length_mm": rig["archer"].get("draw_length_mm", 680),
                          "nock_height_mm": rig["archer"].get("nock_height_mm", 40),
                          "bubble_deg": bubble})
        for n in (1, 3):
            rig["archer"]["hand"]["bubble_tests"] = tests[:n]
            if report(rig)["roll"]["bubble_deg"] is None:
                continue
            wide, found, enough, hand = next_checks(rig)
            expect(hand["enough"] == enough, f"{name} {n}: enough {hand['enough']}")
            expect(len(hand["next"]) == min(3, len(found)), f"{name} {n}: {len(hand['next'])}")
            for got, want in zip(hand["next"], found):
                near(got["interval_now_deg"], wide, 1e-8, f"{name} {n} now")
                near(got["interval_then_deg"], want[0], 1e-8, f"{name} {n} then")
                expect(got["changes"] == want[2], f"{name} {n}: {got['changes']}, want {want[2]}")


def without_a_check_only_the_rig_as_it_is_is_suggested():
    rig = demo("demo")
    rig["archer"]["hand"]["bubble_tests"] = []
    hand = ask("hand", write(rig))
    expect(hand["is"] == "assumed" and len(hand["next"]) == 1, str(hand))
    expect(hand["next"][0]["changes"] == [] and hand["enough"] is False, str(hand))
    expect(hand["covariance"] == [2.25, 0, 0.09], str(hand["covariance"]))


# hand --add.

def reading_is_recorded_only_when_asked():
    path = write(demo("demo"), "add")
    with open(path, encoding="utf-8") as f:
        before = f.read()
    dry = ask("hand", path, "--add", "-0.5", "--date", "2026-03-08")
    expect(len(dry["tests"]) == 2 and dry["tests"][1]["bubble_deg"] == -0.5, str(dry["tests"]))
    with open(path, encoding="utf-8") as f:
        expect(f.read() == before, "nothing is written without --write")
    now = report(demo("demo"))
    wet = ask("hand", path, "--add", "-0.5", "--sd", "0.4", "--date", "2026-03-08", "--write")
    expect([t["index"] for t in wet["tests"]] == [0, 1], str(wet["tests"]))
    with open(path, encoding="utf-8") as f:
        check = json.load(f)["archer"]["hand"]["bubble_tests"][1]
    near(check["mass_g"], now["mass_g"], 1e-9, "mass")
    for axis in range(3):
        near(check["com_mm"][axis], now["com_mm"][axis], 1e-9, "com")
    expect(check["sd_deg"] == 0.4 and check["date"] == "2026-03-08", str(check))
    near(check["predicted_deg"], now["roll"]["bubble_deg"], 1e-12, "sealed before the reading")
    expect("T" in check["predicted_at"], str(check))
    expect(ask("hand", path) == wet, "what was written reads back as it was said")


def bad_readings_exit_2_and_leave_the_file():
    path = write(demo("demo"), "bad")
    with open(path, encoding="utf-8") as f:
        before = f.read()
    for options in (["--add", "90"], ["--add", "60"], ["--add", "-60"], ["--add", "nan"],
                    ["--add", "1", "--sd", "0"], ["--add", "1", "--sd", "-0.1"],
                    ["--add", "1", "--date", "2026-02-30"], ["--add", "1", "--date", "8.3.2026"],
                    ["--add", "1", "--date", "2026-3-8"], ["--add"], ["--add", "x"], ["--write"],
                    ["--sd", "0.2"]):
        done = run("hand", path, *options, *([] if "--write" in options or options[-1] == "--add"
                                             else ["--write"]), "--json")
        expect(done.returncode == 2 and done.stderr and not done.stdout,
               f"{options}: exit {done.returncode}, «{done.stdout[:40]}»")
        with open(path, encoding="utf-8") as f:
            expect(f.read() == before, f"{options}: the file was changed")
    for options in (["--target", "60"], ["--tolerance", "-1"], ["--most", "0"], ["--most", "1.5"],
                    ["--lighter", "--other-side"]):
        expect(run("level", path, *options).returncode == 2, str(options))


def rig_without_mass_is_an_error_of_the_file():
    rig = demo("demo")
    rig["bow"]["mass_g"] = 0
    rig["parts"] = []
    for command in ("steps", "level", "hand"):
        done = run(command, write(rig), "--json")
        expect(done.returncode == 1 and "bow: mass_g" in done.stderr, f"{command}: {done.stderr}")


def limits_upside_down_are_an_error_of_the_file():
    rig = demo("demo")
    rig["parts"][4]["limits"] = {"swing_deg": [30, 10]}
    done = run("level", write(rig))
    expect(done.returncode == 1 and "limits.swing_deg" in done.stderr, done.stderr)


def all_locked_says_so():
    rig = demo("demo")
    for part in rig["parts"]:
        part["locked"] = True
    expect(ask("steps", write(rig)) == {"adjustables": []}, "nothing is listed")
    level = ask("level", write(rig))
    expect(level["answers"] == [] and "locked" in level["reason"], str(level))
    hand = ask("hand", write(rig))
    expect([n["changes"] for n in hand["next"]] == [[]], str(hand["next"]))
    expect(run("level", write(rig)).stdout.count("No answer") == 1, "the table says it too")


def two_alike_a_thousand_and_wild_checks_are_borne():
    rig = demo("demo")
    one = rig["archer"]["hand"]["bubble_tests"][0]
    rig["archer"]["hand"]["bubble_tests"] = [one, dict(one)]
    twice = ask("hand", write(rig))
    expect(twice["covariance"][2] < ask("hand", write(demo("demo")))["covariance"][2], "no gain")
    rig["archer"]["hand"]["bubble_tests"] = [one] * 1000
    many = ask("hand", write(rig))
    expect(len(many["tests"]) == 1000 and many["covariance"][0] > 0.5, str(many["covariance"]))
    rig["archer"]["hand"]["bubble_tests"] = [one, dict(one, bubble_deg=-25), dict(one, bubble_deg=40)]
    wild = ask("hand", write(rig))
    expect(sum(t["disagrees"] for t in wild["tests"]) >= 2, str(wild["tests"]))
    expect(wild["is"] == "fitted" and wild["stiffness_nm_per_rad"] >= 0.05, str(wild))
    ask("level", write(rig))
    rig["archer"]["hand"]["bubble_tests"][1]["aside"] = True
    aside = ask("hand", write(rig))
    expect(len(aside["tests"]) == 3, "one set aside is still listed")


def main():
    for case in (step_effects_are_those_of_the_file, answers_written_to_the_file_keep_their_promise,
                 other_side_mirrors_a_bar, next_check_is_that_of_a_second_computation,
                 without_a_check_only_the_rig_as_it_is_is_suggested,
                 reading_is_recorded_only_when_asked, bad_readings_exit_2_and_leave_the_file,
                 rig_without_mass_is_an_error_of_the_file,
                 limits_upside_down_are_an_error_of_the_file, all_locked_says_so,
                 two_alike_a_thousand_and_wild_checks_are_borne):
        before = len(failures)
        case()
        print("ok" if len(failures) == before else "FAILED", case.__name__, flush=True)
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
