# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Seeded random rigs that leave something to decide: near enough to what people build that the
bubble can be centred, with everything that changes what may be proposed — locks, limits, several
stacks, weights along bars, brackets, sources and sds, checks with several draws, wanted bubbles."""

import math
import random

import numpy as np

import decide_model
import random_rigs


def spread(r, part, keys):
    """Source and sd, sometimes."""
    if r.random() < 0.6:
        part["source"] = r.choice(["guessed", "catalogue", "measured"])
    if r.random() < 0.25:
        key = r.choice(keys)
        part["sd"] = {key: [r.uniform(0, 15) for _ in range(3)] if key in ("com_mm", "at_mm")
                      else r.uniform(0, 30)}
    return part


def limits(r, part):
    if r.random() < 0.12:
        part["locked"] = True
    keys = {"bar": ["swing_deg", "lift_deg"], "bracket": ["swing_deg"],
            "weights": ["count"]}.get(part["kind"], [])
    for key in keys:
        if r.random() < 0.45:
            now = part.get(key, 0)
            if key == "count":
                pair = [max(0, now - r.randint(0, 6)), now + r.randint(0, 6)]
            else:
                pair = [max(-180, now - r.choice([0, r.uniform(0, 25), r.randint(0, 40)])),
                        min(180, now + r.choice([0, r.uniform(0, 25), r.randint(0, 40)]))]
                if r.random() < 0.15:
                    pair = [pair[1] + 1, min(180, pair[1] + 9)]  # now stands outside
                    pair.sort()
            part.setdefault("limits", {})[key] = pair
    return part


def angle(r, most):
    return r.choice([0, r.randint(-most, most), r.uniform(-most, most)])


def bar(r, ident, on, length):
    outer = r.uniform(10, 22)
    part = {"id": ident, "kind": "bar", "on": on, "swing_deg": angle(r, 35),
            "lift_deg": angle(r, 25), "length_mm": r.uniform(*length), "outer_mm": outer,
            "inner_mm": outer * r.uniform(0, 0.95), "mass_g": r.uniform(40, 200)}
    if r.random() < 0.5:
        part.update(root_fitting_g=r.uniform(0, 20), tip_fitting_g=r.uniform(0, 20),
                    fitting_mm=r.uniform(2, 20))
    return limits(r, spread(r, part, ["mass_g", "length_mm", "swing_deg"]))


def stack(r, ident, on):
    part = {"id": ident, "kind": "weights", "on": on, "count": r.choice([0, 1, r.randint(0, 9)]),
            "each_g": r.choice([28.35, 14.2, r.uniform(5, 60)]), "diameter_mm": r.uniform(15, 40),
            "each_mm": r.uniform(2, 10)}
    return limits(r, spread(r, part, ["each_g", "each_mm"]))


def bracket(r, ident, on):
    sockets = [{"id": f"s{i}", "at_mm": [r.uniform(0, 25), r.uniform(-25, 25), r.uniform(-9, 9)],
                "axis": r.choice([[1, 0, 0], [0, 1, 0], [0, -1, 0], [1, r.uniform(-1, 1), 0.1],
                                  [-0.7, r.uniform(-1, 1), 0], random_rigs.axis(r)])}
               for i in range(r.randint(1, 3))]
    part = {"id": ident, "kind": "bracket", "on": on, "swing_deg": angle(r, 30),
            "lift_deg": angle(r, 20), "mass_g": r.choice([0, r.uniform(20, 150)]),
            "com_mm": [r.uniform(0, 20), r.uniform(-8, 8), r.uniform(-5, 5)],
            "size_mm": [r.uniform(5, 40) for _ in range(3)], "sockets": sockets}
    return limits(r, spread(r, part, ["mass_g", "com_mm"]))


def hang(r, parts, ident, on, deep):
    """A bar and what goes on it: stacks along it, at its end, on one another; or a bracket."""
    if deep and r.random() < 0.35:
        parts.append(bracket(r, ident, on))
        for s in parts[-1]["sockets"]:
            if r.random() < 0.8:
                hang(r, parts, f"{ident}-{s['id']}", f"{ident}:{s['id']}", False)
        return
    parts.append(bar(r, ident, on, (180, 420)))
    length = parts[-1]["length_mm"]
    if r.random() < 0.3:
        parts.append({**stack(r, f"{ident}-ring", ident), "along_mm": r.uniform(0, length)})
    end = ident
    for n in range(r.choice([0, 1, 1, 2])):
        if r.random() < 0.25:
            d = spread(r, {"id": f"{end}d", "kind": "damper", "on": end, "mass_g": r.uniform(5, 60),
                           "length_mm": r.uniform(5, 40), "diameter_mm": 24}, ["mass_g"])
            parts.append(d)
            end = d["id"]
        parts.append(stack(r, f"{ident}-w{n}", end))
        end = f"{ident}-w{n}"


def checks(r, data, how_many):
    """Readings by one hand of the prior, each of a rig like this one, or of this one itself."""
    k, b = max(0.4, r.gauss(2, 1)), r.gauss(0, 0.15)
    rig, out = decide_model.Rig(data), []
    for n in range(how_many):
        m = rig.record[0, 0] * 1000
        com = rig.record[0, 1:4] / rig.record[0, 0] * 1000
        if n or r.random() < 0.6:
            m *= r.uniform(0.9, 1.1)
            com = com + [r.uniform(-25, 25), r.uniform(-6, 6), r.uniform(-20, 20)]
        beta = rig.beta
        a = np.array([m / 1000 * decide_model.G * rig.cosb])
        w = (com[0] * math.sin(beta) + com[2] * math.cos(beta)) / 1000
        cant = decide_model.settle(a, com[1] / 1000, w, k, b)[0]
        draws = r.choice([1, 1, 2, 3])
        sd = r.choice([0.3, r.uniform(0.15, 0.8)])
        if math.isnan(cant) or abs(rig.bubble(cant)) > 50:
            continue
        seen = [float(rig.bubble(cant)) + r.gauss(0, sd) for _ in range(draws)]
        mean = sum(seen) / draws
        check = {"date": "2026-03-01", "mass_g": m, "com_mm": [float(c) for c in com],
                 "draw_length_mm": rig.draw * 1000, "nock_height_mm": rig.nock * 1000,
                 "bubble_deg": mean}
        if draws > 1:
            s = math.sqrt(sum((x - mean) ** 2 for x in seen) / (draws - 1))
            check.update(draws_deg=seen, sd_deg=max(0.15, s / math.sqrt(draws)))
        elif r.random() < 0.7:
            check["sd_deg"] = sd
        if r.random() < 0.15:
            check["aside"] = True
        out.append(check)
    return out


def rig(seed):
    """Every third rig has no check, one check, several checks."""
    r = random.Random(f"decide {seed}")
    mounts = [{"id": "front", "at_mm": [r.uniform(20, 80), 0, r.uniform(-100, -40)],
               "axis": [1, 0, 0]},
              {"id": "rear", "at_mm": [r.uniform(-40, 0), r.uniform(-12, 12),
                                       r.uniform(-180, -80)],
               "axis": r.choice([[-1, 0, 0], [-1, 0, 0], [0, 1, 0], [0, -1, 0], [-1, 0.4, 0]])},
              {"id": "low", "at_mm": [r.uniform(0, 40), 0, r.uniform(-260, -180)],
               "axis": r.choice([[1, 0, 0], [-1, 0, -0.3], [0, 0, -1]])}]
    parts = []
    if r.random() < 0.9:
        front = bar(r, "front", "bow:front", (500, 800))
        front["swing_deg"], front["lift_deg"] = r.choice([0, 0, 3]), r.choice([0, -8, 4])
        if "limits" in front and r.random() < 0.6:
            del front["limits"]
        parts += [front, stack(r, "front-w", "front")]
    hang(r, parts, "rear", "bow:rear", True)
    if r.random() < 0.4:
        hang(r, parts, "low", "bow:low", False)
    for n in range(r.randint(0, 2)):
        parts.append(spread(r, {
            "id": f"acc{n}", "kind": "accessory", "on": "bow", "mass_g": r.uniform(10, 350),
            "at_mm": [r.uniform(-30, 200), r.uniform(-45, 20), r.uniform(20, 120)],
            "size_mm": [r.uniform(0, 200) for _ in range(3)]}, ["mass_g", "at_mm"]))
    for part in parts:
        if r.random() < 0.03:
            part["off"] = True
    r.shuffle(parts)
    bow = spread(r, {"kind": "compound", "mass_g": r.uniform(1300, 2300),
                     "com_mm": [r.uniform(-40, 10), r.uniform(-6, 6), r.uniform(-20, 30)],
                     "gyration_mm": [r.uniform(280, 420), r.uniform(280, 420), r.uniform(40, 70)],
                     "mounts": mounts}, ["mass_g", "com_mm"])
    if r.random() < 0.8:
        bow["axle_to_axle_mm"] = r.uniform(800, 1700)
        bow["brace_height_mm"] = r.uniform(150, 240)
    archer = {"draw_length_mm": r.uniform(580, 760), "nock_height_mm": r.uniform(0, 70)}
    if r.random() < 0.3:
        archer["wanted_bubble_deg"] = r.choice([2, -1.5, r.uniform(-4, 4)])
    data = {"format": "plumbhold-rig", "version": 1, "name": f"decide {seed}", "archer": archer,
            "bow": bow, "parts": parts}
    if r.random() < 0.5:
        archer["hand"] = {"roll_stiffness_nm_per_rad": r.uniform(0.8, 4),
                          "roll_bias_nm": r.uniform(-0.2, 0.2)}
    how_many = (0, 1, r.randint(2, 4))[seed % 3]
    if how_many:
        archer.setdefault("hand", {})["bubble_tests"] = checks(r, data, how_many)
    return data
