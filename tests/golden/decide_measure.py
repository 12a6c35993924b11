# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Measuring the bow, a second time: from the pages alone (physics, section 10; deciding, 6).

The bow's own value is a plain function of what was read, of the bow's other numbers and of the
record of the parts that were on; all its slopes are taken numerically (central differences at two
widths), where the program uses the formulas of the page.
"""

import math

import numpy as np

import decide_model as dm
import decide_sure

FIELDS = {"scales": ["f1_n", "f2_n", "d_mm"],
          "swing": ["mass_g", "distance_mm", "seconds"],
          "two-string": ["mass_g", "spacing_mm", "length_mm", "seconds"]}


def slope(f, at, h):
    at, h = np.array(at, float), np.asarray(h, float)
    step = lambda i, n: f(at + n * h[i] * np.eye(len(at))[i])
    return np.array([(8 * (step(i, 1) - step(i, -1)) - (step(i, 2) - step(i, -2))) / (12 * h[i])
                     for i in range(len(at))])


def parts_record(rig):
    """Mass, first moment and tensor diagonal about the grip of all parts."""
    return rig.record[0] - rig.bow_record


def parts_spread(rig):
    """[(slopes of the parts' record, sd)] of every uncertain number of every part."""
    if "spread" not in rig.kept:
        rig.kept["spread"] = spread_of(rig)
    return rig.kept["spread"]


def spread_of(rig):
    out = []
    for ident in rig.fitted:
        rows = [*decide_sure.part_quantities(rig, ident), *decide_sure.written(rig, ident)]
        for q in rows:
            value = np.atleast_1d(np.array(rig.by_id[ident].get(q.key, 0), float))
            for i, sd in enumerate(q.sd):
                if sd:
                    out.append((record_slope(rig, ident, q.key, value, i), sd))
    return out


def record_slope(rig, ident, key, value, i):
    def record(x):
        moved = value.copy()
        moved[i] = x[0]
        new = list(moved) if len(moved) > 1 else float(moved[0])
        data = {**rig.data, "parts": [{**p, key: new} if p["id"] == ident else p
                                      for p in rig.data["parts"]]}
        return parts_record(dm.Rig(data, hand=rig.hand))
    return slope(record, [value[i]], [0.02 if key.endswith("_deg") else 1e-3 * (abs(value[i]) or 1)])[0]


def bow_sd(rig):
    return {q.key: q.sd for q in decide_sure.bow_quantities(rig)}


# --- the readings -----------------------------------------------------------------------------

def scales(read, parts):
    f1, f2, d = read
    mass = (f1 + f2) / dm.G - parts[0]
    return np.array([(f2 * d / 1000 / dm.G - parts[1]) / mass * 1000, mass * 1000])


def swing(kind, swings, read):
    """Inertia of the whole about its own mass centre."""
    m, t = read[0] / 1000, read[-1] / swings
    if kind == "swing":
        l = read[1] / 1000
        return m * dm.G * l * t * t / (4 * math.pi ** 2) - m * l * l
    d, h = read[1] / 1000, read[2] / 1000
    return m * dm.G * d * d * t * t / (16 * math.pi ** 2 * h)


def bow_inertia(axis, whole, parts, bow):
    """Of the bow alone about its mass centre; bow = mass g, com mm [3]."""
    m, c = bow[0] / 1000, bow[1:4] / 1000
    centre = (m * c + parts[1:4]) / (m + parts[0])
    off = [i for i in range(3) if i != axis]
    # about the common centre: that about the grip less mass times distance, by parallel axes
    shift = sum(parts[0] * centre[i] ** 2 - 2 * parts[1 + i] * centre[i] for i in off)
    return whole - (parts[4 + axis] + shift) - m * sum((c[i] - centre[i]) ** 2 for i in off)


def hang(lines):
    """Mass centre mm, covariance, greatest distance from a line."""
    a, b, rows = np.zeros((3, 3)), np.zeros(3), []
    for line in lines:
        n = np.array(line["direction"], float) / np.linalg.norm(line["direction"])
        across, p = np.eye(3) - np.outer(n, n), np.array(line["point_mm"], float)
        a += across / line["sd_mm"] ** 2
        b += across @ p / line["sd_mm"] ** 2
        rows.append((across, p))
    c = np.linalg.solve(a, b)
    return c, np.linalg.inv(a), max(np.linalg.norm(x @ (c - p)) for x, p in rows)


def angle_between(lines):
    units = [np.array(l["direction"], float) / np.linalg.norm(l["direction"]) for l in lines]
    return max((math.degrees(math.acos(min(1, abs(u @ v)))) for u in units for v in units),
               default=0)


# --- the answers ------------------------------------------------------------------------------

def measure(rig, readings):
    (kind, r), = readings.items()
    if kind == "scales":
        return by_scales(rig, r)
    if kind == "hanging":
        return by_hanging(rig, r["lines"])
    return by_swing(rig, kind, r)


def refused(quantity):
    return {"quantity": quantity, "value": None, "sd": None, "refused": True}


def by_scales(rig, r):
    read = [r[k] for k in FIELDS["scales"]]
    sd = [r["sd_n"], r["sd_n"], r["sd_mm"]]
    parts = parts_record(rig)
    x, mass = scales(read, parts)
    if mass <= 0:
        return refused("com_x_mm")
    j = slope(lambda v: scales(v, parts), read, [1e-3, 1e-3, 0.1])
    var = np.sum((j * np.array(sd)[:, None]) ** 2, axis=0)
    jp = slope(lambda v: scales(read, v), parts, np.full(7, 1e-5))
    for s, unit in parts_spread(rig):
        var += (s @ jp * unit) ** 2
    sds, bow = bow_sd(rig), rig.bow
    return {"quantity": "com_x_mm", "value": x, "sd": math.sqrt(var[0]),
            "bow": {"com_mm": [x, *bow["com_mm"][1:]], "gyration_mm": bow["gyration_mm"],
                    "mass_g": mass, "source": "measured",
                    "sd": {"com_mm": [math.sqrt(var[0]), *sds["com_mm"][1:]],
                           "gyration_mm": list(sds["gyration_mm"]), "mass_g": math.sqrt(var[1])}}}


def by_hanging(rig, lines):
    c, cov, spread = hang(lines) if angle_between(lines) >= 10 else (0, 0, math.inf)
    if spread > 30:
        return refused("com_mm")
    parts, sds = parts_record(rig), bow_sd(rig)

    def own(v):
        """v = bow mass g, whole's mass centre mm [3], parts [7]."""
        m, p = v[0] / 1000, v[4:]
        return ((m + p[0]) * v[1:4] / 1000 - p[1:4]) / m * 1000

    at = np.concatenate([[rig.bow["mass_g"]], c, parts])
    j = slope(own, at, [0.1, 0.1, 0.1, 0.1] + [1e-5] * 7)
    var = (j[0] * sds["mass_g"][0]) ** 2 + np.diag(j[1:4].T @ cov @ j[1:4])
    for s, unit in parts_spread(rig):
        var += (s @ j[4:] * unit) ** 2
    value, sd = list(own(at)), list(np.sqrt(var))
    return {"quantity": "com_mm", "value": value, "sd": sd, "spread_mm": spread,
            "bow": {"com_mm": value, "gyration_mm": rig.bow["gyration_mm"],
                    "mass_g": rig.bow["mass_g"], "source": "measured",
                    "sd": {"com_mm": sd, "gyration_mm": list(sds["gyration_mm"]),
                           "mass_g": sds["mass_g"][0]}}}


def by_swing(rig, kind, r):
    axis, keys = "xyz".index(r["axis"]), FIELDS[kind]
    name = f"inertia_{r['axis']}_kg_m2"
    parts, sds, bow = parts_record(rig), bow_sd(rig), rig.bow
    n = len(keys)

    def own(v):
        """v = read, bow mass g, bow com mm [3], parts [7]."""
        return bow_inertia(axis, swing(kind, r["swings"], v[:n]), v[n + 4:], v[n:n + 4])

    read = [r[k] for k in keys]
    at = np.concatenate([read, [bow["mass_g"]], bow["com_mm"], parts])
    value = own(at)
    if swing(kind, r["swings"], read) < 0 or value <= 0:
        return refused(name)
    j = slope(own, at, [1e-3 * x for x in read] + [0.1] * 4 + [1e-5] * 7)
    sd = np.concatenate([[r["sd_" + k] for k in keys], sds["mass_g"], sds["com_mm"]])
    var = np.sum((j[:n + 4] * sd) ** 2)
    for s, unit in parts_spread(rig):
        var += (s @ j[n + 4:] * unit) ** 2
    m = bow["mass_g"] / 1000
    k = math.sqrt(value / m) * 1000
    gyration, sd_gyration = list(bow["gyration_mm"]), list(sds["gyration_mm"])
    gyration[axis] = k
    sd_gyration[axis] = k * math.hypot(math.sqrt(var) / (2 * value),
                                       sds["mass_g"][0] / (2 * bow["mass_g"]))
    return {"quantity": name, "value": value, "sd": math.sqrt(var),
            "bow": {"com_mm": bow["com_mm"], "gyration_mm": gyration, "mass_g": bow["mass_g"],
                    "source": "measured", "sd": {"com_mm": list(sds["com_mm"]),
                                                 "gyration_mm": sd_gyration,
                                                 "mass_g": sds["mass_g"][0]}}}
