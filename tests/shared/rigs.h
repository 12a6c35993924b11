/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rigs for tests, made in code: parts in a line each, the example of the rig file's page, and an
 * odd one that holds what the example lacks. Club and archers are invented.
 */
#pragma once

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "model/check.h"
#include "model/fields.h"

static inline void
rigs_set_text (PhPart *part, const char *key, const char *text)
{
  ph_field_set_text (ph_field_find (PH_OBJECT_PART, key, NULL), part, text);
  part->given |= ph_given_bit (PH_OBJECT_PART, key);
}

static inline void
rigs_set (PhPart *part, const char *key, double value)
{
  ph_part_set_number (part, key, 0, value);
}

static inline void
rigs_set3 (PhPart *part, const char *key, double x, double y, double z)
{
  ph_part_set_number (part, key, 0, x);
  ph_part_set_number (part, key, 1, y);
  ph_part_set_number (part, key, 2, z);
}

static inline PhPart
rigs_part (PhPartKind kind, const char *id, const char *on)
{
  PhPart part = ph_part_default (kind);
  rigs_set_text (&part, "id", id);
  rigs_set_text (&part, "on", on);
  return part;
}

static inline PhPart
rigs_turned (PhPartKind kind, const char *id, const char *on, double swing_deg, double lift_deg)
{
  PhPart part = rigs_part (kind, id, on);
  rigs_set (&part, "swing_deg", swing_deg);
  rigs_set (&part, "lift_deg", lift_deg);
  return part;
}

/* A bar of 18/16 mm. */
static inline PhPart
rigs_bar (const char *id, const char *on, double swing_deg, double lift_deg, double length_mm,
          double mass_g)
{
  PhPart bar = rigs_turned (PH_PART_BAR, id, on, swing_deg, lift_deg);
  rigs_set (&bar, "length_mm", length_mm);
  rigs_set (&bar, "outer_mm", 18);
  rigs_set (&bar, "inner_mm", 16);
  rigs_set (&bar, "mass_g", mass_g);
  return bar;
}

/* One-ounce discs. */
static inline PhPart
rigs_stack (const char *id, const char *on, double count)
{
  PhPart stack = rigs_part (PH_PART_WEIGHTS, id, on);
  rigs_set (&stack, "count", count);
  rigs_set (&stack, "each_g", 28.35);
  rigs_set (&stack, "diameter_mm", 25.4);
  rigs_set (&stack, "each_mm", 7.2);
  return stack;
}

static inline PhPart
rigs_damper (const char *id, const char *on, double mass_g, double length_mm, double diameter_mm)
{
  PhPart damper = rigs_part (PH_PART_DAMPER, id, on);
  rigs_set (&damper, "mass_g", mass_g);
  rigs_set (&damper, "length_mm", length_mm);
  rigs_set (&damper, "diameter_mm", diameter_mm);
  return damper;
}

static inline void
rigs_add_socket (PhSocket **sockets, size_t *n, const char *id, const double at_mm[3],
                 const double axis[3])
{
  PhSocket socket = { .id = ph_text_dup (id) };
  memcpy (socket.at_mm, at_mm, sizeof socket.at_mm);
  memcpy (socket.axis, axis, sizeof socket.axis);
  *sockets = ph_realloc (*sockets, (*n + 1) * sizeof **sockets);
  (*sockets)[(*n)++] = socket;
}
#define RIGS_3(x, y, z) ((const double[3]){ x, y, z })

/* A bracket of 85 g with one socket, "a". */
static inline PhPart
rigs_bracket (const char *id, const char *on, double swing_deg, double lift_deg)
{
  PhPart block = rigs_turned (PH_PART_BRACKET, id, on, swing_deg, lift_deg);
  rigs_set (&block, "mass_g", 85);
  rigs_set3 (&block, "com_mm", 12, 4, 0);
  rigs_set3 (&block, "size_mm", 30, 40, 20);
  rigs_add_socket (&block.sockets, &block.n_sockets, "a", RIGS_3 (20, 14, 0), RIGS_3 (1, 0, 0));
  return block;
}

static inline void
rigs_set_bow (PhRig *rig, double mass_g, const double com_mm[3], const double gyration_mm[3])
{
  PhBow *bow = &rig->bow;
  bow->mass_g = mass_g;
  memcpy (bow->com_mm, com_mm, sizeof bow->com_mm);
  memcpy (bow->gyration_mm, gyration_mm, sizeof bow->gyration_mm);
  bow->given |= ph_given_bit (PH_OBJECT_BOW, "mass_g") | ph_given_bit (PH_OBJECT_BOW, "com_mm")
                | ph_given_bit (PH_OBJECT_BOW, "gyration_mm");
}

static inline void
rigs_set_reach (PhRig *rig, double axle_to_axle_mm, double brace_height_mm)
{
  rig->bow.axle_to_axle_mm = axle_to_axle_mm;
  rig->bow.brace_height_mm = brace_height_mm;
  rig->bow.given |= ph_given_bit (PH_OBJECT_BOW, "axle_to_axle_mm")
                    | ph_given_bit (PH_OBJECT_BOW, "brace_height_mm");
}

static inline void
rigs_set_archer (PhRig *rig, const char *key, double value)
{
  PhArcher *archer = &rig->archer;
  const PhField *field = ph_field_find (PH_OBJECT_ARCHER, key, NULL);
  uint64_t *given = field ? &archer->given : &archer->hand_given;
  PhObject object = field ? PH_OBJECT_ARCHER : PH_OBJECT_HAND;
  ph_field_set_number (ph_field_find (object, key, NULL), archer, 0, value);
  *given |= ph_given_bit (object, key);
  archer->present = true;
  archer->hand_present |= !field;
}

static inline void
rigs_add_check (PhRig *rig, double mass_g, const double com_mm[3], double draw_length_mm,
                double nock_height_mm, double bubble_deg)
{
  PhArcher *archer = &rig->archer;
  PhCheck check = ph_check_default ();
  check.mass_g = mass_g;
  memcpy (check.com_mm, com_mm, sizeof check.com_mm);
  check.draw_length_mm = draw_length_mm;
  check.nock_height_mm = nock_height_mm;
  check.bubble_deg = bubble_deg;
  size_t n;
  ph_fields_of (PH_OBJECT_CHECK, &n);
  for (size_t i = 0; i < n; i++)
    if (ph_fields_of (PH_OBJECT_CHECK, &n)[i].required)
      check.given |= (uint64_t)1 << i;
  archer->checks = ph_realloc (archer->checks, (archer->n_checks + 1) * sizeof *archer->checks);
  archer->checks[archer->n_checks++] = check;
  archer->present = archer->hand_present = true;
}

static inline PhPart
rigs_sight (const char *id)
{
  PhPart sight = rigs_part (PH_PART_ACCESSORY, id, "bow");
  rigs_set (&sight, "mass_g", 310);
  rigs_set3 (&sight, "at_mm", 150, -38, 95);
  rigs_set3 (&sight, "size_mm", 260, 30, 60);
  rigs_set3 (&sight, "aperture_mm", 290, -8, 120);
  return sight;
}

/* The example of the rig file's page: parts 0 sight, 1 front-bar, 2 front-stack, 3 block,
   4 back-bar, 5 back-stack. Free with ph_rig_free. */
static inline PhRig *
rigs_example (void)
{
  PhRig *rig = ph_rig_new ();
  rig->name = ph_text_dup ("Harbour club indoor");
  rigs_set_archer (rig, "stature_mm", 1720);
  rigs_set_archer (rig, "body_mass_g", 68000);
  rigs_set_archer (rig, "draw_length_mm", 660);
  rigs_set_archer (rig, "nock_height_mm", 42);
  rigs_set_archer (rig, "holding_weight_n", 62);
  rigs_add_check (rig, 3100, RIGS_3 (70, -4, -55), 660, 42, 1.4);
  rigs_set_bow (rig, 1950, RIGS_3 (-18, -3, 12), RIGS_3 (290, 295, 60));
  rigs_set_reach (rig, 940, 178);
  rigs_add_socket (&rig->bow.mounts, &rig->bow.n_mounts, "front", RIGS_3 (62, 0, -72),
                   RIGS_3 (1, 0, 0));
  rigs_add_socket (&rig->bow.mounts, &rig->bow.n_mounts, "rear", RIGS_3 (-28, 0, -150),
                   RIGS_3 (-1, 0, 0));
  PhPart front = rigs_bar ("front-bar", "bow:front", 0, -8, 762, 165);
  rigs_set (&front, "root_fitting_g", 35);
  rigs_set (&front, "tip_fitting_g", 25);
  rigs_set (&front, "fitting_mm", 15);
  rigs_set (&front, "modulus_gpa", 100);
  ph_rig_append (rig, rigs_sight ("sight"));
  ph_rig_append (rig, front);
  ph_rig_append (rig, rigs_stack ("front-stack", "front-bar", 8));
  ph_rig_append (rig, rigs_bracket ("block", "bow:rear", 0, 0));
  ph_rig_append (rig, rigs_bar ("back-bar", "block:a", 20, -12, 305, 95));
  ph_rig_append (rig, rigs_stack ("back-stack", "back-bar", 5));
  return rig;
}

/* An odd recurve: guests before their hosts, a stack along a bar, a damper with a stack beyond it,
   a bar shorter than its fittings' default, a bracket across the bow with a socket on a skew axis,
   a mount on an axis of any length, a branch that is off. Parts 0 far-stack, 1 rubber, 2 side-bar,
   3 ring, 4 cross, 5 short, 6 tail, 7 spare, 8 spare-stack, 9 knob. Free with ph_rig_free. */
static inline PhRig *
rigs_odd (void)
{
  PhRig *rig = ph_rig_new ();
  rig->bow.kind = PH_BOW_RECURVE;
  rig->bow.given |= ph_given_bit (PH_OBJECT_BOW, "kind");
  rigs_set_archer (rig, "draw_length_mm", 712.5);
  rigs_set_archer (rig, "roll_stiffness_nm_per_rad", 1.3);
  rigs_set_archer (rig, "roll_bias_nm", 0.07);
  rigs_set_archer (rig, "wanted_bubble_deg", -1.5);
  rigs_set_bow (rig, 1650, RIGS_3 (-25, -2, 20), RIGS_3 (420, 425, 45));
  rigs_set_reach (rig, 1650, 220);
  rigs_add_socket (&rig->bow.mounts, &rig->bow.n_mounts, "front", RIGS_3 (30, 0.5, -85),
                   RIGS_3 (2, 0.3, -0.1));
  rigs_add_socket (&rig->bow.mounts, &rig->bow.n_mounts, "side", RIGS_3 (12, 18, -60),
                   RIGS_3 (0, 5, 0));
  PhPart side = rigs_bar ("side-bar", "cross:out", 35, -20, 254, 88);
  rigs_set (&side, "tip_fitting_g", 12.5);
  side.limit_swing = (PhLimits){ true, -10, 50 };
  PhPart ring = rigs_stack ("ring", "side-bar", 2);
  rigs_set (&ring, "bore_mm", 18.2);
  rigs_set (&ring, "along_mm", 77.7);
  PhPart cross = rigs_bracket ("cross", "bow:side", 0, 0);
  rigs_add_socket (&cross.sockets, &cross.n_sockets, "out", RIGS_3 (22, -9, 4),
                   RIGS_3 (-0.4, 0.5, 0.1));
  PhPart shorty = rigs_bar ("short", "cross:a", 25, 10, 12, 20);
  rigs_set (&shorty, "root_fitting_g", 6);
  PhPart spare = rigs_bar ("spare", "bow:front", 5, 5, 700, 150);
  spare.off = true;
  spare.given |= ph_given_bit (PH_OBJECT_PART, "off");
  PhPart rubber = rigs_damper ("rubber", "side-bar", 21, 18, 24);
  rigs_set (&rubber, "lift_deg", 3);
  ph_rig_append (rig, rigs_stack ("far-stack", "rubber", 3));
  ph_rig_append (rig, rubber);
  ph_rig_append (rig, side);
  ph_rig_append (rig, ring);
  ph_rig_append (rig, cross);
  ph_rig_append (rig, shorty);
  ph_rig_append (rig, rigs_bar ("tail", "bow:front", -4, 2, 610, 130));
  ph_rig_append (rig, spare);
  ph_rig_append (rig, rigs_stack ("spare-stack", "spare", 4));
  ph_rig_append (rig, rigs_stack ("knob", "tail", 0));
  return rig;
}

/* Whether the rig passes; prints its errors where `expected`. */
static inline bool
rigs_sound (PhRig *rig, bool expected)
{
  PhIssues issues = { 0 };
  bool sound = ph_check_rig (rig, &issues);
  for (size_t i = 0; expected && !sound && i < issues.n; i++)
    {
      char *line = ph_issue_line (&issues.items[i]);
      printf ("# %s\n", line);
      free (line);
    }
  ph_issues_clear (&issues);
  return sound;
}
