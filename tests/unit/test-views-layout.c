/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Three views in one rectangle: no overlap, one scale, everything inside, x and height shared.
 */
#include "widgets/views-layout.h"

#include "check.h"
#include "drawn-rig.h"
#include "scene/outline.h"

static PhViewsExtent
extent_of (const DrawnRig *drawn, float lean)
{
  return (PhViewsExtent){ ph_extent_of (drawn->list, PH_VIEW_SIDE, 0.0f, 0.06f),
                          ph_extent_of (drawn->list, PH_VIEW_BEHIND, lean, 0.06f),
                          ph_extent_of (drawn->list, PH_VIEW_ABOVE, 0.0f, 0.06f) };
}

static void
check_layout (const DrawnRig *drawn, float width, float height, bool show_above, float foot_height)
{
  float lean = -0.3f, foot_width = foot_height > 0.0f ? 0.36f * width : 0.0f;
  PhViewRect foot;
  PhViewsExtent extent = extent_of (drawn, lean);
  PhViewsLayout layout = ph_views_layout_with_foot (&extent, show_above, width, height, 1.0f,
                                                    foot_width, foot_height, &foot);
  CHECK (foot.height == foot_height && foot.width >= foot_width - 1.0f);
  CHECK (foot.x == layout.behind.x && foot.y >= layout.behind.y + layout.behind.height - 1e-3f
             && foot.y + foot.height <= height + 1e-3f,
         "the foot stands under the view from behind");
  CHECK (layout.side.width + 1.0f <= layout.behind.x + 1e-3f);
  CHECK (layout.behind.x + layout.behind.width <= width + 1e-3f);
  CHECK (layout.side.width > layout.behind.width, "%g of %g", (double)layout.behind.width,
         (double)width);
  if (show_above)
    CHECK (layout.side.height + 1.0f <= layout.above.y + 1e-3f
           && layout.above.y + layout.above.height <= height + 1e-3f);
  PhCamera cameras[3];
  float scale = ph_views_scale (&extent, &layout);
  ph_views_cameras (&extent, &layout, scale, lean, 0.06f, cameras);
  PhOutlines *outlines = ph_outlines_new ();
  for (int i = 0; i < (show_above ? 3 : 2); i++)
    {
      PhPixel least, most;
      ph_outlines_update (outlines, drawn->list, &cameras[i]);
      ph_outlines_bounds (outlines, drawn->list, PH_PART_NONE, &least, &most);
      CHECK (cameras[i].px_per_mm == scale, "a length in one compares with the other");
      CHECK (least.x >= 0 && least.y >= 0 && most.x <= cameras[i].width_px
                 && most.y <= cameras[i].height_px,
             "view %d of %g x %g: %g %g %g %g", i, (double)width, (double)height, (double)least.x,
             (double)least.y, (double)most.x, (double)most.y);
    }
  ph_outlines_free (outlines);
}

static void
every_rig_is_seen_whole_at_every_size (void)
{
  static const float widths[] = { 600, 760, 900, 1200, 1500 }, heights[] = { 320, 480, 640, 900 };
  for (size_t f = 0; f < DRAWN_FILES; f++)
    {
      DrawnRig drawn = drawn_rig_of (drawn_rig_load (drawn_files[f]));
      for (size_t w = 0; w < 5; w++)
        for (size_t h = 0; h < 4; h++)
          {
            check_layout (&drawn, widths[w], heights[h], true, 0.0f);
            check_layout (&drawn, widths[w], heights[h], false, 0.0f);
            check_layout (&drawn, widths[w], heights[h], true, heights[h] / 3.0f);
            check_layout (&drawn, widths[w], heights[h], false, heights[h] / 3.0f);
          }
      drawn_rig_clear (&drawn);
    }
}

static void
the_strip_shares_its_x_and_the_view_from_behind_its_height (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("demo"));
  PhViewsExtent extent = extent_of (&drawn, 0.0f);
  PhViewsLayout layout = ph_views_layout (&extent, true, 1000, 640, 1.0f);
  PhCamera cameras[3];
  ph_views_cameras (&extent, &layout, ph_views_scale (&extent, &layout), 0.0f, 0.0f, cameras);
  PhPoint tip = ph_point (812, 0, -178);
  PhPixel side = ph_camera_project (&cameras[PH_VIEW_SIDE], tip, NULL);
  PhPixel above = ph_camera_project (&cameras[PH_VIEW_ABOVE], tip, NULL);
  PhPixel behind = ph_camera_project (&cameras[PH_VIEW_BEHIND], tip, NULL);
  CHECK_NEAR ((double)side.x, (double)above.x, 0.01);
  CHECK_NEAR ((double)side.y, (double)behind.y, 0.01);
  drawn_rig_clear (&drawn);
}

static void
a_larger_rectangle_never_draws_smaller (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("recurve"));
  PhViewsExtent extent = extent_of (&drawn, 0.0f);
  float before = 0.0f;
  for (float size = 400; size <= 1600; size += 100)
    {
      PhViewsLayout layout = ph_views_layout (&extent, true, size, 0.62f * size, 1.0f);
      float scale = ph_views_scale (&extent, &layout);
      CHECK (scale >= before * 0.999f, "%g", (double)size);
      before = scale;
    }
  drawn_rig_clear (&drawn);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  ph_math_init ();
  CASE (every_rig_is_seen_whole_at_every_size);
  CASE (the_strip_shares_its_x_and_the_view_from_behind_its_height);
  CASE (a_larger_rectangle_never_draws_smaller);
  return check_end ();
}
