# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Drives the real program in a real window, as a person and a screen reader do.

A test script calls run (CASES): the script starts itself anew under a display and a session bus of
its own, each case gets a fresh folder for everything the program keeps, and prints "ok NAME" or
"FAILED NAME" with the reason in lines that start with "# ", as the C tests do. A case fails, too,
when the program wrote a warning of the toolkit to its standard error.

What is looked at goes through the accessibility tree (names, values, states), so a control that a
screen reader could not use fails here; what is done goes through keys and the pointer, through the
accessibility actions, or through the window's actions on the bus.
"""

import json
import os
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import time
import traceback

APP = "org.plumbhold.Plumbhold"
APP_PATH = "/org/plumbhold/Plumbhold"
WINDOW_PATH = APP_PATH + "/window/1"
INNER = "PLUMBHOLD_UI_TEST_INNER"
# The toolkit draws a border of this width around a window with a header bar; coordinates in the
# accessibility tree start inside it.
BORDER = 5
# Written by libraries below the toolkit, or by the display without hardware: not ours.
HARMLESS = re.compile(r"MESA|libEGL|dconf|Failed to set fd limit|xkbcomp|SpiRegistry")
ALARM = re.compile(r"warning|critical|assert|\*\*|AddressSanitizer|runtime error", re.IGNORECASE)


def until(condition, what, seconds=20.0):
    """Waits until condition () gives something true, and returns that."""
    end = time.monotonic() + seconds
    last = None
    while time.monotonic() < end:
        try:
            result = condition()
            if result:
                return result
        except (LookupError, StopIteration, RuntimeError) as e:
            last = e
        except Exception as e:  # the bus and the accessibility tree raise their own kind
            if type(e).__name__ not in ("GError", "Error"):
                raise
            last = e
        time.sleep(0.03)
    raise AssertionError(f"{what}: not within {seconds:g} s ({last})")


def check(condition, text):
    if not condition:
        raise AssertionError(text)


def same(got, want, what):
    check(got == want, f"{what}: got {got!r}, want {want!r}")


class Node:
    """One accessible object. Looked up anew each time: the tree changes under every edit."""

    def __init__(self, accessible):
        self.a = accessible

    @property
    def name(self):
        return self.a.get_name() or ""

    @property
    def description(self):
        return self.a.get_description() or ""

    @property
    def role(self):
        return self.a.get_role_name()

    def is_wrong(self):
        # The toolkit's 4.8 sets "invalid" for what the later ones call "invalid-entry".
        return self.has("invalid-entry") or self.has("invalid")

    def has(self, state):
        states = self.a.get_state_set().get_states()
        return state in [s.value_nick for s in states]

    @property
    def text(self):
        t = self.a.get_text_iface()
        return t.get_text(0, t.get_character_count())

    @property
    def value(self):
        return self.a.get_value_iface().get_current_value()

    def set_value(self, value):
        self.a.get_value_iface().set_current_value(value)

    def set_text(self, text):
        check(self.a.get_editable_text_iface().set_text_contents(text), "the text is not taken")

    def do(self, name="click"):
        action = self.a.get_action_iface()
        names = [action.get_action_name(i) for i in range(action.get_n_actions())]
        check(name in names, f"{self.role} “{self.name}” has no action {name}: {names}")
        check(action.do_action(names.index(name)), f"{name} on “{self.name}” was refused")

    def box(self):
        from gi.repository import Atspi

        e = self.a.get_component_iface().get_extents(Atspi.CoordType.WINDOW)
        return e.x + BORDER, e.y + BORDER, e.width, e.height

    def children(self):
        for i in range(self.a.get_child_count()):
            child = self.a.get_child_at_index(i)
            if child is not None:
                yield Node(child)

    def walk(self):
        yield self
        for child in self.children():
            yield from child.walk()

    def all(self, role=None, name=None, shown=True):
        """Nodes of that role whose name is `name` or, for a compiled pattern, matches it."""
        for node in self.walk():
            if role is not None and node.role != role:
                continue
            if isinstance(name, re.Pattern) and not name.search(node.name):
                continue
            if isinstance(name, str) and node.name != name:
                continue
            if shown and not node.has("visible"):
                continue
            yield node

    def find(self, role=None, name=None, shown=True):
        for node in self.all(role, name, shown):
            return node
        raise LookupError(f"no {role or 'object'} “{getattr(name, 'pattern', name)}”")


class Program:
    """The program while it runs, in folders that outlive it."""

    def __init__(self, bench, *arguments):
        self.bench = bench
        self.log = os.path.join(bench.folder, f"stderr-{len(bench.logs)}")
        bench.logs.append(self.log)
        with open(self.log, "wb") as log:
            self.process = subprocess.Popen([bench.exe, *arguments], env=bench.environment,
                                            stderr=log, stdout=log)
        bench.programs.append(self)
        self.known_frame = until(self._find_frame, "the window", 30)
        self.id = until(self._find_id, "the window on the display", 10)
        until(lambda: self.action_names(), "the window's actions on the bus", 10)
        time.sleep(0.3)  # the first frames

    # The window.

    def _application(self):
        from gi.repository import Atspi

        desktop = Atspi.get_desktop(0)
        for i in range(desktop.get_child_count()):
            app = desktop.get_child_at_index(i)
            if app is not None and app.get_process_id() == self.process.pid:
                return Node(app)
        raise LookupError("the program is not in the accessibility tree")

    def _find_frame(self):
        code = self.process.poll()
        check(code is None, f"the program ended ({code}): {self.last_words()}")
        return self._application().find("frame", re.compile("Plumbhold"))

    @property
    def frame(self):
        """The main window; looked up anew where the accessibility bus lost it."""
        try:
            if self.known_frame.has("sensitive"):
                return self.known_frame
        except Exception as e:
            if type(e).__name__ != "GError":
                raise
        self.known_frame = self._find_frame()
        return self.known_frame

    def _windows(self, *more):
        done = subprocess.run(["xdotool", "search", "--onlyvisible", "--pid",
                               str(self.process.pid), *more],
                              capture_output=True, text=True, check=False)
        return done.stdout.split()

    def _find_id(self):
        found = self._windows("--name", "Plumbhold")
        return found[0] if found else None

    def answered(self):
        """Waits until only the main window is left. Asked of the display: the toolkit's 4.8 warns
        when the accessibility tree is read while a dialog goes away."""
        until(lambda: self._windows("--name", ".") == [self.id], "the dialog is gone")
        time.sleep(0.3)

    @property
    def title(self):
        return self.frame.name

    def dialogs(self):
        """Windows of the program beside the main one."""
        return [n for n in self._application().children() if n.a != self.frame.a]

    def dialog(self, name=""):
        """The dialog whose title or first texts contain a pattern."""
        def look():
            for node in self.dialogs():
                words = [node.name] + [n.name for n in node.all("label")]
                if re.search(name, " ".join(words)) and node.has("visible"):
                    return node
            return None
        return until(look, f"a dialog “{name}”")

    def find(self, role=None, name=None):
        return until(lambda: self.frame.find(role, name),
                     f"{role} “{getattr(name, 'pattern', name)}”")

    def gone(self, role, name):
        until(lambda: not list(self.frame.all(role, name)), f"{role} “{name}” still there")

    # The bus.

    def _call(self, path, method, signature, *values):
        from gi.repository import Gio, GLib

        bus = Gio.bus_get_sync(Gio.BusType.SESSION)
        return bus.call_sync(APP, path, "org.gtk.Actions", method,
                             GLib.Variant(signature, values), None, 0, 10000).unpack()

    def action_names(self):
        return self._call(WINDOW_PATH, "List", "()")[0]

    def act(self, name, parameter=None, path=WINDOW_PATH):
        """An action of the window; a disabled one fails here instead of doing nothing."""
        check(self.enabled(name, path), f"the action {name} is disabled")
        self._call(path, "Activate", "(sava{sv})", name, [parameter] if parameter else [], {})

    def act_text(self, name, text):
        from gi.repository import GLib

        self.act(name, GLib.Variant("s", text))

    def enabled(self, name, path=WINDOW_PATH):
        return self._call(path, "Describe", "(s)", name)[0][0]

    def state(self, name, path=WINDOW_PATH):
        return self._call(path, "Describe", "(s)", name)[0][2][0]

    # Keys and pointer.

    def xdotool(self, *arguments):
        """At the start the display may still list a window that is about to go: then the id is
        asked for again."""
        done = subprocess.run(["xdotool", *[str(a) for a in arguments]], timeout=20, check=False)
        if done.returncode and self.id in arguments:
            old, self.id = self.id, until(self._find_id, "the window on the display", 10)
            arguments = [self.id if a == old else a for a in arguments]
            subprocess.run(["xdotool", *[str(a) for a in arguments]], check=True, timeout=20)
        else:
            done.check_returncode()

    def move(self, node, fx=0.5, fy=0.5):
        x, y, width, height = node.box()
        self.xdotool("mousemove", "--window", self.id, int(x + width * fx), int(y + height * fy))

    def click(self, node, fx=0.5, button=1):
        self.move(node, fx)
        self.xdotool("click", button)

    def double_click(self, node, fx=0.5):
        self.move(node, fx)
        self.xdotool("click", "--repeat", 2, "--delay", 60, 1)

    def drag(self, node, fx, dx, dy=0, steps=12):
        """From fx of the node's width by dx, dy pixels."""
        self.move(node, fx)
        self.xdotool("mousedown", 1)
        for i in range(steps):
            now, before = (i + 1) / steps, i / steps
            self.xdotool("mousemove_relative", "--", int(dx * now) - int(dx * before),
                         int(dy * now) - int(dy * before))
            time.sleep(0.03)
        self.xdotool("mouseup", 1)

    def keys(self, *names):
        self.xdotool("key", "--delay", 40, *names)

    def type(self, text):
        self.xdotool("type", "--delay", 25, "--", text)

    def enter(self, node, text, end="Return"):
        """Clicks into a field, replaces its text and presses a key."""
        self.click(node, 0.7)
        self.keys("ctrl+a")
        self.type(text)
        if end:
            self.keys(end)

    # The end.

    def last_words(self):
        with open(self.log, encoding="utf-8", errors="replace") as f:
            return "; ".join(f.read().splitlines()[-8:])

    def errors(self):
        with open(self.log, encoding="utf-8", errors="replace") as f:
            return [line.rstrip() for line in f
                    if ALARM.search(line) and not HARMLESS.search(line)]

    def wait_end(self, seconds=15):
        try:
            return self.process.wait(seconds)
        except subprocess.TimeoutExpired:
            raise AssertionError(f"the program still runs after {seconds} s") from None

    def kill(self):
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()

    def close(self):
        """Quits as the menu does, which asks the window first."""
        self.act("quit", path=APP_PATH)


class Bench:
    """A folder for one case: rigs, settings and state, and the programs that ran in it."""

    def __init__(self, arguments):
        self.exe, self.calc, self.data, self.schemas = arguments
        self.folder = tempfile.mkdtemp(prefix="plumbhold-ui-")
        self.logs, self.programs = [], []
        self.environment = dict(os.environ)
        for name in ("HOME", "XDG_CONFIG_HOME", "XDG_STATE_HOME", "XDG_DATA_HOME",
                     "XDG_CACHE_HOME", "XDG_RUNTIME_DIR"):
            path = os.path.join(self.folder, name.lower())
            os.makedirs(path, 0o700)
            self.environment[name] = path
        self.environment.update(GDK_BACKEND="x11", LC_ALL="C.UTF-8", LANGUAGE="en",
                                PLUMBHOLD_DATA_DIR=self.data, GSETTINGS_SCHEMA_DIR=self.schemas,
                                GTK_A11Y="atspi", NO_AT_BRIDGE="0")
        self.environment.pop(INNER, None)
        self.environment.pop("GTK_THEME", None)

    def path(self, *names):
        return os.path.join(self.folder, *names)

    def start(self, *arguments):
        return Program(self, *arguments)

    def write(self, name, text):
        path = self.path(name)
        with open(path, "w", encoding="utf-8") as f:
            f.write(text)
        return path

    def demo(self):
        with open(os.path.join(self.data, "demo.rig.json"), encoding="utf-8") as f:
            return json.load(f)

    def copy_of_demo(self, name="harbour.rig.json"):
        return shutil.copy(os.path.join(self.data, "demo.rig.json"), self.path(name))

    def recovery_files(self):
        folder = os.path.join(self.environment["XDG_STATE_HOME"], "plumbhold")
        return sorted(os.listdir(folder)) if os.path.isdir(folder) else []

    def recovered_rigs(self):
        return [name for name in self.recovery_files() if name.endswith(".rig.json")]

    def report(self, path):
        """What the headless program says of a file."""
        done = subprocess.run([self.calc, "report", path, "--json"], capture_output=True,
                              text=True, check=False)
        same(done.returncode, 0, f"plumbhold-calc report {path}: {done.stderr}")
        return json.loads(done.stdout)

    def clear(self):
        for program in self.programs:
            if program.process.poll() is None:
                program.kill()
        shutil.rmtree(self.folder, ignore_errors=True)


def part_of(rig, part_id):
    return next(p for p in rig["parts"] if p["id"] == part_id)


def read_rig(path):
    with open(path, encoding="utf-8") as f:
        return json.load(f)


def number_in(text):
    """The first number of a text that a person reads."""
    found = re.search(r"[-\u2212]?\d+(?:[.,]\d+)?", text)
    check(found, f"no number in {text!r}")
    return float(found.group().replace("\u2212", "-").replace(",", "."))


def digits_in(text):
    found = re.search(r"\d+[.,](\d+)", text)
    return len(found.group(1)) if found else 0


def _picture(bench, name):
    folder = os.environ.get("PLUMBHOLD_UI_PICTURES")
    if folder and shutil.which("import"):
        os.makedirs(folder, exist_ok=True)
        subprocess.run(["import", "-window", "root", os.path.join(folder, name + ".png")],
                       check=False)


def _run_case(case, arguments):
    bench = Bench(arguments)
    try:
        case(bench)
        for program in bench.programs:
            errors = program.errors()
            check(not errors, "on standard error: " + "; ".join(errors[:5]))
        return True
    except Exception as e:  # every failure of a case is that case's own
        _picture(bench, case.__name__)
        lines = str(e).splitlines() if isinstance(e, AssertionError) else \
            traceback.format_exc().splitlines()
        frames = [f for f in traceback.extract_tb(e.__traceback__)
                  if os.path.basename(f.filename) != "driver.py"]
        if frames:
            lines.insert(0, f"{os.path.basename(frames[-1].filename)}:{frames[-1].lineno}: "
                            f"{frames[-1].line}")
        for program in bench.programs:
            lines += [f"stderr: {line}" for line in program.errors()[:5]]
        for line in lines:
            print(f"# {line}")
        return False
    finally:
        bench.clear()


def _run_inside(cases, arguments, wanted):
    manager = subprocess.Popen(["openbox"], stderr=subprocess.DEVNULL)
    time.sleep(0.7)
    failed = 0
    try:
        for case in cases:
            if wanted and wanted not in case.__name__:
                continue
            good = _run_case(case, arguments)
            if not good:
                # A virtual display on a busy machine loses a key or a window now and then. A fault
                # of the program fails twice; both tries are told.
                print(f"# {case.__name__}: once more", flush=True)
                good = _run_case(case, arguments)
            failed += not good
            print(f"{'ok' if good else 'FAILED'} {case.__name__}", flush=True)
    finally:
        manager.terminate()
        manager.wait()
    return 1 if failed else 0


def run(cases):
    """Arguments: PROGRAM CALC DATA_FOLDER SCHEMA_FOLDER [PART_OF_A_CASE'S_NAME]."""
    if len(sys.argv) < 5:
        sys.exit(f"usage: {sys.argv[0]} PROGRAM CALC DATA_FOLDER SCHEMA_FOLDER [CASE]")
    arguments = [os.path.abspath(a) for a in sys.argv[1:5]]
    wanted = sys.argv[5] if len(sys.argv) > 5 else None
    if os.environ.get(INNER):
        import gi

        gi.require_version("Atspi", "2.0")
        sys.exit(_run_inside(cases, arguments, wanted))
    missing = [p for p in ("xvfb-run", "dbus-run-session", "xdotool", "openbox")
               if not shutil.which(p)]
    if missing:
        print(f"# not installed: {', '.join(missing)}")
        sys.exit(77)  # meson counts this as skipped
    with tempfile.TemporaryDirectory(prefix="plumbhold-ui-session-") as session:
        environment = dict(os.environ, HOME=session, XDG_RUNTIME_DIR=session, GDK_BACKEND="x11",
                           LC_ALL="C.UTF-8")
        environment[INNER] = "1"
        environment.pop("WAYLAND_DISPLAY", None)
        # The display first: the accessibility registry takes it from the bus that starts it.
        done = subprocess.run(["xvfb-run", "-a", "-s", "-screen 0 1400x900x24 -nolisten tcp",
                               "dbus-run-session", "--", "/usr/bin/python3",
                               os.path.abspath(sys.argv[0]), *arguments,
                               *([wanted] if wanted else [])], env=environment, check=False)
    sys.exit(done.returncode)
