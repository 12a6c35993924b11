#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""The tilt read from a photo, in the real window: pictures are drawn here with lines at known
angles, their points are set by pointer and by keys, and the recorded check is held against the
angle that was drawn."""

import json
import math
import re
import struct
import subprocess
import time
import zlib

from driver import BORDER, check, number_in, read_rig, run, same, until

WIDTH, HEIGHT = 600, 800
LEAN = ("text", "Lean, in degrees")
BUBBLE = ("text", "Bubble, in degrees")
TITLE = "Read the Tilt"


class Picture:
    """An RGB picture, written as a PNG file (ISO/IEC 15948) without any library for it."""

    def __init__(self, shade=(176, 190, 170)):
        self.rows = [bytearray(bytes(shade) * WIDTH) for _ in range(HEIGHT)]

    def blend(self, x, y, shade, share):
        if 0 <= x < WIDTH and 0 <= y < HEIGHT and share > 0:
            for c in range(3):
                old = self.rows[y][3 * x + c]
                self.rows[y][3 * x + c] = int(old + (shade - old) * min(share, 1))

    def steep_line(self, through, lean_deg, half_width, shade):
        """Leans by so many degrees to the right at its top."""
        x0, y0 = through
        slope = math.tan(math.radians(lean_deg))
        for y in range(HEIGHT):
            x = x0 - (y + 0.5 - y0) * slope
            for column in range(int(x - half_width) - 1, int(x + half_width) + 3):
                self.blend(column, y, shade, half_width + 0.5 - abs(column + 0.5 - x))

    def box(self, left, top, right, bottom, shade):
        for y in range(top, bottom):
            for x in range(left, right):
                self.blend(x, y, shade, 1)

    def write(self, bench, name):
        def chunk(kind, data):
            body = kind + data
            return struct.pack(">I", len(data)) + body + struct.pack(">I", zlib.crc32(body))

        head = struct.pack(">IIBBBBB", WIDTH, HEIGHT, 8, 2, 0, 0, 0)
        data = zlib.compress(b"".join(b"\0" + bytes(row) for row in self.rows))
        path = bench.path(name)
        with open(path, "wb") as f:
            f.write(b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", data)
                    + chunk(b"IEND", b""))
        return path


def at(through, lean_deg, y):
    """A point of such a line."""
    return through[0] - (y - through[1]) * math.tan(math.radians(lean_deg)), y


def bow_and_door(bench, lean_deg, camera_deg):
    """A string and a door frame, the camera rolled so that both are turned."""
    picture = Picture()
    string, edge = ((230, 400), lean_deg + camera_deg), ((480, 400), camera_deg)
    picture.steep_line(*string, 1.5, 245)
    picture.steep_line(*edge, 4, 70)
    return picture.write(bench, "range.png"), string, edge


class Window:
    """The window of the photo."""

    def __init__(self, program):
        self.program = program
        program.find("push button", re.compile("^From a Photo")).do()
        program.dialog(TITLE)
        self.id = until(lambda: self._ids()[0], "the window on the display")
        self.canvas = None
        time.sleep(0.3)

    def _ids(self):
        return subprocess.run(["xdotool", "search", "--onlyvisible", "--all", "--pid",
                               str(self.program.process.pid), "--name", "^" + TITLE],
                              capture_output=True, text=True, check=False).stdout.split()

    def find(self, role, name):
        return until(lambda: self.program.dialog(TITLE).find(role, name), f"{role} {name}")

    def choose(self, path, button="Choose a Photo"):
        self.find("push button", re.compile("^" + button)).do()
        self.program.dialog("Choose a Photo")
        time.sleep(0.6)
        self.program.type(path)
        time.sleep(0.6)  # the suggestions
        self.program.keys("Return")

    def open(self, path, button="Choose a Photo"):
        self.choose(path, button)
        until(lambda: self.step("Click the "), "the picture")
        time.sleep(0.5)

    def step(self, part):
        return self.program.dialog(TITLE).find("panel", re.compile("^" + part))

    def place(self, x, y):
        """Of a point of the picture, shown as a whole, in the window."""
        left, top, width, height = until(lambda: self.step("(Click|All) "), "the picture").box()
        scale = min(width / WIDTH, height / HEIGHT)
        return (round(left - BORDER + (width - WIDTH * scale) / 2 + x * scale),
                round(top - BORDER + (height - HEIGHT * scale) / 2 + y * scale))

    def click(self, x, y):
        self.program.xdotool("mousemove", "--window", self.id, *self.place(x, y))
        time.sleep(0.1)
        self.program.xdotool("click", 1)
        time.sleep(0.2)

    def turn_mirrored(self):
        left, top, _, height = self.find("check box", re.compile("^Taken from the front")).box()
        self.program.xdotool("mousemove", "--window", self.id, left - BORDER + 10,
                             top - BORDER + height // 2)
        self.program.xdotool("click", 1)

    def result(self, kind):
        return self.find("label", re.compile(f"^{kind} .*±")).name

    def points(self):
        return list(self.program.dialog(TITLE).all("image", re.compile(", point [0-9], at ")))

    def use(self):
        self.find("push button", "Use This Reading").do()
        self.program.answered()

    def sd(self, kind):
        return number_in(self.result(kind).split("±")[1])


def to_first_draw(bench, rig):
    path = bench.write("x.rig.json", json.dumps(rig))
    program = bench.start(path)
    time.sleep(0.5)
    program.id = until(program._find_id, "the window on the display")
    program.act("add-check")
    program.find("push button", re.compile("^Understood")).do()
    return program, path


def barebow(bench):
    with open(f"{bench.data}/barebow.rig.json", encoding="utf-8") as f:
        rig = json.load(f)
    rig.setdefault("archer", {}).setdefault("hand", {})["bubble_tests"] = []
    return rig


def record(program, path):
    """The rig's one check, saved."""
    program.find("push button", re.compile("^Enough Draws")).do()
    program.find("push button", re.compile("^Record the Check")).do()
    program.find("push button", re.compile("^Add a check"))
    until(lambda: program.enabled("save"), "there is something to save")
    program.act("save")
    return until(lambda: read_rig(path)["archer"]["hand"]["bubble_tests"], "a saved check")[0]


def string_and_edge_by_pointer_become_a_check(bench):
    program, path = to_first_draw(bench, barebow(bench))
    # Trade fact: a top limb to the archer's left, seen from behind, is a lean to the left, stored
    # as a negative bubble. Common practice, no source.
    photo, string, edge = bow_and_door(bench, -1.7, 3)
    window = Window(program)
    window.open(photo)
    for line in (string, edge):
        for y in (40, 760):
            window.click(*at(*line, y))
    shown = window.result("Leans")
    check("left" in shown, shown)
    sd = window.sd("Leans")
    check(0.1 <= sd <= 0.4, f"±{sd}°")
    check(abs(number_in(shown) - 1.7) <= max(sd, 0.15), f"drawn at 1.7° left, read: {shown}")
    # From the front it is the other side.
    window.turn_mirrored()
    until(lambda: "right" in window.result("Leans"), "the other side")
    window.turn_mirrored()
    until(lambda: "left" in window.result("Leans"), "the first side")
    # One more point on the string says the same.
    window.find("push button", "One More on the String").do()
    window.click(*at(*string, 200))
    same(len(window.points()), 5, "points")
    until(lambda: abs(number_in(window.result("Leans")) - 1.7) <= max(sd, 0.15), "much the same")
    window.use()
    program.find("label", re.compile("^From a photo, ±"))
    same(number_in(program.find(*LEAN).text), number_in(shown), "what the entry took")
    test = record(program, path)
    check(abs(test["bubble_deg"] + 1.7) <= max(sd, 0.15), f"stored {test['bubble_deg']}")
    same(test["sd_deg"], 0.3, "one draw scatters more than the photo")
    same(test["note"], "from a photo", "the note")
    check("range.png" not in json.dumps(read_rig(path)), "the picture is kept")


def by_keys_to_the_pixel(bench):
    program, path = to_first_draw(bench, barebow(bench))
    photo, _, _ = bow_and_door(bench, 0, 0)
    window = Window(program)
    window.open(photo)
    # No line of the picture: what counts is where the keys put the points.
    wanted = [(310, 100), (300, 700), (470, 120), (477, 690)]
    for i, (x, y) in enumerate(wanted):
        program.keys("Return")
        until(lambda: len(window.points()) == i + 1, f"point {i + 1}")
        place = until(lambda: re.search("at ([0-9]+) across and ([0-9]+) down",
                                        window.points()[i].name), "its place")
        for way, keys in ((x - int(place[1]), ("Left", "Right")),
                          (y - int(place[2]), ("Up", "Down"))):
            key, size = keys[way > 0], abs(way)
            presses = ["shift+" + key] * (size // 10) + [key] * (size % 10)
            if presses:
                program.xdotool("key", "--delay", 15, *presses)
        until(lambda: f"at {x} across and {y} down" in window.points()[i].name,
              f"point {i + 1} at {x}, {y}: {window.points()[i].name}")
    string = math.degrees(math.atan2(10, 600))
    edge = math.degrees(math.atan2(470 - 477, 690 - 120))
    lean = string - edge
    until(lambda: abs(number_in(window.result("Leans")) - lean) <= 0.051, f"{lean:.2f}°")
    check("right" in window.result("Leans"), window.result("Leans"))
    # Tab walks the points.
    program.keys("shift+Tab")
    until(lambda: window.points()[2].has("focused"), "the point before")
    program.keys("Tab")
    until(lambda: window.points()[3].has("focused"), "the last point")
    program.keys("Return")  # all are set: the window's own button
    program.answered()
    test = record(program, path)
    same(test["bubble_deg"], round(lean, 1), "to the tenth")


def a_coarse_photo_widens_the_check(bench):
    program, path = to_first_draw(bench, barebow(bench))
    photo, string, edge = bow_and_door(bench, 0.8, 0)
    window = Window(program)
    window.open(photo)
    for line in (string, edge):
        for y in (340, 460):
            window.click(*at(*line, y))
    sd = window.sd("Leans")
    check(sd > 0.5, f"±{sd}° of lines of a hundred pixels")
    window.use()
    test = record(program, path)
    check(abs(test["sd_deg"] - sd) <= 0.051, f"shown ±{sd}, stored {test['sd_deg']}")


def a_point_is_dragged_and_closer_up_is_known_better(bench):
    program, _ = to_first_draw(bench, barebow(bench))
    photo, string, edge = bow_and_door(bench, 2, 0)
    window = Window(program)
    window.open(photo)
    for line in (string, edge):
        for y in (340, 460):
            window.click(*at(*line, y))
    coarse = window.sd("Leans")

    def drag_last(by):
        program.xdotool("mousedown", 1)
        for _ in range(6):
            program.xdotool("mousemove_relative", "--", by // 6, 0)
            time.sleep(0.03)
        program.xdotool("mouseup", 1)

    def across():
        return number_in(window.points()[3].name.split(" at ")[1])

    before, scale = across(), (window.place(500, 0)[0] - window.place(0, 0)[0]) / 500
    drag_last(60)
    until(lambda: abs(across() - before - 60 / scale) <= 1.5, "the point went with the pointer")
    # The edge's foot went right, so that the string leans right of it by far more than before.
    check(number_in(window.result("Leans")) > 20, window.result("Leans"))
    check("right" in window.result("Leans"), window.result("Leans"))
    program.xdotool("click", "--repeat", 4, "--delay", 60, 4)
    time.sleep(0.5)
    closer = scale * 1.25 ** 4
    left, top, width, height = window.points()[3].box()
    program.xdotool("mousemove", "--window", window.id, left - BORDER + width // 2,
                    top - BORDER + height // 2)
    time.sleep(0.2)
    drag_last(-int(60 / scale * closer) // 6 * 6)
    until(lambda: abs(across() - before) <= 3, f"{across()}: back at {before}")
    check(window.sd("Leans") < coarse, f"±{window.sd('Leans')} closer up, ±{coarse} before")
    same(len(window.points()), 4, "points")


def a_vial_by_pointer_becomes_a_bubble(bench):
    rig = bench.demo()
    rig["archer"]["hand"]["bubble_tests"] = []
    sight = next(p for p in rig["parts"] if "aperture_mm" in p)
    sight["vial_deg_per_mark"] = 2
    program, path = to_first_draw(bench, rig)
    picture = Picture((70, 80, 70))
    picture.box(100, 360, 500, 440, 150)
    picture.box(180, 375, 320, 425, 230)  # the bubble, its middle at 250
    for line in (200, 400):  # the vial's lines, their middle at 300
        picture.box(line - 2, 360, line + 2, 440, 0)
    window = Window(program)
    window.open(picture.write(bench, "vial.png"))
    for x in (200, 400, 180, 320):
        window.click(x, 400)
    # 50 of 200 pixels: a quarter of a mark to the left, half a degree.
    shown = window.result("Bubble")
    check("left" in shown, shown)
    check(abs(number_in(shown) - 0.5) <= 0.051, shown)
    window.find("label", re.compile("^The bow leans 0.5° right"))
    window.use()
    same(number_in(program.find(*BUBBLE).text), 0.5, "what the entry took")
    # A number typed over it is no photo's any more.
    program.find("label", re.compile("^From a photo, ±"))
    program.enter(program.find(*BUBBLE), "0.7", end="Tab")
    program.gone("label", re.compile("^From a photo, ±"))
    program.enter(program.find(*BUBBLE), "0.5", end="Tab")
    program.find("label", re.compile("^From a photo, ±"))
    same(record(program, path)["bubble_deg"], 0.5, "a bubble to the left is positive")


def without_a_calibration_the_vial_gives_no_degrees(bench):
    rig = bench.demo()
    rig["archer"]["hand"]["bubble_tests"] = []
    program, _ = to_first_draw(bench, rig)
    photo, _, _ = bow_and_door(bench, 0, 0)
    window = Window(program)
    window.open(photo)
    window.step("Click the string")  # the way that needs no calibration
    window.find("push button", "Vial").do()
    until(lambda: window.step("Click the left one of the two lines"), "the vial's first step")
    for x in (200, 400, 180, 320):
        window.click(x, 400)
    check("0.25 marks left" in window.result("Bubble"), window.result("Bubble"))
    window.find("label", re.compile("^What a mark of your vial is worth is not known"))
    check(not window.find("push button", "Use This Reading").has("sensitive"), "it can be used")


def what_is_no_photo_is_said_and_points_are_taken_back(bench):
    program, _ = to_first_draw(bench, barebow(bench))
    window = Window(program)
    window.choose(bench.write("notes.txt", "no picture"))
    window.find("label", re.compile("notes.txt.*could not be opened as a picture.*Choose a photo"))
    photo, string, _ = bow_and_door(bench, 1, 0)
    window.open(photo)
    check(not list(window.program.dialog(TITLE).all("label", re.compile("could not be"))),
          "the old sentence stands on")
    window.click(*at(*string, 100))
    window.click(*at(*string, 500))
    until(lambda: window.step("Click the plumb edge near"), "the third step")
    program.keys("BackSpace")
    until(lambda: window.step("Click the string as far down"), "back to the second")
    program.keys("Escape")
    until(lambda: window.step("Click the string near"), "back to the first")
    same(len(window.points()), 0, "points")
    program.keys("Escape")  # nothing to take back: the window closes
    program.answered()
    program.find("label", "Draw 1 of 3")
    check(program.find(*LEAN).text in ("–", ""), program.find(*LEAN).text)


if __name__ == "__main__":
    run([string_and_edge_by_pointer_become_a_check,
         by_keys_to_the_pixel,
         a_coarse_photo_widens_the_check,
         a_point_is_dragged_and_closer_up_is_known_better,
         a_vial_by_pointer_becomes_a_bubble,
         without_a_calibration_the_vial_gives_no_degrees,
         what_is_no_photo_is_said_and_points_are_taken_back])
