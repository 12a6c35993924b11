/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A sight from its box and its aperture: an extension from the riser to the box's far end, an
 * upright there, an arm and the ring one looks through. Every other accessory, the rest among
 * them, is its box on a short stem.
 */
#include "scene/drawlist-build.h"

#define STEM_RADIUS 6.0f
#define RING_OUTER 15.0f
#define RING_WALL 2.6f
/* A box is there for its inertia: what one sees of an accessory is smaller. */
#define BODY_SHARE 0.6f
/* Beside the arrow, an accessory reaches to it: from so near to so far off the bow's plane. */
#define ARM_LEAST 8.0f
#define ARM_MOST 60.0f
#define ARROW_ASIDE 5.0f

static float
within (float value, float least, float most)
{
  return fminf (fmaxf (value, least), most);
}

/* From the riser to the accessory's near end, square to the riser first where it stands aside. */
static void
stem_shape (PhPen pen, PhPoint to, const PhRiserLine *riser)
{
  PhPoint root = ph_riser_nearest (riser, to, NULL);
  PhPoint beside = ph_point (root.x, to.y, root.z);
  ph_pen_tube (pen, root, beside, STEM_RADIUS, STEM_RADIUS);
  ph_pen_sphere (pen, beside, STEM_RADIUS);
  ph_pen_tube (pen, beside, to, STEM_RADIUS, STEM_RADIUS);
}

static void
ring_shape (PhPen pen, PhPoint aperture, PhPoint upright, float outer)
{
  PhPoint x = ph_point (1.0f, 0.0f, 0.0f);
  float toward = upright.y < aperture.y ? -1.0f : 1.0f;
  PhPoint edge = ph_point_add (aperture, ph_point (0.0f, toward * (outer - 1.0f), 0.0f));
  PhPoint arm = ph_point (upright.x, upright.y, aperture.z);
  ph_pen_tube (pen, arm, edge, 3.5f, 3.0f);
  ph_pen_ring (pen, aperture, x, outer, outer - RING_WALL, 9.0f);
  /* The pin, from below up to the middle, and its dot. */
  PhPoint foot = ph_point_add (aperture, ph_point (0.0f, 0.0f, 1.0f - outer));
  ph_pen_tube (pen, foot, aperture, 0.9f, 0.6f);
  ph_pen_sphere (pen, aperture, 1.5f);
}

static void
sight_shape (PhPen pen, PhPoint at, PhPoint size, PhPoint aperture, const PhRiserLine *riser)
{
  float near = at.x - size.x / 2.0f, far = at.x + size.x / 2.0f;
  float wide = within (0.36f * size.y, 4.0f, 11.0f), tall = within (0.3f * size.z, 6.0f, 17.0f);
  float column = within (0.06f * size.x, 6.0f, 14.0f);
  PhPoint back = ph_point (near, at.y, at.z), upright = ph_point (far - column / 2.0f, at.y, at.z);
  ph_pen_block (pen, at, ph_point (size.x, wide, tall));
  stem_shape (pen, ph_point_add (back, ph_point (STEM_RADIUS, 0.0f, 0.0f)), riser);
  ph_pen_block (pen, ph_point_add (back, ph_point (0.09f * size.x, 0.0f, 0.0f)),
                ph_point (0.18f * size.x, wide + 7.0f, tall + 6.0f));
  /* The upright spans its box and reaches the aperture's height. */
  float low = fminf (at.z - size.z / 2.0f, aperture.z - 6.0f);
  float high = fmaxf (at.z + size.z / 2.0f, aperture.z + 6.0f);
  ph_pen_block (pen, ph_point (upright.x, upright.y, (low + high) / 2.0f),
                ph_point (column, wide + 1.0f, high - low));
  ph_pen_block (pen, ph_point (upright.x, upright.y, aperture.z),
                ph_point (column + 5.0f, wide + 6.0f, 13.0f));
  ring_shape (pen, aperture, upright, within (0.3f * size.z, 7.0f, RING_OUTER));
}

/* A body within its box, and an arm to the bow's plane where it stands beside it: a rest. */
static void
body_shape (PhPen pen, PhPoint at, PhPoint size)
{
  ph_pen_block (pen, at, ph_point_scale (size, BODY_SHARE));
  if (fabsf (at.y) < ARM_LEAST || fabsf (at.y) > ARM_MOST)
    return;
  PhPoint end = ph_point (at.x, copysignf (ARROW_ASIDE, at.y), at.z);
  ph_pen_tube (pen, at, end, 2.6f, 2.2f);
  ph_pen_sphere (pen, end, 3.2f);
}

void
ph_accessory_shape (PhPen pen, const PhPart *part, const PhRiserLine *riser)
{
  pen = ph_pen_role (pen, PH_ROLE_SIGHT);
  PhPoint at = ph_point_of (part->at_mm), size = ph_point_of (part->size_mm);
  if (!isnan (part->aperture_mm[0]))
    {
      sight_shape (pen, at, size, ph_point_of (part->aperture_mm), riser);
      return;
    }
  stem_shape (pen, at, riser);
  body_shape (pen, at, size);
}
