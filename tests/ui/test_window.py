#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""The first way through the program, in its real window: change the back bar, see the lean, the
file and the headless program agree, undo, save, lose nothing. The numbers a screen shows are held
against plumbhold-calc's report of the file that was saved, which is a different program."""

import os
import re
import time

from driver import check, digits_in, number_in, part_of, read_rig, run, same, until

OUT = re.compile("^Out to the left$")
ANGLE_ENTRY = ("text", re.compile("^(Out|In) to the (left|right)$"))
ANGLE_SLIDER = ("slider", re.compile("^(Out|In) to the (left|right)$"))


def select(program, part):
    """Selects a part by a click on its row; returns the form's heading."""
    row = program.find("list item", re.compile(f"^{part}(,|$)"))
    program.click(row, 0.3)
    until(lambda: program.find("list item", re.compile(f"^{part}(,|$)")).has("selected"),
          f"{part} is selected")


def lean_shown(program):
    """The bubble's reading as a screen reader hears it: "Bubble: 0.55° left; …"."""
    return program.find(None, re.compile("^(Bubble|Lean): ")).name


def undo_shown(program):
    return program.find("push button", re.compile("^Undo")).name


def redo_shown(program):
    return program.find("push button", re.compile("^Redo")).name


def agrees_with(program, report):
    """The window's lean, mass and balance point against the report of the saved file."""
    shown = lean_shown(program).split(";")[0]
    deg = report["roll"]["bubble_deg"]
    if "Centred" in shown:
        check(abs(deg) <= 0.05, f"{shown!r} but {deg}")
    else:
        half = 0.5 * 10 ** -digits_in(shown) if digits_in(shown) < 2 else 0.025
        check(abs(abs(deg) - number_in(shown)) <= half + 1e-9, f"{shown!r} but {deg}")
        check(("left" in shown) == (deg > 0), f"{shown!r} but {deg}: the other side")
    mass = program.find(None, re.compile("^Mass: ")).name
    check(abs(number_in(mass) - report["mass_g"] / 1000) <= 0.0005 + 1e-9,
          f"{mass!r} but {report['mass_g']} g")


def save_as(program, path):
    program.act("save-as")
    program.dialog("Save the rig as")
    time.sleep(0.5)
    program.keys("ctrl+a")
    program.type(path)
    program.keys("Return")
    until(lambda: os.path.exists(path), f"{path} is written")
    program.answered()


def nameless_controls(program):
    """What can be reached with Tab but has no words: the toolkit then says the widget's type."""
    return [(n.role, n.name, n.description) for n in program.frame.walk()
            if n.role in ("push button", "toggle button", "slider", "text", "check box")
            and n.has("focusable") and (not n.name or n.name.startswith("Gtk"))]


def the_example_opens_and_names_everything(bench):
    program = bench.start("--demo")
    check("Harbour club indoor" in program.title, program.title)
    for part in ("Bow", "Sight", "Front bar", "Side mount", "Back bar"):
        program.find("list item", re.compile(f"^{part}(,|$)"))
    check(lean_shown(program), "no lean")
    for part in ("Bow", "Sight", "Front bar", "Back bar"):
        select(program, part)
        same(nameless_controls(program), [], f"controls without a name, {part} selected")


def a_typed_angle_changes_lean_and_file_together(bench):
    path = bench.copy_of_demo()
    program = bench.start(path)
    select(program, "Back bar")
    before = lean_shown(program)
    entry = program.find(*ANGLE_ENTRY)
    same(number_in(entry.text), 20, "the angle at first")
    program.enter(entry, "26 deg")
    until(lambda: program.find(*ANGLE_ENTRY).text == "26.0°", "the angle is taken")
    until(lambda: lean_shown(program) != before, "the lean follows")
    same(program.find(*ANGLE_SLIDER).value, 26, "the slider")
    check("back bar out 20° → 26°" in undo_shown(program), undo_shown(program))
    check(program.title.startswith("•"), f"not marked as unsaved: {program.title}")
    same(part_of(read_rig(path), "back-bar")["swing_deg"], 20, "the file before it is saved")

    program.keys("ctrl+s")
    until(lambda: part_of(read_rig(path), "back-bar")["swing_deg"] == 26, "the file is saved")
    until(lambda: not program.title.startswith("•"), "the mark goes")
    agrees_with(program, bench.report(path))


def the_slider_does_the_same_in_one_step(bench):
    path = bench.copy_of_demo()
    program = bench.start(path)
    select(program, "Back bar")
    slider = program.find(*ANGLE_SLIDER)
    before = lean_shown(program)
    # A tool for the disabled sets the value …
    slider.set_value(23)
    until(lambda: program.find(*ANGLE_ENTRY).text == "23.0°", "the entry follows the slider")
    until(lambda: lean_shown(program) != before, "the lean follows the slider")
    check("back bar out 20° → 23°" in undo_shown(program), undo_shown(program))
    # … a hand drags the knob, which lies where the value does: out to the left is to the left.
    lo, hi = -60, 60  # the limits that hold where a rig states none
    knob = 1 - (23 - lo) / (hi - lo)
    program.drag(slider, knob, -40)
    until(lambda: program.find(*ANGLE_SLIDER).value > 24, "the knob follows the pointer")
    dragged = program.find(*ANGLE_SLIDER).value
    same(dragged, round(dragged), "a drag goes in whole degrees")
    check(f"back bar out 23° → {dragged:g}°" in undo_shown(program), undo_shown(program))
    program.keys("ctrl+s")
    until(lambda: part_of(read_rig(path), "back-bar")["swing_deg"] == dragged, "saved")
    agrees_with(program, bench.report(path))
    program.act("undo")
    until(lambda: program.find(*ANGLE_SLIDER).value == 23, "one undo takes the whole drag back")


def undo_and_redo_go_by_the_step(bench):
    program = bench.start("--demo")
    select(program, "Back bar")
    first = lean_shown(program)
    program.enter(program.find(*ANGLE_ENTRY), "26")
    until(lambda: "20° → 26°" in undo_shown(program), "the first step")
    second = lean_shown(program)
    program.keys("Up", "Up")
    until(lambda: program.find(*ANGLE_ENTRY).text == "28.0°", "the arrow keys step by a degree")
    for want in ("27.0°", "26.0°", "20.0°"):
        program.act("undo")
        until(lambda w=want: program.find(*ANGLE_ENTRY).text == w, f"undo to {want}")
    same(lean_shown(program), first, "the lean after undo")
    check(not program.enabled("undo"), "there is more to undo")
    check(not program.title.startswith("•"), "undone to what is on disk, and still unsaved")
    program.act("redo")
    until(lambda: program.find(*ANGLE_ENTRY).text == "26.0°", "redo")
    same(lean_shown(program), second, "the lean after redo")


def the_keyboard_alone_does_it(bench):
    path = bench.copy_of_demo()
    program = bench.start(path)
    for _ in range(12):
        program.keys("Down")
        if program.find("list item", re.compile("^Back bar")).has("selected"):
            break
    check(program.find("list item", re.compile("^Back bar")).has("selected"),
          "the arrow keys do not reach the back bar")
    for _ in range(25):
        program.keys("Tab")
        if program.find(*ANGLE_ENTRY).has("focused"):
            break
    check(program.find(*ANGLE_ENTRY).has("focused"), "Tab does not reach the angle")
    program.keys("ctrl+a")
    program.type("26")
    program.keys("Return", "ctrl+s")
    until(lambda: part_of(read_rig(path), "back-bar")["swing_deg"] == 26, "typed and saved")
    program.keys("ctrl+z")
    until(lambda: program.find(*ANGLE_ENTRY).text == "20.0°", "undone")
    program.keys("ctrl+shift+z")
    until(lambda: program.find(*ANGLE_ENTRY).text == "26.0°", "done again")


def a_bad_entry_stays_and_says_what_would_be_right(bench):
    program = bench.start("--demo")
    select(program, "Back bar")
    lean = lean_shown(program)
    for typed, reason in (("nonsense", None), ("5 oz", None), ("500", "Must lie between")):
        program.enter(program.find(*ANGLE_ENTRY), typed)
        entry = until(lambda: next(n for n in program.frame.all(*ANGLE_ENTRY)
                                   if n.is_wrong()), f"{typed!r} is marked as wrong")
        same(entry.text, typed, "the text that was typed")
        sentence = entry.description
        check(len(sentence) > 8, f"{typed!r}: a screen reader hears no reason: {sentence!r}")
        if reason:
            check(reason in sentence, f"{typed!r}: {sentence!r}")
        labels = [n.name for n in program.frame.all("label")]
        check(any(label and label in sentence for label in labels if len(label) > 8),
              f"{typed!r}: the sentence is not on the screen: {sentence!r}")
        same(lean_shown(program), lean, "the last good value is in force")
        check(not program.enabled("undo"), "a step for a number that was refused")
    program.keys("Escape")
    until(lambda: program.find(*ANGLE_ENTRY).text == "20.0°", "Escape puts the good value back")
    check(not program.find(*ANGLE_ENTRY).is_wrong(), "still marked as wrong")


def typed_numbers_take_units_and_fractions(bench):
    path = bench.copy_of_demo()
    program = bench.start(path)
    select(program, "Front bar")
    length = ("text", re.compile("^Length$"))
    for typed, mm in (("28 1/2", 723.9), ("700 mm", 700), ("29,5 in", 749.3), ("30\"", 762)):
        program.enter(program.find(*length), typed)
        program.act("save") if until(lambda: program.enabled("save"), "unsaved") else None
        until(lambda m=mm: abs(part_of(read_rig(path), "front-bar")["length_mm"] - m) < 1e-9,
              f"{typed!r} is {mm} mm")


def a_broken_file_leaves_the_rig_there(bench):
    broken = bench.write("broken.rig.json", '{"format": "plumbhold-rig", "version": 1, "bow": '
                         '{"mass_g": -5, "com_mm": [0, 0, 0], "gyration_mm": [1, 1, 1]}}')
    program = bench.start("--demo")
    lean = lean_shown(program)
    program.act_text("open-recent", "file://" + broken)
    banner = program.find("label", re.compile("was not opened"))
    check("broken.rig.json" in banner.name and "mass_g" in banner.name, banner.name)
    same(lean_shown(program), lean, "the lean of the rig that is open")
    check("Harbour club indoor" in program.title, program.title)
    program.find("list item", re.compile("^Back bar"))
    program.find("push button", re.compile("^Close this message$")).do()
    program.gone("label", re.compile("was not opened"))
    missing = bench.path("nowhere.rig.json")
    program.act_text("open-recent", "file://" + missing)
    program.find("label", re.compile("nowhere.rig.json.*was not opened"))


def a_killed_program_gives_its_rig_back(bench):
    path = bench.copy_of_demo()
    program = bench.start(path)
    select(program, "Back bar")
    program.enter(program.find(*ANGLE_ENTRY), "31")
    until(lambda: "20° → 31°" in undo_shown(program), "the edit")
    lean = lean_shown(program)
    until(bench.recovered_rigs, "kept beside")
    program.kill()

    again = bench.start()
    offer = again.find("label", re.compile("An unsaved rig was found"))
    check("Harbour club indoor" in offer.name, offer.name)
    again.find("push button", "Open It").do()
    until(lambda: lean_shown(again) == lean, "the lean of the rig that was lost")
    check(again.title.startswith("•"), "it is unsaved")
    again.act("save")
    until(lambda: part_of(read_rig(path), "back-bar")["swing_deg"] == 31, "into its own file")
    agrees_with(again, bench.report(path))
    same(bench.recovery_files(), [], "nothing is left beside")


def a_discarded_rig_is_not_offered_again(bench):
    program = bench.start("--demo")
    select(program, "Back bar")
    program.enter(program.find(*ANGLE_ENTRY), "31")
    until(bench.recovered_rigs, "kept beside")
    program.kill()
    again = bench.start()
    again.find("label", re.compile("An unsaved rig was found"))
    again.find("push button", "Discard").do()
    until(lambda: not bench.recovery_files(), "discarded")
    again.close()
    same(again.wait_end(), 0, "the exit code")


def save_as_writes_what_is_shown(bench):
    program = bench.start("--demo")
    select(program, "Back bar")
    program.enter(program.find(*ANGLE_ENTRY), "26")
    until(lambda: program.enabled("save"), "unsaved")
    path = bench.path("quay.rig.json")
    save_as(program, path)
    until(lambda: not program.enabled("save"), "nothing to save is left")
    same(part_of(read_rig(path), "back-bar")["swing_deg"], 26, "the saved angle")
    agrees_with(program, bench.report(path))
    same(bench.recovery_files(), [], "nothing is left beside")


def a_name_typed_over_the_offered_one_is_a_rigs(bench):
    """The dialog selects a name up to its last dot: typed over, ".rig" would be lost."""
    program = bench.start("--demo")
    program.act("save-as")
    program.dialog("Save the rig as")
    time.sleep(0.5)
    program.type("quay")
    program.keys("Return")
    program.answered()
    until(lambda: program.find("label", "quay.rig.json"), "the name is shown")


def closing_asks_before_work_is_lost(bench):
    path = bench.copy_of_demo()
    program = bench.start(path)
    select(program, "Back bar")
    program.enter(program.find(*ANGLE_ENTRY), "26")
    until(lambda: program.enabled("save"), "unsaved")
    program.close()
    question = program.dialog("Save the changes")
    names = sorted(n.name for n in question.all("push button"))
    same(names, ["Cancel", "Discard", "Save"], "what a screen reader says of the buttons")
    question.find("push button", "Cancel").do()
    program.answered()
    check(program.process.poll() is None, "Cancel closed the program")
    same(program.find(*ANGLE_ENTRY).text, "26.0°", "the edit after Cancel")

    program.close()
    question = program.dialog("Save the changes")
    question.find("push button", re.compile("Discard")).do()
    same(program.wait_end(), 0, "the exit code")
    same(part_of(read_rig(path), "back-bar")["swing_deg"], 20, "the file after Discard")
    same(bench.recovery_files(), [], "what was discarded is not kept")

    again = bench.start(path)
    check(not list(again.frame.all("label", re.compile("unsaved rig was found"))),
          "a discarded rig is offered")
    select(again, "Back bar")
    again.enter(again.find(*ANGLE_ENTRY), "27")
    until(lambda: again.enabled("save"), "unsaved")
    again.close()
    again.dialog("Save the changes").find("push button", re.compile("Save")).do()
    same(again.wait_end(), 0, "the exit code")
    same(part_of(read_rig(path), "back-bar")["swing_deg"], 27, "the file after Save")


def a_file_changed_by_another_is_asked_about(bench):
    path = bench.copy_of_demo()
    program = bench.start(path)
    select(program, "Back bar")
    program.enter(program.find(*ANGLE_ENTRY), "26")
    until(lambda: program.enabled("save"), "unsaved")
    with open(path, encoding="utf-8") as f:
        theirs = f.read().replace('"mass_g": 1950', '"mass_g": 1951')
    bench.write("harbour.rig.json", theirs)
    program.act("save")
    program.dialog("changed").find("push button", re.compile("Cancel")).do()
    program.answered()
    same(read_rig(path)["bow"]["mass_g"], 1951, "what the other wrote")
    program.act("save")
    program.dialog("changed").find("push button", re.compile("Overwrite")).do()
    until(lambda: read_rig(path)["bow"]["mass_g"] == 1950, "overwritten")


def removing_is_one_undo_away(bench):
    program = bench.start("--demo")
    select(program, "Back bar")
    before = lean_shown(program)
    program.act("remove")
    toast = program.find("label", re.compile("^Removed back bar and its weights"))
    check(toast, "no toast")
    program.gone("list item", re.compile("^Back (bar|weights|stack)"))
    until(lambda: lean_shown(program) != before, "the lean without it")
    check(program.find("list item", re.compile("^Side mount")).has("selected"),
          "its host is not selected")
    program.find("push button", "Undo").do()
    program.find("list item", re.compile("^Back bar"))
    until(lambda: lean_shown(program) == before, "the lean with it again")
    until(lambda: program.find("list item", re.compile("^Back bar")).has("selected"),
          "the part that is back is selected")


def the_notes_undo_goes_with_the_next_step(bench):
    """It would undo that step, not the removal it stands beside."""
    program = bench.start("--demo")
    select(program, "Front stack")
    program.act("remove")
    program.find("label", re.compile("^Removed front stack"))
    select(program, "Back bar")
    program.enter(program.find(*ANGLE_ENTRY), "26")
    program.gone("label", re.compile("^Removed front stack"))


def a_small_screen_holds_the_window(bench):
    program = bench.start("--demo")
    program.xdotool("windowsize", program.id, 860, 700)
    until(lambda: list(program.frame.all(None, re.compile("^Parts list"))), "the drawer's button")
    until(lambda: program.frame.box()[2] <= 860, "the window is as narrow as asked")
    for name in ("Why", "Level", "Add a check"):
        x, _, width, _ = program.find(None, name).box()
        check(x + width <= 860, f"{name} ends at {x + width} of 860 px")


def units_change_what_is_read_and_nothing_else(bench):
    program = bench.start("--demo")
    select(program, "Front bar")
    same(program.state("units"), "mixed", "the units at first")
    length = ("text", re.compile("^Length$"))
    for units, text, weights in (("mixed", "30 in", "oz"), ("metric", "762 mm", "g"),
                                 ("trade", "30 in", "oz")):
        program.act_text("units", units)
        until(lambda t=text: program.find(*length).text == t, f"{units}: {text}")
        row = program.find("list item", re.compile("^Front (weights|stack)")).name
        check(re.search(rf"\d {weights}\b", row), f"{units}: {row!r}")
    check(not program.enabled("undo") and not program.title.startswith("•"),
          "units changed the rig")
    program.close()
    same(program.wait_end(), 0, "the exit code")
    again = bench.start("--demo")
    same(again.state("units"), "trade", "the units are remembered")


if __name__ == "__main__":
    run([the_example_opens_and_names_everything, a_typed_angle_changes_lean_and_file_together,
         the_slider_does_the_same_in_one_step, undo_and_redo_go_by_the_step, the_keyboard_alone_does_it,
         a_bad_entry_stays_and_says_what_would_be_right, typed_numbers_take_units_and_fractions,
         a_broken_file_leaves_the_rig_there, a_killed_program_gives_its_rig_back,
         a_discarded_rig_is_not_offered_again, save_as_writes_what_is_shown,
         a_name_typed_over_the_offered_one_is_a_rigs,
         closing_asks_before_work_is_lost, a_file_changed_by_another_is_asked_about,
         removing_is_one_undo_away, the_notes_undo_goes_with_the_next_step,
         a_small_screen_holds_the_window, units_change_what_is_read_and_nothing_else])
