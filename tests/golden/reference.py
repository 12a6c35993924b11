# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""The report of a rig, computed a second time by another road.

Written from the formulas alone, sharing nothing with the C code: full 3x3 matrices where that
uses records and trees, numpy's eigh where that uses Jacobi, a scan with scipy's brentq where that
splits at critical points, scipy's least_squares where that has its own solver, and a dense
sampling check beside the exact distance to the string's triangle.
"""

import json
import math
import sys

import numpy as np
from scipy.optimize import brentq, least_squares

G = 9.80665
KINDS = ("bar", "weights", "damper", "bracket", "accessory")


# --- frames -----------------------------------------------------------------------------------

def frame(axis):
    """Columns a, l, t of the orthogonal matrix that hangs on an axis."""
    a = np.array(axis, float)
    a = a / np.linalg.norm(a)
    base = np.array([1.0, 0, 0]) if abs(a[1]) > 0.9999 else np.array([0, 1.0, 0])
    side = base - (base @ a) * a
    side = side / np.linalg.norm(side)
    up = np.cross(a, side)
    if abs(up[2]) < 1e-9:
        if up[0] < 0:
            up = -up
    elif up[2] < 0:
        up = -up
    return np.column_stack([a, side, up])


def direction(socket, swing_deg, lift_deg):
    s, v = math.radians(swing_deg), math.radians(lift_deg)
    local = [math.cos(v) * math.cos(s), math.cos(v) * math.sin(s), math.sin(v)]
    return socket @ np.array(local)


# --- solids -----------------------------------------------------------------------------------

def cylinder(m, start, length, outer_d, inner_d=0.0):
    """Solid along the first own axis: mass, own mass centre, own tensor about it."""
    ro, ri = outer_d / 2, inner_d / 2
    axial = m * (ro ** 2 + ri ** 2) / 2
    across = m * (3 * (ro ** 2 + ri ** 2) + length ** 2) / 12
    return m, np.array([start + length / 2, 0, 0]), np.diag([axial, across, across])


def box(m, com, size):
    a, b, c = size
    return m, np.array(com, float), np.diag(
        [m * (b * b + c * c) / 12, m * (a * a + c * c) / 12, m * (a * a + b * b) / 12])


def shifted(tensor, m, d):
    return tensor + m * ((d @ d) * np.eye(3) - np.outer(d, d))


class Placed:
    """A fitted part in the bow frame: its solids, its root, its far face."""

    def __init__(self, part, root, axes, solids, end):
        self.part, self.root, self.axes, self.end = part, root, axes, end
        self.solids = [(m, root + axes @ c, axes @ t @ axes.T) for m, c, t in solids]

    @property
    def mass(self):
        return sum(m for m, _, _ in self.solids)

    @property
    def com(self):
        return sum(m * c for m, c, _ in self.solids) / self.mass


def length_of(part):
    if part["kind"] == "weights":
        return part["count"] * part["each_mm"] / 1000
    return part.get("length_mm", 0) / 1000


def solids_of(part):
    kind = part["kind"]
    if kind == "bar":
        length = part["length_mm"] / 1000
        od, inner = part["outer_mm"] / 1000, part["inner_mm"] / 1000
        root, tip = part.get("root_fitting_g", 0) / 1000, part.get("tip_fitting_g", 0) / 1000
        fit = part.get("fitting_mm", min(15, part["length_mm"])) / 1000
        tube = part["mass_g"] / 1000 - root - tip
        return [cylinder(tube, 0, length, od, inner), cylinder(root, 0, fit, od),
                cylinder(tip, length - fit, fit, od)]
    if kind == "weights":
        m = part["count"] * part["each_g"] / 1000
        return [cylinder(m, 0, length_of(part), part["diameter_mm"] / 1000,
                         part.get("bore_mm", 0) / 1000)]
    if kind == "damper":
        return [cylinder(part["mass_g"] / 1000, 0, length_of(part), part["diameter_mm"] / 1000)]
    size = [v / 1000 for v in part["size_mm"]]
    com = [0, 0, 0] if kind == "accessory" else [v / 1000 for v in part["com_mm"]]
    return [box(part["mass_g"] / 1000, com, size)]


def place_all(rig):
    """Fitted parts by id, in file order."""
    by_id = {p["id"]: p for p in rig.get("parts", [])}
    placed = {}

    def fitted(part):
        while True:
            if part.get("off"):
                return False
            host = part["on"].split(":")[0]
            if host == "bow":
                return True
            part = by_id[host]

    def place(part):
        if part["id"] in placed:
            return placed[part["id"]]
        host, _, socket = part["on"].partition(":")
        if part["kind"] == "accessory":
            root = np.array(part["at_mm"], float) / 1000
            p = Placed(part, root, np.eye(3), solids_of(part), root)
        elif part.get("along_mm") is not None and part["kind"] == "weights":
            bar = place(by_id[host])
            root = bar.root + bar.axes[:, 0] * part["along_mm"] / 1000
            p = Placed(part, root, bar.axes, solids_of(part),
                       root + bar.axes[:, 0] * length_of(part))
        else:
            if host == "bow":
                mount = next(m for m in rig["bow"]["mounts"] if m["id"] == socket)
                at, axis = np.array(mount["at_mm"], float) / 1000, mount["axis"]
            elif socket:
                carrier = place(by_id[host])
                s = next(s for s in by_id[host]["sockets"] if s["id"] == socket)
                at = carrier.root + carrier.axes @ (np.array(s["at_mm"], float) / 1000)
                axis = np.array(s["axis"], float)
                axis = carrier.axes @ (axis / np.linalg.norm(axis))
            else:
                carrier = place(by_id[host])
                at, axis = carrier.end, carrier.axes[:, 0]
            axes = frame(direction(frame(axis), part.get("swing_deg", 0), part.get("lift_deg", 0)))
            end = at + axes[:, 0] * (length_of(part) if part["kind"] != "bracket" else 0)
            p = Placed(part, at, axes, solids_of(part), end)
        placed[part["id"]] = p
        return p

    for part in rig.get("parts", []):
        if fitted(part):
            place(part)
    return {p["id"]: placed[p["id"]] for p in rig.get("parts", []) if p["id"] in placed}


# --- cant -------------------------------------------------------------------------------------

class Roll:
    def __init__(self, mass, com, draw, nock):
        beta = math.atan2(nock, draw)
        self.cosb = math.cos(beta)
        self.mg = mass * G
        self.y = com[1]
        self.w = com[0] * math.sin(beta) + com[2] * math.cos(beta)

    def torque(self, phi):
        return -self.mg * self.cosb * (self.y * math.cos(phi) - self.w * math.sin(phi))

    def stiffness(self, phi):
        """−dτ/dφ."""
        return self.mg * self.cosb * (-self.y * math.sin(phi) - self.w * math.cos(phi))

    def settle(self, k, b):
        """First zero the way the torque pushes, or (None, that way)."""
        f = lambda p: self.torque(p) - k * p + b
        start = f(0.0)
        if start == 0:
            return (0.0, 0) if -self.stiffness(0) - k < 0 else (None, 0)
        way = math.copysign(1, start)
        limit = way * math.radians(60)
        grid = np.linspace(0, limit, 20001)
        torque = -self.mg * self.cosb * (self.y * np.cos(grid) - self.w * np.sin(grid))
        beyond = np.flatnonzero((torque - k * grid + b) * start <= 0)
        if not len(beyond):
            return None, way
        lo, hi = grid[beyond[0] - 1], grid[beyond[0]]
        return brentq(f, lo, hi, xtol=1e-300, rtol=8.9e-16), way

    def bubble(self, phi):
        return math.asin(self.cosb * math.sin(phi))


def fit_hand(checks):
    """(K, B, covariance) of the archer's checks in use."""
    rolls = [Roll(c["mass_g"] / 1000, np.array(c["com_mm"]) / 1000, c["draw_length_mm"] / 1000,
                  c["nock_height_mm"] / 1000) for c in checks]
    read = [math.radians(c["bubble_deg"]) for c in checks]
    sd = [math.radians(c.get("sd_deg", 0.3)) for c in checks]

    def residuals(p):
        out = []
        for roll, b, s in zip(rolls, read, sd):
            phi, way = roll.settle(p[0], p[1])
            guess = roll.bubble(phi) if phi is not None else way * math.radians(60)
            out.append((b - guess) / s)
        return np.array(out + [(p[0] - 2) / 1.5, p[1] / 0.3])

    def jacobian(p):
        rows = []
        for roll, s in zip(rolls, sd):
            phi, _ = roll.settle(p[0], p[1])
            if phi is None:
                rows.append([0, 0])
                continue
            slope = roll.cosb * math.cos(phi) / math.sqrt(1 - (roll.cosb * math.sin(phi)) ** 2)
            give = p[0] + roll.stiffness(phi)
            rows.append([slope * phi / give / s, -slope / give / s])
        return np.array(rows + [[1 / 1.5, 0], [0, 1 / 0.3]])

    best = None
    for k0 in (0.2, 0.7, 2, 4):
        for b0 in (-0.4, 0, 0.4):
            fit = least_squares(residuals, [k0, b0], jac=jacobian, bounds=([0.05, -np.inf], np.inf),
                                xtol=1e-15, ftol=1e-15, gtol=1e-15, x_scale="jac")
            if best is None or fit.cost < best.cost - 1e-13:
                best = fit
    p = best.x.copy()
    held = p[0] < 0.05 + 1e-7
    if held:
        p[0] = 0.05
    for _ in range(400):
        # Gauss–Newton to the last digits: least_squares stops a little early.
        j, r = jacobian(p), residuals(p)
        if held:
            step = np.array([0, -(j[:, 1] @ r) / (j[:, 1] @ j[:, 1])])
        else:
            step = -np.linalg.solve(j.T @ j, j.T @ r)
        p = p + step
        if np.abs(step).max() < 1e-15:
            break
    j = jacobian(p)
    return p[0], p[1], np.linalg.inv(j.T @ j)


# --- clearance --------------------------------------------------------------------------------

def point_segment(p, a, b):
    ab = b - a
    t = 0 if ab @ ab == 0 else min(1, max(0, (p - a) @ ab / (ab @ ab)))
    return np.linalg.norm(p - (a + t * ab))


def segment_segment(a, b, c, d):
    """Least over the four ends and, where it lies inside both, the common perpendicular."""
    best = min(point_segment(a, c, d), point_segment(b, c, d), point_segment(c, a, b),
               point_segment(d, a, b))
    u, v, w = b - a, d - c, a - c
    n = np.cross(u, v)
    if n @ n > 1e-24 * (u @ u) * (v @ v):
        m = np.column_stack([u, -v, n])
        s, t, _ = np.linalg.solve(m, -w)
        if 0 <= s <= 1 and 0 <= t <= 1:
            best = min(best, abs(w @ n) / np.linalg.norm(n))
    return best


def inside(p, tri):
    n = np.cross(tri[1] - tri[0], tri[2] - tri[0])
    return all(np.cross(tri[(i + 1) % 3] - tri[i], p - tri[i]) @ n >= 0 for i in range(3))


def segment_triangle(a, b, tri):
    n = np.cross(tri[1] - tri[0], tri[2] - tri[0])
    n = n / np.linalg.norm(n)
    ha, hb = (a - tri[0]) @ n, (b - tri[0]) @ n
    if ha * hb <= 0 and ha != hb and inside(a + (b - a) * ha / (ha - hb), tri):
        return 0.0
    best = min(segment_segment(a, b, tri[i], tri[(i + 1) % 3]) for i in range(3))
    for p, h in ((a, ha), (b, hb)):
        if inside(p - h * n, tri):
            best = min(best, abs(h))
    return best


def clearance(rig, placed, draw, nock):
    bow = rig["bow"]
    if "axle_to_axle_mm" not in bow or "brace_height_mm" not in bow:
        return None, None
    half, brace = bow["axle_to_axle_mm"] / 2000, bow["brace_height_mm"] / 1000
    tri = np.array([[-draw, 0, nock], [-brace, 0, half], [-brace, 0, -half]])
    best = None, None
    for ident, p in placed.items():
        part = p.part
        if part["kind"] in ("bracket", "accessory"):
            continue
        if part["kind"] == "weights" and part["count"] == 0:
            continue
        d = (part["outer_mm"] if part["kind"] == "bar" else part["diameter_mm"]) / 1000
        gap = segment_triangle(p.root, p.end, tri) - d / 2
        if best[0] is None or gap < best[0]:
            best = gap, ident
    return best


# --- bars -------------------------------------------------------------------------------------

def beam_lambda(n):
    """Smallest root of the tip-mass equation, in high precision to keep off cancellation."""
    from mpmath import mp, mpf, cos, cosh, sin, sinh
    mp.dps = 40
    n, lo, hi = mpf(n), mpf("1e-9"), mpf("1.8752")
    f = lambda x: 1 + cos(x) * cosh(x) - n * x * (sin(x) * cosh(x) - cos(x) * sinh(x))
    # f falls all the way from 2 at x = 0 to the root, which lies below that of the bare beam.
    while hi - lo > lo * mpf("1e-14"):
        mid = (lo + hi) / 2
        lo, hi = (mid, hi) if f(mid) > 0 else (lo, mid)
    return float(lo)


def bend(part, ident, placed):
    """Droop, slope, clamped frequency, or nothing for a bar that does not bend."""
    length = part["length_mm"] / 1000
    tube = part["mass_g"] - part.get("root_fitting_g", 0) - part.get("tip_fitting_g", 0)
    if not part.get("modulus_gpa") or length == 0 or tube <= 0:
        return None
    tube /= 1000
    d = placed[ident].axes[:, 0]
    level = math.hypot(d[0], d[1])
    second = math.pi * (part["outer_mm"] ** 4 - part["inner_mm"] ** 4) / 64 * 1e-12
    ei = part["modulus_gpa"] * 1e9 * second

    def hanging(ident):
        return placed[ident].mass + sum(hanging(i) for i, q in placed.items()
                                        if q.part["on"].split(":")[0] == ident)

    tip, along = part.get("tip_fitting_g", 0) / 1000, []
    for i, q in placed.items():
        if q.part["on"].split(":")[0] != ident:
            continue
        if q.part.get("along_mm") is not None:
            s = min(length, (q.part["along_mm"] + q.part["count"] * q.part["each_mm"] / 2) / 1000)
            along.append((hanging(i), s))
        else:
            tip += hanging(i)
    load, w = tip * G * level, tube / length * G * level
    droop = load * length ** 3 / (3 * ei) + w * length ** 4 / (8 * ei)
    slope = load * length ** 2 / (2 * ei) + w * length ** 3 / (6 * ei)
    shaken = tip
    for m, s in along:
        p = m * G * level
        droop += p * s * s * (3 * length - s) / (6 * ei)
        slope += p * s * s / (2 * ei)
        shaken += m * ((3 * s * s * length - s ** 3) / (2 * length ** 3)) ** 2
    lam = beam_lambda(shaken / tube)
    hz = lam ** 2 / (2 * math.pi) * math.sqrt(ei / (tube * length ** 3))
    return {"id": ident, "droop_mm": droop * 1000, "slope_deg": math.degrees(slope),
            "clamped_hz": hz}


# --- the report -------------------------------------------------------------------------------

def six(t):
    return [t[0, 0], t[1, 1], t[2, 2], t[0, 1], t[0, 2], t[1, 2]]


def report(rig):
    archer, bow = rig.get("archer", {}), rig["bow"]
    draw = archer.get("draw_length_mm", 680) / 1000
    nock = archer.get("nock_height_mm", 40) / 1000
    stature = archer.get("stature_mm", 1750) / 1000
    body = archer.get("body_mass_g", 72000) / 1000
    placed = place_all(rig)

    bow_mass = bow["mass_g"] / 1000
    bow_com = np.array(bow["com_mm"], float) / 1000
    bow_tensor = bow_mass * np.diag([(k / 1000) ** 2 for k in bow["gyration_mm"]])
    solids = [(bow_mass, bow_com, bow_tensor)] + [s for p in placed.values() for s in p.solids]
    mass = math.fsum(m for m, _, _ in solids)
    com = sum(m * c for m, c, _ in solids) / mass
    about = lambda point: sum(shifted(t, m, c - point) for m, c, t in solids)
    grip, centre, at_nock = about(np.zeros(3)), about(com), about(np.array([-draw, 0, nock]))
    moments, axes = np.linalg.eigh(centre)
    vectors = []
    for i in range(3):
        v = axes[:, i]
        vectors.append(list(v if v[np.argmax(np.abs(v))] > 0 else -v))

    roll = Roll(mass, com, draw, nock)
    hand = archer.get("hand", {})
    checks = [c for c in hand.get("bubble_tests", []) if not c.get("aside")]
    if checks:
        k, b, cov = fit_hand(checks)
    else:
        k, b = hand.get("roll_stiffness_nm_per_rad", 2.0), hand.get("roll_bias_nm", 0.0)
        cov = None
    phi, _ = roll.settle(k, b)
    interval = None
    if phi is not None and cov is not None:
        g = np.array([-phi, 1.0])
        sd = math.sqrt(g @ cov @ g) / abs(k + roll.stiffness(phi))
        interval = [math.degrees(phi - 1.6448536269514722 * sd),
                    math.degrees(phi + 1.6448536269514722 * sd)]

    def share(ident, m, c):
        return {"id": ident, "mass_g": m * 1000, "com_mm": None if m == 0 else list(c * 1000),
                "roll_moment_nm": -G * m * c[1] * roll.cosb if m else 0.0,
                "pitch_moment_nm": G * m * c[0] if m else 0.0}

    parts = [share("bow", bow_mass, bow_com)]
    for ident, p in placed.items():
        parts.append(share(ident, p.mass, p.com if p.mass else np.zeros(3)))

    pitch = mass * G * com[0]
    nock_load = pitch / draw
    arm = mass * G + nock_load
    gap, nearest = clearance(rig, placed, draw, nock)
    bars = [bend(p.part, i, placed) for i, p in placed.items() if p.part["kind"] == "bar"]
    coupled = math.sqrt(grip[0, 0] * grip[2, 2])
    return {
        "mass_g": mass * 1000, "com_mm": list(com * 1000),
        "inertia_com_kg_m2": six(centre), "inertia_grip_kg_m2": six(grip),
        "principal_kg_m2": list(moments), "parts": parts,
        "roll": {
            "moment_nm": roll.torque(0), "below_axis_mm": -roll.w * 1000,
            "gravity_stiffness_nm_per_rad": roll.stiffness(0), "hand_stiffness_nm_per_rad": k,
            "hand_bias_nm": b, "hand_is": "fitted" if checks else "assumed",
            "cant_deg": None if phi is None else math.degrees(phi),
            "bubble_deg": None if phi is None else math.degrees(roll.bubble(phi)),
            "cant_90_deg": interval, "stable": phi is not None},
        "pitch": {
            "moment_nm": pitch, "nock_load_n": nock_load, "bow_arm_load_n": arm,
            "shoulder_moment_nm": arm * 0.386 * stature + 0.050 * body * G * 0.530 * 0.332 * stature,
            "release_pitch_rad_s2": pitch / grip[1, 1] if grip[1, 1] else None},
        "hold": {"inertia_nock_kg_m2": six(at_nock),
                 "cross_coupling": abs(grip[0, 2]) / coupled if coupled else None},
        "clearance": {"mm": None if gap is None else gap * 1000, "part": nearest},
        "principal_axes": vectors, "bars": [b for b in bars if b],
    }


if __name__ == "__main__":
    with open(sys.argv[1], encoding="utf-8") as f:
        print(json.dumps(report(json.load(f)), indent=1))
