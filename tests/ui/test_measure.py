#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Measuring the bow in the real window: what is typed is what plumbhold-calc makes of the same
readings of the same file, which is a different program."""

import json
import math
import re
import subprocess
import time

from driver import check, number_in, read_rig, run, same, until

G = 9.80665


class Page:
    """The measuring page, in its own window."""

    def __init__(self, program):
        self.program, self.main = program, program.id
        program.act("measure")
        self.node()
        program.id = until(lambda: program._windows("--all", "--name", "Measure the bow"),
                           "the window of the page")[0]

    def node(self):
        return self.program.dialog("Measure the bow")

    def find(self, role, name):
        return until(lambda: self.node().find(role, name), f"{role} {name}")

    def show(self, method):
        self.find("push button", method).do()

    def type(self, name, text):
        self.program.enter(self.find("text", name), text, "Tab")

    def says(self, pattern):
        return until(lambda: self.node().find("label", re.compile(pattern)), pattern).name

    def use(self):
        button = self.find("push button", "Use this")
        until(lambda: button.has("sensitive"), "the reading can be used")
        button.do()
        self.says("^Used: ")

    def close(self):
        self.program.keys("Escape")
        until(lambda: not self.program._windows("--all", "--name", "Measure the bow"), "the page is closed")
        self.program.id = self.main


def calc(bench, path, readings):
    file = bench.write("readings.json", json.dumps(readings))
    done = subprocess.run([bench.calc, "measure", path, file, "--json"], capture_output=True,
                          text=True, check=False)
    same(done.returncode, 0, done.stderr)
    return json.loads(done.stdout)


def scales_in_the_window_are_those_of_the_command_line(bench):
    path = bench.copy_of_demo()
    program = bench.start(path)
    page = Page(program)
    page.show("Two scales")
    page.says("^Type the readings")
    page.type("Scale 1, under the grip", "2.2 kg")
    page.type("Scale 2, under the front bar", "800 g")
    page.type("d: scale 2 ahead of the grip", "30 cm")
    sd_n = 0.05
    want = calc(bench, path, {"scales": {"f1_n": 2.2 * G, "f2_n": 0.8 * G, "d_mm": 300,
                                         "sd_n": sd_n}})
    text = page.says("The bow alone: ")
    alone = text.split("The bow alone: ")[1]
    check(abs(number_in(alone) - want["value"]) <= 0.051, f"{alone!r}, but {want['value']}")
    check("6 fitted parts" in text, text)
    page.use()
    page.close()
    program.act("save")
    until(lambda: not program.enabled("save"), "saved")
    rig = read_rig(path)
    for key in ("com_mm", "mass_g"):
        got, expected = rig["bow"][key], want["bow"][key]
        pairs = zip(got, expected) if isinstance(got, list) else [(got, expected)]
        for a, b in pairs:
            check(abs(a - b) < 1e-6, f"{key}: {got}, but {expected}")
    same(rig["bow"]["source"], "measured", "source")
    check("scales" in rig["bow"]["readings"][0], f"{rig['bow']['readings']}")
    program.act("undo")
    until(lambda: program.enabled("save"), "undone")
    program.act("save")
    until(lambda: not program.enabled("save"), "saved again")
    same(read_rig(path)["bow"], bench.demo()["bow"], "the bow after one undo")


def readings_are_there_again_to_be_typed_anew(bench):
    path = bench.copy_of_demo()
    program = bench.start(path)
    page = Page(program)
    page.show("Two scales")
    page.type("Scale 1, under the grip", "2.2 kg")
    page.type("Scale 2, under the front bar", "800 g")
    page.type("d: scale 2 ahead of the grip", "30 cm")
    page.use()
    page.close()
    page = Page(program)
    page.show("Two scales")
    same(number_in(page.find("text", "Scale 1, under the grip").text), 2.2, "scale 1")
    page.says("The bow alone: ")


def a_reading_that_cannot_be_says_why_and_cannot_be_used(bench):
    program = bench.start(bench.copy_of_demo())
    page = Page(program)
    page.says("^The guess that matters most now: the bow’s own side offset")
    page.show("Two scales")
    page.type("Scale 1, under the grip", "500 g")
    page.type("Scale 2, under the front bar", "200 g")
    page.type("d: scale 2 ahead of the grip", "30 cm")
    page.says("^This reading cannot be: the fitted parts alone weigh")
    check(not page.find("push button", "Use this").has("sensitive"), "it can be used")
    page.show("Hanging")
    points = [(60, 4, 300), (60, 4, 20), (300, 90, 0), (10, 90, 0)]
    names = [(line, point) for line in (1, 2) for point in (1, 2)]
    for (line, point), numbers in zip(names, points):
        for axis, number in zip(("ahead", "left", "up"), numbers):
            page.type(f"Line {line}, point {point}, {axis}", str(number))
    page.says("^The plumb lines miss .*at most 43 mm")
    page.says("cannot be: the plumb lines miss each other by more than 30 mm")


def angles_to(point, centre):
    """Of a line that hangs from a point through another, to a tenth of a degree."""
    x, y, z = (c - p for c, p in zip(centre, point))
    return (round(math.degrees(math.atan2(x, -z)), 1),
            round(math.degrees(math.atan2(y, math.hypot(x, z))), 1))


def direction_of(side, across):
    a, b = math.radians(side), math.radians(across)
    return [math.sin(a) * math.cos(b), math.sin(b), -math.cos(a) * math.cos(b)]


def type_line(page, line, point, angles):
    for axis, number in zip(("ahead", "left", "up"), point):
        page.type(f"Line {line}, point 1, {axis}", str(number))
    combo = page.find("combo box", f"Line {line}, typed as")
    if not list(page.node().all("text", f"Line {line}, angle from the side")):
        page.program.click(combo)
        time.sleep(0.4)
        page.program.keys("Down", "Return")
    for name, angle in zip(("from the side", "out of the plane"), angles):
        page.type(f"Line {line}, angle {name}", str(angle))


def plumb_lines_by_angles_are_used_and_typed_anew(bench):
    path = bench.copy_of_demo()
    centre = bench.report(path)["com_mm"]
    points = [(10, 0, 400), (500, 0, -60)]
    angles = [angles_to(p, centre) for p in points]
    program = bench.start(path)
    page = Page(program)
    page.show("Hanging")
    for line, (point, pair) in enumerate(zip(points, angles), 1):
        type_line(page, line, point, pair)

    def calc_says(pairs):
        lines = [{"point_mm": list(p), "direction": direction_of(*a)}
                 for p, a in zip(points, pairs)]
        return calc(bench, path, {"hanging": {"lines": lines}})

    want = calc_says(angles)
    alone = page.says("The bow alone: ").split("The bow alone: ")[1]
    check(abs(number_in(alone) - want["value"][0]) <= 0.051, f"{alone!r}, but {want['value']}")
    page.use()
    page.close()
    # The same page again: what was typed stands there, one angle is put right, and it replaces.
    page = Page(program)
    page.show("Hanging")
    same(number_in(page.find("text", "Line 2, angle from the side").text), angles[1][0], "kept")
    angles[1] = (angles[1][0], round(angles[1][1] + 0.4, 1))
    page.type("Line 2, angle out of the plane", str(angles[1][1]))
    want = calc_says(angles)
    page.use()
    page.close()
    program.act("save")
    until(lambda: not program.enabled("save"), "saved")
    bow = read_rig(path)["bow"]
    same(len(bow["readings"]), 1, "readings kept")
    for got, expected in zip(bow["com_mm"], want["bow"]["com_mm"]):
        check(abs(got - expected) < 1e-6, f"{bow['com_mm']}, but {want['bow']['com_mm']}")
    program.act("undo")
    program.act("undo")
    check(not program.enabled("undo"), "two uses were more than two steps")


def the_bubble_of_the_whole_rig_leads_to_a_check(bench):
    program = bench.start(bench.copy_of_demo())
    page = Page(program)
    page.show("Bubble")
    page.says("^It makes no number of the bow measured.*own side offset and the hand’s own twist")
    page.says("^From 1 check the rig about to be tried is known to ±")
    check(not list(page.node().all("push button", "Use this")), "there is something to use")
    page.find("push button", "Add a check").do()
    until(lambda: not program._windows("--all", "--name", "Measure the bow"), "the page is closed")
    program.find("push button", "Cancel")  # of the guide
    check(not program.enabled("undo"), "a look left an undo step")


def the_bows_form_leads_to_the_page(bench):
    program = bench.start("--demo")
    row = program.find("list item", re.compile("^Bow(,|$)"))
    program.click(row, 0.3)
    program.find("push button", "Measure the bow…").do()
    check(program.dialog("Measure the bow"), "no page")


def guessed_bow(bench):
    rig = bench.demo()
    rig["bow"]["source"] = rig["parts"][0]["source"] = "guessed"
    return bench.write("quay.rig.json", json.dumps(rig))


def what_is_guessed_says_what_would_settle_it(bench):
    program = bench.start(guessed_bow(bench))
    program.click(program.find("push button", "guessed"))  # the first is the bubble's
    program.find("label", re.compile("kitchen scale and type what it reads.*plumb lines.*"
                                     "Parts with a guessed mass or place: Sight", re.DOTALL))
    program.find("push button", "Measure the bow…").do()
    check(program.dialog("Measure the bow"), "no page")


def the_hand_page_names_the_guess_below_the_next_draw(bench):
    program = bench.start(guessed_bow(bench))
    program.act("add-check")
    program.find("push button", "Cancel").do()
    line = program.find("label", re.compile("^The guess that matters most now: the bow’s own side"))
    draw = program.find("push button", "Add a check")
    check(line.box()[1] > draw.box()[1] + draw.box()[3], "the guess stands above the next draw")
    program.find("push button", "Measure the bow…").do()
    check(program.dialog("Measure the bow"), "no page")


run([what_is_guessed_says_what_would_settle_it,
     the_hand_page_names_the_guess_below_the_next_draw,
     scales_in_the_window_are_those_of_the_command_line,
     readings_are_there_again_to_be_typed_anew,
     a_reading_that_cannot_be_says_why_and_cannot_be_used,
     plumb_lines_by_angles_are_used_and_typed_anew,
     the_bubble_of_the_whole_rig_leads_to_a_check,
     the_bows_form_leads_to_the_page])
