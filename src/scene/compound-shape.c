/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A compound bow at full draw from its axle to axle, draw length and nock height: riser, split
 * limbs in their pockets, cams on their axles, string, cables and the guard that holds them aside.
 * Shares and millimetres: common practice and our own eye, no source.
 */
#include "scene/riser.h"

#define COUNT(array) (sizeof (array) / sizeof (array)[0])

static const PhKnot line[] = { { 1, 46 },     { 0.82f, 34 }, { 0.55f, 40 },  { 0.34f, 44 },
                               { 0.14f, 30 }, { 0.02f, 14 }, { -0.12f, 12 }, { -0.28f, 22 },
                               { -0.5f, 40 }, { -0.8f, 34 }, { -1, 46 } };
static const PhKnot depth[] = { { -1, 28 },     { -0.86f, 34 }, { -0.6f, 38 }, { -0.28f, 34 },
                                { -0.06f, 34 }, { 0.05f, 34 },  { 0.16f, 28 }, { 0.26f, 26 },
                                { 0.36f, 27 },  { 0.5f, 36 },   { 0.66f, 40 }, { 0.86f, 34 },
                                { 1, 28 } };
static const PhKnot across[] = { { -1, 34 }, { -0.9f, 28 }, { 0.9f, 28 }, { 1, 34 } };
static const PhKnot away[] = { { 0.05f, 0 }, { 0.14f, 14 }, { 0.31f, 14 }, { 0.4f, 0 } };
static const PhRiserHole holes[] = { { 0.87f, 13, 0.42f }, { 0.72f, 19, 0.5f },
                                     { 0.55f, 20, 0.5f },  { -0.42f, 19, 0.48f },
                                     { -0.57f, 20, 0.5f }, { -0.73f, 19, 0.5f },
                                     { -0.88f, 13, 0.42f } };
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

#define BLADE_WIDE 20.0f
#define BLADES_APART 12.0f
#define CABLES_ASIDE 25.0f
#define STRING_RADIUS 1.6f
#define CABLE_RADIUS 1.3f

/* Where the cam of one end stands; `up` is +1 for the upper one. */
typedef struct
{
  PhPoint axle, middle, track;
  float radius, track_radius;
} Cam;

static Cam
cam_of (float axle_to_axle, float up)
{
  Cam cam;
  cam.axle = ph_point (-0.155f * axle_to_axle, 0.0f, up * 0.435f * axle_to_axle);
  cam.middle = ph_point_add (cam.axle, ph_point (-8.0f, 0.0f, -6.0f * up));
  cam.track = ph_point_add (cam.middle, ph_point (-6.0f, 0.0f, -4.0f * up));
  cam.radius = 0.047f * axle_to_axle;
  cam.track_radius = 0.62f * cam.radius;
  return cam;
}

/* The limb's pocket: a block over the blades' roots, and the bolt through it. */
static void
pocket_shape (PhPen pen, PhPoint root, PhPoint way, float up)
{
  PhPoint square = ph_point (0.0f, 1.0f, 0.0f);
  PhPoint out = ph_point_scale (ph_point_unit (ph_point_cross (square, way)), up);
  PhPoint at = ph_point_add_scaled (root, way, 13.0f);
  pen = ph_pen_role (pen, PH_ROLE_FITTING);
  ph_pen_box (pen, at, ph_point_scale (way, 21.0f),
              ph_point_scale (square, BLADE_WIDE + BLADES_APART / 2.0f + 3.0f),
              ph_point_scale (out, 13.0f));
  ph_pen_tube (pen, ph_point_add_scaled (at, out, 8.0f), ph_point_add_scaled (at, out, 18.0f), 9.0f,
               8.0f);
}

static void
limbs_shape (PhPen pen, float s, const Cam *cam, float up)
{
  PhPoint root = ph_point (52.0f, 0.0f, up * s);
  /* Shares of the way back to the axle and of the rise to it: out first, then back. */
  static const float bend[][2] = { { 0.16f, 0.5f }, { 0.36f, 0.83f }, { 0.68f, 1.0f } };
  PhPoint points[COUNT (bend) + 2] = { root };
  for (size_t i = 0; i < COUNT (bend); i++)
    points[i + 1] = ph_point (root.x + bend[i][0] * (cam->axle.x - root.x), 0.0f,
                              root.z + bend[i][1] * (cam->axle.z - root.z));
  points[COUNT (bend) + 1] = cam->axle;
  PhPoint way = { 0 };
  for (int blade = -1; blade <= 1; blade += 2)
    {
      PhLimbSize size = { 17.0f, 9.0f, BLADE_WIDE, BLADE_WIDE,
                          (float)blade * (BLADE_WIDE + BLADES_APART) / 2.0f };
      ph_limb_shape (pen, points, COUNT (points), &size, &way);
    }
  pocket_shape (pen, root, way, up);
}

static void
cam_shape (PhPen pen, const Cam *cam, float up)
{
  PhPoint y = ph_point (0.0f, 1.0f, 0.0f);
  float half_axle = BLADE_WIDE + BLADES_APART / 2.0f + 2.0f;
  ph_pen_ring (pen, cam->middle, y, cam->radius, 0.8f * cam->radius, 8.0f);
  for (int i = 0; i < 3; i++)
    {
      float angle = up * (0.55f + 2.0944f * (float)i);
      PhPoint way = ph_point (cosf (angle), 0.0f, sinf (angle));
      PhPoint rim = ph_point_add_scaled (cam->middle, way, 0.84f * cam->radius);
      PhPoint half = ph_point_scale (ph_point_sub (rim, cam->track), 0.5f);
      ph_pen_box (pen, ph_point_add (cam->track, half), half,
                  ph_point_scale (ph_point_unit (ph_point_cross (y, half)), 0.1f * cam->radius),
                  ph_point_scale (y, 3.0f));
    }
  ph_pen_disc (pen, cam->track, y, cam->track_radius, 12.0f);
  ph_pen_disc (ph_pen_role (pen, PH_ROLE_FITTING), cam->axle, y, 4.5f, 2.0f * half_axle);
}

/* Where a line from `from` touches the circle, on the side that faces away from the target; the
 * middle where `from` lies inside. */
static PhPoint
tangent_point (PhPoint from, PhPoint middle, float radius)
{
  PhPoint to = ph_point_sub (middle, from);
  float far = ph_point_length (to);
  if (far <= radius)
    return middle;
  PhPoint way = ph_point_scale (to, 1.0f / far);
  PhPoint square = ph_point (-way.z, 0.0f, way.x);
  if (square.x > 0.0f)
    square = ph_point_scale (square, -1.0f);
  float back = radius * radius / far, aside = radius * sqrtf (1.0f - back * back / radius / radius);
  return ph_point_add_scaled (ph_point_add_scaled (middle, way, -back), square, aside);
}

/* One cable, from the back of one cam's track to the front of the other's, held aside on its way.
 */
static void
cable_shape (PhPen pen, const Cam *from, const Cam *to, float guard_z, float aside)
{
  PhPoint a = ph_point_add (from->track, ph_point (-0.92f * from->track_radius, 0.0f, 0.0f));
  PhPoint b = ph_point_add (to->track, ph_point (0.92f * to->track_radius, 0.0f, 0.0f));
  PhPoint held = ph_point_mix (a, b, (guard_z - a.z) / (b.z - a.z));
  held.y = aside;
  const PhPoint points[] = { a, held, b };
  ph_pen_line (ph_pen_role (pen, PH_ROLE_CABLE), points, COUNT (points), CABLE_RADIUS);
}

/* The rod that holds the cables clear of the arrow, and its slide. */
static void
guard_shape (PhPen pen, const PhRiserLine *riser, float cables_x, float guard_z, float aside)
{
  pen = ph_pen_role (pen, PH_ROLE_FITTING);
  PhPoint end = ph_point (cables_x - 22.0f, aside, guard_z);
  PhPoint root = ph_riser_nearest (riser, ph_point (40.0f, 0.0f, guard_z), NULL);
  PhPoint start = ph_point (root.x, aside, guard_z);
  ph_pen_tube (pen, root, start, 8.0f, 8.0f);
  ph_pen_tube (pen, start, end, 4.5f, 4.5f);
  ph_pen_block (pen, ph_point (cables_x, aside, guard_z), ph_point (26.0f, 12.0f, 14.0f));
}

void
ph_compound_shape (PhPen pen, const PhRig *rig, PhRiserLine *riser)
{
  float axle_to_axle = ph_bow_axle_to_axle (&rig->bow);
  float s = 0.36f * axle_to_axle, left = ph_rig_left (rig), aside = -left * CABLES_ASIDE;
  Cam top = cam_of (axle_to_axle, 1.0f), bottom = cam_of (axle_to_axle, -1.0f);
  PhRiserTable table = riser_table;
  table.mounts = rig->bow.mounts;
  table.n_mounts = rig->bow.n_mounts;
  ph_riser_shape (pen, &table, s, left, riser);
  limbs_shape (pen, s, &top, 1.0f);
  limbs_shape (pen, s, &bottom, -1.0f);
  cam_shape (ph_pen_role (pen, PH_ROLE_CAM), &top, 1.0f);
  cam_shape (ph_pen_role (pen, PH_ROLE_CAM), &bottom, -1.0f);
  PhPoint nock = ph_rig_nock (rig);
  const PhPoint string[] = { tangent_point (nock, top.middle, top.radius), nock,
                             tangent_point (nock, bottom.middle, bottom.radius) };
  ph_pen_line (ph_pen_role (pen, PH_ROLE_STRING), string, COUNT (string), STRING_RADIUS);
  float guard_z = 0.26f * s;
  cable_shape (pen, &top, &bottom, guard_z, aside);
  cable_shape (pen, &bottom, &top, guard_z, aside);
  guard_shape (pen, riser, top.track.x, guard_z, aside);
}
