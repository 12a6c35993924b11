#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""plumbhold-calc steps, level, hand, sure and measure against the second computation in
decide_*.py: every example rig and many random ones with no, one and several bubble checks.
Usage: test_decide_reference.py CALC DATA_FOLDER [HOW_MANY]."""

import glob
import itertools
import json
import os
import random
import subprocess
import sys
import tempfile

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
import decide_level
import decide_measure
import decide_model
import decide_rigs
import decide_sure
import random_rigs
import reference

CALC, DATA = sys.argv[1], sys.argv[2]
HOW_MANY = int(sys.argv[3]) if len(sys.argv) > 3 else 200

# Everything closed is held to relative 1e-9, with an absolute floor of 1e-10: differences of larger
# numbers (a bubble of 1e-3 degrees, a change of a load) keep their last digits, and so does a small
# B that is fitted beside a large K.
CLOSED = 1e-9, 1e-10
# Slopes of balance point and cant are central differences in the program (a thousandth of a mm, g
# or degree) and, for set angles, here: 1e-9 of themselves, 1e-7 where a part points so nearly along
# ±y that its frame spins within a degree.
SLOPES = 1e-7, 5e-8

counts = {"compared": 0, "tied": 0, "on the edge of toppling": 0, "refused": 0, "brute pairs": 0}


# --- comparing --------------------------------------------------------------------------------

def differences(got, want, size, path=""):
    if isinstance(want, dict):
        for key, value in want.items():
            if key.startswith("_"):
                continue
            if key in ("reason", "refused"):
                if bool(got.get(key)) != bool(value):
                    yield f"{path}.{key}: {got.get(key)!r} against {value!r}"
            elif not isinstance(got, dict) or key not in got:
                yield f"{path}.{key} is missing"
            else:
                yield from differences(got[key], value, size, f"{path}.{key}")
    elif isinstance(want, list):
        if not isinstance(got, list) or len(got) != len(want):
            yield f"{path}: {len(got)} against {len(want)}: {brief(got)} against {brief(want)}"
            return
        for i, value in enumerate(want):
            yield from differences(got[i], value, size, f"{path}[{i}]")
    elif isinstance(want, bool) or want is None or isinstance(want, str):
        if got != want:
            yield f"{path}: {got!r} against {want!r}"
    elif got is None or isinstance(got, str) or abs(got - want) > size[0] * abs(want) + size[1]:
        yield f"{path}: {got!r} against {want!r}"


def brief(rows):
    return [r.get("changes", r) if isinstance(r, dict) else r for r in rows][:4]


def ask(command, path, *options):
    run = subprocess.run([CALC, command, path, *map(str, options), "--json"], capture_output=True,
                         text=True)
    assert run.returncode == 0, f"{command} exits {run.returncode}: {run.stderr[:300]}"
    return json.loads(run.stdout)


def decided(name, got, make):
    """Differences of a decision; those at an edge of rounding (decide_level.Edge) are counted."""
    counts["compared"] += 1
    wrong = list(differences(got, make(decide_level.Edge()), CLOSED))
    if wrong and any(not list(differences(got, make(e), CLOSED)) for e in decide_level.EDGES):
        counts["tied"] += 1
        return []
    return [f"{name} {line}" for line in wrong]


def most(result, n):
    return {**result, "answers": result["answers"][:n]}


def by_share(rows):
    return {(r["what"], r["key"]): r for r in rows}


def sure(rig, path):
    """Rows by name: shares may be equal. Their order is held on what the program printed."""
    got, want = ask("sure", path), decide_sure.sure(rig)
    shares = [r["share_of_cant_variance"] for r in got["from"]]
    wrong = [] if None in shares or shares == sorted(shares, reverse=True) else [
        "the shares do not fall"]
    a, b = by_share(got.pop("from")), by_share(want.pop("from"))
    wrong += list(differences(got, want, SLOPES))
    if set(a) != set(b):
        wrong.append(f"rows differ: {set(a) ^ set(b)}")
    for key in set(a) & set(b):
        wrong += list(differences(a[key], b[key], SLOPES, f"{key}"))
    return [f"sure {line}" for line in wrong]


def added(rig, path, r):
    """hand --add: the same as with the reading in the file."""
    bubble = (decide_level.now_of(rig) or 0) + r.gauss(0, 0.5)
    sd = r.choice([None, 0.15, 0.6])
    check = decide_sure.check_of(rig, bubble, sd or 0.3)
    data = json.loads(json.dumps(rig.data))
    data.setdefault("archer", {}).setdefault("hand", {}).setdefault("bubble_tests", []).append(check)
    with_it = decide_model.Rig(data)
    if not with_it.certain:
        counts["on the edge of toppling"] += 1
        return []
    options = ["--add", bubble] + (["--sd", sd] if sd else [])
    return decided("hand --add", ask("hand", path, *options),
                   lambda edge: decide_sure.hand(with_it, edge))


def promise(rig, result):
    """The exact contract: the answer's changes in the file, reported, give the bubble promised
    (reference.report, which shares nothing with the search but frames and solids)."""
    for a in result["answers"]:
        changed = {(c["part"], c["key"]): c["to"] for c in a["changes"]}
        parts = [{**p, **{k: v for (i, k), v in changed.items() if i == p["id"]}}
                 for p in rig.data["parts"]]
        bubble = bubble_of(rig, parts)
        if bubble is None or abs(bubble - a["bubble_deg"]) > 1e-9:
            yield f"promise: {a['changes']} gives {bubble}, not {a['bubble_deg']}"


def bubble_of(rig, parts):
    data = {**rig.data, "parts": parts}
    placed = reference.place_all(data)
    bow = data["bow"]
    mass = bow["mass_g"] / 1000
    first = mass * reference.np.array(bow["com_mm"]) / 1000
    for p in placed.values():
        mass += p.mass
        first = first + sum(m * c for m, c, _ in p.solids)
    roll = reference.Roll(mass, first / mass, rig.draw, rig.nock)
    phi, _ = roll.settle(rig.k, rig.b)
    return None if phi is None else float(rig.bubble(phi))


def compare(path, seed, also=None):
    """All commands, and of level's other kinds and hand --add those in also (default: one)."""
    also = [seed % 4] if also is None else also
    r = random.Random(f"options {seed}")
    with open(path, encoding="utf-8") as f:
        rig = decide_model.Rig(json.load(f))
    if not rig.certain:
        counts["on the edge of toppling"] += 1
        return []
    wrong = [f"steps {line}" for line in
             differences(ask("steps", path), decide_level.steps(rig), CLOSED)]
    wrong += decided("hand", ask("hand", path), lambda edge: decide_sure.hand(rig, edge))
    wrong += sure(rig, path)
    got = ask("level", path, "--most", 5000)
    wrong += decided("level", got, lambda edge: decide_level.level(rig, edge=edge))
    wrong += promise(rig, got)
    target, tolerance = r.choice([0, 2, r.uniform(-6, 6)]), r.choice([0.5, 0.05, r.uniform(0.1, 3)])
    options = ["--target", target, "--tolerance", tolerance]
    if 0 in also:
        wrong += decided("level --most", ask("level", path, *options, "--most", 3), lambda edge: most(
            decide_level.level(rig, target, tolerance, edge), 3))
    now = decide_level.now_of(rig)
    if 1 in also and now is not None:
        target = now + r.uniform(-0.4, 0.4)
        wrong += decided("lighter", ask("level", path, "--target", target, "--lighter"),
                         lambda edge: most(decide_level.lighter(rig, target, edge=edge), 10))
    if 2 in also:
        options = ["--target", target, "--tolerance", 3 * tolerance, "--other-side"]
        wrong += decided("other side", ask("level", path, *options), lambda edge: most(
            decide_level.other_side(rig, target, 3 * tolerance, edge), 10))
    if 3 in also:
        wrong += added(rig, path, r)
    return wrong


# --- measuring --------------------------------------------------------------------------------

def readings(r, rig):
    """One reading of each kind, as the rig would give it, with its errors."""
    mass, com = rig.record[0, 0], rig.record[0, 1:4] / rig.record[0, 0] * 1000
    d = r.choice([-1, 1]) * r.uniform(100, 500)
    second = mass * reference.G * com[0] / d
    yield {"scales": {"f1_n": mass * reference.G - second + r.gauss(0, 0.05), "f2_n": second,
                      "d_mm": d, "sd_n": r.uniform(0.01, 0.2), "sd_mm": r.uniform(0.2, 2)}}
    lines = []
    for _ in range(r.randint(2, 5)):
        n = reference.np.array([r.uniform(-1, 1) for _ in range(3)])
        p = com + n * r.uniform(50, 400) + [r.gauss(0, 4) for _ in range(3)]
        lines.append({"point_mm": list(p), "direction": list(n), "sd_mm": r.uniform(0.5, 4)})
    yield {"hanging": {"lines": lines}}
    axis, n = r.choice("xyz"), r.randint(5, 30)
    sds = {"sd_mass_g": r.uniform(0, 10), "sd_seconds": r.uniform(0, 0.2)}
    yield {"swing": {"axis": axis, "mass_g": mass * 1000, "distance_mm": r.uniform(300, 600),
                     "swings": n, "seconds": n * r.uniform(1.1, 1.9), **sds,
                     "sd_distance_mm": r.uniform(0, 3)}}
    yield {"two-string": {"axis": axis, "mass_g": mass * 1000, "spacing_mm": r.uniform(150, 500),
                          "length_mm": r.uniform(600, 2000), "swings": n,
                          "seconds": n * r.uniform(1, 6), **sds,
                          "sd_spacing_mm": r.uniform(0, 2), "sd_length_mm": r.uniform(0, 3)}}


def measured(path, seed, folder):
    r, wrong = random.Random(f"measure {seed}"), []
    with open(path, encoding="utf-8") as f:
        rig = decide_model.Rig(json.load(f))
    for reading in readings(r, rig):
        name = os.path.join(folder, "readings.json")
        with open(name, "w", encoding="utf-8") as f:
            json.dump(reading, f)
        got, want = ask("measure", path, name), decide_measure.measure(rig, reading)
        counts["refused"] += "refused" in want
        wrong += [f"{list(reading)} {line}" for line in
                  differences(got, {"refused": None, **want}, SLOPES)]
    return wrong


# --- brute force ------------------------------------------------------------------------------

def brute(path):
    """Every whole step of every single and pair of a small rig through reference.report's own
    placement, one file at a time: which land within the tolerance, and what Level lists."""
    with open(path, encoding="utf-8") as f:
        rig = decide_model.Rig(json.load(f))
    got, wrong = ask("level", path, "--most", 5000, "--tolerance", 0.05)["answers"], []
    if decide_level.is_level(rig, (rig.wanted, 0.05), decide_level.Edge()):
        return ["answers on a level rig"] if got else []
    landing = lambda changes: abs((bubble_of(rig, [
        {**p, **{c["key"]: c["to"] for c in changes if c["part"] == p["id"]}}
        for p in rig.data["parts"]]) or 1e9) - rig.wanted) <= 0.05
    moves = [[a.change(k) for k in a.k if k] for a in decide_level.adjustables(rig)]
    singles = {a for a, m in enumerate(moves) if any(landing([c]) for c in m)}
    pairs = set() if singles else {(a, b) for a, b in itertools.combinations(range(len(moves)), 2)
                                   if any(landing([c, d]) for c in moves[a] for d in moves[b])}
    name = lambda i: (moves[i][0]["part"], moves[i][0]["key"])
    want = {(name(a),) for a in singles} | {(name(a), name(b)) for a, b in pairs}
    have = {tuple((c["part"], c["key"]) for c in a["changes"]) for a in got
            if abs(a["bubble_deg"] - rig.wanted) <= 0.05}
    counts["brute pairs"] += len(pairs)
    if have != want:
        wrong.append(f"listed {have}, by brute force {want}")
    return wrong


def small(seed):
    """No string to keep off, two steps each way, half of the parts locked; the bubble wanted is one
    that two changes bring."""
    data = decide_rigs.rig(seed)
    data["bow"].pop("brace_height_mm", None)
    for n, p in enumerate(data["parts"]):
        p["locked"] = n % 2 == seed % 2 or n > 7
        p["limits"] = {k: [max(-180 if k != "count" else 0, p.get(k, 0) - 2), p.get(k, 0) + 2]
                       for k in ("swing_deg", "lift_deg", "count")
                       if k in p and (k != "lift_deg" or p["kind"] == "bar")
                       and (k != "swing_deg" or p["kind"] in ("bar", "bracket"))}
    rig, r = decide_model.Rig(data), random.Random(f"small {seed}")
    some = decide_level.adjustables(rig)
    if len(some) > 1:
        record, _ = rig.vary({(a.part, a.key): reference.np.array([a.values[r.choice([0, -1])]])
                              for a in r.sample(some, 2)})
        bubble = float(rig.bubble(rig.cant(record))[0])
        if abs(bubble) < 29:
            data["archer"]["wanted_bubble_deg"] = bubble
    return data


def many():
    """Over forty adjustables: pairs among the forty whose single comes nearest."""
    data = decide_rigs.rig(7)
    r = random.Random(41)
    data["bow"]["mounts"] += [{"id": f"x{i}", "at_mm": [r.uniform(-40, 40), r.uniform(-9, 9), -90],
                               "axis": [-1, r.uniform(-1, 1), 0]} for i in range(16)]
    for i in range(16):
        bar = decide_rigs.bar(r, f"x{i}", f"bow:x{i}", (50, 150))
        stack = decide_rigs.stack(r, f"x{i}w", f"x{i}")
        for p in (bar, stack):
            p.pop("locked", None)
            p["limits"] = {k: [p[k] - (0 if k == "count" else 1), p[k] + 1]
                           for k in ("swing_deg", "lift_deg", "count") if k in p}
        data["parts"] += [bar, stack]
    return data


# --- all --------------------------------------------------------------------------------------

def case(name, wrong):
    for line in wrong[:6]:
        print(f"# {name}: {line[:600]}")
    print(f"{'FAILED' if wrong else 'ok'} {name}", flush=True)
    return not wrong


def main():
    good = True
    for i, path in enumerate(sorted(glob.glob(os.path.join(DATA, "*.rig.json")))):
        name = os.path.basename(path)[:-len(".rig.json")].replace("-", "_")
        good &= case(f"decisions_on_{name}_agree_with_the_reference", compare(path, i, range(4)))
    with tempfile.TemporaryDirectory() as folder:
        path = os.path.join(folder, "random.rig.json")

        def write(data):
            with open(path, "w", encoding="utf-8") as f:
                json.dump(data, f)
            return path

        for seed in range(HOW_MANY):
            good &= case(f"decisions_on_random_rig_{seed}_agree", compare(
                write(decide_rigs.rig(seed)), seed))
        for seed in range(HOW_MANY // 20):
            good &= case(f"decisions_on_odd_rig_{seed}_agree", compare(
                write(random_rigs.rig(1000 + seed, 7)), seed))
            good &= case(f"measuring_the_bow_of_random_rig_{seed}_agrees", measured(
                write(decide_rigs.rig(seed)), seed, folder))
            good &= case(f"level_on_small_rig_{seed}_is_what_brute_force_finds", brute(
                write(small(seed))))
        good &= case("pairs_of_more_than_forty_adjustables_agree", compare(write(many()), 0))
    print(f"# {counts}")
    good &= case("cases_at_an_edge_are_under_two_in_a_hundred", [] if max(
        counts["tied"], counts["on the edge of toppling"]) <= 0.02 * counts["compared"] else [
            str(counts)])
    good &= case("brute_force_had_pairs_to_find_and_some_readings_were_refused",
                 [] if counts["brute pairs"] and counts["refused"] else [str(counts)])
    return 0 if good else 1


sys.exit(main())
