#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Turning a bar and stacking weights by hand in the views, with a real pointer. Where to take hold
is found as a person finds it: by looking for the handle's dot in a picture of the screen. What a
drag did is held against the form, the bubble, and plumbhold-calc's report of the saved file."""

import json
import os
import re
import shutil
import subprocess
import sys
import time

from driver import check, number_in, part_of, read_rig, run, same, until
from test_window import (ANGLE_ENTRY, agrees_with, lean_shown, redo_shown, select, undo_shown)

BEHIND = re.compile("^From behind")
SIDE = re.compile("^From the side")
LEVEL_ENTRY = re.compile("^(Left|Right|Out|In)")  # whatever it is called at 0°
LIFT_ENTRY = ("text", re.compile("^(Up|Down)"))
COUNT_ENTRY = ("text", re.compile("^(Weights|How many)"))
STEP_PX, DISC_PX = 8, 16


def view(program, name):
    return program.find(None, name)


def screen(bench, name):
    path = bench.path(name + ".png")
    subprocess.run(["import", "-window", "root", path], check=True)
    keep = os.environ.get("PLUMBHOLD_UI_PICTURES")
    if keep:
        os.makedirs(keep, exist_ok=True)
        shutil.copy(path, os.path.join(keep, f"{name}.png"))
    return path


def frame_place(program):
    """Where the window's corner is on the screen."""
    out = subprocess.run(["xdotool", "getwindowgeometry", "--shell", program.id],
                         capture_output=True, text=True, check=True).stdout
    values = dict(line.split("=") for line in out.split())
    return int(values["X"]), int(values["Y"])


def pixels(path, box):
    """Rows of (r, g, b) of a part of a picture."""
    x, y, width, height = box
    raw = subprocess.run(["convert", path, "-crop", f"{width}x{height}+{x}+{y}", "+repage",
                          "-depth", "8", "rgb:-"], capture_output=True, check=True).stdout
    row = 3 * width
    return [[tuple(raw[r * row + 3 * c:r * row + 3 * c + 3]) for c in range(width)]
            for r in range(height)]


def is_accent(pixel):
    """The theme's accent is a blue; nothing else in a view has so much colour."""
    red, green, blue = pixel
    return blue - red > 70 and blue > green


def find_dot(rows):
    """The middle of the largest disc of one accent colour; a selected bar is shaded."""
    def alike(a, b):
        return max(abs(p - q) for p, q in zip(a, b)) <= 10

    def reach_of(x, y):
        for reach in range(1, 10):
            for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1), (.7, .7), (-.7, .7), (.7, -.7),
                           (-.7, -.7)):
                u, v = x + round(dx * reach), y + round(dy * reach)
                if not (0 <= v < len(rows) and 0 <= u < len(rows[0])
                        and alike(rows[v][u], rows[y][x])):
                    return reach - 1
        return 9

    best, at = 0, None
    for y, row in enumerate(rows):
        for x, pixel in enumerate(row):
            if is_accent(pixel):
                reach = reach_of(x, y)
                if reach > best:
                    best, at = reach, (x, y)
    check(best >= 4, f"no handle to be seen (a dot of {best} px)")
    return at


def handle(bench, program, view_name, picture="handle"):
    """The handle's place in the window."""
    # Away from the views, so that nothing is lit because the pointer is there.
    program.xdotool("mousemove", "--window", program.id, 40, 12)
    time.sleep(0.6)
    left, top = frame_place(program)
    x, y, width, height = view(program, view_name).box()
    dot_x, dot_y = find_dot(pixels(screen(bench, picture), (left + x, top + y, width, height)))
    return x + dot_x, y + dot_y


def rings(bench, program):
    """The middles of − and + in the view from the side: rings without a dot in them."""
    program.xdotool("mousemove", "--window", program.id, 40, 12)
    time.sleep(0.6)
    left, top = frame_place(program)
    x, y, width, height = view(program, SIDE).box()
    rows = pixels(screen(bench, "stack-handles"), (left + x, top + y, width, height))
    at = {}
    for v in range(14, height - 14):
        for u in range(14, width - 14):
            around = sum(is_accent(rows[v + dy][u + dx]) for dx, dy in
                         ((11, 0), (-11, 0), (0, 11), (0, -11), (8, 8), (-8, 8), (8, -8), (-8, -8)))
            if around < 7 or not all(is_accent(rows[v][u + d]) for d in range(-2, 3)):
                continue
            plus = all(is_accent(rows[v + d][u]) for d in range(-2, 3))
            between = is_accent(rows[v + 7][u]) or is_accent(rows[v][u + 7])
            if not between:
                at["more" if plus else "less"] = (x + u, y + v)
    check(len(at) == 2, f"− and + are not both to be seen: {at}")
    less, more = at["less"], at["more"]
    apart = ((less[0] - more[0]) ** 2 + (less[1] - more[1]) ** 2) ** 0.5
    check(apart >= 40, f"too near each other for a finger: {apart:.0f} px")
    return less, more


def press(program, at):
    program.xdotool("mousemove", "--window", program.id, *at)
    time.sleep(0.2)
    program.xdotool("mousedown", 1)


def pull(program, dx, dy, step=2):
    """So many pixels, in small steps of 0.03 s."""
    n = max(1, int(max(abs(dx), abs(dy)) / step))
    for i in range(n):
        program.xdotool("mousemove_relative", "--", round(dx * (i + 1) / n) - round(dx * i / n),
                        round(dy * (i + 1) / n) - round(dy * i / n))
        time.sleep(0.03)


def let_go(program):
    program.xdotool("mouseup", 1)
    time.sleep(0.2)


def angle(program):
    return number_in(program.find(*ANGLE_ENTRY).text)


def the_bars_end_follows_the_pointer_from_behind(bench):
    path = bench.copy_of_demo()
    program = bench.start(path)
    select(program, "Back bar")
    lean = lean_shown(program)
    press(program, handle(bench, program, BEHIND))
    pull(program, -6 * STEP_PX, 0)
    until(lambda: angle(program) == 26, "six steps to the left while the button is down")
    check(lean_shown(program) != lean, "the bubble does not follow")
    screen(bench, "drag-behind")
    same(part_of(read_rig(path), "back-bar")["swing_deg"], 20, "the file during the drag")
    let_go(program)
    check("back bar out 20° → 26°" in undo_shown(program), undo_shown(program))
    said = view(program, BEHIND).name
    check("out 26°" in said and "bubble" in said, f"a screen reader hears {said!r}")
    program.keys("ctrl+s")
    until(lambda: part_of(read_rig(path), "back-bar")["swing_deg"] == 26, "saved")
    agrees_with(program, bench.report(path))
    program.act("undo")
    until(lambda: angle(program) == 20, "one undo takes the whole drag back")
    check(not program.enabled("undo"), "the drag was more than one step")
    until(lambda: lean_shown(program) == lean, "the bubble after undo")
    program.act("redo")
    until(lambda: angle(program) == 26, "redo")
    check(redo_shown(program), "no redo button")


def a_drag_out_and_back_is_no_change(bench):
    """Of an angle that the file does not even have: its key must not come into it either."""
    rig = bench.demo()
    part_of(rig, "back-bar").pop("swing_deg")
    path = bench.write("quay.rig.json", json.dumps(rig))
    program = bench.start(path)
    select(program, "Back bar")
    press(program, handle(bench, program, BEHIND))
    pull(program, -6 * STEP_PX, 0)
    until(lambda: angle(program) == 6, "six steps to the left while the button is down")
    pull(program, 6 * STEP_PX, 0)
    until(lambda: number_in(program.find("text", LEVEL_ENTRY).text) == 0, "and back")
    let_go(program)
    check(not program.enabled("undo"), "out and back left a step")
    check(not program.enabled("save"), "out and back left something to save")


def escape_and_a_second_button_give_up(bench):
    program = bench.start("--demo")
    select(program, "Back bar")
    lean = lean_shown(program)
    for how in ("escape", "button"):
        press(program, handle(bench, program, BEHIND))
        pull(program, -5 * STEP_PX, 0)
        until(lambda: angle(program) == 25, f"{how}: the drag")
        if how == "escape":
            program.keys("Escape")
        else:
            program.xdotool("click", 3)
        until(lambda: angle(program) == 20, f"{how}: given up")
        pull(program, -5 * STEP_PX, 0)
        time.sleep(0.3)
        same(angle(program), 20, f"{how}: it goes on after it was given up")
        let_go(program)
        same(lean_shown(program), lean, f"{how}: the bubble")
        check(not program.enabled("undo"), f"{how}: a step was left behind")
        check(not program.title.startswith("•"), f"{how}: marked as unsaved")
        check(program.find("list item", re.compile("^Back bar")).has("selected"),
              f"{how}: the selection")


def a_click_moves_nothing_and_shift_goes_in_tenths(bench):
    program = bench.start("--demo")
    select(program, "Back bar")
    at = handle(bench, program, BEHIND)
    press(program, at)
    pull(program, -3, 0, 1)
    time.sleep(0.2)
    same(angle(program), 20, "three pixels")
    let_go(program)
    check(not program.enabled("undo"), "a click is a step")
    select(program, "Back bar")
    press(program, handle(bench, program, BEHIND))
    program.xdotool("keydown", "shift")
    pull(program, -5 * STEP_PX, 0)
    screen(bench, "drag-fine")
    until(lambda: abs(angle(program) - 20.5) < 1e-9, "five tenths")
    program.xdotool("keyup", "shift")
    let_go(program)
    check("20° → 20.5°" in undo_shown(program), undo_shown(program))


def from_the_side_up_is_up(bench):
    path = bench.copy_of_demo()
    program = bench.start(path)
    for part, key, start in (("Back bar", "back-bar", -12), ("Front bar", "front-bar", -8)):
        select(program, part)
        press(program, handle(bench, program, SIDE))
        pull(program, 0, -4 * STEP_PX)
        screen(bench, f"drag-side-{key}")
        let_go(program)
        program.keys("ctrl+s")
        until(lambda k=key, s=start: part_of(read_rig(path), k)["lift_deg"] > s + 2,
              f"{part} goes up")
        lift = part_of(read_rig(path), key)["lift_deg"]
        check(lift == round(lift) and start + 3 <= lift <= start + 4, f"{part}: {start} → {lift}")
        select(program, part)
        press(program, handle(bench, program, SIDE))
        pull(program, 0, 8 * STEP_PX)
        let_go(program)
        program.keys("ctrl+s")
        until(lambda k=key, u=lift: part_of(read_rig(path), k)["lift_deg"] < u - 4,
              f"{part} goes down")
        agrees_with(program, bench.report(path))


def a_stack_has_handles_and_can_be_drawn_out(bench):
    path = bench.copy_of_demo()
    program = bench.start(path)
    select(program, "Front bar")
    dot_x, dot_y = handle(bench, program, SIDE)
    select(program, "Front stack")

    def saved():
        program.keys("ctrl+s")
        time.sleep(0.3)
        return part_of(read_rig(path), "front-stack")["count"]

    # The bar points to the right and a little down; the stack ends just before the dot.
    press(program, (dot_x - 20, dot_y - 2))
    pull(program, 3 * DISC_PX + 4, 0)
    screen(bench, "drag-stack")
    let_go(program)
    until(lambda: saved() == 11, "three more, a disc for each 16 px")
    check("8 → 11" in undo_shown(program), undo_shown(program))
    agrees_with(program, bench.report(path))
    program.act("undo")
    until(lambda: saved() == 8, "one undo takes the whole drag back")
    # − and + stand below, a finger's width apart.
    select(program, "Front stack")
    at_less, at_more = rings(bench, program)
    for at, count in ((at_more, 9), (at_more, 10), (at_less, 9)):
        program.xdotool("mousemove", "--window", program.id, *at)
        time.sleep(0.2)
        program.xdotool("click", 1)
        until(lambda n=count: saved() == n, f"a press on the handle: {count}")
    check("10 → 9" in undo_shown(program), undo_shown(program))
    check(program.find("list item", re.compile("^Front stack")).has("selected"),
          "a press on a handle selects something else")


def clicks_in_one_place_walk_through_what_is_behind(bench):
    program = bench.start("--demo")
    select(program, "Front bar")
    # From behind the bar runs away from the eye: its end, the bow and more lie over one another.
    x, y = handle(bench, program, BEHIND)
    select(program, "Sight")
    program.xdotool("mousemove", "--window", program.id, x, y)
    seen = []
    for _ in range(6):
        program.xdotool("click", 1)
        time.sleep(0.8)  # slower than a double click
        seen.append(view(program, BEHIND).name.split(": ")[1].split(",")[0])
    check(len(set(seen)) >= 3, f"only {seen}")
    check(seen[0] in seen[1:], f"the walk does not come back to the first: {seen}")
    check(not program.enabled("undo"), "clicks changed the rig")


def escape_in_a_view_that_fills_the_window_gives_up_first(bench):
    program = bench.start("--demo")
    select(program, "Back bar")
    until(lambda: list(view(program, BEHIND).all("push button", re.compile("^Fill"))),
          "the button")
    next(view(program, BEHIND).all("push button", re.compile("^Fill"))).do()
    time.sleep(0.8)
    before = view(program, BEHIND).description
    wide = view(program, BEHIND).box()[2]
    press(program, handle(bench, program, BEHIND))
    pull(program, -5 * STEP_PX, 0)
    until(lambda: view(program, BEHIND).description != before, "the drag")
    program.keys("Escape")
    until(lambda: view(program, BEHIND).description == before, "given up")
    let_go(program)
    same(view(program, BEHIND).box()[2], wide, "the view's width after the first Escape")
    program.keys("Escape")
    until(lambda: view(program, BEHIND).box()[2] < wide, "the second Escape leaves")


def drag_row(bench, program, part, onto, picture):
    row = program.find("list item", re.compile(f"^{part}(,|$)"))
    target = program.find("list item", re.compile(f"^{onto}(,|$)"))
    _, y, _, height = row.box()
    _, onto_y, _, onto_height = target.box()
    program.move(row, 0.45)
    time.sleep(0.2)
    program.xdotool("mousedown", 1)
    pull(program, 6, (onto_y + onto_height // 2) - (y + height // 2), 4)
    time.sleep(0.4)
    screen(bench, picture)
    let_go(program)
    time.sleep(0.4)


def a_row_is_hung_elsewhere_by_dragging_it(bench):
    path = bench.copy_of_demo()
    program = bench.start(path)
    # A stack's far end is free, a sight has no end to hang on: it takes nothing.
    drag_row(bench, program, "Back stack", "Sight", "row-refused")
    check(not program.enabled("undo"), "a place that is none took it")
    drag_row(bench, program, "Back stack", "Front stack", "row-taken")
    until(lambda: program.enabled("undo"), "hung elsewhere")
    check(program.find("list item", re.compile("^Back stack")).has("selected"), "the selection")
    program.keys("ctrl+s")
    until(lambda: part_of(read_rig(path), "back-stack")["on"] == "front-stack", "saved")
    agrees_with(program, bench.report(path))
    program.act("undo")
    until(lambda: not program.enabled("undo"), "one step")
    program.act("save")
    until(lambda: part_of(read_rig(path), "back-stack")["on"] == "back-bar", "undone")


if __name__ == "__main__":
    run([the_bars_end_follows_the_pointer_from_behind, a_drag_out_and_back_is_no_change, escape_and_a_second_button_give_up,
         a_click_moves_nothing_and_shift_goes_in_tenths, from_the_side_up_is_up,
         a_stack_has_handles_and_can_be_drawn_out,
         clicks_in_one_place_walk_through_what_is_behind,
         escape_in_a_view_that_fills_the_window_gives_up_first,
         a_row_is_hung_elsewhere_by_dragging_it])
