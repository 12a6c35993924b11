/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All combinations of two adjustables. Whether a bubble lies within the tolerance is first asked
 * without solving anything: where the torque falls strictly (hypot (side, top) < K) the bow
 * settles between two cants exactly when the torque pushes inward at both, and the torque is
 * linear in the rig's first moments. Those of two parts that do not carry each other add; a part
 * carried by the other is placed anew under each value of the carrier, and where it and all beyond
 * it are straight its first moment is that of one direction. What passes is tried on the assembly
 * or by sums of whole records, so that the fast question only ever saves work.
 */
#include <math.h>
#include <stdlib.h>

#include "base/text.h"
#include "physics/level.h"

/* Torques this near 0 are left to the exact answer [N·m]. */
#define TORQUE_SLACK_NM 1e-12

/* Which torque a combination must not have at a bound. */
typedef struct
{
  double side, top, rest; /* torque = side·Side + top·Top + rest of a rig's first moments */
} Bound;

typedef struct
{
  const PhScan *scan;
  const PhWant *want;
  Bound lo, hi;
  double stiffness;
  int i, j; /* i < j */
  PhPairAllow allow;
  PhPairVisit visit;
  void *data;
} Pair;

static Bound
bound_at (double bubble_rad, const PhTask *task)
{
  double cos_beta = ph_draw_cos_beta (&task->draw);
  double s = fmin (fmax (sin (bubble_rad) / cos_beta, -1), 1);
  double cant = fmin (fmax (asin (s), -PH_CANT_LIMIT_RAD), PH_CANT_LIMIT_RAD);
  return (Bound){ -cos (cant), sin (cant),
                  task->hand.bias_nm - task->hand.stiffness_nm_per_rad * cant };
}

static inline double
torque_at (const Bound *bound, double side, double top)
{
  return bound->side * side + bound->top * top + bound->rest;
}

/* Whether the rig may settle within the tolerance; false only where it surely does not. */
static inline bool
may_land (const Pair *pair, double side, double top)
{
  if (side * side + top * top >= pair->stiffness * pair->stiffness)
    return true;
  return torque_at (&pair->lo, side, top) >= -TORQUE_SLACK_NM
         && torque_at (&pair->hi, side, top) <= TORQUE_SLACK_NM;
}

/* First moments as torques: a mass record's roll problem without its mass. */
static PhRoll
roll_of (const Pair *pair, PhVec3 moment_kg_m)
{
  return ph_roll_of (1, moment_kg_m, &pair->scan->task->draw);
}

static bool
may_try (const Pair *pair, int adjustable, int k)
{
  return k != 0 && (!pair->allow || pair->allow (adjustable, k, pair->data));
}

/* Whether the rig of this record lands; its answer is then complete. */
static bool
lands (const Pair *pair, int steps_i, int steps_j, const PhMass *total, PhAnswer *answer)
{
  const PhTask *task = pair->scan->task;
  PhOutcome outcome = ph_outcome_of (total, &task->draw, &task->hand);
  if (!(ph_want_miss (pair->want, &outcome) <= pair->want->tolerance_rad))
    return false;
  PhChange one = { pair->i, task->adjustables[pair->i].piece, steps_i };
  PhChange two = { pair->j, task->adjustables[pair->j].piece, steps_j };
  *answer = ph_answer_of (pair->scan, pair->want, &one, &two, &outcome);
  return true;
}

/* Parts that do not carry each other. */

/* What a value adds to side and top. */
typedef struct
{
  double side, top;
  int steps;
} Share;

typedef struct
{
  Share *shares;
  int n;
  double most_side, most_top; /* sizes */
} Shares;

static Shares
shares_of (const Pair *pair, int row)
{
  const PhScanRow *values = &pair->scan->rows[row];
  int down = values->adjustable->steps_down, up = values->adjustable->steps_up;
  Shares shares = { ph_alloc ((size_t)(down + up + 1) * sizeof *shares.shares), 0, 0, 0 };
  for (int k = -down; k <= up; k++)
    {
      const PhTrial *trial = &values->trials[k];
      /* Of two values that stay clear alone both together do: neither moves the other. */
      if (!trial->clear || !may_try (pair, row, k))
        continue;
      PhRoll roll =
          roll_of (pair, ph_vec3_sub (trial->total.moment_kg_m, pair->scan->total.moment_kg_m));
      shares.shares[shares.n++] = (Share){ roll.side_nm, roll.top_nm, k };
      shares.most_side = fmax (shares.most_side, fabs (roll.side_nm));
      shares.most_top = fmax (shares.most_top, fabs (roll.top_nm));
    }
  return shares;
}

static void
try_sum (const Pair *pair, int steps_i, int steps_j)
{
  PhAnswer answer;
  const PhScan *scan = pair->scan;
  PhMass total = ph_mass_add (scan->rows[pair->i].trials[steps_i].total,
                              scan->rows[pair->j].trials[steps_j].total);
  total = ph_mass_subtract (total, scan->total);
  /* A mass that only rounding left is none. */
  if (total.mass_kg > 1e-12 * scan->total.mass_kg
      && lands (pair, steps_i, steps_j, &total, &answer))
    pair->visit (&answer, pair->data);
}

/* `falls`: the torque falls strictly whatever both are set to, so the bounds alone decide. */
static void
try_row (const Pair *pair, const Share *a, const Shares *others, PhRoll now, bool falls)
{
  double side = now.side_nm + a->side, top = now.top_nm + a->top;
  double lo = -TORQUE_SLACK_NM - torque_at (&pair->lo, side, top);
  double hi = TORQUE_SLACK_NM - torque_at (&pair->hi, side, top);
  for (int k = 0; k < others->n; k++)
    {
      const Share *b = &others->shares[k];
      bool passes = falls ? pair->lo.side * b->side + pair->lo.top * b->top >= lo
                                && pair->hi.side * b->side + pair->hi.top * b->top <= hi
                          : may_land (pair, side + b->side, top + b->top);
      if (passes)
        try_sum (pair, a->steps, b->steps);
    }
}

static void
pair_apart (const Pair *pair)
{
  Shares a = shares_of (pair, pair->i), b = shares_of (pair, pair->j);
  PhRoll now = roll_of (pair, pair->scan->total.moment_kg_m);
  double most = hypot (fabs (now.side_nm) + a.most_side + b.most_side,
                       fabs (now.top_nm) + a.most_top + b.most_top);
  for (int k = 0; k < a.n; k++)
    try_row (pair, &a.shares[k], &b, now, most < pair->stiffness);
  free (a.shares);
  free (b.shares);
}

/* One part carries the other, or both numbers are of one part. */

/* A value of the carried part: its branch (it and all that hangs on it) as one straight stick. */
typedef struct
{
  double mass_kg, reach_kg_m; /* Σ m, Σ m s: s from its root along its direction */
  double sin, cos;            /* of the angle, for a swing or lift */
  int steps;
} Stick;

typedef struct
{
  int outer, inner; /* adjustables */
  bool same, straight;
  Stick *sticks; /* of the inner one's values that may be tried */
  int n;
} Chain;

/* Whether everything beyond piece i lies along its direction, whichever way that points. */
static bool
is_straight (const PhAssembly *assembly, int i)
{
  if (!ph_piece_has_length_axis (ph_assembly_piece (assembly, i)))
    return false;
  for (int k = ph_assembly_first_guest (assembly, i); k >= 0;
       k = ph_assembly_next_guest (assembly, k))
    {
      const PhPiece *guest = ph_assembly_piece (assembly, k);
      bool in_line =
          guest->seat == PH_SEAT_ALONG || (guest->swing_rad == 0 && guest->lift_rad == 0);
      if (!in_line || !is_straight (assembly, k))
        return false;
    }
  return true;
}

/* Adds the branch of `top`, whose piece is `piece`, with its root at `from`. */
static void
add_branch (const PhAssembly *assembly, int top, const PhPiece *piece, double from, Stick *stick)
{
  stick->mass_kg += piece->body.mass_kg;
  stick->reach_kg_m += piece->body.mass_kg * (from + piece->body.com_m.x);
  for (int k = ph_assembly_first_guest (assembly, top); k >= 0;
       k = ph_assembly_next_guest (assembly, k))
    {
      const PhPiece *guest = ph_assembly_piece (assembly, k);
      double start = guest->seat == PH_SEAT_ALONG ? guest->along_m : piece->length_m;
      add_branch (assembly, k, guest, from + start, stick);
    }
}

static Stick
stick_of (const PhTask *task, int inner, int k)
{
  const PhAdjustable *adjustable = &task->adjustables[inner];
  const PhPiece *now = ph_assembly_piece (task->assembly, adjustable->piece);
  PhPiece piece = ph_adjust_piece (now, adjustable->key, ph_adjust_value (adjustable, k));
  double angle = adjustable->key == PH_ADJUST_LIFT ? piece.lift_rad : piece.swing_rad;
  Stick stick = { 0, 0, sin (angle), cos (angle), k };
  add_branch (task->assembly, adjustable->piece, &piece, 0, &stick);
  return stick;
}

static Chain
chain_of (const Pair *pair)
{
  const PhTask *task = pair->scan->task;
  int at_i = task->adjustables[pair->i].piece, at_j = task->adjustables[pair->j].piece;
  bool i_carries = ph_task_hangs_on (task, at_j, at_i);
  Chain chain = { .outer = i_carries ? pair->i : pair->j,
                  .inner = i_carries ? pair->j : pair->i,
                  .same = at_i == at_j };
  const PhAdjustable *inner = &task->adjustables[chain.inner];
  chain.straight = is_straight (task->assembly, inner->piece);
  chain.sticks =
      ph_alloc ((size_t)(inner->steps_down + inner->steps_up + 1) * sizeof *chain.sticks);
  for (int k = -inner->steps_down; k <= inner->steps_up; k++)
    if (may_try (pair, chain.inner, k))
      chain.sticks[chain.n++] = stick_of (task, chain.inner, k);
  return chain;
}

/* Both are set in the assembly: is this rig an answer? */
static void
try_set (const Pair *pair, const Chain *chain, int steps_outer, int steps_inner)
{
  const PhTask *task = pair->scan->task;
  const PhMass *total = ph_assembly_total (task->assembly);
  bool in_order = chain->outer == pair->i;
  PhAnswer answer;
  if (total->mass_kg > 1e-12 * pair->scan->total.mass_kg
      && lands (pair, in_order ? steps_outer : steps_inner, in_order ? steps_inner : steps_outer,
                total, &answer)
      && ph_scan_keeps_clear (pair->scan, task->adjustables[chain->outer].piece))
    pair->visit (&answer, pair->data);
}

/* The socket frame that piece i turns in, as the assembly stands. */
static PhFrame
socket_of (const PhAssembly *assembly, int i)
{
  static const PhFrame bow = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };
  const PhPiece *piece = ph_assembly_piece (assembly, i);
  const PhFrame *host =
      piece->host == PH_HOST_BOW ? &bow : &ph_assembly_place (assembly, piece->host)->frame;
  if (piece->seat == PH_SEAT_SOCKET)
    return ph_frame_of_axis (ph_frame_apply (host, piece->seat_axis));
  return *host;
}

/* First moments as torques of a rig that is linear in the inner part's direction: constant (mass
   at its root) and the direction's three components on the socket's axes. */
typedef struct
{
  PhRoll rest, root, a, l, t;
  double sin_swing, cos_swing, sin_lift, cos_lift;
} Turn;

static Turn
turn_of (const Pair *pair, int inner_piece)
{
  const PhAssembly *assembly = pair->scan->task->assembly;
  const PhPiece *piece = ph_assembly_piece (assembly, inner_piece);
  const PhPlace *place = ph_assembly_place (assembly, inner_piece);
  PhFrame socket = socket_of (assembly, inner_piece);
  PhVec3 rest = ph_vec3_sub (ph_assembly_total (assembly)->moment_kg_m,
                             ph_assembly_subtree_mass (assembly, inner_piece).moment_kg_m);
  return (Turn){ roll_of (pair, rest),     roll_of (pair, place->root_m), roll_of (pair, socket.a),
                 roll_of (pair, socket.l), roll_of (pair, socket.t),      sin (piece->swing_rad),
                 cos (piece->swing_rad),   sin (piece->lift_rad),         cos (piece->lift_rad) };
}

static inline bool
stick_may_land (const Pair *pair, const Turn *turn, PhAdjustKey key, const Stick *stick)
{
  bool swing = key == PH_ADJUST_SWING, lift = key == PH_ADJUST_LIFT;
  double ss = swing ? stick->sin : turn->sin_swing, cs = swing ? stick->cos : turn->cos_swing;
  double sl = lift ? stick->sin : turn->sin_lift, cl = lift ? stick->cos : turn->cos_lift;
  double a = stick->reach_kg_m * cl * cs, l = stick->reach_kg_m * cl * ss;
  double t = stick->reach_kg_m * sl;
  double side = turn->rest.side_nm + stick->mass_kg * turn->root.side_nm + a * turn->a.side_nm
                + l * turn->l.side_nm + t * turn->t.side_nm;
  double top = turn->rest.top_nm + stick->mass_kg * turn->root.top_nm + a * turn->a.top_nm
               + l * turn->l.top_nm + t * turn->t.top_nm;
  return may_land (pair, side, top);
}

/* Every inner value under the outer one that is set. */
static void
try_inner (const Pair *pair, const Chain *chain, int steps_outer)
{
  const PhTask *task = pair->scan->task;
  const PhAdjustable *inner = &task->adjustables[chain->inner];
  PhPiece stood = *ph_assembly_piece (task->assembly, inner->piece);
  Turn turn = turn_of (pair, inner->piece);
  bool asks = chain->straight && stood.seat != PH_SEAT_ALONG;
  for (int k = 0; k < chain->n; k++)
    {
      const Stick *stick = &chain->sticks[k];
      if (asks && !stick_may_land (pair, &turn, inner->key, stick))
        continue;
      ph_task_set (task, chain->inner, stick->steps);
      try_set (pair, chain, steps_outer, stick->steps);
    }
  ph_assembly_set_piece (task->assembly, inner->piece, &stood);
}

static void
pair_in_chain (const Pair *pair)
{
  const PhTask *task = pair->scan->task;
  Chain chain = chain_of (pair);
  const PhAdjustable *outer = &task->adjustables[chain.outer];
  PhPiece stood = *ph_assembly_piece (task->assembly, outer->piece);
  for (int k = -outer->steps_down; k <= outer->steps_up; k++)
    if (may_try (pair, chain.outer, k))
      {
        ph_task_set (task, chain.outer, k);
        try_inner (pair, &chain, k);
      }
  ph_assembly_set_piece (task->assembly, outer->piece, &stood);
  free (chain.sticks);
}

void
ph_level_pair (const PhScan *scan, const PhWant *want, int i, int j, PhPairAllow allow,
               PhPairVisit visit, void *data)
{
  const PhTask *task = scan->task;
  Pair pair = { .scan = scan,
                .want = want,
                .lo = bound_at (want->target_rad - want->tolerance_rad, task),
                .hi = bound_at (want->target_rad + want->tolerance_rad, task),
                .stiffness = task->hand.stiffness_nm_per_rad,
                .i = i,
                .j = j,
                .allow = allow,
                .visit = visit,
                .data = data };
  int at_i = task->adjustables[i].piece, at_j = task->adjustables[j].piece;
  if (ph_task_hangs_on (task, at_j, at_i) || ph_task_hangs_on (task, at_i, at_j))
    pair_in_chain (&pair);
  else
    pair_apart (&pair);
}
