# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Seeded random rigs that pass the file format's rules but that no one would build: deep chains,
odd axes, empty stacks, parts switched off, masses of zero, any file order."""

import math
import random

import numpy as np

import reference


def axis(r):
    """Any direction and length, with the awkward ones often."""
    awkward = [[1, 0, 0], [-1, 0, 0], [0, 1, 0], [0, -1, 0], [0, 0, 1], [0, 0, -1],
               [0.005, 0.99999, 0], [0.02, 1, 0.01], [1, 0, 1e-12], [0, 0.3, 1], [-1, 1e-7, 0]]
    if r.random() < 0.4:
        return r.choice(awkward)
    while True:
        v = [r.uniform(-1, 1) for _ in range(3)]
        if sum(x * x for x in v) > 0.01:
            k = 10 ** r.uniform(-3, 3)
            return [x * k for x in v]


def angle(r, most):
    return r.choice([0, 0, r.randint(-most, most), r.uniform(-most, most), 90, -90, 180])


def bar(r):
    outer = r.uniform(3, 40)
    part = {"kind": "bar", "length_mm": r.choice([r.uniform(1, 900), 305, 762]), "outer_mm": outer,
            "inner_mm": r.choice([0, outer * r.uniform(0, 0.99)]), "mass_g": r.uniform(0, 400)}
    if r.random() < 0.6:
        part["root_fitting_g"] = part["mass_g"] * r.uniform(0, 0.4)
        part["tip_fitting_g"] = part["mass_g"] * r.uniform(0, 0.4)
        part["fitting_mm"] = r.uniform(0, part["length_mm"])
    if r.random() < 0.7:
        part["modulus_gpa"] = r.uniform(0.1, 400)
    return part


def stack(r):
    diameter = r.uniform(5, 60)
    return {"kind": "weights", "count": r.choice([0, 1, 5, r.randint(0, 40)]),
            "each_g": r.choice([28.35, 0, r.uniform(0, 120)]), "diameter_mm": diameter,
            "each_mm": r.uniform(0, 12), "bore_mm": r.choice([0, diameter * r.uniform(0, 0.9)])}


def damper(r):
    return {"kind": "damper", "mass_g": r.uniform(0, 90), "length_mm": r.uniform(0, 60),
            "diameter_mm": r.uniform(10, 40)}


def bracket(r):
    return {"kind": "bracket", "mass_g": r.choice([0, r.uniform(0, 200)]),
            "com_mm": [r.uniform(-20, 40) for _ in range(3)],
            "size_mm": [r.uniform(0, 60) for _ in range(3)],
            "sockets": [{"id": f"s{i}", "at_mm": [r.uniform(-30, 40) for _ in range(3)],
                         "axis": axis(r)} for i in range(r.randint(1, 3))]}


def accessory(r, n):
    part = {"kind": "accessory", "id": f"acc{n}", "on": "bow", "mass_g": r.uniform(0, 400),
            "at_mm": [r.uniform(-200, 300) for _ in range(3)],
            "size_mm": [r.uniform(0, 300) for _ in range(3)]}
    if r.random() < 0.5:
        part["aperture_mm"] = [290, -8, 120]
    return part


def checks(r, base):
    """One to five checks of an archer whose hand is drawn from the prior, read with noise: checks
    that contradict each other wildly have their best hand on the very edge of toppling, where no
    two computations agree."""
    k, b = max(0.4, r.gauss(2, 1.5)), r.gauss(0, 0.3)
    out = []
    for _ in range(r.randint(1, 5)):
        com = [r.uniform(-50, 120), r.uniform(-12, 12), r.uniform(-90, 10)]
        mass, draw, nock = base * r.uniform(0.8, 1.2), r.uniform(550, 780), r.uniform(-20, 80)
        roll = reference.Roll(mass / 1000, np.array(com) / 1000, draw / 1000, nock / 1000)
        cant, _ = roll.settle(k, b)
        if cant is None:
            continue
        sd = r.choice([0.3, r.uniform(0.15, 1)])
        out.append({"date": "2026-03-01", "mass_g": mass, "com_mm": com, "draw_length_mm": draw,
                    "nock_height_mm": nock, "sd_deg": sd,
                    "bubble_deg": math.degrees(roll.bubble(cant)) + r.gauss(0, sd)})
    return [c for c in out if abs(c["bubble_deg"]) < 59]


def rig(seed, most_parts=24):
    r = random.Random(seed)
    mounts = [{"id": f"m{i}", "at_mm": [r.uniform(-80, 120) for _ in range(3)], "axis": axis(r)}
              for i in range(r.randint(1, 5))]
    free = [(f"bow:{m['id']}", 1) for m in mounts]
    parts, bars = [], []
    for n in range(r.randint(0, most_parts)):
        kind = r.choice([bar, bar, stack, stack, damper, bracket, accessory])
        if kind is accessory:
            parts.append(accessory(r, n))
            continue
        if not free:
            break
        place, depth = free.pop(r.randrange(len(free)))
        if depth > 14:
            continue
        part = {"id": f"p{n}", "on": place, "swing_deg": angle(r, 60), "lift_deg": angle(r, 45),
                **kind(r)}
        if r.random() < 0.1:
            part["off"] = True
        parts.append(part)
        if kind is bracket:
            free += [(f"p{n}:{s['id']}", depth + 1) for s in part["sockets"]]
        else:
            free.append((f"p{n}", depth + 1))
        if kind is bar:
            bars.append((part, depth))
    for n, (host, depth) in enumerate(bars):
        if r.random() < 0.3:
            part = {"id": f"along{n}", "on": host["id"], **stack(r),
                    "along_mm": r.uniform(0, host["length_mm"])}
            parts.append(part)
            if r.random() < 0.5:
                parts.append({"id": f"beyond{n}", "on": part["id"], **damper(r)})
    r.shuffle(parts)
    bow = {"kind": r.choice(["compound", "recurve", "barebow"]), "mass_g": r.uniform(800, 2500),
           "com_mm": [r.uniform(-40, 30), r.uniform(-8, 8), r.uniform(-30, 30)],
           "gyration_mm": [r.uniform(250, 450), r.uniform(250, 450), r.uniform(30, 80)],
           "mounts": mounts}
    archer = {"bow_hand": r.choice(["left", "right"]), "draw_length_mm": r.uniform(500, 800),
              "nock_height_mm": r.choice([0, 42, r.uniform(-100, 200)])}
    if r.random() < 0.8:
        bow["axle_to_axle_mm"] = r.uniform(700, 1750)
        bow["brace_height_mm"] = r.uniform(120, 250)
    hand = {}
    if r.random() < 0.5:
        hand = {"roll_stiffness_nm_per_rad": r.uniform(0.2, 6), "roll_bias_nm": r.uniform(-0.3, 0.3)}
    if r.random() < 0.5:
        hand["bubble_tests"] = checks(r, bow["mass_g"])
        if len(hand["bubble_tests"]) > 1 and r.random() < 0.3:
            hand["bubble_tests"][0]["aside"] = True
    if hand:
        archer["hand"] = hand
    if r.random() < 0.5:
        archer["stature_mm"], archer["body_mass_g"] = r.uniform(1400, 2000), r.uniform(40e3, 120e3)
    return {"format": "plumbhold-rig", "version": 1, "name": f"random {seed}", "archer": archer,
            "bow": bow, "parts": parts}
