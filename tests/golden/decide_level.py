# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""What one step does, and which change centres the bubble, a second time: by trying every value.

Every whole step of every adjustable and of every pair of them is tried; nothing is pruned but by
one exact bound on the equilibrium (so that few combinations need their zero found). Written from
the page on deciding (sections 1 to 3) alone.

Choices at the edge of rounding (two values equally near, a bubble on the tolerance, a chance on the
edge of its group, a part on the 15 mm) hang on the last digits. `Edge` moves those edges by a hair;
a program that agrees with the reference under any such shift has made the same decision.
"""

import dataclasses
import itertools
import math

import numpy as np
from scipy.special import ndtr

import decide_model as dm


@dataclasses.dataclass(frozen=True)
class Edge:
    tolerance: float = 0.0
    group: float = 0.0
    gap: float = 0.0
    near: float = 0.0


EDGES = [Edge(near=1e-9)] + [Edge(**{name: s * size}) for name, size in
                             (("tolerance", 1e-9), ("group", 1e-9), ("gap", 1e-11)) for s in (1, -1)]


# --- what may change --------------------------------------------------------------------------

class Adjustable:
    def __init__(self, index, rig, ident, key):
        part = rig.by_id[ident]
        self.index, self.part, self.key = index, ident, key
        self.now = part.get(key, 0)
        usual = {"swing_deg": (-60, 60), "lift_deg": (-45, 45), "count": (0, 12)}[key]
        lo, hi = part.get("limits", {}).get(key, usual)
        self.lo, self.hi = min(lo, self.now), max(hi, self.now)
        first = math.ceil(self.lo - self.now - 1)
        last = math.floor(self.hi - self.now + 1)
        ks = np.arange(first, last + 1)
        self.k = ks[(self.now + ks >= self.lo) & (self.now + ks <= self.hi)]

    @property
    def values(self):
        return self.now + self.k.astype(float)

    def change(self, k):
        return {"part": self.part, "key": self.key, "from": self.now, "to": self.now + int(k)}


def points_forward(rig, ident):
    return rig.pieces[ident].axes[0, 0, 0] > 0.7


def adjustables(rig):
    out = []
    for ident in rig.fitted:
        part = rig.by_id[ident]
        keys = {"bar": ["swing_deg", "lift_deg"], "bracket": ["swing_deg"],
                "weights": ["count"]}.get(part["kind"], [])
        if part.get("locked"):
            keys = []
        if part["kind"] != "weights" and points_forward(rig, ident):
            keys = [k for k in keys if k in part.get("limits", {})]
        for key in keys:
            a = Adjustable(len(out), rig, ident, key)
            if len(a.k) > 1:
                out.append(a)
    return out


# --- one step ---------------------------------------------------------------------------------

def numbers(rig, record, phi):
    """One row a variant: bubble, front pull, arm load, grams, inertia in per cent of now."""
    return np.column_stack([rig.bubble(phi), rig.pull(record), rig.arm(record),
                            record[:, 0] * 1000, record[:, 4:] / rig.record[:, 4:] * 100])


def steps(rig):
    out = []
    for a in adjustables(rig):
        ks = [k for k in (-1, 0, 1) if k in a.k]
        record, _ = rig.vary({(a.part, a.key): a.now + np.array(ks, float)})
        f = numbers(rig, record, rig.cant(record))
        d = (f[-1] - f[0]) / (ks[-1] - ks[0])
        out.append({"part": a.part, "key": a.key, "now": a.now, "step": 1, "lo": a.lo, "hi": a.hi,
                    "bubble_deg_per_step": None if np.isnan(d[0]) else d[0],
                    "front_pull_nm_per_step": d[1], "arm_load_n_per_step": d[2],
                    "mass_g_per_step": d[3], "inertia_percent_per_step": list(d[4:])})
    return {"adjustables": out}


# --- answers ----------------------------------------------------------------------------------

def answer(rig, record, phi, row, goal, changes, adjusts, steps_):
    r = record[row:row + 1]
    return {"changes": changes, "bubble_deg": float(rig.bubble(phi[row])),
            "chance": float(chances(rig, r, phi[row:row + 1], goal)[0]),
            "mass_g": r[0, 0] * 1000, "front_pull_nm": rig.pull(r)[0],
            "arm_load_n": rig.arm(r)[0], "inertia_grip_kg_m2": list(r[0, 4:]),
            "disturbance": float(rig.disturbance(r)[0]), "_steps": steps_, "_order": adjusts}


def chances(rig, record, phi, goal):
    target, tolerance = goal
    slope = rig.cosb * np.cos(phi) / np.sqrt(1 - (rig.cosb * np.sin(phi)) ** 2)
    sd = np.degrees(rig.cant_sd(record, phi)) * slope
    off = rig.bubble(phi) - target
    return ndtr((tolerance - off) / sd) - ndtr((-tolerance - off) / sd)


def in_order(chance, disturbance, steps_, order, edge):
    """Indices: the best chance left and all within ten points of it, by disturbance; and so on."""
    left, out = sorted(range(len(chance)), key=lambda i: -chance[i]), []
    while left:
        reach = chance[left[0]] - 0.1 - edge.group
        group = [i for i in left if chance[i] >= reach]
        out += sorted(group, key=lambda i: (round(disturbance[i], 9), steps_[i], order[i]))
        left = left[len(group):]
    return out


def first_in_order(chance, disturbance, steps_, edge):
    group = np.flatnonzero(chance >= chance.max() - 0.1 - edge.group)
    return group[np.lexsort((steps_[group], np.round(disturbance[group], 9)))[0]]


class Search:
    def __init__(self, rig, goal, edge):
        self.rig, self.goal, self.edge = rig, goal, edge
        self.adjust = adjustables(rig)
        self.alone = {}
        for a in self.adjust:
            record, made = rig.vary({(a.part, a.key): a.values})
            self.alone[a.index] = record, made

    def within(self, bubble):
        return np.abs(bubble - self.goal[0]) <= self.goal[1] + self.edge.tolerance

    # --- singles ---

    def single(self, a):
        """(row of the nearest value, its distance, the answer or None)."""
        rig, (target, _) = self.rig, self.goal
        record, made = self.alone[a.index]
        phi = rig.cant(record)
        usable = rig.clear(made, np.arange(len(a.k)), self.edge.gap) | (a.k == 0)
        bubble = np.where(usable, rig.bubble(phi), np.nan)
        away = np.abs(bubble - target)
        if np.isnan(away).all():
            return None, math.inf, None
        near = np.flatnonzero(away <= np.nanmin(away) + self.edge.near)
        row = min(near, key=lambda i: (abs(a.k[i]), a.k[i]))
        if a.k[row] == 0:
            return row, away[row], None
        between = any(0 <= n < len(a.k) and (bubble[n] - target) * (bubble[row] - target) <= 0
                      for n in (row - 1, row + 1))
        found = None
        if self.within(bubble[row]) or between:
            found = answer(rig, record, phi, row, self.goal, [a.change(a.k[row])], (a.index,),
                           abs(int(a.k[row])))
        return row, away[row], found

    # --- pairs ---

    def pair_records(self, a, b):
        """(rows of a, rows of b, records, pieces) of every combination; the pieces are those of
        the two alone where neither part stands below the other."""
        rig = self.rig
        i, j = (g.ravel() for g in np.meshgrid(np.arange(len(a.k)), np.arange(len(b.k)),
                                               indexing="ij"))
        if rig.below[a.part] & rig.below[b.part]:
            record, made = rig.vary({(a.part, a.key): a.values[i], (b.part, b.key): b.values[j]})
            return i, j, record, [(made, None)]
        (ra, ma), (rb, mb) = self.alone[a.index], self.alone[b.index]
        return i, j, ra[i] + rb[j] - rig.record, [(ma, i), (mb, j)]

    def maybe(self, record):
        """Rows that may settle within the tolerance: the torque left changes its sign between the
        window's ends, or could touch zero between them (second derivative at most a·hypot)."""
        rig, (target, tolerance) = self.rig, self.goal
        side = lambda deg: math.asin(np.clip(math.sin(math.radians(np.clip(deg, -89, 89)))
                                             / rig.cosb, -1, 1))
        lo, hi = (side(target + s * (tolerance + 1e-6)) for s in (-1, 1))
        a, y, w = rig.roll(record)
        left, right = (-a * (y * np.cos(p) - w * np.sin(p)) - rig.k * p + rig.b for p in (lo, hi))
        bend = a * np.hypot(y, w) * (hi - lo) ** 2 / 8
        return np.flatnonzero((left * right <= 0) | (np.minimum(abs(left), abs(right)) <= bend))

    def landing(self, a, b, allowed):
        """(rows of a, rows of b, records, cants) of the allowed combinations that land within the
        tolerance and keep off the string."""
        rig = self.rig
        i, j, record, made = self.pair_records(a, b)
        rows = self.maybe(record)
        rows = rows[allowed(a.k[i[rows]], b.k[j[rows]])]
        phi = rig.cant(record[rows])
        good = self.within(rig.bubble(phi))
        rows, phi = rows[good], phi[good]
        if made[0][1] is None:
            clear = rig.clear(made[0][0], rows, self.edge.gap)
        else:
            # Each half alone stands in a rig whose other parts are as now, and now is always
            # admissible: so the pair is clear exactly where both halves are.
            clear = np.ones(len(rows), bool)
            for m, index in made:
                clear &= rig.clear(m, index[rows], self.edge.gap)
        rows, phi = rows[clear], phi[clear]
        return i[rows], j[rows], record[rows], phi

    def pair(self, a, b):
        i, j, record, phi = self.landing(a, b, lambda ka, kb: (ka != 0) & (kb != 0))
        if not len(i):
            return None
        steps_ = np.abs(a.k[i]) + np.abs(b.k[j])
        row = first_in_order(chances(self.rig, record, phi, self.goal),
                             self.rig.disturbance(record), steps_, self.edge)
        return answer(self.rig, record, phi, row, self.goal,
                      [a.change(a.k[i[row]]), b.change(b.k[j[row]])], (a.index, b.index),
                      int(steps_[row]))


def sort_answers(found, edge):
    order = in_order([f["chance"] for f in found], [f["disturbance"] for f in found],
                     [f["_steps"] for f in found], [f["_order"] for f in found], edge)
    return [found[i] for i in order]


def now_of(rig):
    phi = rig.cant(rig.record)
    return None if np.isnan(phi[0]) else float(rig.bubble(phi)[0])


def goal_of(rig, target, tolerance):
    return (rig.wanted if target is None else target, 0.5 if tolerance is None else tolerance)


def is_level(rig, goal, edge):
    now = now_of(rig)
    return now is not None and abs(now - goal[0]) <= goal[1] + edge.tolerance


def result(rig, goal, found):
    return {"now_deg": now_of(rig), "target_deg": goal[0], "answers": found,
            "reason": not found}


def level(rig, target=None, tolerance=None, edge=Edge()):
    goal = goal_of(rig, target, tolerance)
    if (goal, edge) not in rig.kept:
        rig.kept[goal, edge] = level_of(rig, goal, edge)
    return rig.kept[goal, edge]


def level_of(rig, goal, edge):
    if is_level(rig, goal, edge):
        return result(rig, goal, [])
    s = Search(rig, goal, edge)
    singles = [(s.single(a), a) for a in s.adjust]
    found = [f for (_, _, f), _ in singles if f]
    if not any(s.within(f["bubble_deg"]) for f in found):
        among = sorted(singles, key=lambda t: (t[0][1], t[1].index))[:40]
        among = sorted((a for _, a in among), key=lambda a: a.index)
        pairs = [s.pair(a, b) for a, b in itertools.combinations(among, 2)]
        found += [p for p in pairs if p]
    return result(rig, goal, sort_answers(found, edge))


def lighter(rig, target=None, tolerance=None, edge=Edge()):
    """For each stack behind the grip, alone and with each angle, its least weight that some value
    of the angle keeps level; of those values the first in order."""
    goal = goal_of(rig, target, tolerance)
    if not is_level(rig, goal, edge):
        return result(rig, goal, [])
    s, found = Search(rig, goal, edge), []
    for stack in s.adjust:
        if stack.key != "count" or not behind(rig, stack):
            continue
        for other in s.adjust:
            if other.key == "count" and other is not stack:
                continue
            pick = trimmed(s, stack, other)
            if pick:
                found.append(pick)
    found = [f for f in found if f["_saved"] > 1e-9]
    out = []
    for _, group in itertools.groupby(sorted(found, key=lambda f: -f["_saved"]),
                                      key=lambda f: round(f["_saved"], 9)):
        out += sort_answers(list(group), edge)
    return result(rig, goal, out)


def behind(rig, stack):
    piece = rig.pieces[stack.part]
    return piece.root[0, 0] + piece.end[0, 0] < 0


def trimmed(s, stack, other):
    a, b = sorted((stack, other), key=lambda x: x.index)
    if stack is other:
        record, made = s.alone[stack.index]
        phi = s.rig.cant(record)
        rows = np.flatnonzero((stack.k < 0) & s.within(s.rig.bubble(phi)))
        i = j = rows[s.rig.clear(made, rows, s.edge.gap)]
        record, phi = record[i], phi[i]
    elif a is stack:
        i, j, record, phi = s.landing(a, b, lambda ka, kb: (ka < 0) & (kb != 0))
    else:
        i, j, record, phi = s.landing(a, b, lambda ka, kb: (ka != 0) & (kb < 0))
    if not len(i):
        return None
    down = stack.k[i if a is stack else j]
    rows = np.flatnonzero(down == down.min())
    steps_ = np.abs(a.k[i]) + (0 if stack is other else np.abs(b.k[j]))
    row = rows[first_in_order(chances(s.rig, record[rows], phi[rows], s.goal),
                              s.rig.disturbance(record[rows]), steps_[rows], s.edge)]
    changes = [a.change(a.k[i[row]])] + ([] if stack is other else [b.change(b.k[j[row]])])
    found = answer(s.rig, record, phi, row, s.goal, changes,
                   tuple(sorted({a.index, b.index})), int(steps_[row]))
    found["_saved"] = (s.rig.record[0, 0] - record[row, 0]) * 1000
    return found


# --- the other side ---------------------------------------------------------------------------

def other_side(rig, target=None, tolerance=None, edge=Edge()):
    """Each bar or bracket off the plane, reflected in it with all that hangs on it."""
    goal = goal_of(rig, target, tolerance)
    found = []
    if is_level(rig, goal, edge):
        return result(rig, goal, found)
    for index, ident in enumerate(rig.fitted):
        part, piece = rig.by_id[ident], rig.pieces[ident]
        if part["kind"] not in ("bar", "bracket") or part.get("locked"):
            continue
        if abs(piece.axes[0, 1, 0]) <= 0.02 and abs(piece.root[0, 1]) <= 0.005:
            continue
        record = rig.record.copy()
        record[0, 2] -= 2 * sum(rig.pieces[i].record[0, 2] for i in rig.below[ident])
        phi = rig.cant(record)
        if np.isnan(phi[0]):
            continue
        f = answer(rig, record, phi, 0, goal,
                   [{"part": ident, "key": "mirror", "from": False, "to": True}], (index,), 1)
        off, was = f["bubble_deg"] - goal[0], (now_of(rig) or math.nan) - goal[0]
        between = off * was <= 0 and abs(off) < abs(was)
        if abs(off) <= goal[1] + edge.tolerance or between:
            found.append(f)
    return result(rig, goal, sort_answers(found, edge))
