# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Many variants of one rig at once, for the second computation of what may be changed.

Where the program keeps a tree of mass records and walks through one rig at a time, this places
whole arrays of rigs with numpy: every quantity has a leading axis over the variants. A record is
(mass, mass times mass centre [3], Ixx, Iyy, Izz about the grip). Written from the pages on physics
and on deciding, like reference.py, from which it takes only the frame of an axis and the solids.
"""

import functools
import math

import numpy as np

import reference

G = reference.G
Z90 = 1.6448536269514722
PRIOR = np.diag([1.5 ** 2, 0.3 ** 2])
SIXTY = math.radians(60)


# --- placing arrays of rigs -------------------------------------------------------------------

def frames(axis):
    """As reference.frame, over rows."""
    a = axis / length_of(axis)
    sideways = np.abs(a[:, 1:2]) > 0.9999
    side = -np.where(sideways, a[:, :1], a[:, 1:2]) * a
    side += np.where(sideways, [[1.0, 0, 0]], [[0, 1.0, 0]])
    side /= length_of(side)
    up = np.stack([a[:, 1] * side[:, 2] - a[:, 2] * side[:, 1],
                   a[:, 2] * side[:, 0] - a[:, 0] * side[:, 2],
                   a[:, 0] * side[:, 1] - a[:, 1] * side[:, 0]], axis=1)
    turn = np.where(np.abs(up[:, 2]) < 1e-9, up[:, 0], up[:, 2]) < 0
    return np.stack([a, side, np.where(turn[:, None], -up, up)], axis=2)


def length_of(rows):
    return np.sqrt(np.einsum("...i,...i->...", rows, rows))[..., None]


def turned(axes, vector):
    return np.einsum("nij,nj->ni", axes, vector)


def solids(part, counts):
    """[(mass, own mass centre [3], own diagonal tensor [3])], each an array over the counts."""
    if counts is None:
        return [(np.array([m]), c[None], t.diagonal()[None]) for m, c, t in
                reference.solids_of(part)]
    each, back = np.unique(counts, return_inverse=True)
    out = [reference.solids_of({**part, "count": float(n)})[0] for n in each]
    return [(np.array([o[0] for o in out])[back], np.array([o[1] for o in out])[back],
             np.array([o[2].diagonal() for o in out])[back])]


class Piece:
    """One fitted part in all variants: record, root, far face, frame, whether it has an envelope."""


class Rig:
    def __init__(self, data, hand=None):
        """hand: (K, B, covariance, fitted, certain) where it is known already."""
        self.data, self.bow, self.kept = data, data["bow"], {}
        archer = data.get("archer", {})
        self.draw = archer.get("draw_length_mm", 680) / 1000
        self.nock = archer.get("nock_height_mm", 40) / 1000
        self.beta = math.atan2(self.nock, self.draw)
        self.cosb, self.sinb = math.cos(self.beta), math.sin(self.beta)
        self.wanted = archer.get("wanted_bubble_deg", 0)
        self.by_id = {p["id"]: p for p in data.get("parts", [])}
        self.fitted = [p["id"] for p in data.get("parts", []) if self.on(p)]
        m = self.bow["mass_g"] / 1000
        c = np.array(self.bow["com_mm"], float) / 1000
        tensor = m * (np.array(self.bow["gyration_mm"], float) / 1000) ** 2
        self.bow_record = np.concatenate([[m], m * c, tensor + m * (c @ c - c * c)])
        self.pieces = {}
        self.below = {i: {i} for i in self.fitted}
        for i in self.fitted:
            host = self.host(i)
            while host:
                self.below[host].add(i)
                host = self.host(host)
        self.order = sorted(self.fitted, key=self.depth)
        self.pieces = self.place({}, self.fitted, {})
        self.record = self.bow_record[None] + sum(p.record for p in self.pieces.values())
        self.triangle = None
        if "axle_to_axle_mm" in self.bow and "brace_height_mm" in self.bow:
            half, brace = self.bow["axle_to_axle_mm"] / 2000, self.bow["brace_height_mm"] / 1000
            self.triangle = np.array([[-self.draw, 0, self.nock], [-brace, 0, half],
                                      [-brace, 0, -half]])
        self.hand = hand or hand_of(archer.get("hand", {}))
        self.k, self.b, self.cov, self.is_fitted, self.certain = self.hand

    def on(self, part):
        while not part.get("off"):
            host = part["on"].split(":")[0]
            if host == "bow":
                return True
            part = self.by_id[host]
        return False

    def host(self, ident):
        name = self.by_id[ident]["on"].split(":")[0]
        return None if name == "bow" else name

    def depth(self, ident):
        host = self.host(ident)
        return 0 if host is None else 1 + self.depth(host)

    @functools.cached_property
    def gaps(self):
        return {i: self.gap(i, p) for i, p in self.pieces.items()}

    @property
    def gap_now(self):
        return min((float(g[0]) for g in self.gaps.values()), default=math.inf)

    def place(self, varied, idents, base):
        """The pieces named, with {(part, key): values} in place of the file's; others from base."""
        made = {}
        for ident in self.order:
            if ident in idents:
                made[ident] = self.piece(ident, varied, {**base, **made})
        return made

    def piece(self, ident, varied, placed):
        part, p = self.by_id[ident], Piece()
        value = lambda key: np.atleast_1d(varied.get((ident, key), part.get(key, 0))).astype(float)
        p.count = value("count") if part["kind"] == "weights" else None
        root, axes = self.stand(part, value, placed)
        length = (p.count * part["each_mm"] if p.count is not None
                  else np.array([part.get("length_mm", 0.0)])) / 1000
        if part["kind"] in ("bracket", "accessory"):
            length = np.zeros(1)
        p.record = 0
        for m, c, t in solids(part, p.count):
            at = root + turned(*broadcast(axes, c))
            inertia = turned(*broadcast(axes ** 2, t))
            square = np.sum(at * at, axis=1, keepdims=True)
            p.record = p.record + np.concatenate(broadcast(
                m[:, None], m[:, None] * at, inertia + m[:, None] * (square - at * at)), axis=1)
        p.root, p.axes, p.end = root, axes, root + axes[:, :, 0] * length[:, None]
        return p

    def stand(self, part, value, placed):
        """Root and frame of a part."""
        host, _, socket = part["on"].partition(":")
        if part["kind"] == "accessory":
            return np.array([part["at_mm"]], float) / 1000, np.eye(3)[None]
        if part.get("along_mm") is not None and part["kind"] == "weights":
            bar = placed[host]
            return bar.root + bar.axes[:, :, 0] * part["along_mm"] / 1000, bar.axes
        if host == "bow":
            mount = next(m for m in self.bow["mounts"] if m["id"] == socket)
            at, axis = np.array([mount["at_mm"]], float) / 1000, np.array([mount["axis"]], float)
        elif socket:
            s = next(s for s in self.by_id[host]["sockets"] if s["id"] == socket)
            carrier = placed[host]
            at = carrier.root + carrier.axes @ (np.array(s["at_mm"], float) / 1000)
            axis = carrier.axes @ (np.array(s["axis"], float) / np.linalg.norm(s["axis"]))
        else:
            at, axis = placed[host].end, placed[host].axes[:, :, 0]
        s, v = np.radians(value("swing_deg")), np.radians(value("lift_deg"))
        s, v = np.broadcast_arrays(s, v)
        local = np.stack([np.cos(v) * np.cos(s), np.cos(v) * np.sin(s), np.sin(v)], axis=1)
        return at, frames(turned(*broadcast(frames(axis), local)))

    def vary(self, varied):
        """(records, pieces made anew) with the arrays of values given."""
        idents = set().union(*(self.below[i] for i, _ in varied)) if varied else set()
        made = self.place(varied, idents, self.pieces)
        n = max([len(v) for v in varied.values()], default=1)
        record = self.bow_record + sum(self.pieces[i].record for i in self.fitted
                                       if i not in made) + sum(p.record for p in made.values())
        return np.broadcast_to(record, (n, 7)), made

    def gap(self, ident, piece_, rows=slice(None)):
        """Distance to the string's sweep less the radius; inf where nothing is counted."""
        part = self.by_id[ident]
        if self.triangle is None or part["kind"] in ("bracket", "accessory"):
            return np.array([math.inf])
        d = (part["outer_mm"] if part["kind"] == "bar" else part["diameter_mm"]) / 1000
        root, end = broadcast(piece_.root, piece_.end)
        few = lambda x: x if len(x) == 1 else x[rows]
        gap = to_triangle(few(root), few(end), self.triangle) - d / 2
        return gap if piece_.count is None else np.where(few(piece_.count) == 0, math.inf, gap)

    def clear(self, made, rows, slack=0.0):
        """Whether each of the rows of variants keeps off the string (rows index the variants)."""
        if self.triangle is None or not len(rows):
            return np.ones(len(rows), bool)
        least = min((float(self.gaps[i][0]) for i in self.fitted if i not in made),
                    default=math.inf)
        gap = np.full(len(rows), least)
        for ident, p in made.items():
            gap = np.minimum(gap, self.gap(ident, p, rows))
        return gap >= self.floor() + slack

    def floor(self):
        return 0.015 if self.gap_now >= 0.015 else self.gap_now - 1e-9

    # --- what a record says -------------------------------------------------------------------

    def roll(self, record):
        """A = M g cosβ, y, w: all that the cant depends on."""
        com = record[:, 1:4] / record[:, :1]
        return (record[:, 0] * G * self.cosb, com[:, 1],
                com[:, 0] * self.sinb + com[:, 2] * self.cosb)

    def cant(self, record):
        a, y, w = self.roll(record)
        return settle(a, y, w, self.k, self.b)

    def bubble(self, phi):
        return np.degrees(np.arcsin(self.cosb * np.sin(phi)))

    def cant_sd(self, record, phi, cov=None):
        a, y, w = self.roll(record)
        cov = self.cov if cov is None else cov
        give = self.k + a * (-y * np.sin(phi) - w * np.cos(phi))
        var = cov[0, 0] * phi ** 2 - 2 * cov[0, 1] * phi + cov[1, 1]
        return np.sqrt(var) / np.abs(give)

    def pull(self, record):
        return G * record[:, 1]

    def arm(self, record):
        return G * record[:, 0] + self.pull(record) / self.draw

    def disturbance(self, record):
        now = self.record
        return (np.abs(record[:, 0] - now[:, 0]) / 0.1
                + np.abs(self.pull(record) - self.pull(now)) / 0.2
                + np.sum(np.abs(record[:, 4:] / now[:, 4:] - 1), axis=1) / 0.05)


def broadcast(*arrays):
    """To one length of the leading axis."""
    n = max(len(a) for a in arrays)
    return [a if len(a) == n else np.broadcast_to(a, (n,) + a.shape[1:]) for a in arrays]


# --- cant -------------------------------------------------------------------------------------

def settle(a, y, w, k, b):
    """First zero of −a(y cos φ − w sin φ) − kφ + b the way the torque at 0 pushes, up to 60°; nan
    where there is none. A scan by whole degrees; a dip that it could have stepped over (bounded by
    the second derivative, at most a·hypot(y, w)) is looked at ten and a hundred times closer."""
    one = np.column_stack([v.astype(float) for v in np.broadcast_arrays(
        *(np.atleast_1d(x) for x in (a * y, a * w, k, b)))])
    way = np.sign(one[:, 3] - one[:, 0])
    lo, hi = np.full(len(one), np.nan), np.full(len(one), np.nan)
    todo = np.flatnonzero(way != 0)
    for cells in (60, 600, 6000):
        if not len(todo):
            break
        grid = np.linspace(0, SIXTY, cells + 1)
        first, doubt = scan(one[todo], way[todo], grid)
        if cells == 6000:
            doubt[:] = False
        found = (first <= cells) & ~doubt
        lo[todo[found]], hi[todo[found]] = grid[first[found] - 1], grid[first[found]]
        todo = todo[doubt]
    phi = polish(one, way, lo, hi)
    still = way == 0
    phi[still] = np.where((one[:, 2] - one[:, 1])[still] > 0, 0.0, np.nan)
    return phi


def scan(one, way, grid):
    """(first grid point beyond a zero, or one past the last; whether a dip is in doubt)."""
    ay, aw, k, b = (one[:, i:i + 1] for i in range(4))
    x, cells = way[:, None] * grid[None, :], len(grid) - 1
    g = (aw * np.sin(x) - ay * np.cos(grid)[None, :] - k * x + b) * way[:, None]
    over = g <= 0
    over[:, 0] = False
    first = np.where(over.any(axis=1), over.argmax(axis=1), cells + 1)
    near = g <= np.hypot(ay, aw) * grid[1] ** 2 / 8
    near &= ~over & (np.arange(cells + 1)[None, :] < first[:, None])
    # the point just before a zero that was found bounds no cell but those around that zero
    near[np.arange(len(one)), np.minimum(first, cells + 1) - 1] &= first > cells
    return first, near.any(axis=1)


def polish(one, way, lo, hi):
    """Halving to a few seconds of arc, Newton from there, never out of the bracket."""
    found = np.flatnonzero(~np.isnan(lo))
    l, h, s = lo[found], hi[found], way[found]
    ay, aw, k, b = one[found].T
    ay, b = ay * s, b * s  # in x = s·φ, times s
    f = lambda x: aw * np.sin(x) - ay * np.cos(x) - k * x + b
    for _ in range(10):
        mid = (l + h) / 2
        inside = f(mid) > 0
        l, h = np.where(inside, mid, l), np.where(inside, h, mid)
    x = (l + h) / 2
    for _ in range(5):
        slope = aw * np.cos(x) + ay * np.sin(x) - k
        x = np.minimum(np.maximum(x - f(x) / np.where(slope == 0, np.inf, slope), l), h)
    phi = np.full(len(lo), np.nan)
    phi[found] = s * x
    return phi


# --- the hand ---------------------------------------------------------------------------------

class Checks:
    """The checks in use as arrays, and what a hand makes of them."""

    def __init__(self, checks):
        col = lambda key, default=None: np.array([c.get(key, default) for c in checks], float)
        com = np.array([c["com_mm"] for c in checks], float).reshape(-1, 3) / 1000
        beta = np.arctan2(col("nock_height_mm"), col("draw_length_mm"))
        self.cosb = np.cos(beta)
        self.a = col("mass_g") / 1000 * G * self.cosb
        self.y, self.w = com[:, 1], com[:, 0] * np.sin(beta) + com[:, 2] * np.cos(beta)
        self.read = np.radians(col("bubble_deg"))
        self.sd = np.radians(col("sd_deg", 0.3))

    def model(self, k, b):
        """Predicted bubbles and their slopes in (K, B), 60° the way pushed where it topples."""
        phi = settle(self.a, self.y, self.w, k, b)
        way = np.sign(b - self.a * self.y)
        topples = np.isnan(phi)
        guess = np.where(topples, way * SIXTY, np.arcsin(self.cosb * np.sin(phi)))
        slope = self.cosb * np.cos(phi) / np.sqrt(1 - (self.cosb * np.sin(phi)) ** 2)
        give = k + self.a * (-self.y * np.sin(phi) - self.w * np.cos(phi))
        rows = np.column_stack([-slope * phi / give, slope / give])
        rows[topples] = 0
        return guess, rows

    def cost(self, k, b):
        """Over arrays of hands."""
        n, c = len(k), len(self.a)
        phi = settle(np.tile(self.a, n), np.tile(self.y, n), np.tile(self.w, n),
                     np.repeat(k, c), np.repeat(b, c)).reshape(n, c)
        way = np.sign(b[:, None] - self.a * self.y)
        guess = np.where(np.isnan(phi), way * SIXTY, np.arcsin(self.cosb * np.sin(phi)))
        return (np.sum(((self.read - guess) / self.sd) ** 2, axis=1)
                + ((k - 2) / 1.5) ** 2 + (b / 0.3) ** 2)


def fit(checks):
    """(K, B, covariance, whether the least is flat): Gauss–Newton from every low place of two nets of hands: a wide grid, and
    those that give one of the readings exactly (the valleys of sharp readings are narrow). The
    least is not flat where the best hand is on the very edge of toppling a rig that was read."""
    c = Checks(checks)
    k = np.geomspace(0.05, 8, 40)
    phi = np.arcsin(np.clip(np.sin(c.read) / c.cosb, -1, 1))
    exact = k * phi[:, None] + (c.a * (c.y * np.cos(phi) - c.w * np.sin(phi)))[:, None]
    nets = [(k, row) for row in exact]
    nets += [(k[::3], np.full(14, b)) for b in np.linspace(-1.5, 1.5, 25)]
    best = None
    cost = np.split(c.cost(np.concatenate([n[0] for n in nets]),
                           np.concatenate([n[1] for n in nets])),
                    np.cumsum([len(n[0]) for n in nets])[:-1])
    starts = []
    for n, ((ks, bs), row) in enumerate(zip(nets, cost)):
        walled = np.concatenate([[np.inf], row, [np.inf]])
        low = np.flatnonzero((row <= walled[:-2]) & (row <= walled[2:]))
        starts += [(row[i], n >= len(phi), ks[i], bs[i]) for i in low]
    starts.sort()
    for _, _, k0, b0 in starts[:4] + [s for s in starts if s[1]][:1]:
        got = descend(c, np.array([k0, b0]))
        if best is None or got[0] < best[0] - 1e-13:
            best = got
    _, p, j, settled = best
    return p[0], p[1], np.linalg.inv(j.T @ j), settled


def descend(c, p):
    """(cost, hand, rows, whether steps end): halved steps while the cost falls, then plain ones to the last digits."""
    one = lambda p: float(c.cost(p[:1], p[1:])[0])
    now = one(p)
    for _ in range(40):
        step, _ = newton(c, p)
        scale = 1.0
        while scale > 1e-4 and one(p + scale * step) >= now:
            scale /= 2
        if scale <= 1e-4 or np.abs(step).max() < 1e-6:
            break
        p, now = p + scale * step, one(p + scale * step)
    for _ in range(300):
        step, j = newton(c, p)
        if np.abs(step).max() > 1e-3:
            break
        p = p + step
        if np.abs(step).max() < 1e-15:
            break
    return one(p), p, j, bool(np.abs(step).max() < 1e-9)


def newton(c, p):
    guess, rows = c.model(p[0], p[1])
    j = np.vstack([rows / c.sd[:, None], [[1 / 1.5, 0], [0, 1 / 0.3]]])
    r = np.append((c.read - guess) / c.sd, [(2 - p[0]) / 1.5, -p[1] / 0.3])
    step = np.linalg.solve(j.T @ j, j.T @ r)
    if p[0] + step[0] <= 0.05:
        step = np.array([0.05 - p[0], 0.0])
        step[1] = j[:, 1] @ (r - j[:, 0] * step[0]) / (j[:, 1] @ j[:, 1])
    return step, j


def in_use(hand_data):
    return [t for t in hand_data.get("bubble_tests", []) if not t.get("aside")]


def hand_of(hand_data):
    checks = in_use(hand_data)
    if checks:
        k, b, cov, certain = fit(checks)
        return k, b, cov, True, certain
    return (hand_data.get("roll_stiffness_nm_per_rad", 2.0), hand_data.get("roll_bias_nm", 0.0),
            PRIOR, False, True)


# --- distance to the string's sweep -----------------------------------------------------------

def point_segment(p, a, b):
    ab = b - a
    square = np.sum(ab * ab, axis=-1)
    t = np.sum((p - a) * ab, axis=-1) / np.where(square == 0, 1, square)
    t = np.where(square == 0, 0, np.clip(t, 0, 1))
    return np.linalg.norm(p - a - t[..., None] * ab, axis=-1)


def segments(a, b, c, d):
    """Between segments ab (rows) and cd (one)."""
    best = np.minimum(np.minimum(point_segment(a, c, d), point_segment(b, c, d)),
                      np.minimum(point_segment(c, a, b), point_segment(d, a, b)))
    u, v, w = b - a, (d - c)[None], a - c
    uu, uv, vv = np.sum(u * u, 1), np.sum(u * v, 1), np.sum(v * v, 1)
    uw, vw = np.sum(u * w, 1), np.sum(v * w, 1)
    det = uu * vv - uv * uv
    good = det > 1e-24 * uu * vv
    det = np.where(good, det, 1)
    s, t = (uv * vw - vv * uw) / det, (uu * vw - uv * uw) / det
    inner = good & (s >= 0) & (s <= 1) & (t >= 0) & (t <= 1)
    return np.where(inner, np.minimum(best, np.linalg.norm(w + s[:, None] * u - t[:, None] * v,
                                                           axis=1)), best)


def to_triangle(a, b, tri):
    """The sweep lies in the plane y = 0: y is the height above it, inside is a matter of x and z."""
    flat = [(tri[i][0], tri[i][2]) for i in range(3)]
    turn = lambda p, q, x, z: (q[0] - p[0]) * (z - p[1]) - (q[1] - p[1]) * (x - p[0])
    way = math.copysign(1, turn(flat[0], flat[1], *flat[2]))

    def inside(p):
        return np.all([way * turn(flat[i], flat[(i + 1) % 3], p[:, 0], p[:, 2]) >= 0
                       for i in range(3)], axis=0)

    ha, hb = a[:, 1], b[:, 1]
    best = np.min([segments(a, b, tri[i], tri[(i + 1) % 3]) for i in range(3)], axis=0)
    for p, h in ((a, ha), (b, hb)):
        best = np.where(inside(p), np.minimum(best, np.abs(h)), best)
    apart = np.where(ha == hb, 1, ha - hb)
    hit = a + (b - a) * (ha / apart)[:, None]
    return np.where((ha * hb <= 0) & (ha != hb) & inside(hit), 0.0, best)
