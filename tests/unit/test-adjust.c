/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which numbers may change, and how far: by the page's own rules, counted by hand on two rigs.
 */
#include "model/adjust.h"

#include "check.h"
#include "model/edit.h"
#include "rigs.h"

typedef struct
{
  PhRig *rig;
  PhCompiled *compiled;
  PhAdjustables list;
} Case;

static Case
case_of (PhRig *rig)
{
  Case c = { .rig = rig };
  CHECK (rigs_sound (rig, true));
  c.compiled = ph_compile_rig (rig);
  c.list = ph_adjustables_of (rig, c.compiled);
  return c;
}

static void
end_case (Case *c)
{
  ph_adjustables_clear (&c->list);
  ph_compiled_free (c->compiled);
  ph_rig_free (c->rig);
}

static void
check_one (const Case *c, size_t i, const char *id, const char *key, double now, double lo,
           double hi)
{
  CHECK (i < c->list.n, "%s %s", id, key);
  if (i >= c->list.n)
    return;
  const PhAdjustable *one = &c->list.items[i];
  CHECK_TEXT (c->rig->parts[c->compiled->part_of_piece[one->piece]].id, id);
  CHECK_TEXT (ph_adjust_key_word (one->key), key);
  CHECK_NEAR (one->now, now, 0);
  CHECK_NEAR (one->step, 1, 0);
  CHECK_NEAR (one->lo, lo, 0);
  CHECK_NEAR (one->hi, hi, 0);
}

static void
example_lists_what_turns_and_what_is_counted (void)
{
  Case c = case_of (rigs_example ());
  CHECK (c.list.n == 5);
  check_one (&c, 0, "front-stack", "count", 8, 0, 12);
  check_one (&c, 1, "block", "swing_deg", 0, -60, 60);
  check_one (&c, 2, "back-bar", "swing_deg", 20, -60, 60);
  check_one (&c, 3, "back-bar", "lift_deg", -12, -45, 45);
  check_one (&c, 4, "back-stack", "count", 5, 0, 12);
  end_case (&c);
}

static void
file_order_holds_where_guests_stand_before_hosts (void)
{
  Case c = case_of (rigs_odd ());
  /* far-stack, side-bar (it points forward: only by its own limits), ring along it, cross, then
     short; tail points forward, the spare branch is off; knob. */
  CHECK (ph_assembly_place (c.compiled->assembly, c.compiled->piece_of_part[2])->frame.a.x > 0.7);
  check_one (&c, 0, "far-stack", "count", 3, 0, 12);
  check_one (&c, 1, "side-bar", "swing_deg", 35, -10, 50);
  check_one (&c, 2, "ring", "count", 2, 0, 12);
  check_one (&c, 3, "cross", "swing_deg", 0, -60, 60);
  CHECK_TEXT (c.rig->parts[c.compiled->part_of_piece[c.list.items[c.list.n - 1].piece]].id, "knob");
  for (size_t i = 0; i < c.list.n; i++)
    {
      const char *id = c.rig->parts[c.compiled->part_of_piece[c.list.items[i].piece]].id;
      CHECK (strcmp (id, "tail") != 0 && strncmp (id, "spare", 5) != 0, "%s", id);
    }
  end_case (&c);
}

static void
locked_part_is_left_out_but_not_its_guests (void)
{
  PhRig *rig = rigs_example ();
  ph_edit_set_locked (rig, 4, true);
  Case c = case_of (rig);
  CHECK (c.list.n == 3);
  check_one (&c, 1, "block", "swing_deg", 0, -60, 60);
  check_one (&c, 2, "back-stack", "count", 5, 0, 12);
  end_case (&c);
}

static void
front_bar_turns_only_by_the_keys_that_its_limits_name (void)
{
  PhRig *rig = rigs_example ();
  rig->parts[1].limit_lift = (PhLimits){ true, -15, 15 };
  Case c = case_of (rig);
  CHECK (c.list.n == 6);
  check_one (&c, 0, "front-bar", "lift_deg", -8, -15, 15);
  check_one (&c, 1, "front-stack", "count", 8, 0, 12);
  end_case (&c);
}

static void
present_value_stretches_limits_stated_or_not (void)
{
  PhRig *rig = rigs_example ();
  rig->parts[2].count = 20;
  rig->parts[4].swing_deg = -75;
  rig->parts[4].limit_lift = (PhLimits){ true, 0, 10 };
  Case c = case_of (rig);
  check_one (&c, 0, "front-stack", "count", 20, 0, 20);
  check_one (&c, 2, "back-bar", "swing_deg", -75, -75, 60);
  check_one (&c, 3, "back-bar", "lift_deg", -12, -12, 10);
  CHECK (c.list.items[2].steps_down == 0 && c.list.items[2].steps_up == 135);
  end_case (&c);
}

static void
value_without_a_whole_step_is_not_listed (void)
{
  PhRig *rig = rigs_example ();
  rig->parts[4].swing_deg = 20.5;
  rig->parts[4].limit_swing = (PhLimits){ true, 19.6, 21.4 };
  rig->parts[5].limit_count = (PhLimits){ true, 5, 5.5 };
  Case c = case_of (rig);
  CHECK (c.list.n == 3);
  check_one (&c, 2, "back-bar", "lift_deg", -12, -45, 45);
  end_case (&c);
}

static void
steps_end_at_the_limits_and_not_a_rounding_beyond (void)
{
  PhAdjustable one = { .now = 0.1, .step = 1, .lo = -2.9, .hi = 3.1 };
  ph_adjust_count_steps (&one, INFINITY);
  CHECK (one.steps_down == 3 && one.steps_up == 3, "%d %d", one.steps_down, one.steps_up);
  CHECK (ph_adjust_value (&one, 3) <= one.hi && ph_adjust_value (&one, -3) >= one.lo);
  one = (PhAdjustable){ .now = 20.3, .step = 1, .lo = -60, .hi = 60 };
  ph_adjust_count_steps (&one, INFINITY);
  CHECK (one.steps_down == 80 && one.steps_up == 39);
  ph_adjust_count_steps (&one, 25);
  CHECK (one.steps_up == 4);
}

static void
count_stops_where_the_stack_would_be_too_heavy_for_the_file (void)
{
  PhRig *rig = rigs_example ();
  rigs_set (&rig->parts[5], "each_g", 3000);
  Case c = case_of (rig);
  const PhAdjustable *stack = &c.list.items[4];
  CHECK_NEAR (stack->hi, 12, 0);
  CHECK (stack->steps_up == 1, "%d", stack->steps_up); /* 6 × 3 kg; 7 would be over 20 kg */
  end_case (&c);
}

static void
changed_piece_is_the_compiled_one (void)
{
  PhRig *rig = rigs_example ();
  PhCompiled *compiled = ph_compile_rig (rig);
  PhPiece changed = ph_adjust_piece (
      ph_assembly_piece (compiled->assembly, compiled->piece_of_part[5]), PH_ADJUST_COUNT, 7);
  rig->parts[5].count = 7;
  PhPiece wanted = ph_compile_piece (rig, 5, changed.host);
  CHECK (changed.count == 7);
  CHECK_REL (changed.length_m, wanted.length_m, 1e-15);
  CHECK_REL (changed.body.mass_kg, wanted.body.mass_kg, 1e-15);
  CHECK_REL (changed.body.com_m.x, wanted.body.com_m.x, 1e-15);
  CHECK_REL (changed.body.inertia_kg_m2.x, wanted.body.inertia_kg_m2.x, 1e-14);
  CHECK_REL (changed.body.inertia_kg_m2.y, wanted.body.inertia_kg_m2.y, 1e-14);
  ph_compiled_free (compiled);
  ph_rig_free (rig);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (example_lists_what_turns_and_what_is_counted);
  CASE (file_order_holds_where_guests_stand_before_hosts);
  CASE (locked_part_is_left_out_but_not_its_guests);
  CASE (front_bar_turns_only_by_the_keys_that_its_limits_name);
  CASE (present_value_stretches_limits_stated_or_not);
  CASE (value_without_a_whole_step_is_not_listed);
  CASE (steps_end_at_the_limits_and_not_a_rounding_beyond);
  CASE (count_stops_where_the_stack_would_be_too_heavy_for_the_file);
  CASE (changed_piece_is_the_compiled_one);
  return check_end ();
}
