#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Bubble, beam, Why and readings in the real window, as a screen reader hears them. Moments are held
against plumbhold-calc's report of the same file, which is a different program."""

import json
import os
import re
import time

from driver import check, number_in, run, same, until


def selected_row(program, pattern):
    row = program.find("list item", re.compile(pattern))
    until(lambda: program.find("list item", re.compile(pattern)).has("selected"),
          f"{pattern} is selected")
    return row


def open_why(program):
    program.find("push button", "Why").do()
    return program.find("list", "Moments part by part")


def a_block_of_the_beam_selects_its_part(bench):
    program = bench.start("--demo")
    program.find("push button", re.compile("^Back stack, .* to the left$")).do()
    selected_row(program, "^Back stack(,|$)")
    program.find("push button", re.compile("^Sight, .* to the right$")).do()
    selected_row(program, "^Sight(,|$)")


def a_block_too_narrow_for_its_name_is_named_below(bench):
    program = bench.start(os.path.join(bench.data, "v-bars.rig.json"))
    narrow = program.find("push button", re.compile("^Left back bar, .* to the left$"))
    moment = re.search(r"\d[.\d]*", narrow.name).group()
    narrow.do()
    below = program.find("label", f"Left back bar {moment}")
    check(below.box()[1] >= narrow.box()[1] + narrow.box()[3], "not below the beam")
    program.find("push button", re.compile("^Left back weights, .* to the left$")).do()
    program.gone("label", re.compile("^Left back bar "))


def why_and_the_parts_list_select_the_same(bench):
    program = bench.start("--demo")
    rows = open_why(program)
    rows.a.get_selection_iface().select_child(1)
    selected_row(program, "^Sight: leans it")
    selected_row(program, "^Sight(,|$)")
    row = program.find("list item", re.compile("^Back bar(,|$)"))
    program.click(row, 0.3)
    selected_row(program, "^Back bar: leans it")


def moments_of_why_are_those_of_the_report(bench):
    path = bench.copy_of_demo()
    program = bench.start(path)
    open_why(program)
    report = bench.report(path)
    names = {"bow": "Bow", "sight": "Sight", "front-stack": "Front stack", "back-bar": "Back bar",
             "back-stack": "Back stack"}
    for part in report["parts"]:
        if part["id"] not in names:
            continue
        said = program.find("list item", re.compile(f"^{names[part['id']]}: leans it")).name
        roll, pitch = said.split(": leans it ")[1].split(", pulls the nose ")
        for text, nm, plus in ((roll, part["roll_moment_nm"], "right"),
                               (pitch, part["pitch_moment_nm"], "down")):
            check(abs(number_in(text) - abs(nm)) <= 0.005 + 1e-9, f"{said!r} but {nm}")
            if abs(nm) >= 0.005:
                check((plus in text) == (nm > 0), f"{said!r} but {nm}: the other side")
    total = program.find("panel", re.compile("^Together: ")).name
    check(abs(number_in(total) - abs(report["roll"]["moment_nm"])) <= 0.005 + 1e-9,
          f"{total!r} but {report['roll']['moment_nm']}")


def an_unknown_hand_has_no_degrees_in_the_headline(bench):
    rig = bench.demo()
    rig["archer"].pop("hand", None)
    program = bench.start(bench.write("unknown.rig.json", json.dumps(rig)))
    said = program.find("panel", re.compile("^Bubble: ")).name.split(";")[0]
    same(said, "Bubble: Where it settles depends on your hand: not known yet. The weight alone "
               "leans it left.", "the headline")
    hand = program.find("push button", re.compile("^hand ")).name
    check("not known yet" in hand, hand)


def type_speed(program, text):
    """Into the field that has the focus while its popover is up."""
    until(lambda: program.frame.find("text", "Arrow speed").has("focused"), "the speed has the focus")
    program.keys("ctrl+a")
    program.type(text)
    program.keys("Return")


def the_cost_asks_for_a_speed_and_says_the_miss(bench):
    program = bench.start("--demo")
    check("needs your arrow’s speed" in program.find("panel", re.compile("^What the lean costs")).name,
          "no speed is stated and none is asked for")
    program.find("push button", "Set arrow speed").do()
    type_speed(program, "279 fps")  # · 0.3048 m: 85.04 m/s
    # ½ · 9.80665 · (50/85)² = 1.697 m; the demo leans 2.1° left: 6.2 cm.
    said = until(lambda: program.frame.find("panel", re.compile("^What the lean costs: .* cm ")),
                 "the miss").name
    check(abs(number_in(said) - 6.2) <= 0.2 and "left" in said, said)
    program.find("push button", re.compile("^279 ft/s, 50 m, 80 cm"))
    type_speed(program, "600 fps")
    program.find("label", re.compile("from 0 to 492 ft/s"))
    type_speed(program, "80 m/s")
    program.find("push button", re.compile("^262 ft/s, 50 m, 80 cm"))
    program.act_text("units", "metric")
    program.find("push button", re.compile("^80 m/s, 50 m, 80 cm"))
    program.keys("Escape")
    time.sleep(0.3)


def moments_are_shown_on_demand(bench):
    program = bench.start("--demo")
    check(not list(program.frame.all("label", re.compile("nose down$"))), "shown unasked")
    program.find("push button", "N·m").do()
    program.find("label", re.compile(r"^\d.*N·m, nose down$"))
    program.find("label", re.compile("^Inertia about the grip"))


if __name__ == "__main__":
    run([a_block_of_the_beam_selects_its_part, a_block_too_narrow_for_its_name_is_named_below,
         why_and_the_parts_list_select_the_same, moments_of_why_are_those_of_the_report,
         an_unknown_hand_has_no_degrees_in_the_headline, the_cost_asks_for_a_speed_and_says_the_miss, moments_are_shown_on_demand])
