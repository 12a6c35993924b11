/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Random rigs as the rig file has them: a bow, a front bar, a bracket with bars, stacks at ends
 * and along, dampers, now and then a bracket far out; limits, locks and an archer whose hand is
 * assumed or taught. All are invented. Each passes the rig's check.
 */
#pragma once

#include "random-rig.h"
#include "rigs.h"

typedef struct
{
  unsigned long long state;
  double
      narrow_deg; /* > 0: limits of every angle are at most this wide each way, for brute force */
} RandomModel;

static inline double
random_model_round (RandomModel *r, double lo, double hi)
{
  return rint (rig_random (&r->state, lo, hi) * 4) / 4;
}

static inline bool
random_model_chance (RandomModel *r, double chance)
{
  return rig_random (&r->state, 0, 1) < chance;
}

static inline void
random_model_limit (RandomModel *r, PhLimits *limits, double now, double width)
{
  *limits = (PhLimits){ true, now - floor (rig_random (&r->state, 0, width + 1)),
                        now + floor (rig_random (&r->state, 0, width + 1)) };
}

static inline void
random_model_limits (RandomModel *r, PhPart *part)
{
  bool narrow = r->narrow_deg > 0;
  double width = narrow ? r->narrow_deg : 90;
  if (part->kind == PH_PART_WEIGHTS && (narrow || random_model_chance (r, 0.2)))
    {
      random_model_limit (r, &part->limit_count, part->count, narrow ? 4 : 9);
      part->limit_count.lo = fmax (0, part->limit_count.lo);
    }
  if (part->kind != PH_PART_WEIGHTS && (narrow || random_model_chance (r, 0.2)))
    random_model_limit (r, &part->limit_swing, part->swing_deg, width);
  if (part->kind == PH_PART_BAR && (narrow || random_model_chance (r, 0.2)))
    random_model_limit (r, &part->limit_lift, part->lift_deg, width);
  if (random_model_chance (r, 0.07))
    {
      part->locked = true;
      part->given |= ph_given_bit (PH_OBJECT_PART, "locked");
    }
}

static inline void
random_model_add (RandomModel *r, PhRig *rig, PhPart part)
{
  random_model_limits (r, &part);
  ph_rig_append (rig, part);
}

/* A bar and what may hang on it. */
static inline void
random_model_bar (RandomModel *r, PhRig *rig, const char *id, const char *on, double swing,
                  double lift, double length)
{
  char guest[64];
  random_model_add (r, rig,
                    rigs_bar (id, on, swing, lift, length, rig_random (&r->state, 50, 200)));
  const char *end = id;
  char damper[80], bracket[64];
  if (random_model_chance (r, 0.25))
    {
      snprintf (damper, sizeof damper, "%s-damper", id);
      PhPart part = rigs_damper (damper, end, rig_random (&r->state, 10, 60), 20, 24);
      if (random_model_chance (r, 0.3))
        rigs_set (&part, "swing_deg", random_model_round (r, -20, 20));
      ph_rig_append (rig, part);
      end = damper;
    }
  else if (random_model_chance (r, 0.15))
    {
      snprintf (bracket, sizeof bracket, "%s-block", id);
      random_model_add (r, rig, rigs_bracket (bracket, end, random_model_round (r, -20, 20), 5));
      snprintf (damper, sizeof damper, "%s:a", bracket);
      end = damper;
    }
  snprintf (guest, sizeof guest, "%s-stack", id);
  PhPart stack = rigs_stack (guest, end, floor (rig_random (&r->state, 0, 10)));
  if (strchr (end, ':'))
    rigs_set (&stack, "swing_deg", 10);
  random_model_add (r, rig, stack);
  if (random_model_chance (r, 0.3))
    {
      snprintf (guest, sizeof guest, "%s-ring", id);
      PhPart ring = rigs_stack (guest, id, floor (rig_random (&r->state, 1, 4)));
      rigs_set (&ring, "bore_mm", 18.2);
      rigs_set (&ring, "along_mm", rig_random (&r->state, 0, length));
      random_model_add (r, rig, ring);
    }
}

static inline void
random_model_archer (RandomModel *r, PhRig *rig)
{
  rigs_set_archer (rig, "draw_length_mm", rig_random (&r->state, 600, 760));
  rigs_set_archer (rig, "nock_height_mm", rig_random (&r->state, -20, 80));
  rigs_set_archer (rig, "roll_stiffness_nm_per_rad", rig_random (&r->state, 0.5, 5));
  rigs_set_archer (rig, "roll_bias_nm", rig_random (&r->state, -0.3, 0.3));
  if (random_model_chance (r, 0.3))
    rigs_set_archer (rig, "wanted_bubble_deg", rig_random (&r->state, -3, 3));
  for (int i = (int)rig_random (&r->state, -3, 4); i > 0; i--)
    rigs_add_check (rig, rig_random (&r->state, 2500, 4500),
                    RIGS_3 (rig_random (&r->state, -20, 90), rig_random (&r->state, -12, 12),
                            rig_random (&r->state, -90, 20)),
                    rig->archer.draw_length_mm, rig->archer.nock_height_mm,
                    rig_random (&r->state, -6, 6));
}

/** A new rig; free with ph_rig_free. Null where the one that was made does not pass its check. */
static inline PhRig *
random_model_rig (RandomModel *r)
{
  unsigned long long *s = &r->state;
  PhRig *rig = ph_rig_new ();
  rigs_set_bow (rig, rig_random (s, 1200, 2800),
                RIGS_3 (rig_random (s, -40, 20), rig_random (s, -12, 12), rig_random (s, -20, 40)),
                RIGS_3 (290, 295, 60));
  if (random_model_chance (r, 0.8))
    rigs_set_reach (rig, rig_random (s, 800, 1050), rig_random (s, 150, 220));
  PhBow *bow = &rig->bow;
  rigs_add_socket (&bow->mounts, &bow->n_mounts, "front", RIGS_3 (62, 0, -72), RIGS_3 (1, 0, 0));
  rigs_add_socket (&bow->mounts, &bow->n_mounts, "rear", RIGS_3 (-28, 0, -150), RIGS_3 (-1, 0, 0));
  rigs_add_socket (&bow->mounts, &bow->n_mounts, "side", RIGS_3 (10, 15, -60), RIGS_3 (0, 1, 0));
  random_model_archer (r, rig);
  ph_rig_append (rig, rigs_sight ("sight"));
  random_model_bar (r, rig, "front-bar", "bow:front", 0, random_model_round (r, -10, 10),
                    rig_random (s, 500, 800));
  random_model_add (r, rig, rigs_bracket ("block", "bow:rear", random_model_round (r, -10, 10), 0));
  PhPart *block = &rig->parts[rig->n_parts - 1];
  rigs_add_socket (&block->sockets, &block->n_sockets, "b", RIGS_3 (20, -14, 0), RIGS_3 (1, 0, 0));
  random_model_bar (r, rig, "back-bar", "block:a", random_model_round (r, 0, 40),
                    random_model_round (r, -30, 10), rig_random (s, 200, 400));
  if (random_model_chance (r, 0.4))
    random_model_bar (r, rig, "other-bar", "block:b", random_model_round (r, -40, 0),
                      random_model_round (r, -30, 10), rig_random (s, 200, 400));
  if (random_model_chance (r, 0.2))
    random_model_bar (r, rig, "side-bar", "bow:side", random_model_round (r, -60, -20),
                      random_model_round (r, -30, 10), rig_random (s, 100, 300));
  if (rigs_sound (rig, true))
    return rig;
  ph_rig_free (rig);
  return NULL;
}
