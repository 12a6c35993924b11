#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Checks, limits and locks that are wrong, alike, wild or too many, in the real window: a sentence
each, nothing lost, and no number made up. The same for the command line: tests/headless."""

import json
import re
import time

from driver import check, part_of, read_rig, run, same, until


def start(bench, tests, **more):
    rig = bench.demo()
    rig["archer"]["hand"]["bubble_tests"] = tests
    rig.update(more)
    path = bench.write("quay.rig.json", json.dumps(rig))
    program = bench.start(path)
    time.sleep(0.5)
    return program, path


def one(bench, **changes):
    return dict(bench.demo()["archer"]["hand"]["bubble_tests"][0], **changes)


def to_the_page(program):
    program.act("add-check")
    program.find("push button", "Cancel").do()
    program.find("push button", "Add a check")


def a_file_that_cannot_be_says_where(bench):
    def first(rig):
        return rig["archer"]["hand"]["bubble_tests"][0]

    wrong = {
        "bubble_tests[0].sd_deg": lambda r: first(r).update(sd_deg=0),
        "bubble_tests[0].bubble_deg": lambda r: first(r).update(bubble_deg=90),
        "bubble_tests[0].mass_g": lambda r: first(r).update(mass_g=0),
        "limits.swing_deg": lambda r: part_of(r, "back-bar").update(limits={"swing_deg": [30, 10]}),
    }
    for key, break_it in wrong.items():
        rig = bench.demo()
        break_it(rig)
        text = json.dumps(rig)
        path = bench.write("bad.rig.json", text)
        program = bench.start(path)
        until(lambda k=key: [n for n in program.frame.all("label") if k in n.name],
              f"{key} is named")
        program.close()
        same(program.wait_end(), 0, "the exit code")
        with open(path, encoding="utf-8") as f:
            same(f.read(), text, "the file")


def two_checks_alike_are_two_checks(bench):
    program, path = start(bench, [one(bench), one(bench)])
    to_the_page(program)
    rows = until(lambda: list(program.frame.all("list item", re.compile("^2026-03-01 · bubble 1.4°"))),
                 "rows")
    same(len(rows), 2, "rows of checks")
    rows[1].find("push button", "Delete").do()
    until(lambda: len(list(program.frame.all("list item", re.compile("^2026-03-01 · bubble")))) == 1,
          "one of them is gone")
    program.act("undo")
    until(lambda: len(list(program.frame.all("list item", re.compile("^2026-03-01 · bubble")))) == 2,
          "and back")
    check(not program.enabled("undo"), "more than one step")
    same(len(read_rig(path)["archer"]["hand"]["bubble_tests"]), 2, "the file")


def a_thousand_checks_leave_the_page_quick(bench):
    many = [one(bench, com_mm=[70, (i % 17) - 8, -55], bubble_deg=((i * 7) % 23 - 11) / 4,
                predicted_deg=0.5) for i in range(1000)]
    program, path = start(bench, many)
    begin = time.monotonic()
    to_the_page(program)
    program.find("list item", re.compile("^2026-03-01 · bubble"))
    took = time.monotonic() - begin
    check(took < 15, f"the page took {took:.1f} s")
    rows = list(program.frame.all("list item", re.compile("^2026-03-01 · bubble")))
    check(len(rows) <= 25, f"{len(rows)} rows at once")
    program.find("push button", "Show 25 Earlier Checks").do()
    until(lambda: len(list(program.frame.all("list item", re.compile("^2026-03-01 · bubble")))) == 50,
          "fifty of them")
    # The newest are shown: the last row is the last check.
    rows = list(program.frame.all("list item", re.compile("^2026-03-01 · bubble")))
    rows[-1].find("push button", "Delete").do()
    until(lambda: program.enabled("save"), "it is gone")
    program.act("save")
    until(lambda: len(read_rig(path)["archer"]["hand"]["bubble_tests"]) == 999, "999 are saved")
    same(read_rig(path)["archer"]["hand"]["bubble_tests"], many[:-1], "all but the last")


def wild_readings_disagree_and_are_all_kept(bench):
    wild = [one(bench), one(bench, bubble_deg=-25), one(bench, bubble_deg=40)]
    program, path = start(bench, wild)
    to_the_page(program)
    marked = until(lambda: list(program.frame.all("label", re.compile("disagrees with the other"))),
                   "they disagree")
    check(len(marked) >= 2, f"{len(marked)} disagree")
    for row in ("bubble 25.0° right", "bubble 40.0° left"):
        program.find("list item", re.compile(row))
    check(not program.enabled("undo"), "something was changed for them")
    same(read_rig(path)["archer"]["hand"]["bubble_tests"], wild, "the file")


def with_all_locked_level_says_so(bench):
    rig = bench.demo()
    for part in rig["parts"]:
        part["locked"] = True
    program, _ = start(bench, [one(bench)], parts=rig["parts"])
    to_the_page(program)
    program.find("label", re.compile("every part is locked"))
    program.find("label", re.compile("^(Read the rig as it is|Enough)"))
    check(not list(program.frame.all("push button", re.compile("^Do it"))), "something is proposed")


def a_rig_without_mass_cannot_come_about(bench):
    program, _ = start(bench, [], parts=[])
    program.click(program.find("list item", re.compile("^Bow(,|$)")), 0.3)
    entry = program.find("text", "Mass without any part")
    program.enter(entry, "0")
    until(entry.is_wrong, "a bow of no mass is marked as wrong")
    check("must weigh something" in entry.description, entry.description)
    check(not program.enabled("undo"), "it was taken")


run([two_checks_alike_are_two_checks,
     a_thousand_checks_leave_the_page_quick,
     wild_readings_disagree_and_are_all_kept,
     with_all_locked_level_says_so,
     a_rig_without_mass_cannot_come_about,
     a_file_that_cannot_be_says_where])
