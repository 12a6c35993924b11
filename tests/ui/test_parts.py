#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Putting a rig together in the real window: what Add finds and where it puts it, buttons that stay
under the pointer, and the mark of a part that is kept as it is. What was built is held against
plumbhold-calc's report of the saved file."""

import json
import os
import re

from driver import check, part_of, read_rig, run, same, until
from test_window import select, undo_shown

COUNT = ("text", re.compile("^Weights at its end"))
MORE = ("push button", "One weight more")


def new_recurve(bench):
    """What New makes of a recurve: sight, rest, and a front bar on the front mount."""
    with open(os.path.join(bench.data, "recurve.rig.json"), encoding="utf-8") as f:
        rig = json.load(f)
    bar = dict(part_of(rig, "long-rod"), id="front-bar", name="Front bar", on="bow:front")
    rig["parts"] = [p for p in rig["parts"] if p["on"] == "bow"] + [bar]
    return bench.write("recurve.rig.json", json.dumps(rig))


def add(program, search):
    """By keys alone: Enter adds what the search chose."""
    program.click(program.find(None, "Add a part"))
    until(lambda: program.find("entry", "Search parts").has("focused"), "the search has the focus")
    program.type(search)
    program.keys("Return")


def a_recurve_gets_side_rods_behind_its_front_bar(bench):
    path = new_recurve(bench)
    program = bench.start(path)
    add(program, "v-bar")
    program.find("list item", re.compile("^V bracket"))
    check("before front bar" in undo_shown(program), undo_shown(program))
    rod = re.compile("^(Left|Right) side rod")
    for number in (1, 2):
        add(program, "side rod 10")
        until(lambda n=number: len(list(program.frame.all("list item", rod))) == n,
              f"side rod {number}")
    program.keys("ctrl+s")
    until(lambda: len(read_rig(path)["parts"]) == 6, "saved")
    rig, report = read_rig(path), bench.report(path)
    check(part_of(rig, "front-bar")["on"].endswith(":front"), part_of(rig, "front-bar")["on"])
    bracket = next(p for p in rig["parts"] if p["kind"] == "bracket")
    same(bracket["on"], "bow:front", "the bracket")
    rods = [p["id"] for p in rig["parts"] if rod.match(p["name"])]
    same(sorted(p["name"] for p in rig["parts"] if rod.match(p["name"])),
         ["Left side rod", "Right side rod"], "each is named by its side")
    places = [next(p for p in report["parts"] if p["id"] == rod)["com_mm"] for rod in rods]
    left, right = sorted(places, key=lambda com: -com[1])
    check(left[0] < 0 and right[0] < 0, f"not behind the grip: {places}")
    check(left[1] > 50 and right[1] < -50, f"not out to either side: {places}")
    check(report["clearance"]["mm"] >= 15, report["clearance"])
    for _ in range(3):
        program.act("undo")
    until(lambda: not list(program.frame.all("list item", re.compile("^V bracket"))), "undone")


def a_bar_for_the_back_says_what_is_missing(bench):
    program = bench.start(new_recurve(bench))
    add(program, "back bar 10")
    program.find("label", re.compile("No free place leads back"))
    program.keys("Escape")
    check(not program.enabled("undo"), "something was added")


def the_buttons_stay_under_the_pointer(bench):
    program = bench.start(bench.copy_of_demo())
    select(program, "Back bar")
    before = part_of(bench.demo(), "back-stack")["count"]
    place = program.find(*MORE).box()
    program.move(program.find(*MORE))
    for clicks in range(1, 9):
        program.xdotool("click", 1)
        until(lambda n=clicks: program.find(*COUNT).text.startswith(f"{before + n:g} "),
              f"click {clicks} hit")
        same(program.find(*MORE).box(), place, f"the button after {clicks} clicks")


def a_part_kept_as_it_is_is_marked_in_its_row(bench):
    program = bench.start(bench.copy_of_demo())
    select(program, "Back bar")
    check("kept" not in program.find("list item", re.compile("^Back bar")).name, "marked at first")
    program.find("push button", "What may change").do("activate")
    lock = program.find("check box", "Keep as it is")
    lock.do("toggle")
    until(lambda: "kept as it is" in program.find("list item", re.compile("^Back bar")).name,
          "the row says so")
    row = program.find("list item", re.compile("^Back bar"))
    check([n for n in row.walk() if n.name == "Kept as it is" and n.has("visible")], "no lock")
    program.act("undo")
    until(lambda: "kept" not in program.find("list item", re.compile("^Back bar")).name, "undone")


if __name__ == "__main__":
    run([a_recurve_gets_side_rods_behind_its_front_bar, a_bar_for_the_back_says_what_is_missing,
         the_buttons_stay_under_the_pointer, a_part_kept_as_it_is_is_marked_in_its_row])
