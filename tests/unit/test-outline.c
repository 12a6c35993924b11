/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Silhouettes against plane geometry: areas of a circle, a rectangle, a stadium; Cauchy's surface
 * area formula (the mean shadow of a convex body is a quarter of its surface: A. Cauchy 1832, in
 * any text on integral geometry; from memory). Hulls against their own definition.
 */
#include "scene/outline.h"

#include "check.h"
#include "drawn-rig.h"
#include "scene/drawlist-build.h"
#include "scene/fit.h"
#include "scene/hull.h"

#define PI 3.14159265358979

static float
next_random (unsigned *seed)
{
  *seed = *seed * 1664525U + 1013904223U;
  return (float)(*seed >> 8) / (float)(1U << 24);
}

static double
area_of (const PhPixel *p, size_t n)
{
  double sum = 0;
  for (size_t i = 0, j = n - 1; i < n; j = i++)
    sum += (double)p[j].x * (double)p[i].y - (double)p[i].x * (double)p[j].y;
  return fabs (sum) / 2;
}

/* Area of the silhouette of a list's only solid, in mm² at 1 px/mm. */
static double
shadow (PhDrawList *list, PhView view)
{
  PhCamera camera = ph_camera_default (view);
  camera.width_px = camera.height_px = 1000.0f;
  PhOutlines *outlines = ph_outlines_new ();
  ph_outlines_update (outlines, list, &camera);
  const PhOutline *outline = ph_outlines_get (outlines, 0);
  double area = area_of (ph_outlines_pixels (outlines, outline->edge), outline->edge.n);
  for (size_t i = 0; i < outline->n_holes; i++)
    {
      PhPath hole = ph_outlines_hole (outlines, outline, i);
      area -= area_of (ph_outlines_pixels (outlines, hole), hole.n);
    }
  ph_outlines_free (outlines);
  return area;
}

static void
empty (PhDrawList *list)
{
  free (list->items);
  free (list->stations);
  free (list->holes);
  free (list->points);
  *list = (PhDrawList){ 0 };
}

static void
tube_casts_a_rectangle_from_the_side_and_a_disc_from_its_end (void)
{
  PhDrawList list = { 0 };
  PhPen pen = { .list = &list };
  ph_pen_tube (pen, ph_point (-50, 0, 0), ph_point (150, 0, 0), 9, 9);
  CHECK_REL (shadow (&list, PH_VIEW_SIDE), 200.0 * 18.0, 1e-3);
  /* A circle of 20 corners lacks 1.6 % of its area. */
  CHECK_REL (shadow (&list, PH_VIEW_BEHIND), PI * 81.0, 0.02);
  empty (&list);
}

static void
sphere_casts_the_same_disc_everywhere (void)
{
  PhDrawList list = { 0 };
  PhPen pen = { .list = &list };
  ph_pen_sphere (pen, ph_point (3, 4, 5), 30);
  for (int view = PH_VIEW_SIDE; view <= PH_VIEW_ABOVE; view++)
    CHECK_REL (shadow (&list, (PhView)view), PI * 900.0, 0.01);
  empty (&list);
}

static void
ring_leaves_its_hole_free_when_one_looks_through (void)
{
  PhDrawList list = { 0 };
  PhPen pen = { .list = &list };
  ph_pen_ring (pen, ph_point (0, 0, 0), ph_point (1, 0, 0), 20, 15, 6);
  CHECK_REL (shadow (&list, PH_VIEW_BEHIND), PI * (400.0 - 225.0), 0.02);
  CHECK_REL (shadow (&list, PH_VIEW_SIDE), 40.0 * 6.0, 0.01);
  empty (&list);
}

/* Three unit vectors square to one another, turned at random: from two random directions. */
static void
random_axes (unsigned *seed, PhPoint axes[3])
{
  PhPoint a;
  float length;
  do
    {
      a = ph_point (2 * next_random (seed) - 1, 2 * next_random (seed) - 1,
                    2 * next_random (seed) - 1);
      length = ph_point_length (a);
    }
  while (length > 1.0f || length < 0.1f);
  axes[0] = ph_point_unit (a);
  PhPoint u, v;
  ph_point_square (axes[0], &u, &v);
  float angle = 6.2831853f * next_random (seed);
  axes[1] = ph_point_add_scaled (ph_point_scale (u, cosf (angle)), v, sinf (angle));
  axes[2] = ph_point_cross (axes[0], axes[1]);
}

static void
mean_shadow_of_a_box_is_a_quarter_of_its_surface (void)
{
  enum
  {
    TURNS = 20000
  };
  unsigned seed = 5;
  double sum = 0, squares = 0;
  for (int i = 0; i < TURNS; i++)
    {
      PhDrawList list = { 0 };
      PhPen pen = { .list = &list };
      PhPoint axes[3];
      random_axes (&seed, axes);
      ph_pen_box (pen, ph_point (0, 0, 0), ph_point_scale (axes[0], 10),
                  ph_point_scale (axes[1], 20), ph_point_scale (axes[2], 35));
      double area = shadow (&list, PH_VIEW_SIDE);
      sum += area;
      squares += area * area;
      empty (&list);
    }
  double mean = sum / TURNS, spread = sqrt ((squares / TURNS - mean * mean) / TURNS);
  double surface = 2 * (20.0 * 40 + 40 * 70 + 70 * 20);
  /* Four standard errors of this very sample: one run in 16,000 would stray, and the seed is fixed.
   */
  CHECK_NEAR (mean, surface / 4, 4 * spread);
  CHECK (spread < 0.01 * mean, "the check means something");
}

static void
mean_shadow_of_a_cylinder_is_a_quarter_of_its_surface (void)
{
  enum
  {
    TURNS = 20000
  };
  unsigned seed = 9;
  double sum = 0, squares = 0;
  for (int i = 0; i < TURNS; i++)
    {
      PhDrawList list = { 0 };
      PhPen pen = { .list = &list };
      PhPoint axes[3];
      random_axes (&seed, axes);
      ph_pen_tube (pen, ph_point_scale (axes[0], -40), ph_point_scale (axes[0], 40), 30, 30);
      double area = shadow (&list, PH_VIEW_BEHIND);
      sum += area;
      squares += area * area;
      empty (&list);
    }
  double mean = sum / TURNS, spread = sqrt ((squares / TURNS - mean * mean) / TURNS);
  double surface = 2 * PI * 30 * 30 + 2 * PI * 30 * 80;
  /* Its circles have 46 corners and lack 0.3 % of their area. */
  CHECK_NEAR (mean, surface / 4, 4 * spread + 0.004 * surface / 4);
}

static void
straight_sweep_casts_its_depth_and_its_width (void)
{
  PhDrawList list = { 0 };
  PhPen pen = { .list = &list };
  PhStation stations[20];
  for (int i = 0; i < 20; i++)
    stations[i] = (PhStation){ .at = ph_point (0, 0, 10.0f * (float)i),
                               .out = ph_point (1, 0, 0),
                               .side = ph_point (0, 1, 0),
                               .half_depth = 17,
                               .half_across = 14 };
  PhHole hole = { .middle = 10, .half_span = 2, .half_open = 8 };
  ph_pen_sweep (pen, stations, 20, &hole, 1, 0.4f);
  double through = shadow (&list, PH_VIEW_SIDE);
  /* The hole lies between an ellipse (π ab) and its box (4 ab), a = 2 stations of 10 mm. */
  CHECK (through < 190.0 * 34 - PI * 20 * 8 && through > 190.0 * 34 - 4 * 20 * 8);
  CHECK_REL (shadow (&list, PH_VIEW_BEHIND), 190.0 * 28, 1e-3);
  /* From its end: the rounded section, less than its box by (4 − π) r², r = 0.4 · 14. */
  CHECK_REL (shadow (&list, PH_VIEW_ABOVE), 34.0 * 28 - (4 - PI) * 5.6 * 5.6, 5e-3);
  empty (&list);
}

static int
side_of (PhPixel a, PhPixel b, PhPixel p)
{
  float turn = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
  return (turn > 1e-3f) - (turn < -1e-3f);
}

static bool
cross (PhPixel a, PhPixel b, PhPixel c, PhPixel d)
{
  return side_of (a, b, c) * side_of (a, b, d) < 0 && side_of (c, d, a) * side_of (c, d, b) < 0;
}

static void
sweeps_of_every_bow_have_one_clean_outline (void)
{
  for (size_t f = 0; f < DRAWN_FILES; f++)
    {
      DrawnRig drawn = drawn_rig_of (drawn_rig_load (drawn_files[f]));
      PhOutlines *outlines = ph_outlines_new ();
      for (int view = PH_VIEW_SIDE; view <= PH_VIEW_ABOVE; view++)
        {
          PhCamera camera = ph_camera_default ((PhView)view);
          camera.lean_rad = view == PH_VIEW_BEHIND ? 0.4f : 0.0f;
          ph_camera_update (&camera);
          ph_outlines_update (outlines, drawn.list, &camera);
          for (size_t o = 0; o < ph_outlines_count (outlines); o++)
            {
              const PhOutline *outline = ph_outlines_get (outlines, o);
              const PhItem *item = ph_draw_list_item (drawn.list, outline->item);
              const PhPixel *p = ph_outlines_pixels (outlines, outline->edge);
              size_t n = outline->edge.n;
              for (size_t i = 0; item->solid == PH_SOLID_SWEEP && i < n; i++)
                for (size_t j = i + 2; j < n; j++)
                  CHECK (!cross (p[i], p[i + 1], p[j], p[(j + 1) % n]),
                         "%s: %s crosses itself in view %d at %zu, %zu", drawn_files[f],
                         ph_role_word (item->role), view, i, j);
            }
        }
      ph_outlines_free (outlines);
      drawn_rig_clear (&drawn);
    }
}

static void
hull_holds_every_point_and_turns_one_way (void)
{
  unsigned seed = 1;
  for (int round = 0; round < 50; round++)
    {
      PhPixel points[60], copy[60], hull[61];
      for (int i = 0; i < 60; i++)
        copy[i] = points[i] = (PhPixel){ 100 * next_random (&seed), 100 * next_random (&seed) };
      size_t n = ph_hull_of (points, 60, hull);
      CHECK (n >= 3);
      for (size_t i = 0; i < n; i++)
        {
          PhPixel a = hull[i], b = hull[(i + 1) % n];
          for (int k = 0; k < 60; k++)
            CHECK (side_of (a, b, copy[k]) >= 0, "a point lies outside");
        }
    }
}

static void
hull_of_points_on_a_line_or_of_one_point_is_small (void)
{
  PhPixel line[4] = { { 0, 0 }, { 3, 3 }, { 1, 1 }, { 2, 2 } }, hull[5];
  CHECK (ph_hull_of (line, 4, hull) == 2);
  PhPixel same[3] = { { 5, 5 }, { 5, 5 }, { 5, 5 } };
  CHECK (ph_hull_of (same, 3, hull) <= 2);
}

static size_t
place_of (const PhOutlines *outlines, const PhDrawList *list, PhRole role)
{
  for (size_t i = 0; i < ph_outlines_count (outlines); i++)
    if (ph_draw_list_item (list, ph_outlines_get (outlines, i)->item)->role == role)
      return i;
  return SIZE_MAX;
}

static void
farthest_is_drawn_first_and_the_grip_over_the_riser (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("demo"));
  PhOutlines *outlines = ph_outlines_new ();
  PhCamera camera = ph_camera_default (PH_VIEW_SIDE);
  ph_outlines_update (outlines, drawn.list, &camera);
  CHECK (ph_outlines_count (outlines) == ph_draw_list_count (drawn.list));
  for (size_t i = 1; i < ph_outlines_count (outlines); i++)
    CHECK (ph_outlines_get (outlines, i - 1)->depth_mm <= ph_outlines_get (outlines, i)->depth_mm);
  size_t riser = place_of (outlines, drawn.list, PH_ROLE_RISER);
  CHECK (riser < place_of (outlines, drawn.list, PH_ROLE_GRIP), "the grip is wrapped about it");
  CHECK (riser > place_of (outlines, drawn.list, PH_ROLE_BOSS), "a boss comes out of it");
  ph_outlines_free (outlines);
  drawn_rig_clear (&drawn);
}

/* A picture at another scale is the same picture: pixels about the grip grow alike. */
static void
outlines_scale_with_the_camera (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("v-bars"));
  PhExtent extent = ph_extent_of (drawn.list, PH_VIEW_SIDE, 0.0f, 0.0f);
  PhCamera camera = ph_camera_default (PH_VIEW_SIDE);
  camera.width_px = 640;
  camera.height_px = 480;
  PhMargins margins = { 10, 20, 30, 40 };
  camera.px_per_mm = ph_extent_scale (extent, 640, 480, margins);
  ph_camera_centre (&camera, extent, margins);
  PhOutlines *outlines = ph_outlines_new ();
  ph_outlines_update (outlines, drawn.list, &camera);
  PhPixel least, most;
  CHECK (ph_outlines_bounds (outlines, drawn.list, PH_PART_NONE, &least, &most));
  /* Circles have more corners at a larger scale: half a pixel. */
  CHECK (least.x >= 9.5f && most.x <= 620.5f && least.y >= 39.5f && most.y <= 450.5f, "%g %g %g %g",
         (double)least.x, (double)most.x, (double)least.y, (double)most.y);
  CHECK (most.x - least.x > 609.0f || most.y - least.y > 409.0f, "one way it fills the room");
  ph_outlines_free (outlines);
  drawn_rig_clear (&drawn);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  ph_math_init ();
  CASE (tube_casts_a_rectangle_from_the_side_and_a_disc_from_its_end);
  CASE (sphere_casts_the_same_disc_everywhere);
  CASE (ring_leaves_its_hole_free_when_one_looks_through);
  CASE (mean_shadow_of_a_box_is_a_quarter_of_its_surface);
  CASE (mean_shadow_of_a_cylinder_is_a_quarter_of_its_surface);
  CASE (straight_sweep_casts_its_depth_and_its_width);
  CASE (sweeps_of_every_bow_have_one_clean_outline);
  CASE (hull_holds_every_point_and_turns_one_way);
  CASE (hull_of_points_on_a_line_or_of_one_point_is_small);
  CASE (farthest_is_drawn_first_and_the_grip_over_the_riser);
  CASE (outlines_scale_with_the_camera);
  return check_end ();
}
