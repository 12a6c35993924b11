/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cameras: which way is which, projection and back, the drawn lean against the physics' bubble, and
 * the renderer's matrix against the painter's projection.
 */
#include "scene/camera.h"

#include "check.h"
#include "physics/cant.h"

/* Floats of some thousand mm carry 1e-4 mm; sums of a few of them ten times that. */
#define TINY_PX 5e-3

static PhCamera
camera_of (PhView view)
{
  PhCamera camera = ph_camera_default (view);
  camera.width_px = 800.0f;
  camera.height_px = 500.0f;
  camera.px_per_mm = 0.4f;
  camera.middle = ph_point (30.0f, 12.0f, -45.0f);
  camera.azimuth_rad = 0.7f;
  camera.elevation_rad = 0.4f;
  ph_camera_update (&camera);
  return camera;
}

static PhPixel
seen (const PhCamera *camera, float x, float y, float z)
{
  return ph_camera_project (camera, ph_point (x, y, z), NULL);
}

/* A fixed sequence: the same points on every run. */
static float
next_random (unsigned *seed)
{
  *seed = *seed * 1664525U + 1013904223U;
  return (float)(*seed >> 8) / (float)(1U << 24) * 2.0f - 1.0f;
}

static void
target_is_on_the_right_from_the_side (void)
{
  PhCamera camera = camera_of (PH_VIEW_SIDE);
  CHECK (seen (&camera, 100, 0, 0).x > seen (&camera, 0, 0, 0).x);
  CHECK (seen (&camera, 0, 0, 100).y < seen (&camera, 0, 0, 0).y);
  CHECK_NEAR ((double)seen (&camera, 5, 70, 5).x, (double)seen (&camera, 5, 0, 5).x, TINY_PX);
}

static void
archers_left_is_on_the_left_from_behind (void)
{
  PhCamera camera = camera_of (PH_VIEW_BEHIND);
  CHECK (seen (&camera, 0, 100, 0).x < seen (&camera, 0, 0, 0).x);
  CHECK (seen (&camera, 0, 0, 100).y < seen (&camera, 0, 0, 0).y);
  float near, far;
  ph_camera_project (&camera, ph_point (-300, 0, 0), &near);
  ph_camera_project (&camera, ph_point (700, 0, 0), &far);
  CHECK (near > far, "the archer's end is nearer to the eye");
}

static void
archers_left_is_up_from_above_and_x_as_from_the_side (void)
{
  PhCamera above = camera_of (PH_VIEW_ABOVE), side = camera_of (PH_VIEW_SIDE);
  CHECK (seen (&above, 0, 100, 0).y < seen (&above, 0, 0, 0).y);
  CHECK_NEAR ((double)seen (&above, 321, 40, 9).x, (double)seen (&side, 321, 40, 9).x, TINY_PX);
}

static void
unprojecting_gives_back_the_point_in_every_view (void)
{
  unsigned seed = 7;
  for (int view = PH_VIEW_SIDE; view <= PH_VIEW_FREE; view++)
    {
      PhCamera camera = camera_of ((PhView)view);
      camera.lean_rad = 0.31f;
      camera.slope_rad = 0.06f;
      ph_camera_update (&camera);
      for (int i = 0; i < 200; i++)
        {
          PhPoint p = ph_point (800 * next_random (&seed), 300 * next_random (&seed),
                                500 * next_random (&seed));
          float depth;
          PhPixel pixel = ph_camera_project (&camera, p, &depth);
          PhPoint back = ph_camera_unproject (&camera, pixel, depth);
          /* Some ten operations on floats up to 3,000: 3000 · 10 · 6e-8. */
          CHECK_NEAR ((double)ph_point_length (ph_point_sub (back, p)), 0.0, 5e-3);
        }
    }
}

static void
positive_lean_tips_the_top_limb_to_the_archers_right (void)
{
  PhCamera camera = camera_of (PH_VIEW_BEHIND);
  camera.lean_rad = 0.2f;
  ph_camera_update (&camera);
  CHECK (seen (&camera, 0, 0, 400).x > seen (&camera, 0, 0, 0).x);
  CHECK (seen (&camera, 0, 0, -400).x < seen (&camera, 0, 0, 0).x);
}

static void
nock_and_grip_stay_where_they_are_when_it_leans (void)
{
  for (int view = PH_VIEW_SIDE; view <= PH_VIEW_FREE; view++)
    {
      PhCamera plumb = camera_of ((PhView)view);
      plumb.slope_rad = atan2f (42.0f, 660.0f);
      ph_camera_update (&plumb);
      PhCamera lean = plumb;
      lean.lean_rad = 0.4f;
      ph_camera_update (&lean);
      PhPixel a = seen (&plumb, -660, 0, 42), b = seen (&lean, -660, 0, 42);
      CHECK_NEAR ((double)(a.x - b.x), 0.0, TINY_PX);
      CHECK_NEAR ((double)(a.y - b.y), 0.0, TINY_PX);
      a = seen (&plumb, 0, 0, 0);
      b = seen (&lean, 0, 0, 0);
      CHECK_NEAR ((double)hypotf (a.x - b.x, a.y - b.y), 0.0, TINY_PX);
    }
}

/* The bubble's tilt is that of the bow's cross axis: what is drawn must be what the physics says.
 */
static void
drawn_cross_axis_tilts_as_the_bubble_does (void)
{
  PhDraw draw = { .draw_length_m = 0.66, .nock_height_m = 0.16 };
  PhRoll roll = { .cos_beta = ph_draw_cos_beta (&draw) };
  for (double cant = -0.5; cant <= 0.5; cant += 0.1)
    {
      PhCamera camera = ph_camera_default (PH_VIEW_BEHIND);
      camera.lean_rad = (float)cant;
      camera.slope_rad = (float)atan2 (0.16, 0.66);
      ph_camera_update (&camera);
      double rise = -(double)(seen (&camera, 0, 1000, 0).y - seen (&camera, 0, 0, 0).y);
      CHECK_NEAR (asin (rise / 1000.0), ph_cant_bubble (&roll, cant), 2e-6);
    }
}

static void
what_is_plumb_does_not_lean (void)
{
  PhCamera camera = camera_of (PH_VIEW_BEHIND);
  camera.lean_rad = 0.3f;
  ph_camera_update (&camera);
  PhCamera plumb = ph_camera_plumb (&camera);
  CHECK_NEAR ((double)(seen (&plumb, 0, 0, 400).x - seen (&plumb, 0, 0, 0).x), 0.0, TINY_PX);
}

static void
zooming_keeps_what_is_under_the_pointer (void)
{
  for (int view = PH_VIEW_SIDE; view <= PH_VIEW_ABOVE; view++)
    {
      PhCamera camera = camera_of ((PhView)view);
      camera.lean_rad = 0.2f;
      ph_camera_update (&camera);
      PhPixel at = { 611.0f, 92.0f };
      PhPoint under = ph_camera_unproject (&camera, at, 0.0f);
      ph_camera_zoom (&camera, 3.5f, at);
      PhPixel now = ph_camera_project (&camera, under, NULL);
      CHECK_NEAR ((double)now.x, (double)at.x, TINY_PX);
      CHECK_NEAR ((double)now.y, (double)at.y, TINY_PX);
      CHECK_NEAR ((double)camera.px_per_mm, 1.4, 1e-6);
    }
}

static void
panning_moves_the_picture_by_as_many_pixels (void)
{
  for (int view = PH_VIEW_SIDE; view <= PH_VIEW_ABOVE; view++)
    {
      PhCamera camera = camera_of ((PhView)view);
      PhPixel before = seen (&camera, 50, 60, 70);
      ph_camera_pan (&camera, 33.0f, -21.0f);
      PhPixel after = seen (&camera, 50, 60, 70);
      CHECK_NEAR ((double)(after.x - before.x), 33.0, TINY_PX);
      CHECK_NEAR ((double)(after.y - before.y), -21.0, TINY_PX);
    }
}

static void
renderers_matrix_puts_points_where_the_painter_does (void)
{
  unsigned seed = 3;
  for (int view = PH_VIEW_SIDE; view <= PH_VIEW_FREE; view++)
    {
      PhCamera camera = camera_of ((PhView)view);
      camera.lean_rad = view == PH_VIEW_BEHIND ? 0.3f : 0.0f;
      ph_camera_update (&camera);
      float m[16];
      ph_camera_matrix (&camera, 2000.0f, m);
      for (int i = 0; i < 100; i++)
        {
          float p[4] = { 700 * next_random (&seed), 300 * next_random (&seed),
                         500 * next_random (&seed), 1.0f };
          float clip[4] = { 0 };
          for (int row = 0; row < 4; row++)
            for (int k = 0; k < 4; k++)
              clip[row] += m[4 * k + row] * p[k];
          PhPixel want = seen (&camera, p[0], p[1], p[2]);
          CHECK_NEAR ((double)((clip[0] / clip[3] + 1.0f) * 400.0f), (double)want.x, 2e-2);
          CHECK_NEAR ((double)((1.0f - clip[1] / clip[3]) * 250.0f), (double)want.y, 2e-2);
          CHECK (fabsf (clip[2]) <= clip[3], "inside the depth range");
        }
    }
}

/* Lines are drawn so much nearer than what they bound, in every view. */
static void
clip_depth_is_that_of_the_matrix (void)
{
  const float mm = 2.5f, radius = 900.0f;
  for (int view = PH_VIEW_SIDE; view <= PH_VIEW_FREE; view++)
    {
      PhCamera camera = camera_of ((PhView)view);
      float m[16], depth[2];
      ph_camera_update (&camera);
      ph_camera_matrix (&camera, radius, m);
      for (int nearer = 0; nearer < 2; nearer++)
        {
          PhPoint p = ph_point_add_scaled (camera.middle, camera.toward, (float)nearer * mm);
          float z = m[2] * p.x + m[6] * p.y + m[10] * p.z + m[14];
          float w = m[3] * p.x + m[7] * p.y + m[11] * p.z + m[15];
          depth[nearer] = z / w;
        }
      /* Perspective bends it by 2.5 mm over the eye's distance: under a hundredth. */
      CHECK_REL ((double)(depth[0] - depth[1]), (double)ph_camera_clip_depth (&camera, radius, mm),
                 0.02);
    }
}

static void
ray_through_a_pixel_passes_the_point_that_is_seen_there (void)
{
  unsigned seed = 11;
  for (int view = PH_VIEW_SIDE; view <= PH_VIEW_FREE; view++)
    {
      PhCamera camera = camera_of ((PhView)view);
      for (int i = 0; i < 50; i++)
        {
          PhPoint p = ph_point (700 * next_random (&seed), 300 * next_random (&seed),
                                500 * next_random (&seed));
          PhPoint from, way;
          ph_camera_ray (&camera, ph_camera_project (&camera, p, NULL), &from, &way);
          PhPoint to = ph_point_sub (p, from);
          PhPoint off = ph_point_add_scaled (to, way, -ph_point_dot (to, way));
          /* The flat views' rays start 60 m away: floats there step by 4e-3 mm. */
          CHECK_NEAR ((double)ph_point_length (off), 0.0, 2e-2);
          CHECK (ph_point_dot (to, way) > 0.0f, "it starts before what is drawn");
        }
    }
}

static void
free_view_from_the_side_and_from_behind_agree_with_the_flat_ones (void)
{
  PhCamera flat = camera_of (PH_VIEW_SIDE), free_view = camera_of (PH_VIEW_FREE);
  free_view.azimuth_rad = free_view.elevation_rad = 0.0f;
  ph_camera_update (&free_view);
  CHECK_NEAR ((double)ph_point_length (ph_point_sub (flat.toward, free_view.toward)), 0.0, 1e-6);
  flat = camera_of (PH_VIEW_BEHIND);
  free_view.azimuth_rad = 1.57079632679f;
  ph_camera_update (&free_view);
  CHECK_NEAR ((double)ph_point_length (ph_point_sub (flat.toward, free_view.toward)), 0.0, 1e-6);
  CHECK_NEAR ((double)ph_point_length (ph_point_sub (flat.right, free_view.right)), 0.0, 1e-6);
}

static void
drawn_lean_stops_at_thirty_degrees_and_says_so (void)
{
  bool stopped = true;
  CHECK_NEAR ((double)ph_lean_drawn (0.02, 5.0, &stopped), 0.1, 1e-7);
  CHECK (!stopped);
  CHECK_NEAR ((double)ph_lean_drawn (-0.2, 5.0, &stopped), -acos (-1.0) / 6.0, 1e-6);
  CHECK (stopped);
  CHECK (ph_lean_drawn (NAN, 5.0, &stopped) == 0.0f && !stopped);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (target_is_on_the_right_from_the_side);
  CASE (archers_left_is_on_the_left_from_behind);
  CASE (archers_left_is_up_from_above_and_x_as_from_the_side);
  CASE (unprojecting_gives_back_the_point_in_every_view);
  CASE (positive_lean_tips_the_top_limb_to_the_archers_right);
  CASE (nock_and_grip_stay_where_they_are_when_it_leans);
  CASE (drawn_cross_axis_tilts_as_the_bubble_does);
  CASE (what_is_plumb_does_not_lean);
  CASE (zooming_keeps_what_is_under_the_pointer);
  CASE (panning_moves_the_picture_by_as_many_pixels);
  CASE (renderers_matrix_puts_points_where_the_painter_does);
  CASE (clip_depth_is_that_of_the_matrix);
  CASE (ray_through_a_pixel_passes_the_point_that_is_seen_there);
  CASE (free_view_from_the_side_and_from_behind_agree_with_the_flat_ones);
  CASE (drawn_lean_stops_at_thirty_degrees_and_says_so);
  return check_end ();
}
