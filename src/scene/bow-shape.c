/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The bow with its grip, the arrow and the hand: what all kinds of bow share, and what stands in
 * where the file states no length.
 */
#include "scene/riser.h"

#define COUNT(array) (sizeof (array) / sizeof (array)[0])

#define ARROW_RADIUS 3.0f
/* How far the arrow goes on beyond the grip throat. */
#define ARROW_AHEAD 90.0f

float
ph_bow_axle_to_axle (const PhBow *bow)
{
  if (!isnan (bow->axle_to_axle_mm))
    return (float)bow->axle_to_axle_mm;
  return bow->kind == PH_BOW_COMPOUND ? 900.0f : 1650.0f;
}

float
ph_rig_left (const PhRig *rig)
{
  return rig->archer.bow_hand == PH_BOW_HAND_LEFT ? 1.0f : -1.0f;
}

PhPoint
ph_rig_nock (const PhRig *rig)
{
  return ph_point ((float)-rig->archer.draw_length_mm, 0.0f, (float)rig->archer.nock_height_mm);
}

/* From the nock through the point 3 mm under the nock's height above the throat. */
static void
arrow_shape (PhPen pen, const PhRig *rig)
{
  pen = ph_pen_role (pen, PH_ROLE_ARROW);
  PhPoint nock = ph_rig_nock (rig);
  PhPoint way = ph_point_unit (ph_point_sub (ph_point (0.0f, 0.0f, nock.z - 3.0f), nock));
  float length = (float)rig->archer.draw_length_mm + ARROW_AHEAD;
  PhPoint point = ph_point_add_scaled (nock, way, length);
  const PhPoint shaft[] = { nock, point };
  ph_pen_line (pen, shaft, COUNT (shaft), ARROW_RADIUS);
  ph_pen_tube (pen, point, ph_point_add_scaled (point, way, 24.0f), ARROW_RADIUS, 0.3f);
  for (int i = 0; i < 3; i++)
    {
      float angle = 2.0944f * (float)i;
      PhPoint out = ph_point (0.0f, cosf (angle), sinf (angle));
      ph_pen_box (pen, ph_point_add_scaled (ph_point_add_scaled (nock, way, 45.0f), out, 6.0f),
                  ph_point_scale (way, 22.0f), ph_point_scale (out, 4.5f),
                  ph_point_scale (ph_point_cross (way, out), 0.6f));
    }
}

/* A fist about the grip and a forearm going back from it: which way is forward, no more. */
static void
hand_shape (PhPen pen)
{
  pen = ph_pen_role (pen, PH_ROLE_HAND);
  PhPoint palm = ph_point (-14.0f, 0.0f, -34.0f), wrist = ph_point (-82.0f, 0.0f, -14.0f);
  PhPoint elbow = ph_point (-330.0f, 0.0f, 14.0f);
  ph_pen_sphere (pen, palm, 33.0f);
  ph_pen_tube (pen, palm, wrist, 33.0f, 27.0f);
  ph_pen_sphere (pen, wrist, 27.0f);
  ph_pen_tube (pen, wrist, elbow, 27.0f, 43.0f);
  ph_pen_sphere (pen, elbow, 43.0f);
}

void
ph_bow_shape (PhDrawList *list, const PhRig *rig, const PhDrawOptions *options, PhRiserLine *riser)
{
  PhPen pen = { .list = list, .part = PH_PART_BOW };
  if (rig->bow.kind == PH_BOW_COMPOUND)
    ph_compound_shape (pen, rig, riser);
  else
    ph_recurve_shape (pen, rig, riser);
  ph_grip_shape (pen);
  if (options->show_arrow)
    arrow_shape (pen, rig);
  if (options->show_hand)
    hand_shape (pen);
}
