#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""plumbhold-calc measure from outside: readings made of a rig whose bow is known must give that bow
back; hanging against numpy's least squares by another route; deviations against 20,000 simulated
readings; what is refused, what is written. Usage: test_measure.py PLUMBHOLD-CALC DATA-FOLDER"""

import copy
import json
import os
import stat
import sys

import numpy

from common import case, main, path_of, read, run, small, write

CALC, DATA = sys.argv[1], sys.argv[2]
G = 9.80665
DEMOS = ["demo", "heavy-front", "left-handed", "recurve", "barebow", "v-bars"]
rng = numpy.random.default_rng(20260301)


def demo(name="demo"):
    with open(os.path.join(DATA, name + ".rig.json"), encoding="utf-8") as f:
        return json.load(f)


def ask(command, *arguments):
    done = run(CALC, command, *arguments, "--json")
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


def measure(rig, readings, *options):
    return ask("measure", write(rig), write(readings, "readings.json"), *options)


def report(rig):
    return ask("report", write(rig))


def bare(rig):
    """The rig without its parts."""
    rig = copy.deepcopy(rig)
    rig["parts"] = []
    return rig


def near(got, want, relative, absolute=0.0):
    assert numpy.allclose(got, want, rtol=relative, atol=absolute), (got, want)


def scales_of(rig, d_mm):
    whole = report(rig)
    weight = whole["mass_g"] / 1000 * G
    second = weight * whole["com_mm"][0] / d_mm
    return {"scales": {"f1_n": weight - second, "f2_n": second, "d_mm": d_mm}}


def lines_through(com, n, scatter=0.0):
    lines = []
    for _ in range(n):
        direction = rng.normal(size=3)
        at = com + 300 * direction + scatter * rng.normal(size=3)
        lines.append({"point_mm": list(at), "direction": list(direction), "sd_mm": 2.0})
    return {"hanging": {"lines": lines}}


def guessed_wrongly(rig):
    """The same rig whose bow is only guessed, and wrongly: what measuring is for."""
    rig = copy.deepcopy(rig)
    rig["bow"]["com_mm"] = [c + d for c, d in zip(rig["bow"]["com_mm"], (9, -6, 11))]
    rig["bow"]["source"] = "guessed"
    rig["bow"].pop("sd", None)
    return rig


@case
def scales_give_the_bow_back_with_its_parts_on():
    for name in DEMOS:
        true = demo(name)
        for d_mm in (400, -350):
            got = measure(guessed_wrongly(true), scales_of(true, d_mm))
            assert got["quantity"] == "com_x_mm" and "refused" not in got, got
            near(got["value"], true["bow"]["com_mm"][0], 0, 1e-9)
            near(got["bow"]["com_mm"][0], true["bow"]["com_mm"][0], 0, 1e-9)
            near(got["bow"]["mass_g"], true["bow"]["mass_g"], 1e-12)
            assert got["bow"]["source"] == "measured"


@case
def hanging_gives_the_bow_back_with_its_parts_on():
    for name in DEMOS:
        true = demo(name)
        whole = numpy.array(report(true)["com_mm"])
        got = measure(guessed_wrongly(true), lines_through(whole, 3))
        near(got["value"], true["bow"]["com_mm"], 0, 1e-9)
        near(got["bow"]["com_mm"], got["value"], 0)
        near(got["spread_mm"], 0, 0, 1e-9)


@case
def swings_give_the_bow_back_with_its_parts_on():
    for name in DEMOS:
        true = demo(name)
        whole = report(true)
        mass = whole["mass_g"] / 1000
        for axis in range(3):
            inertia = whole["inertia_com_kg_m2"][axis]
            swing = {"axis": "xyz"[axis], "mass_g": whole["mass_g"], "swings": 20}
            period = 2 * numpy.pi * numpy.sqrt((inertia + mass * 0.45**2) / (mass * G * 0.45))
            one = {"swing": {**swing, "distance_mm": 450, "seconds": 20 * period}}
            period = 2 * numpy.pi * numpy.sqrt(4 * inertia * 0.8 / (mass * G * 0.3**2))
            two = {"two-string": {**swing, "spacing_mm": 300, "length_mm": 800,
                                  "seconds": 20 * period}}
            rig = copy.deepcopy(true)
            rig["bow"]["gyration_mm"] = [250, 250, 50]
            k = true["bow"]["gyration_mm"][axis]
            for readings in (one, two):
                got = measure(rig, readings)
                near(got["bow"]["gyration_mm"][axis], k, 1e-9)
                near(got["value"], true["bow"]["mass_g"] / 1000 * (k / 1000) ** 2, 1e-9)
                assert got["quantity"] == f"inertia_{'xyz'[axis]}_kg_m2"


@case
def hanging_is_numpys_least_squares_with_its_covariance():
    # Another route: two unit vectors across each line give two weighed rows a line.
    rig = bare(demo())
    for n in (2, 3, 5):
        readings = lines_through(numpy.array([-15.0, 2, 20]), n, 4)
        rows, right, widths = [], [], []
        for i, line in enumerate(readings["hanging"]["lines"]):
            line["sd_mm"] = 1.0 + i
            along = numpy.array(line["direction"]) / numpy.linalg.norm(line["direction"])
            across = numpy.linalg.svd(along.reshape(1, 3))[2][1:]
            rows += list(across / line["sd_mm"])
            right += list(across @ numpy.array(line["point_mm"]) / line["sd_mm"])
        com = numpy.linalg.lstsq(numpy.array(rows), numpy.array(right), rcond=None)[0]
        covariance = numpy.linalg.inv(numpy.array(rows).T @ numpy.array(rows))
        got = measure(rig, readings)
        near(got["value"], com, 1e-10, 1e-9)
        near(got["sd"], numpy.sqrt(numpy.diag(covariance)), 1e-9)
        for line in readings["hanging"]["lines"]:
            along = numpy.array(line["direction"]) / numpy.linalg.norm(line["direction"])
            off = numpy.array(line["point_mm"]) - com
            widths.append(numpy.linalg.norm(off - along * (along @ off)))
        near(got["spread_mm"], max(widths), 1e-9, 1e-9)


@case
def scales_and_swings_follow_the_formulas_on_a_bare_bow():
    rig = bare(demo())
    f1, f2, d, sd_n, sd_mm = 12.5, 6.5, 333.0, 0.07, 1.5
    got = measure(rig, {"scales": {"f1_n": f1, "f2_n": f2, "d_mm": d, "sd_n": sd_n,
                                   "sd_mm": sd_mm}})
    f = f1 + f2
    near(got["value"], f2 * d / f, 1e-13)
    near(got["sd"], numpy.sqrt((f2 * d / f**2 * sd_n)**2 + (f1 * d / f**2 * sd_n)**2
                               + (f2 / f * sd_mm)**2), 1e-12)
    near(got["bow"]["sd"]["mass_g"], numpy.sqrt(2) * sd_n / G * 1000, 1e-12)
    m, l, t = 1.95, 0.4, 31.0 / 20
    got = measure(rig, {"swing": {"axis": "y", "mass_g": 1950, "distance_mm": 400, "swings": 20,
                                  "seconds": 31.0, "sd_mass_g": 4, "sd_distance_mm": 3,
                                  "sd_seconds": 0.25}})
    pivot = m * G * l * t**2 / (4 * numpy.pi**2)
    centre = pivot - m * l**2
    near(got["value"], centre, 1e-12)
    near(got["sd"], numpy.sqrt((centre / m * 0.004)**2 + ((pivot / l - 2 * m * l) * 0.003)**2
                               + (2 * pivot / t * 0.25 / 20)**2), 1e-12)
    near(got["bow"]["gyration_mm"][1], 1000 * numpy.sqrt(centre / m), 1e-12)


@case
def rod_of_the_text_book_swings_with_two_seconds():
    # OpenStax University Physics 1, section 15.4: a rod hung by its end with a period of 2 s is
    # 1.49 m long; its inertia about its centre is m L²/12 (section 10.5). Three figures: 1.4 %.
    rig = bare(demo())
    rig["bow"]["mass_g"] = 1000
    got = measure(rig, {"swing": {"axis": "y", "mass_g": 1000, "distance_mm": 745, "swings": 1,
                                  "seconds": 2}})
    near(got["value"], 1.49**2 / 12, 0.014)


@case
def deviations_are_those_of_simulated_readings():
    # 20,000 readings, scattered normally: the deviation of their results is known to 0.5 % (1
    # standard deviation), and first order is off by less than 1 % at these widths.
    n, rig = 20000, bare(demo())
    f1, f2, d = 14 + 0.05 * rng.normal(size=n), 5 + 0.05 * rng.normal(size=n), 300 + rng.normal(size=n)
    got = measure(rig, {"scales": {"f1_n": 14, "f2_n": 5, "d_mm": 300}})
    near(got["sd"], numpy.std(f2 * d / (f1 + f2)), 0.03)
    m, l = 1.95 + 0.003 * rng.normal(size=n), 0.4 + 0.002 * rng.normal(size=n)
    t = (31 + 0.2 * rng.normal(size=n)) / 20
    got = measure(rig, {"swing": {"axis": "x", "mass_g": 1950, "distance_mm": 400, "swings": 20,
                                  "seconds": 31}})
    near(got["sd"], numpy.std(m * G * l * t**2 / (4 * numpy.pi**2) - m * l**2), 0.03)
    wide, h = 0.3 + 0.001 * rng.normal(size=n), 0.8 + 0.001 * rng.normal(size=n)
    t = (25 + 0.2 * rng.normal(size=n)) / 20
    got = measure(rig, {"two-string": {"axis": "x", "mass_g": 1950, "spacing_mm": 300,
                                       "length_mm": 800, "swings": 20, "seconds": 25}})
    near(got["sd"], numpy.std(m * G * wide**2 * t**2 / (16 * numpy.pi**2 * h)), 0.03)


@case
def deviation_with_parts_on_is_that_of_simulated_rigs():
    # Scales on the small rig, its bar's and discs' masses unsure by 3 % each (catalogue) and the
    # bar's set angles by 1°: 300 rigs drawn, each taken out by the program itself; 4.1 % is one
    # standard deviation of a deviation of 300, three are allowed.
    rig = small()
    readings = scales_of(rig, 500)
    values = []
    for _ in range(300):
        other = copy.deepcopy(rig)
        other["parts"][0]["mass_g"] *= 1 + 0.03 * rng.normal()
        other["parts"][1]["each_g"] *= 1 + 0.03 * rng.normal()
        for key in ("swing_deg", "lift_deg"):
            other["parts"][0][key] = float(rng.normal())
        noisy = copy.deepcopy(readings)
        for key, sd in (("f1_n", 0.05), ("f2_n", 0.05), ("d_mm", 1.0)):
            noisy["scales"][key] += sd * rng.normal()
        values.append(measure(other, noisy)["value"])
    near(measure(rig, readings)["sd"], numpy.std(values), 0.13)


@case
def readings_that_cannot_be_are_refused_with_their_reason():
    rig = demo()
    line = {"point_mm": [0, 0, 0], "direction": [0, 0, 1]}
    apart = {"point_mm": [0, 70, 0], "direction": [1, 0, 0]}
    alike = {"point_mm": [0, 0, 0], "direction": [0.1, 0, 1]}
    swing = {"axis": "y", "mass_g": 3000, "distance_mm": 450, "swings": 20}
    for readings, word in (
            ({"scales": {"f1_n": 3, "f2_n": -3, "d_mm": 100}}, "no weight"),
            ({"scales": {"f1_n": 3, "f2_n": 1, "d_mm": 100}}, "parts alone weigh"),
            ({"scales": {"f1_n": 30, "f2_n": 1, "d_mm": 0}}, "one place"),
            ({"hanging": {"lines": [line, apart]}}, "30 mm"),
            ({"hanging": {"lines": [line, alike]}}, "10°"),
            ({"hanging": {"lines": [line]}}, "10°"),
            ({"swing": {**swing, "seconds": 20}}, "negative"),
            ({"swing": {**swing, "seconds": 27.5}}, "parts alone have as much"),
            ({"swing": {**swing, "seconds": 0}}, "above 0"),
            ({"swing": {**swing, "seconds": 1e200}}, "beyond"),
            ({"scales": {"f1_n": 9, "f2_n": 300, "d_mm": 100}}, "20000")):
        path = write(rig)
        before = read(path)
        got = ask("measure", path, write(readings, "readings.json"), "--write")
        assert word in got.get("refused", ""), (readings, got)
        assert got["value"] is None and got["sd"] is None, got
        assert got["bow"]["com_mm"] == rig["bow"]["com_mm"], got
        assert read(path) == before


@case
def written_bow_is_the_promised_one_and_nothing_else_changes():
    rig = demo()
    readings = write(scales_of(rig, 420), "readings.json")
    rig["bow"]["source"] = "guessed"
    rig["bow"]["colour"] = "red"
    path = write(rig, "own.rig.json")
    os.chmod(path, 0o640)
    dry = read(path)
    promised = ask("measure", path, readings)
    assert read(path) == dry
    assert ask("measure", path, readings, "--write") == promised
    assert stat.S_IMODE(os.stat(path).st_mode) == 0o640
    after = json.loads(read(path))
    for key in ("com_mm", "gyration_mm", "mass_g", "source", "sd"):
        assert after["bow"][key] == promised["bow"][key], key
    # What scales do not say is as unsure as a guess was.
    assert after["bow"]["sd"]["com_mm"][1:] == [4, 12], after["bow"]["sd"]
    near(after["bow"]["sd"]["gyration_mm"], 0.12 * numpy.array(rig["bow"]["gyration_mm"]), 1e-12)
    for key in ("com_mm", "mass_g", "source", "sd"):
        rig["bow"].pop(key, None), after["bow"].pop(key, None)
    assert after == rig


@case
def wrong_files_are_errors():
    rig, readings = write(demo()), write(scales_of(demo(), 420), "readings.json")
    for arguments, code, word in (
            ((rig,), 2, b"READINGS"), ((rig, path_of("none")), 1, b"none"),
            ((readings, readings), 1, b"format"), ((rig, rig), 1, b"it holds none"),
            ((rig, write({"scales": {"f1_n": 1}}, "bad.json")), 1, b"bad.json: scales.f2_n: is missing"),
            ((rig, readings, "--unit"), 2, b"--unit")):
        done = run(CALC, "measure", *arguments)
        assert done.returncode == code and word in done.stderr, (arguments, done)


@case
def table_says_what_was_taken_out():
    rig = demo()
    done = run(CALC, "measure", write(rig), write(scales_of(rig, 420), "readings.json"))
    text = done.stdout.decode()
    assert done.returncode == 0 and "Taken out by computation" in text, text
    for part in rig["parts"]:
        assert part.get("off") or part.get("name", part["id"]) in text, part
    assert "undrawn" in text
    assert "nothing was taken out" in run(
        CALC, "measure", write(bare(rig)), path_of("readings.json")).stdout.decode()


main()
