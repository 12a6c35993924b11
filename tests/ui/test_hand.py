#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""The archer's own hand, in the real window: bubble checks by pointer and by keys, what they teach,
Level's first answer done and undone, and entries that cannot be. What was recorded is held against
the saved file and against plumbhold-calc, which is a different program."""

import json
import re
import subprocess
import time

from driver import check, number_in, part_of, read_rig, run, same, until

NUMBER = ("text", "Bubble, in degrees")
DATE = ("text", re.compile("^Date of the check"))
SURE = re.compile("known to ±")


def start(bench, path):
    """The window's place on the display is asked for again once it stands."""
    program = bench.start(path)
    time.sleep(0.5)
    program.id = until(program._find_id, "the window on the display")
    return program


def without_checks(bench):
    rig = bench.demo()
    rig["archer"]["hand"]["bubble_tests"] = []
    return bench.write("quay.rig.json", json.dumps(rig))


def hand_by_calc(bench, path):
    done = subprocess.run([bench.calc, "hand", path, "--json"], capture_output=True, text=True,
                          check=False)
    same(done.returncode, 0, done.stderr)
    return json.loads(done.stdout)


def press(program, name):
    program.find("push button", re.compile(f"^{name}")).do()


def undo_shown(program):
    return program.find("push button", re.compile("^Undo")).name


def known_to(program):
    """Half of the interval that the page shows."""
    return number_in(program.find("label", SURE).name.split("±")[1])


def to_first_draw(program, choice=None):
    """From the page to where the first reading is asked for."""
    program.act("add-check")
    if choice:
        program.click(program.find("check box", re.compile(choice)), 0.02)
        press(program, "It Is Set So$")
    press(program, "Understood")
    program.find(*NUMBER)


def record_by_pointer(program, deg, side):
    program.enter(program.find(*NUMBER), str(deg), end=None)
    program.click(program.find("push button", side))
    program.click(program.find("push button", re.compile("^Enough Draws")))
    program.click(program.find("push button", re.compile("^Record the Check")))
    program.find("push button", re.compile("^Add a check"))


def record_by_keys(program, draws, side):
    """Return takes a draw and goes on; the focus is in the number. Space chooses the side."""
    for i, deg in enumerate(draws):
        until(lambda: program.find(*NUMBER).has("focused"), "the number has the focus")
        program.keys("ctrl+a")
        program.type(str(deg))
        program.keys(*(["Tab"] if side == "left" else ["Tab", "Tab"]), "space")
        until(lambda: program.find("push button", side).has("checked")
              or program.find("push button", side).has("pressed"), f"{side} is chosen")
        program.keys(*(["shift+Tab"] if side == "left" else ["shift+Tab", "shift+Tab"]), "Return")
        if i + 1 < len(draws):
            program.find("label", f"Draw {i + 2} of 3")
    until(lambda: program.find("push button", re.compile("^Record the Check")).has("focused"),
          "Record has the focus")
    program.keys("Return")
    program.find("push button", re.compile("^Add a check"))


def save(program, path, wanted):
    until(lambda: program.enabled("save"), "there is something to save")
    program.act("save")
    until(lambda: wanted(read_rig(path)), "the file is saved")
    return read_rig(path)


def tests_of(rig):
    return rig["archer"]["hand"]["bubble_tests"]


def three_checks_teach_the_hand(bench):
    path = without_checks(bench)
    program = start(bench, path)
    to_first_draw(program)
    record_by_pointer(program, 1.2, "right")
    known = [until(lambda: known_to(program), "an interval")]
    to_first_draw(program, "back stack")
    record_by_keys(program, [0.4, 0.5, 0.6], "right")
    until(lambda: known_to(program) < known[-1], "the interval shrinks")
    known.append(known_to(program))
    to_first_draw(program, "Read the rig as it is")
    record_by_keys(program, [0.5, 0.4, 0.6], "right")
    program.find("label", re.compile("^Predictions that held: [0-9] of 2$"))
    check(known_to(program) <= known[-1], f"wider after a third check: {known}, {known_to(program)}")

    rig = save(program, path, lambda r: len(tests_of(r)) == 3)
    first, second, third = tests_of(rig)
    same(first["bubble_deg"], -1.2, "a bubble to the right is a top limb to the left")
    same(first["sd_deg"], 0.3, "one draw")
    same(second["draws_deg"], [-0.4, -0.5, -0.6], "the draws")
    check(abs(second["bubble_deg"] + 0.5) < 1e-12, f"the mean: {second['bubble_deg']}")
    check(abs(second["sd_deg"] - 0.15) < 1e-12, f"no less than 0.15 is claimed: {second['sd_deg']}")
    check(second["mass_g"] != first["mass_g"], "the second was read on the same rig")
    for test in (first, second, third):
        check(re.match(r"\d{4}-\d\d-\d\dT", test["predicted_at"]), test["predicted_at"])
        check(re.match(r"\d{4}-\d\d-\d\d$", test["date"]), test["date"])
    # What was sealed is what the other program predicts from the checks before it.
    before = dict(rig, archer=dict(rig["archer"], hand={"bubble_tests": [first, second]}))
    report = bench.report(bench.write("before.rig.json", json.dumps(before)))
    check(abs(report["roll"]["bubble_deg"] - third["predicted_deg"]) < 1e-9,
          f"sealed {third['predicted_deg']}, predicted {report['roll']['bubble_deg']}")
    same(hand_by_calc(bench, path)["is"], "fitted", "the hand")


def the_first_answer_is_done_and_undone(bench):
    path = bench.copy_of_demo()
    program = start(bench, path)
    program.act("add-check")
    program.find("push button", "Cancel").do()
    answer = program.find("push button", re.compile("^Do it: "))
    changed = answer.name.replace("Do it: ", "").split(" · ")[0]
    check(not program.enabled("undo"), "something was done already")
    program.move(answer)  # a look at it must leave nothing behind
    program.click(answer)
    until(lambda: "level: " in undo_shown(program), f"{changed} is done")
    rig = save(program, path, lambda r: r["parts"] != bench.demo()["parts"])
    wanted = bench.report(path)["roll"]["bubble_deg"]
    check(abs(wanted) <= 0.5, f"the bubble is at {wanted}° after {changed}")
    check(part_of(rig, "front-bar") == part_of(bench.demo(), "front-bar"), "the front bar changed")
    program.act("undo")
    save(program, path, lambda r: r["parts"] == bench.demo()["parts"])
    check(not program.enabled("undo"), "one click took more than one step")


def a_bar_goes_to_the_other_side_and_back(bench):
    rig = bench.demo()
    # Wanted where the back bar's mirror image takes the bubble: then that is an answer.
    rig["archer"]["wanted_bubble_deg"] = 8
    path = bench.write("quay.rig.json", json.dumps(rig))
    program = start(bench, path)
    program.act("level")
    program.find("push button", "The other side").do()
    answer = program.find("push button", re.compile("^Do it: .* to the other side"))
    program.move(answer)  # a look at it must leave nothing behind
    check(not program.enabled("undo"), "a look left an undo step")
    promised = program.find("list item", re.compile("to the other side: bubble")).name
    program.click(answer)
    until(lambda: re.search("Undo: .* to the other side", undo_shown(program)), undo_shown(program))
    save(program, path, lambda r: r["parts"] != rig["parts"])
    now = bench.report(path)["roll"]["bubble_deg"]
    check(f"{abs(now):.1f}° {'left' if now > 0 else 'right'}" in promised, f"{promised}: {now}")
    program.act("undo")
    save(program, path, lambda r: r["parts"] == rig["parts"])
    check(not program.enabled("undo"), "one click took more than one step")


def the_wanted_tilt_is_typed_with_its_side(bench):
    path = bench.copy_of_demo()
    program = start(bench, path)
    program.act("level")
    entry = program.find("text", "Wanted bubble")
    for typed, shown, deg in (("1 left", "1.0° left", 1), ("1.5° right", "1.5° right", -1.5),
                              ("-2", "2.0° right", -2)):
        program.enter(entry, typed)
        until(lambda s=shown: entry.text == s, f"{typed} is shown as {shown}")
        rig = save(program, path,
                   lambda r, d=deg: r["archer"].get("wanted_bubble_deg", 0) == d)
    for bad in ("40 left", "-1 left", "up a bit"):
        program.enter(entry, bad)
        until(entry.is_wrong, f"{bad} is marked as wrong")
        same(entry.text, bad, "what was typed")
        check("Still 2.0° right" in entry.description, entry.description)
    check(not program.enabled("save"), "a wanted tilt that cannot be was taken")
    program.keys("Escape")
    until(lambda: entry.text == "2.0° right" and not entry.is_wrong(), "Escape goes back")
    for _ in range(3):
        program.act("undo")
    check(not program.enabled("undo"), "three entries were not three steps")
    same(rig["archer"]["wanted_bubble_deg"], -2, "the last")


def a_look_at_an_answer_changes_nothing(bench):
    path = bench.copy_of_demo()
    program = start(bench, path)
    program.act("level")
    for answer in program.find("list", "Changes that centre the bubble").all("push button"):
        program.move(answer)
    check(not program.enabled("undo"), "a look left an undo step")
    check(not program.title.startswith("•"), "a look changed the rig")


def what_cannot_be_read_is_said_and_nothing_is_lost(bench):
    path = without_checks(bench)
    program = start(bench, path)
    to_first_draw(program)
    program.enter(program.find(*NUMBER), "90")
    entry = until(lambda: next(n for n in program.frame.all(*NUMBER) if n.is_wrong()),
                  "90° is marked as wrong")
    same(entry.text, "90", "what was typed")
    check("60°" in entry.description, entry.description)
    program.enter(program.find(*NUMBER), "1.0")
    program.find("label", re.compile("^Say to which side"))
    program.find("push button", "left").do()
    press(program, "Enough Draws")
    until(lambda: program.find("push button", re.compile("^Record the Check")).has("focused"),
          "the last step")
    time.sleep(0.4)  # its layout
    program.enter(program.find(*DATE), "2026-02-31")
    program.find("label", re.compile("no day of the calendar"))
    same(program.find(*DATE).text, "2026-02-31", "the date that was typed")
    program.find("label", re.compile("^Bubble 1.0° left"))
    program.enter(program.find(*DATE), "2999-12-31")
    program.find("label", re.compile("still to come"))
    check(not program.enabled("undo"), "it was recorded all the same")
    program.enter(program.find(*DATE), "2026-02-28")
    program.find("push button", re.compile("^Add a check"))
    rig = save(program, path, lambda r: len(tests_of(r)) == 1)
    same(tests_of(rig)[0]["date"], "2026-02-28", "the date")
    same(tests_of(rig)[0]["bubble_deg"], 1, "the reading")


def a_bubble_at_the_end_is_no_reading_but_a_move(bench):
    path = without_checks(bench)
    program = start(bench, path)
    to_first_draw(program)
    press(program, "Bubble Is at the End")
    check(not program.find("push button", re.compile("^It Is Set So: Draw")).has("sensitive"),
          "there is a move before the end is said")
    program.find("push button", "At the right end").do()
    task = program.find("label", re.compile("^(Turn|Take) the ")).name
    press(program, "It Is Set So: Draw Again")
    program.find("label", "Draw 1 of 3")
    before = bench.report(path)["roll"]["bubble_deg"]
    save(program, path, lambda r: r["parts"] != bench.demo()["parts"])
    after = bench.report(path)["roll"]["bubble_deg"]
    check(after > before, f"{task} moved the bubble farther right: {before} to {after}")
    same(len(tests_of(read_rig(path))), 0, "checks recorded")


def the_guide_stays_inside_a_narrow_window(bench):
    program = start(bench, without_checks(bench))
    program.xdotool("windowsize", program.id, 860, 700)

    def inside(step):
        time.sleep(0.4)
        width = program.frame.box()[2]
        check(width <= 860, f"{step}: the window is {width} px wide")

    until(lambda: program.frame.box()[2] <= 860, "the window is as narrow as asked")
    program.act("add-check")
    program.find("push button", re.compile("^Understood"))
    inside("the cautions")
    press(program, "Understood")
    program.enter(program.find(*NUMBER), "1.5", end=None)
    inside("the first draw")
    program.click(program.find("push button", "right"))
    press(program, "Enough Draws")
    program.find("push button", re.compile("^Record the Check"))
    inside("the record")
    press(program, "Record the Check")
    program.find("push button", re.compile("^Add a check"))
    inside("the page with a check")
    program.act("add-check")
    program.find("push button", "It Is Set So")
    inside("which rig is read")


def a_check_is_set_aside_put_right_and_deleted(bench):
    path = bench.copy_of_demo()
    program = start(bench, path)
    program.act("add-check")
    program.find("push button", "Cancel").do()
    press(program, "Set aside$")
    program.find("label", re.compile("^set aside"))
    check("aside" in undo_shown(program), undo_shown(program))
    program.act("undo")
    program.gone("label", re.compile("^set aside"))
    press(program, "Put right$")
    program.enter(program.find(*NUMBER), "2.0", end=None)
    press(program, "Enough Draws")
    press(program, "Keep the Change")
    program.find("label", re.compile("bubble 2.0° left"))
    press(program, "Delete$")
    program.gone("label", re.compile("bubble 2.0° left"))
    rig = save(program, path, lambda r: not tests_of(r))
    same(rig["parts"], bench.demo()["parts"], "the parts")
    program.act("undo")
    program.find("label", re.compile("bubble 2.0° left"))


def limits_hold_what_level_may_propose(bench):
    path = bench.copy_of_demo()
    program = start(bench, path)
    program.click(program.find("list item", re.compile("^Back bar(,|$)")), 0.3)
    program.find("push button", "What may change").do("activate")

    program.move(program.find("text", re.compile("^Length$")), -1.0)
    program.xdotool("click", "--repeat", 20, "--delay", 20, 5)  # the wheel: the rows lie below
    time.sleep(0.6)

    def limit(end, text):
        program.enter(program.find("text", f"Sideways, + to the left: {end}"), text)

    limit("from", "15")
    limit("to", "10")
    until(lambda: program.find("text", "Sideways, + to the left: to").is_wrong(),
          "to below from is marked as wrong")
    limit("to", "40")
    rig = save(program, path, lambda r: part_of(r, "back-bar").get("limits", {}).get("swing_deg")
               == [15, 40])
    check("locked" not in part_of(rig, "back-bar"), "it is locked")
    program.find("check box", "Keep as it is").do("toggle")
    save(program, path, lambda r: part_of(r, "back-bar").get("locked"))


def a_bars_form_holds_what_its_weights_may_do(bench):
    path = bench.copy_of_demo()
    program = start(bench, path)
    program.click(program.find("list item", re.compile("^Back bar(,|$)")), 0.3)
    program.find("push button", "What may change of its weights").do("activate")
    program.move(program.find("text", re.compile("^Length$")), -1.0)
    program.xdotool("click", "--repeat", 20, "--delay", 20, 5)  # the wheel: the rows lie below
    time.sleep(0.6)
    program.enter(program.find("text", "Weights: to"), "3")
    # Five hang there: what is there stretches the limit to itself.
    save(program, path, lambda r: part_of(r, "back-stack").get("limits", {}).get("count") == [0, 5])
    program.enter(program.find("text", "Weights: from"), "6")
    until(lambda: program.find("text", "Weights: from").is_wrong(), "from above to")
    program.keys("Escape")
    program.find("check box", "Keep its weights as they are").do("toggle")
    rig = save(program, path, lambda r: part_of(r, "back-stack").get("locked"))
    check("locked" not in part_of(rig, "back-bar"), "the bar is locked with them")
    check("limits" not in part_of(rig, "back-bar"), "the bar has limits of weights")
    # A sight has none, and a bar without weights has none either.
    program.click(program.find("list item", re.compile("^Sight(,|$)")), 0.3)
    program.gone("push button", "What may change of its weights")


if __name__ == "__main__":
    run([three_checks_teach_the_hand,
         the_first_answer_is_done_and_undone,
         a_bar_goes_to_the_other_side_and_back,
         the_wanted_tilt_is_typed_with_its_side,
         a_look_at_an_answer_changes_nothing,
         what_cannot_be_read_is_said_and_nothing_is_lost,
         a_bubble_at_the_end_is_no_reading_but_a_move,
         the_guide_stays_inside_a_narrow_window,
         a_check_is_set_aside_put_right_and_deleted,
         limits_hold_what_level_may_propose,
         a_bars_form_holds_what_its_weights_may_do])
