# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""The hand, the next bubble check, how sure it all is, and measuring the bow, a second time.

Written from the pages alone (deciding, sections 4 and 6; physics, sections 4 and 10). How sure:
the cant's slope is closed in mass and first moment; only the slope of a first moment by a set angle
is numerical (central differences at two widths, Richardson), which leaves about 1e-10 of itself.
"""

import math

import numpy as np

import decide_level
import decide_model as dm


# --- the hand ---------------------------------------------------------------------------------

def check_of(rig, bubble_deg, sd_deg=0.3):
    """A reading of the rig as it stands."""
    r = rig.record[0]
    return {"mass_g": r[0] * 1000, "com_mm": list(r[1:4] / r[0] * 1000),
            "draw_length_mm": rig.draw * 1000, "nock_height_mm": rig.nock * 1000,
            "bubble_deg": bubble_deg, "sd_deg": sd_deg}


def tests_of(rig, tests):
    if not tests:
        return []
    c = dm.Checks(tests)
    guess, _ = c.model(rig.k, rig.b)
    left = (c.read - guess) / c.sd
    return [{"index": i, "bubble_deg": t["bubble_deg"], "predicted_deg": math.degrees(guess[i]),
             "residual_sd": left[i], "disagrees": bool(abs(left[i]) > 2.5)}
            for i, t in enumerate(tests)]


def aimed_at(rig, edge):
    """(record, cant) of the rig about to be tried: Level's first single, or the open rig."""
    now = decide_level.now_of(rig)
    if now is None or abs(now - rig.wanted) > 0.5 + edge.tolerance:
        found = decide_level.level(rig, edge=edge)["answers"]
        single = next((f for f in found if len(f["changes"]) == 1), None)
        if single:
            c = single["changes"][0]
            record, _ = rig.vary({(c["part"], c["key"]): np.array([c["to"]], float)})
            return record, rig.cant(record)
    return rig.record, rig.cant(rig.record)


def reachable(rig, edge):
    """(changes, record, cant, steps, order) of every check within reach, as it is first."""
    out = [([], rig.record, rig.cant(rig.record)[0], 0)]
    if not rig.is_fitted:
        return out
    for a in decide_level.adjustables(rig):
        if a.key == "count":
            ks = [k for k in (-4, -2, 2, 4) if k in a.k]
        else:
            ends = a.k[0], a.k[-1]
            ks = sorted({int(e) for e in ends} | {math.trunc(e / 2) for e in ends})
        ks = np.array([k for k in ks if k], int)
        if not len(ks):
            continue
        record, made = rig.vary({(a.part, a.key): a.now + ks.astype(float)})
        phi = rig.cant(record)
        good = rig.clear(made, np.arange(len(ks)), edge.gap)
        good &= np.abs(rig.bubble(phi)) <= 6 + edge.tolerance
        for row in np.flatnonzero(good):
            out.append(([a.change(ks[row])], record[row:row + 1], phi[row], abs(int(ks[row]))))
    return [o for o in out if not np.isnan(o[2])]


def next_checks(rig, edge=decide_level.Edge()):
    record, phi = aimed_at(rig, edge)
    as_it_is = {"changes": [], "interval_now_deg": None, "interval_then_deg": None}
    if np.isnan(phi[0]):
        return [] if rig.is_fitted else [as_it_is], False
    half = lambda cov: float(np.degrees(dm.Z90 * rig.cant_sd(record, phi, cov))[0])
    now, found = half(rig.cov), []
    for changes, r, cant, steps in reachable(rig, edge):
        a, _, w = rig.roll(r)
        s = float((rig.k - a * w)[0]) * math.radians(0.3)
        row = np.array([cant, -1.0]) / s
        then = half(np.linalg.inv(np.linalg.inv(rig.cov) + np.outer(row, row)))
        found.append({"changes": changes, "interval_now_deg": now, "interval_then_deg": then,
                      "_steps": steps})
    if not found and not rig.is_fitted:
        return [{**as_it_is, "interval_now_deg": now}], False
    # Nothing within reach narrows nothing.
    best = min((f["interval_then_deg"] for f in found), default=now)
    near = [f for f in found if f["interval_then_deg"] <= best * (1.1 + edge.group)]
    near.sort(key=lambda f: (f["_steps"], f["interval_then_deg"]))
    rest = [f for f in found if not any(f is n for n in near)]
    rest.sort(key=lambda f: f["interval_then_deg"])
    # A hand that is only assumed is never sure enough (the page does not say it).
    return (near + rest)[:3], rig.is_fitted and (now < 0.3 or best > 0.95 * now)


def hand(rig, edge=decide_level.Edge()):
    tests = rig.data.get("archer", {}).get("hand", {}).get("bubble_tests", [])
    suggestions, enough = next_checks(rig, edge)
    return {"is": "fitted" if rig.is_fitted else "assumed", "stiffness_nm_per_rad": rig.k,
            "bias_nm": rig.b, "covariance": [rig.cov[0, 0], rig.cov[0, 1], rig.cov[1, 1]],
            "tests": tests_of(rig, tests), "next": suggestions, "enough": enough}


# --- how sure ---------------------------------------------------------------------------------

BOW = {"mass_g": ([150], [40], [3]), "com_mm": ([12, 4, 12], [8, 3, 8], [2, 2, 2]),
       "gyration_mm": (12, 8, 3)}
PART_PERCENT, PART_MM = (8, 3, 0.5), (8, 4, 1)
SOURCES = ("guessed", "catalogue", "measured")


class Quantity:
    """One uncertain number or triple: slopes of mass and first moment, its sd, sd if measured
    (usual: by source; None for a key that only a written sd makes uncertain)."""

    def __init__(self, owner, key, slopes, usual):
        never = usual is None
        usual = usual or [[0.0] * len(slopes)] * 3
        self.what, self.key = owner.get("id", "bow"), key
        self.source = owner.get("source", "catalogue")
        self.slopes = [np.concatenate([[dm_], ds]) for dm_, ds in slopes]
        given = owner.get("sd", {}).get(key)
        self.measured = np.array(usual[2], float)
        self.sd = np.array(usual[SOURCES.index(self.source)], float)
        if given is not None:
            self.sd = np.atleast_1d(np.array(given, float))
        self.measured = self.sd if never else np.minimum(self.measured, self.sd)


def percent(value, shares):
    return [[s / 100 * value] for s in shares]


def bow_quantities(rig):
    bow, zero = rig.bow, np.zeros(3)
    m, c = bow["mass_g"], np.array(bow["com_mm"], float)
    unit = np.eye(3) * m / 1e6
    yield Quantity(bow, "mass_g", [(1e-3, c / 1e6)], BOW["mass_g"])
    yield Quantity(bow, "com_mm", [(0.0, u) for u in unit], BOW["com_mm"])
    g = np.array(bow["gyration_mm"], float)
    yield Quantity(bow, "gyration_mm", [(0.0, zero)] * 3, [s / 100 * g for s in BOW["gyration_mm"]])


def part_quantities(rig, ident):
    part, piece, zero = rig.by_id[ident], rig.pieces[ident], np.zeros(3)
    kind, axes = part["kind"], piece.axes[0]
    middle = (piece.root[0] + piece.end[0]) / 2
    if kind == "weights":
        n = part["count"]
        yield Quantity(part, "each_g", [(n * 1e-3, n * middle * 1e-3)],
                       percent(part["each_g"], PART_PERCENT))
        return
    at = middle
    if kind == "bracket":
        at = piece.root[0] + axes @ (np.array(part["com_mm"], float) / 1000)
    yield Quantity(part, "mass_g", [(1e-3, at * 1e-3)], percent(part["mass_g"], PART_PERCENT))
    if kind in ("bracket", "accessory"):
        key = "com_mm" if kind == "bracket" else "at_mm"
        yield Quantity(part, key, [(0.0, part["mass_g"] / 1e6 * axes[:, i]) for i in range(3)],
                       [[s] * 3 for s in PART_MM])
    if kind in ("bar", "bracket"):
        for key in ("swing_deg", "lift_deg"):
            yield Quantity(part, key, [(0.0, slope_of(rig, ident, key))], [[1.0]] * 3)


def written(rig, ident):
    """What has an sd of its own in the file and none by default: slopes by placing the part anew."""
    part = rig.by_id[ident]
    usual = {"each_g"} if part["kind"] == "weights" else {"mass_g", "com_mm", "at_mm"}
    for key in part.get("sd", {}):
        if key in usual or key.endswith("_deg") or not isinstance(part.get(key), (int, float)):
            continue
        h = 1e-3 * (abs(part[key]) or 1)
        f = []
        for n in (-2, -1, 1, 2):
            data = {**rig.data, "parts": [{**p, key: p[key] + n * h} if p is part else p
                                          for p in rig.data["parts"]]}
            f.append(dm.Rig(data, hand=rig.hand).record[0, :4])
        slope = (8 * (f[2] - f[1]) - (f[3] - f[0])) / (12 * h)
        yield Quantity(part, key, [(slope[0], slope[1:])], None)


def slope_of(rig, ident, key):
    """Slope of the first moment by an angle. A part may stand exactly where the frames of what
    hangs on it turn over (physics, section 2): no hand that sets the angle a degree off turns
    anything over, so there the slope is that of the side without the jump."""
    now, h = rig.by_id[ident].get(key, 0), 0.002
    steps = np.array([-3, -2, -1, -0.01, 0, 0.01, 1, 2, 3])
    f = rig.vary({(ident, key): now + steps * h})[0][:, 1:4]
    jump = [np.abs(f[n] - f[4]).max() > 0.2 * np.abs(f[w] - f[4]).max() + 1e-13
            for n, w in ((3, 2), (5, 6))]
    if jump[0] == jump[1]:
        return (8 * (f[6] - f[2]) - (f[7] - f[1])) / (12 * h)
    side = 1 if jump[0] else -1
    one, two, three = (f[4 + side * (1 + n)] for n in (1, 2, 3))
    return side * (-11 * f[4] + 18 * one - 9 * two + 2 * three) / (6 * h)


def very_rig(rig):
    """Whether a check in use was read on this rig: mass within 0.5 g, mass centre 0.05 mm (what
    the program says; the page names no figure)."""
    r = rig.record[0]
    com = r[1:4] / r[0] * 1000
    return any(abs(t["mass_g"] - r[0] * 1000) <= 0.5
               and np.linalg.norm(np.array(t["com_mm"]) - com) <= 0.05
               for t in dm.in_use(rig.data.get("archer", {}).get("hand", {})))


def sure(rig):
    r, phi = rig.record, rig.cant(rig.record)
    mass, com = r[0, 0], r[0, 1:4] / r[0, 0]
    a, y, w = (v[0] for v in rig.roll(r))
    p = phi[0]
    give = rig.k + a * (-y * math.sin(p) - w * math.cos(p))
    absorbed = very_rig(rig)

    def cant_slope(q):
        """Degrees of cant per unit of the quantity."""
        ds = q[1:]
        dw = ds[0] * rig.sinb + ds[2] * rig.cosb
        return math.degrees(-dm.G * rig.cosb * (ds[1] * math.cos(p) - dw * math.sin(p)) / give)

    quantities = list(bow_quantities(rig))
    for ident in rig.fitted:
        quantities += [*part_quantities(rig, ident), *written(rig, ident)]
    quantities = [q for q in quantities if np.any(q.sd)]  # nothing unsure, nothing to list
    total_com = np.zeros(3)
    for q in quantities:
        slopes = np.array([cant_slope(s) for s in q.slopes])
        if absorbed and q.what == "bow" and q.key == "com_mm":
            slopes[1] = 0
        q.variance = float(np.sum((slopes * q.sd) ** 2))
        q.left = float(np.sum((slopes * q.measured) ** 2))
        for s, sd in zip(q.slopes, q.sd):
            total_com += ((s[1:] - com * s[0]) / mass * sd * 1000) ** 2
    total = math.fsum(q.variance for q in quantities)
    settled = not math.isnan(p)
    rows = [{"what": q.what, "key": q.key, "source": q.source,
             "share_of_cant_variance": q.variance / total if settled and total else None,
             "if_measured_cant_sd_deg":
             math.sqrt(max(0, total - q.variance + q.left)) if settled else None}
            for q in quantities]
    if settled:
        rows.sort(key=lambda f: -(f["share_of_cant_variance"] or 0))
    return {"cant_sd_deg": math.sqrt(total) if settled else None,
            "com_sd_mm": list(np.sqrt(total_com)), "from": rows}
