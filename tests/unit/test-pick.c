/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Picking in the picture and by a ray: two roads that must name the same part.
 */
#include "scene/pick.h"

#include "check.h"
#include "drawn-rig.h"
#include "scene/fit.h"

typedef struct
{
  DrawnRig drawn;
  PhCamera camera;
  PhOutlines *outlines;
} Scene;

static Scene
scene_of (const char *name, PhView view, float lean)
{
  Scene scene = { .drawn = drawn_rig_of (drawn_rig_load (name)) };
  PhMargins margins = { 10, 10, 10, 10 };
  PhExtent extent = ph_extent_of (scene.drawn.list, view, lean, 0.06f);
  scene.camera = ph_camera_default (view);
  scene.camera.width_px = 1200;
  scene.camera.height_px = 800;
  scene.camera.lean_rad = lean;
  scene.camera.slope_rad = 0.06f;
  scene.camera.px_per_mm = ph_extent_scale (extent, 1200, 800, margins);
  ph_camera_update (&scene.camera);
  ph_camera_centre (&scene.camera, extent, margins);
  scene.outlines = ph_outlines_new ();
  ph_outlines_update (scene.outlines, scene.drawn.list, &scene.camera);
  return scene;
}

static void
clear (Scene *scene)
{
  ph_outlines_free (scene->outlines);
  drawn_rig_clear (&scene->drawn);
}

static int
part_at (const Scene *scene, PhPoint point, float slack)
{
  return ph_pick_part (scene->outlines, scene->drawn.list,
                       ph_camera_project (&scene->camera, point, NULL), slack);
}

/* Middle of a part as the physics has it. */
static PhPoint
middle_of (const DrawnRig *drawn, const char *id)
{
  int part = ph_rig_find (drawn->rig, id);
  const PhPlace *place =
      ph_assembly_place (drawn->compiled->assembly, drawn->compiled->piece_of_part[part]);
  return ph_point_mix (ph_point_of_m (place->root_m), ph_point_of_m (place->end_m), 0.5f);
}

static void
a_click_on_a_part_names_it (void)
{
  static const char *const ids[] = { "front-bar", "front-stack", "back-bar", "back-stack" };
  for (int view = PH_VIEW_SIDE; view <= PH_VIEW_ABOVE; view += 2)
    {
      Scene scene = scene_of ("demo", (PhView)view, 0.0f);
      for (size_t i = 0; i < sizeof ids / sizeof ids[0]; i++)
        CHECK (part_at (&scene, middle_of (&scene.drawn, ids[i]), 4.0f)
                   == ph_rig_find (scene.drawn.rig, ids[i]),
               "%s in view %d", ids[i], view);
      clear (&scene);
    }
}

static void
a_click_follows_what_is_drawn_when_it_leans (void)
{
  Scene plumb = scene_of ("demo", PH_VIEW_BEHIND, 0.0f);
  Scene lean = scene_of ("demo", PH_VIEW_BEHIND, -0.5f);
  PhPoint stack = middle_of (&lean.drawn, "back-stack");
  int want = ph_rig_find (lean.drawn.rig, "back-stack");
  CHECK (part_at (&lean, stack, 0.0f) == want);
  CHECK (part_at (&plumb, stack, 0.0f) == want);
  PhCamera straight = ph_camera_plumb (&lean.camera);
  PhPixel elsewhere = ph_camera_project (&straight, stack, NULL);
  CHECK (ph_pick_part (lean.outlines, lean.drawn.list, elsewhere, 0.0f) != want,
         "not where it would be if it stood plumb");
  clear (&plumb);
  clear (&lean);
}

static void
the_riser_is_the_bow_and_its_holes_are_not (void)
{
  Scene scene = scene_of ("demo", PH_VIEW_SIDE, 0.0f);
  const PhDrawList *list = scene.drawn.list;
  for (size_t i = 0; i < ph_draw_list_count (list); i++)
    {
      const PhItem *item = ph_draw_list_item (list, i);
      if (item->role != PH_ROLE_RISER)
        continue;
      const PhStation *stations = ph_draw_list_stations (list, item);
      CHECK (item->sweep.n_holes >= 4, "a riser has lightening holes");
      CHECK (part_at (&scene, stations[item->sweep.n * 9 / 20].at, 0.0f) == PH_PART_BOW);
      for (size_t h = 0; h < item->sweep.n_holes; h++)
        {
          PhHole hole = ph_draw_list_holes (list, item)[h];
          PhPoint middle = stations[(size_t)(hole.middle + 0.5f)].at;
          CHECK (part_at (&scene, middle, 0.0f) == PH_PART_NONE, "hole %zu", h);
        }
    }
  clear (&scene);
}

static void
nothing_is_nothing_and_slack_reaches_a_few_pixels (void)
{
  Scene scene = scene_of ("demo", PH_VIEW_SIDE, 0.0f);
  CHECK (part_at (&scene, ph_point (600, 0, 350), 4.0f) == PH_PART_NONE);
  PhPoint bar = middle_of (&scene.drawn, "front-bar");
  /* The bar's radius is 9 mm, drawn 8° down: three pixels beside its upper edge. */
  bar.z += 9.0f / cosf (0.14f) + 3.0f / scene.camera.px_per_mm;
  CHECK (part_at (&scene, bar, 0.0f) == PH_PART_NONE);
  CHECK (part_at (&scene, bar, 4.0f) == ph_rig_find (scene.drawn.rig, "front-bar"));
  clear (&scene);
}

static void
the_nearer_of_two_is_picked (void)
{
  /* From behind the back bar's stack hides whatever stands ahead of it. */
  Scene scene = scene_of ("demo", PH_VIEW_BEHIND, 0.0f);
  int item = ph_pick_item (
      scene.outlines, scene.drawn.list,
      ph_camera_project (&scene.camera, middle_of (&scene.drawn, "back-stack"), NULL), 0.0f);
  CHECK (item >= 0);
  CHECK (ph_draw_list_item (scene.drawn.list, (size_t)item)->part
         == ph_rig_find (scene.drawn.rig, "back-stack"));
  clear (&scene);
}

/* Where a ray meets a convex solid, the picture must show that solid, and the other way round. The
 * riser, limbs and grip are left out: a ray takes them as chains of capsules. */
static void
ray_and_picture_name_the_same_part (void)
{
  for (int view = PH_VIEW_SIDE; view <= PH_VIEW_ABOVE; view++)
    {
      Scene scene = scene_of ("v-bars", (PhView)view, 0.0f);
      int same = 0, other = 0;
      for (float y = 3; y < 800; y += 5)
        for (float x = 3; x < 1200; x += 5)
          {
            PhPixel at = { x, y };
            int seen = ph_pick_part (scene.outlines, scene.drawn.list, at, 0.0f);
            PhPoint from, way;
            ph_camera_ray (&scene.camera, at, &from, &way);
            int item = ph_pick_ray (scene.drawn.list, from, way, 0.0f, NULL);
            int met =
                item < 0 ? PH_PART_NONE : ph_draw_list_item (scene.drawn.list, (size_t)item)->part;
            if (seen < 0 && met < 0)
              continue;
            if (seen == met)
              same++;
            else if (seen >= 0 && met >= 0)
              other++;
            else
              other += seen == PH_PART_NONE || met == PH_PART_NONE;
          }
      CHECK (same > 100, "the check means something: %d", same);
      /* Corners of circles and the order of solids as wholes: some pixels in a hundred. */
      CHECK (other <= same / 25, "view %d: %d the same, %d not", view, same, other);
      clear (&scene);
    }
}

static void
a_ray_says_how_far_it_went (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("demo"));
  PhPoint bar = middle_of (&drawn, "front-bar"), from = bar;
  from.y += 500.0f;
  float along = 0.0f;
  int item = ph_pick_ray (drawn.list, from, ph_point (0, -1, 0), 0.0f, &along);
  CHECK (item >= 0
         && ph_draw_list_item (drawn.list, (size_t)item)->part
                == ph_rig_find (drawn.rig, "front-bar"));
  CHECK_NEAR ((double)along, 500.0 - 9.0, 0.01);
  CHECK (ph_pick_ray (drawn.list, from, ph_point (0, 1, 0), 0.0f, &along) == -1);
  drawn_rig_clear (&drawn);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  ph_math_init ();
  CASE (a_click_on_a_part_names_it);
  CASE (a_click_follows_what_is_drawn_when_it_leans);
  CASE (the_riser_is_the_bow_and_its_holes_are_not);
  CASE (nothing_is_nothing_and_slack_reaches_a_few_pixels);
  CASE (the_nearer_of_two_is_picked);
  CASE (ray_and_picture_name_the_same_part);
  CASE (a_ray_says_how_far_it_went);
  return check_end ();
}
