/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A recurve bow at full draw, and the barebow, which is the same without its sight and bars: a
 * 25 in riser, limbs that bend back and curl forward over their last 80 mm, the string straight
 * from nock to tip. Millimetres: common practice and our own eye, no source.
 */
#include "scene/riser.h"

#define COUNT(array) (sizeof (array) / sizeof (array)[0])

static const PhKnot line[] = { { 1, 30 },     { 0.8f, 10 },  { 0.5f, 22 },   { 0.3f, 36 },
                               { 0.12f, 24 }, { 0, 12 },     { -0.14f, 10 }, { -0.3f, 22 },
                               { -0.5f, 30 }, { -0.8f, 12 }, { -1, 30 } };
static const PhKnot depth[] = { { -1, 24 },    { -0.9f, 29 }, { -0.75f, 31 }, { -0.5f, 34 },
                                { -0.2f, 31 }, { 0.0f, 31 },  { 0.14f, 26 },  { 0.3f, 25 },
                                { 0.42f, 29 }, { 0.6f, 33 },  { 0.75f, 31 },  { 0.9f, 29 },
                                { 1, 24 } };
static const PhKnot across[] = { { -1, 45 },   { -0.94f, 45 }, { -0.74f, 30 }, { -0.5f, 28 },
                                 { 0.5f, 28 }, { 0.74f, 30 },  { 0.94f, 45 },  { 1, 45 } };
static const PhKnot away[] = { { 0.05f, 0 }, { 0.14f, 14 }, { 0.31f, 14 }, { 0.42f, 0 } };
static const PhRiserHole holes[] = { { 0.66f, 22, 0.46f },
                                     { 0.49f, 16, 0.42f },
                                     { -0.4f, 17, 0.44f },
                                     { -0.56f, 22, 0.46f },
                                     { -0.7f, 14, 0.4f } };
static const PhRiserTable riser_table = { .line = line,
                                          .n_line = COUNT (line),
                                          .depth = depth,
                                          .n_depth = COUNT (depth),
                                          .across = across,
                                          .n_across = COUNT (across),
                                          .away = away,
                                          .n_away = COUNT (away),
                                          .holes = holes,
                                          .n_holes = COUNT (holes) };

#define HALF_RISER 317.0f
#define STRING_RADIUS 1.7f
/* Height of the tip over the riser's end for which the limb's own numbers are given. */
#define LIMB_RISE 392.5f
/* How far the limb goes on beyond the groove that holds the string. */
#define NOSE 13.0f

static PhPoint
tip_of (float tip_to_tip, float up)
{
  return ph_point (-250.0f, 0.0f, up * 0.43f * tip_to_tip);
}

static void
limb_shape (PhPen pen, float s, PhPoint tip, float up)
{
  /* For another length the limb's heights stretch with it. */
  float k = (fabsf (tip.z) - s) / LIMB_RISE;
  const PhPoint points[] = { ph_point (30.0f, 0.0f, up * s),
                             ph_point (8.0f, 0.0f, up * (s + 120.0f * k)),
                             ph_point (-60.0f, 0.0f, up * (s + 245.0f * k)),
                             ph_point (-158.0f, 0.0f, up * (s + 330.0f * k)),
                             ph_point (-218.0f, 0.0f, up * (s + 357.0f * k)),
                             tip,
                             ph_point_add (tip, ph_point (-0.25f * NOSE, 0.0f, up * NOSE)) };
  PhLimbSize size = { 15.0f, 6.0f, 45.0f, 16.0f, 0.0f };
  PhPoint way;
  ph_limb_shape (pen, points, COUNT (points), &size, &way);
  /* The bolt that holds the limb down in its pocket. */
  PhPoint out = ph_point_scale (ph_point_cross (ph_point (0.0f, 1.0f, 0.0f), way), up);
  PhPoint at = ph_point_add_scaled (points[0], way, 14.0f);
  pen = ph_pen_role (pen, PH_ROLE_FITTING);
  ph_pen_tube (pen, at, ph_point_add_scaled (at, out, 15.0f), 9.0f, 8.0f);
}

void
ph_recurve_shape (PhPen pen, const PhRig *rig, PhRiserLine *riser)
{
  float tip_to_tip = ph_bow_axle_to_axle (&rig->bow);
  /* A bow too short for a 25 in riser still has limbs. */
  float s = fminf (HALF_RISER, 0.25f * tip_to_tip);
  PhPoint top = tip_of (tip_to_tip, 1.0f), bottom = tip_of (tip_to_tip, -1.0f);
  limb_shape (pen, s, top, 1.0f);
  limb_shape (pen, s, bottom, -1.0f);
  PhRiserTable table = riser_table;
  table.mounts = rig->bow.mounts;
  table.n_mounts = rig->bow.n_mounts;
  ph_riser_shape (pen, &table, s, ph_rig_left (rig), riser);
  const PhPoint string[] = { top, ph_rig_nock (rig), bottom };
  ph_pen_line (ph_pen_role (pen, PH_ROLE_STRING), string, COUNT (string), STRING_RADIUS);
}
