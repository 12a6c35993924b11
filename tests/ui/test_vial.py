#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""The sight's vial in the real window: what a mark is worth, worked out from a known tilt; readings
shown on a drawn vial by pointer and by keys; and a bubble at the vial's end, which is no reading but
a move. Where the pointer is put is worked out here from the vial's own measures (lines a mark
apart, 3.7 marks from the middle to either end), and what is saved is read from the file."""

import json
import math
import re
import time

from driver import check, number_in, part_of, read_rig, run, same, until

REACH = 3.7  # marks from the middle of the drawn vial to its end
SCALE = re.compile("^(What is a mark of your vial worth|A mark of your vial is worth)")
STANDS = re.compile("^Where the bubble stands:")
KEEP = re.compile("^Keep what")


def start(bench, deg_per_mark=None):
    rig = bench.demo()
    rig["archer"]["hand"]["bubble_tests"] = []
    if deg_per_mark:
        part_of(rig, "sight")["vial_deg_per_mark"] = deg_per_mark
    path = bench.write("quay.rig.json", json.dumps(rig))
    program = bench.start(path)
    time.sleep(0.5)
    program.act("add-check")
    program.find("push button", re.compile("^Understood")).do()
    program.find("text", "Bubble, in degrees")
    time.sleep(0.5)  # its layout
    return program, path


def press(program, name):
    program.find("push button", re.compile(f"^{name}")).do()


def saved(program, path, wanted):
    until(lambda: program.enabled("save"), "there is something to save")
    program.act("save")
    until(lambda: wanted(read_rig(path)), "the file is saved")
    return read_rig(path)


def pick(program, name, marks):
    """Clicks where the bubble stands so many marks to the left of the middle."""
    program.click(program.find("slider", re.compile(f"^{name}(:|$)")), 0.5 - marks / REACH / 2)


def open_scale(program):
    """The words of an expander open it, as its arrow does."""
    program.click(program.find(None, SCALE), 0.1)
    time.sleep(0.6)


def a_mark_is_worth_what_a_known_tilt_says(bench):
    program, path = start(bench)
    check(not list(program.frame.all("slider", re.compile("^Where the bubble stands:"))),
          "marks are asked for before it is known what they are worth")
    program.find("label", re.compile("^The marks of your vial are not calibrated"))
    open_scale(program)
    program.find("push button", KEEP).do()
    program.find("label", re.compile("^Type the tilt in degrees"))
    program.enter(program.find("text", "Tilt on the other level"), "0", "Return")
    until(lambda: program.find("text", "Tilt on the other level").is_wrong(), "0° is no tilt")
    program.enter(program.find("text", "Tilt on the other level"), "2.4", "Tab")
    pick(program, "Where the bubble stands when tilted", -2.0)
    until(lambda: number_in(program.find("text", "Marks the bubble moved").text) == 2.0,
          "the marks are those of the pick")
    # First order, independent: a level tells 0.2°, the eye a tenth of a mark.
    sd = 1.2 * math.hypot(0.2 / 2.4, 0.1 / 2.0)
    program.find("label", f"A mark is worth 1.20° ± {sd:.2f}°")
    program.find("push button", KEEP).do()
    program.find(None, re.compile("^A mark of your vial is worth 1.20° ± 0.12°"))
    rig = saved(program, path, lambda r: "vial_deg_per_mark" in part_of(r, "sight"))
    sight = part_of(rig, "sight")
    check(abs(sight["vial_deg_per_mark"] - 1.2) < 1e-12, f"{sight}")
    check(abs(sight["sd"]["vial_deg_per_mark"] - sd) < 1e-12, f"{sight['sd']}, but {sd}")
    program.act("undo")
    saved(program, path, lambda r: "vial_deg_per_mark" not in part_of(r, "sight"))
    check(not program.enabled("undo"), "keeping it took more than one step")


def draws_are_shown_on_the_vial(bench):
    program, path = start(bench, 0.6)
    pick(program, "Where the bubble stands", -2.0)  # two marks to the right
    until(lambda: program.find("text", "Bubble, in degrees").text.startswith("1.2"), "1.2° shown")
    check(program.find("push button", "right").has("pressed")
          or program.find("push button", "right").has("checked"), "the side is chosen with it")
    press(program, "Next Draw")
    program.find("label", "Draw 2 of 3")
    # The focus is in the vial: a tenth of a mark a key, five with Shift, and Return takes it.
    until(lambda: program.find("slider", STANDS).has("focused"), "focus")
    program.keys("Home", "shift+Right", "shift+Right", "shift+Right", "Right", "Return")
    program.find("label", "Draw 3 of 3")
    until(lambda: program.find("slider", STANDS).has("focused"), "focus")
    program.keys("Home", "shift+Left", "Return")
    program.find("label", re.compile("^Bubble 0.6° right"))
    press(program, "Record the Check")
    rig = saved(program, path, lambda r: r["archer"]["hand"]["bubble_tests"])
    test, = rig["archer"]["hand"]["bubble_tests"]
    # 0.6° a mark, to the tenth that is shown; a bubble to the right is a top limb to the left.
    same(test["draws_deg"], [-1.2, -1.0, 0.3], "the draws")
    check(abs(test["bubble_deg"] - (-1.2 - 1.0 + 0.3) / 3) < 1e-12, f"{test}")


def typed_degrees_move_the_drawn_bubble(bench):
    program, _ = start(bench, 0.5)
    program.find("slider", "Where the bubble stands: not read yet")
    program.enter(program.find("text", "Bubble, in degrees"), "1.0", "Tab")
    program.find("push button", "left").do()
    program.find("slider", "Where the bubble stands: 1.0° left")
    program.find("push button", "right").do()
    program.find("slider", "Where the bubble stands: 1.0° right")
    check(not program.enabled("undo"), "showing it changed the rig")


def moves_go_on_until_the_bubble_floats(bench):
    """Each coarse move takes it nearer the middle; nothing is recorded on the way."""
    program, path = start(bench, 0.6)
    tilts = [bench.report(path)["roll"]["bubble_deg"]]
    for _ in range(2):
        press(program, "Bubble Is at the End")
        check(not list(program.frame.all("push button", re.compile("^Record"))), "it is recorded")
        program.find("push button", "At the right end").do()
        program.find("label", re.compile("^(Turn|Take) the .*[.]$"))
        before = json.dumps(read_rig(path)["parts"])
        press(program, "It Is Set So: Draw Again")
        program.find("label", "Draw 1 of 3")
        saved(program, path, lambda r, b=before: json.dumps(r["parts"]) != b)
        tilts.append(bench.report(path)["roll"]["bubble_deg"])
    # Right is negative: each move pushes it to the left.
    check(tilts[0] < tilts[1] < tilts[2], f"{tilts}")
    same(read_rig(path)["archer"]["hand"]["bubble_tests"], [], "checks recorded on the way")
    pick(program, "Where the bubble stands", -1.0)
    press(program, "Enough Draws")
    press(program, "Record the Check")
    rig = saved(program, path, lambda r: r["archer"]["hand"]["bubble_tests"])
    test, = rig["archer"]["hand"]["bubble_tests"]
    same(test["bubble_deg"], -0.6, "the reading that floated")
    check(abs(test["mass_g"] - bench.report(path)["mass_g"]) < 1e-9, "of another rig")


def where_nothing_may_move_that_is_said(bench):
    rig = bench.demo()
    rig["archer"]["hand"]["bubble_tests"] = []
    for part in rig["parts"]:
        part["locked"] = True
    path = bench.write("quay.rig.json", json.dumps(rig))
    program = bench.start(path)
    time.sleep(0.5)
    program.act("add-check")
    press(program, "Understood")
    press(program, "Bubble Is at the End")
    program.find("push button", "At the left end").do()
    program.find("label", re.compile("^Nothing that may change would bring it back: unlock"))
    check(not program.find("push button", re.compile("^It Is Set So")).has("sensitive"),
          "a move that is none can be taken")


run([a_mark_is_worth_what_a_known_tilt_says,
     draws_are_shown_on_the_vial,
     typed_degrees_move_the_drawn_bubble,
     moves_go_on_until_the_bubble_floats,
     where_nothing_may_move_that_is_said])
