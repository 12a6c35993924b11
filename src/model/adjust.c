/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A walk over the parts; microseconds.
 */
#include "model/adjust.h"

#include <math.h>
#include <stdlib.h>

#include "base/text.h"
#include "model/fields.h"
#include "model/front-tip.h"

const char *
ph_adjust_key_word (PhAdjustKey key)
{
  static const char *const words[] = { "swing_deg", "lift_deg", "count" };
  return words[key];
}

static void
add (PhAdjustables *list, int piece, PhAdjustKey key, double now, const PhLimits *limits, double lo,
     double hi, double most)
{
  PhAdjustable one = { .piece = piece, .key = key, .now = now, .step = 1 };
  one.lo = fmin (limits->given ? limits->lo : lo, now);
  one.hi = fmax (limits->given ? limits->hi : hi, now);
  ph_adjust_count_steps (&one, most);
  if (one.steps_down > 0 || one.steps_up > 0)
    list->items[list->n++] = one;
}

/* No count may make the stack heavier than a part may be: the file would not take it. */
static double
most_discs (const PhPart *part)
{
  double most_g = ph_field_find (PH_OBJECT_PART, "each_g", NULL)->hi;
  return part->each_g > 0 ? floor (most_g / part->each_g) : (double)INFINITY;
}

static void
add_part (PhAdjustables *list, const PhPart *part, const PhCompiled *compiled, int piece)
{
  PhVec3 direction = ph_assembly_place (compiled->assembly, piece)->frame.a;
  bool turns = part->kind == PH_PART_BAR || part->kind == PH_PART_BRACKET;
  bool jointed = direction.x <= PH_POINTS_FORWARD;
  if (turns && (jointed || part->limit_swing.given))
    add (list, piece, PH_ADJUST_SWING, part->swing_deg, &part->limit_swing, -PH_LIMIT_SWING_DEG,
         PH_LIMIT_SWING_DEG, INFINITY);
  if (part->kind == PH_PART_BAR && (jointed || part->limit_lift.given))
    add (list, piece, PH_ADJUST_LIFT, part->lift_deg, &part->limit_lift, -PH_LIMIT_LIFT_DEG,
         PH_LIMIT_LIFT_DEG, INFINITY);
  if (part->kind == PH_PART_WEIGHTS)
    add (list, piece, PH_ADJUST_COUNT, part->count, &part->limit_count, 0, PH_LIMIT_COUNT,
         most_discs (part));
}

PhAdjustables
ph_adjustables_of (const PhRig *rig, const PhCompiled *compiled)
{
  PhAdjustables list = { ph_alloc ((2 * rig->n_parts + 1) * sizeof *list.items), 0 };
  for (size_t i = 0; i < rig->n_parts; i++)
    if (compiled->piece_of_part[i] >= 0 && !rig->parts[i].locked)
      add_part (&list, &rig->parts[i], compiled, compiled->piece_of_part[i]);
  return list;
}

void
ph_adjustables_clear (PhAdjustables *adjustables)
{
  free (adjustables->items);
  *adjustables = (PhAdjustables){ 0 };
}
