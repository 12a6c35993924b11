#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Moving the views' picture by wheel, button and keys, and working in a view by keys alone, with
what a screen reader hears of each step. What moved is seen as a person sees it: by the handle's dot
of the selected part in a picture of the screen."""

import json
import re
import sys
import time

from driver import check, part_of, read_rig, run, same, until
from test_drag import (ANGLE_ENTRY, BEHIND, SIDE, STEP_PX, angle, handle, let_go, press, pull,
                       screen, view)
from test_window import agrees_with, lean_shown, select, undo_shown

FREE = re.compile("^Free view")
ZOOM = 1.15  # one notch of the wheel
PAN_PX = 40  # one arrow with Ctrl


def near(got, want, what, slack=2.5):
    """Places on the screen: the dot's middle is found to a pixel or two."""
    far = max(abs(g - w) for g, w in zip(got, want))
    check(far <= slack, f"{what}: got {got}, want {want}")


def focus_view(program, name):
    """Into a view by a click below the bow, where nothing is: nothing is selected then."""
    program.move(view(program, name), 0.5, 0.93)
    time.sleep(0.2)
    program.xdotool("click", 1)
    time.sleep(0.2)


def dots(bench, program, parts, name=SIDE, picture="dots"):
    """Where the ends of these parts are in a view."""
    places = []
    for part in parts:
        select(program, part)
        places.append(handle(bench, program, name, f"{picture}-{part.replace(' ', '-')}"))
    return places


def the_wheel_scales_about_the_pointer(bench):
    program = bench.start("--demo")
    front, back = dots(bench, program, ("Front bar", "Back bar"))
    front_behind, = dots(bench, program, ("Back bar",), BEHIND)
    program.xdotool("mousemove", "--window", program.id, *back)
    program.xdotool("click", "--repeat", 2, "--delay", 120, 4)
    time.sleep(0.4)
    now_back, = dots(bench, program, ("Back bar",), SIDE, "zoomed")
    # The dot stands 11 px beyond the end at every scale: 11 × (1.15² − 1) px are the end's own.
    near(now_back, back, "what is under the pointer stays there", 6)
    now_behind, = dots(bench, program, ("Back bar",), BEHIND, "zoomed-behind")
    check(now_behind != front_behind, "the view from behind keeps its scale")
    program.xdotool("mousemove", "--window", program.id, *back)
    program.xdotool("click", "--repeat", 2, "--delay", 120, 5)
    time.sleep(0.4)
    for got, want, what in zip(dots(bench, program, ("Front bar", "Back bar")), (front, back),
                               ("front bar", "back bar")):
        near(got, want, f"{what} after the way back")
    # One notch down from there: everything nearer to the pointer by its share.
    program.xdotool("mousemove", "--window", program.id, *back)
    program.xdotool("click", 5)
    time.sleep(0.4)
    now_front, = dots(bench, program, ("Front bar",), SIDE, "smaller")
    want = [b + (f - b) / ZOOM for f, b in zip(front, back)]
    near(now_front, want, "the front bar's end, one notch smaller", 5)
    check(not program.enabled("undo"), "looking is no step")


def the_middle_button_and_ctrl_with_arrows_move_and_f_fits(bench):
    program = bench.start("--demo")
    back, = dots(bench, program, ("Back bar",))
    behind, = dots(bench, program, ("Back bar",), BEHIND)
    x, y, width, height = view(program, SIDE).box()
    program.xdotool("mousemove", "--window", program.id, x + width // 2, y + height - 40)
    program.xdotool("mousedown", 2)
    pull(program, 60, -32)
    program.xdotool("mouseup", 2)
    now, = dots(bench, program, ("Back bar",), SIDE, "panned")
    near(now, (back[0] + 60, back[1] - 32), "dragged with the middle button", 3)
    now_behind, = dots(bench, program, ("Back bar",), BEHIND, "panned-behind")
    near(now_behind, (behind[0], behind[1] - 32), "heights stay alike in both views", 3)
    before, = dots(bench, program, ("Back bar",))
    focus_keeping(program)
    for key, dx, dy in (("ctrl+Left", PAN_PX, 0), ("ctrl+Up", 0, PAN_PX),
                        ("ctrl+Right", -PAN_PX, 0), ("ctrl+Down", 0, -PAN_PX)):
        program.keys(key)
        time.sleep(0.3)
        now = handle(bench, program, SIDE, "keys")
        near(now, (before[0] + dx, before[1] + dy), key)
        before = now
    program.keys("f")
    time.sleep(0.4)
    near(handle(bench, program, SIDE, "fitted"), back, "F shows all again as at the start")
    same(angle(program), 20, "the part did not move with its picture")
    check(not program.enabled("undo"), "looking is no step")


def focus_keeping(program):
    """Into the side view by a drag of the middle button that goes nowhere: selects nothing."""
    program.move(view(program, SIDE), 0.5, 0.93)
    program.xdotool("click", 2)
    time.sleep(0.15)


def said(program, name=SIDE):
    return view(program, name).name


def tab_walks_the_parts_and_leaves_at_the_end(bench):
    program = bench.start("--demo")
    focus_view(program, SIDE)
    until(lambda: "nothing selected" in said(program) and view(program, SIDE).has("focused"),
          "in the view, with nothing selected")
    seen = []
    while len(seen) < 20:
        before = said(program)
        program.keys("Tab")
        until(lambda b=before: said(program) != b or not view(program, SIDE).has("focused"),
              "Tab goes on")
        if said(program) == before:
            break
        seen.append(said(program).split(": ")[1].split(",")[0])
    same(seen, ["bow", "Sight", "Front bar", "Front stack", "Side mount", "Back bar",
                "Back stack"], "the walk, each part followed by what hangs on it")
    focus_keeping(program)
    select(program, "Front bar")
    focus_keeping(program)
    program.keys("shift+Tab")
    until(lambda: said(program).startswith("From the side: Sight"), "backwards")


def arrows_turn_and_each_step_is_spoken(bench):
    path = bench.copy_of_demo()
    program = bench.start(path)
    select(program, "Back bar")
    focus_keeping(program)
    lean = lean_shown(program)
    for key, value, words in (("Left", 21, "Back bar out 21°"), ("Right", 20, "Back bar out 20°"),
                              ("shift+Left", 25, "Back bar out 25°")):
        program.keys(key)
        until(lambda v=value: angle(program) == v, f"{key} turns to {value}°")
        until(lambda w=words: w in said(program) and "bubble" in said(program),
              f"{key}: {words} and the bubble are said")
    check(lean_shown(program) != lean, "the bubble does not follow")
    # The whole bow's lean is in the description, and follows.
    before = view(program, SIDE).description
    program.keys("shift+Left")
    until(lambda: view(program, SIDE).description != before, "the description follows the lean")
    program.keys("Up")
    until(lambda: "Back bar down 11°" in said(program), "up is up")
    program.keys("shift+Down")
    until(lambda: "Back bar down 16°" in said(program), "five down")
    program.keys("ctrl+s")
    until(lambda: part_of(read_rig(path), "back-bar")["lift_deg"] == -16, "saved")
    same(part_of(read_rig(path), "back-bar")["swing_deg"], 30, "swing")
    agrees_with(program, bench.report(path))


def plus_and_minus_change_weights(bench):
    path = bench.copy_of_demo()
    program = bench.start(path)
    select(program, "Front stack")
    focus_keeping(program)
    for key, count in (("plus", 9), ("minus", 8), ("KP_Add", 9), ("shift+KP_Subtract", 4),
                       ("minus", 3)):
        program.keys(key)
        until(lambda n=count: f"Front stack, {n} weights" in said(program), f"{key}: {count}")
        check("bubble" in said(program), said(program))
    check("front pull" in said(program), said(program))
    program.keys("ctrl+s")
    until(lambda: part_of(read_rig(path), "front-stack")["count"] == 3, "saved")
    agrees_with(program, bench.report(path))


def v_and_f11_change_what_is_shown(bench):
    program = bench.start("--demo")
    focus_view(program, SIDE)
    wide = view(program, SIDE).box()[2]
    program.keys("F11")
    until(lambda: view(program, SIDE).box()[2] > wide + 300, "the view fills the window")
    time.sleep(0.5)
    screen(bench, "filled-side")
    program.keys("F11")
    until(lambda: view(program, SIDE).box()[2] == wide, "and leaves")
    program.keys("v")
    until(lambda: view(program, FREE).has("focused"), "the free view")
    select(program, "Front bar")
    before = handle(bench, program, FREE, "free")
    x, y, width, height = view(program, FREE).box()
    press(program, (x + 30, y + height - 40))
    pull(program, 60, 20)
    let_go(program)
    check(handle(bench, program, FREE, "orbited") != before, "a drag beside the bow turns it")
    check(not program.enabled("undo"), "turning about the bow changes it")
    focus_view(program, FREE)
    program.keys("v")
    until(lambda: list(program.frame.all(None, SIDE)), "and back")


def limited(bench):
    rig = bench.demo()
    part_of(rig, "back-bar")["limits"] = {"swing_deg": [10, 26], "lift_deg": [-20, -5]}
    return bench.write("limited.rig.json", json.dumps(rig))


def a_drag_stops_at_the_parts_limits(bench):
    program = bench.start(limited(bench))
    for name, picture, dx, dy, words in ((BEHIND, "limits-behind", -16, 0, "out 26°"),
                                         (SIDE, "limits-side", 0, -20, "down 5°")):
        select(program, "Back bar")
        press(program, handle(bench, program, name))
        pull(program, dx * STEP_PX, dy * STEP_PX)
        time.sleep(0.4)
        screen(bench, picture)
        let_go(program)
        until(lambda n=name, w=words: w in said(program, n), f"{words} and no farther")
        check(re.search(r"°$|°\b", undo_shown(program)), undo_shown(program))


def too_near_the_string_is_hatched_and_named(bench):
    rig = bench.demo()
    part_of(rig, "back-bar")["swing_deg"] = -3
    program = bench.start(bench.write("near.rig.json", json.dumps(rig)))
    time.sleep(0.6)
    screen(bench, "near-string")
    clear = program.find(None, re.compile("^Clear of the string"))
    check("too near" in clear.name + clear.description, f"{clear.name} {clear.description}")


if __name__ == "__main__":
    run([the_wheel_scales_about_the_pointer,
         the_middle_button_and_ctrl_with_arrows_move_and_f_fits,
         tab_walks_the_parts_and_leaves_at_the_end, arrows_turn_and_each_step_is_spoken,
         plus_and_minus_change_weights, v_and_f11_change_what_is_shown,
         a_drag_stops_at_the_parts_limits, too_near_the_string_is_hatched_and_named])
