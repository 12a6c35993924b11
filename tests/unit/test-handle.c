/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Dragging a part: held against the model and the physics, which place the part anew after its
 * angle was written into the rig, and against the picture, where the end must have followed the
 * pointer. Every part that turns, of every example rig, in every view.
 */
#include "scene/handle.h"

#include "base/units.h"
#include "check.h"
#include "drawn-rig.h"
#include "model/fields.h"

static PhCamera
camera_of (PhView view)
{
  PhCamera camera = ph_camera_default (view);
  camera.width_px = 800;
  camera.height_px = 600;
  camera.px_per_mm = 0.6f;
  camera.slope_rad = 0.06f;
  camera.lean_rad = view == PH_VIEW_BEHIND ? 0.15f : 0.0f;
  camera.azimuth_rad = 0.7f;
  camera.elevation_rad = 0.3f;
  camera.distance_mm = 4000.0f;
  ph_camera_update (&camera);
  return camera;
}

/* Where the physics has the end of a part and of what goes straight on from it. */
static PhPoint
placed_end (const PhCompiled *compiled, size_t part)
{
  int i = compiled->piece_of_part[part];
  for (int g = ph_assembly_first_guest (compiled->assembly, i); g >= 0;)
    {
      const PhPiece *guest = ph_assembly_piece (compiled->assembly, g);
      bool goes_on = guest->seat == PH_SEAT_END
                     && (guest->kind == PH_PIECE_WEIGHTS || guest->kind == PH_PIECE_DAMPER);
      if (goes_on)
        i = g;
      g = goes_on ? ph_assembly_first_guest (compiled->assembly, g)
                  : ph_assembly_next_guest (compiled->assembly, g);
    }
  return ph_point_of_m (ph_assembly_place (compiled->assembly, i)->end_m);
}

static void
the_end_is_where_the_physics_places_it (void)
{
  int bars = 0;
  for (size_t f = 0; f < DRAWN_FILES; f++)
    {
      DrawnRig drawn = drawn_rig_of (drawn_rig_load (drawn_files[f]));
      for (size_t i = 0; i < drawn.rig->n_parts; i++)
        {
          PhHandle handle;
          bool turns = ph_handle_of (drawn.compiled, i, &handle);
          PhPartKind kind = drawn.rig->parts[i].kind;
          bool may_turn = kind == PH_PART_BAR || kind == PH_PART_BRACKET;
          CHECK (turns == (may_turn && drawn.compiled->piece_of_part[i] >= 0), "%s part %zu",
                 drawn_files[f], i);
          if (!turns || kind != PH_PART_BAR)
            continue;
          PhPoint tip = ph_handle_tip (&handle), end = placed_end (drawn.compiled, i);
          /* Floats of some hundred mm. */
          CHECK_NEAR ((double)ph_point_length (ph_point_sub (tip, end)), 0, 1e-3);
          bars++;
        }
      drawn_rig_clear (&drawn);
    }
  CHECK (bars >= 8, "only %d bars", bars);
}

/* Writes the changed angle into the rig, as the document does, and looks where the end went. */
static PhPixel
moved_by (DrawnRig *drawn, size_t part, const PhCamera *camera, PhTurn turn, double degrees)
{
  PhHandle before, after;
  const char *key = turn == PH_TURN_SWING ? "swing_deg" : "lift_deg";
  PhPart *edited = &drawn->rig->parts[part];
  double was = turn == PH_TURN_SWING ? edited->swing_deg : edited->lift_deg;
  CHECK (ph_handle_of (drawn->compiled, part, &before), "part %zu", part);
  ph_part_set_number (edited, key, 0, was + degrees);
  drawn_rig_update (drawn, NULL);
  CHECK (ph_handle_of (drawn->compiled, part, &after), "part %zu", part);
  ph_part_set_number (edited, key, 0, was);
  drawn_rig_update (drawn, NULL);
  PhPixel a = ph_camera_project (camera, ph_handle_tip (&before), NULL);
  PhPixel b = ph_camera_project (camera, ph_handle_tip (&after), NULL);
  return (PhPixel){ b.x - a.x, b.y - a.y };
}

static void
the_end_follows_the_pointer_in_every_view (void)
{
  static const PhPixel drags[] = { { 8, 0 }, { -8, 0 }, { 0, 8 }, { 0, -8 } };
  int followed = 0;
  for (size_t f = 0; f < DRAWN_FILES; f++)
    {
      DrawnRig drawn = drawn_rig_of (drawn_rig_load (drawn_files[f]));
      for (size_t i = 0; i < drawn.rig->n_parts; i++)
        for (int view = PH_VIEW_SIDE; view <= PH_VIEW_FREE; view++)
          for (size_t d = 0; d < 4; d++)
            {
              PhHandle handle;
              PhCamera camera = camera_of ((PhView)view);
              if (!ph_handle_of (drawn.compiled, i, &handle))
                continue;
              PhGrip grip = ph_handle_grip (&handle, &camera, drags[d]);
              double steps =
                  ph_drag_steps (grip.way, (double)drags[d].x, (double)drags[d].y, PH_DRAG_STEP_PX);
              if (fabs (steps) < 0.3)
                continue; /* nearly square to the way the end can go */
              PhPixel went = moved_by (&drawn, i, &camera, grip.turn, steps);
              CHECK (went.x * drags[d].x + went.y * drags[d].y > 0,
                     "%s %s view %d drag %zu: the end goes %g %g", drawn_files[f],
                     drawn.rig->parts[i].id, view, d, (double)went.x, (double)went.y);
              followed++;
            }
      drawn_rig_clear (&drawn);
    }
  CHECK (followed > 100, "only %d drags", followed);
}

/* Product page, "How the views look and take the hand". */
static void
the_side_turns_up_and_down_the_others_in_and_out (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("demo"));
  PhHandle handle;
  PhPixel up = { 0, -8 }, left = { -8, 0 };
  size_t back = (size_t)ph_rig_find (drawn.rig, "back-bar");
  CHECK (ph_handle_of (drawn.compiled, back, &handle), "no handle");
  for (int i = 0; i < 2; i++)
    {
      PhPixel drag = i ? up : left;
      PhCamera side = camera_of (PH_VIEW_SIDE), behind = camera_of (PH_VIEW_BEHIND);
      PhCamera above = camera_of (PH_VIEW_ABOVE);
      CHECK (ph_handle_grip (&handle, &side, drag).turn == PH_TURN_LIFT, "side");
      CHECK (ph_handle_grip (&handle, &behind, drag).turn == PH_TURN_SWING, "behind");
      CHECK (ph_handle_grip (&handle, &above, drag).turn == PH_TURN_SWING, "above");
    }
  /* Swing is positive to the archer's left, lift upward (physics/frame.h): for a back bar too. */
  PhCamera side = camera_of (PH_VIEW_SIDE), behind = camera_of (PH_VIEW_BEHIND);
  CHECK (ph_drag_steps (ph_handle_grip (&handle, &side, up).way, 0, -8, 8) > 0.9, "up");
  CHECK (ph_drag_steps (ph_handle_grip (&handle, &behind, left).way, -8, 0, 8) > 0.9, "left");
  drawn_rig_clear (&drawn);
}

static void
the_free_view_takes_the_angle_nearer_to_the_drag (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("demo"));
  PhHandle handle;
  CHECK (ph_handle_of (drawn.compiled, (size_t)ph_rig_find (drawn.rig, "back-bar"), &handle),
         "no handle");
  PhCamera camera = camera_of (PH_VIEW_FREE);
  for (int turn = PH_TURN_SWING; turn <= PH_TURN_LIFT; turn++)
    {
      PhPixel motion = ph_handle_motion (&handle, &camera, (PhTurn)turn);
      PhPixel back = { -motion.x, -motion.y };
      CHECK (ph_handle_grip (&handle, &camera, motion).turn == (PhTurn)turn, "along %d", turn);
      CHECK (ph_handle_grip (&handle, &camera, back).turn == (PhTurn)turn, "against %d", turn);
    }
  /* The motion is that of one degree. */
  PhPixel swing = ph_handle_motion (&handle, &camera, PH_TURN_SWING);
  size_t back = (size_t)ph_rig_find (drawn.rig, "back-bar");
  PhPixel half = moved_by (&drawn, back, &camera, PH_TURN_SWING, 0.5);
  PhPixel other = moved_by (&drawn, back, &camera, PH_TURN_SWING, -0.5);
  /* Pixels as floats. */
  CHECK_NEAR ((double)(half.x - other.x), (double)swing.x, 2e-3);
  CHECK_NEAR ((double)(half.y - other.y), (double)swing.y, 2e-3);
  drawn_rig_clear (&drawn);
}

/* A bar turned square to the bow points straight at the eye's line from behind: in and out would
 * move its end only away from the eye. */
static void
a_motion_that_cannot_be_seen_is_not_chosen (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("demo"));
  size_t back = (size_t)ph_rig_find (drawn.rig, "back-bar");
  ph_part_set_number (&drawn.rig->parts[back], "swing_deg", 0, 90);
  ph_part_set_number (&drawn.rig->parts[back], "lift_deg", 0, 0);
  drawn_rig_update (&drawn, NULL);
  PhHandle handle;
  PhCamera behind = camera_of (PH_VIEW_BEHIND);
  behind.slope_rad = behind.lean_rad = 0;
  ph_camera_update (&behind);
  CHECK (ph_handle_of (drawn.compiled, back, &handle), "no handle");
  PhGrip grip = ph_handle_grip (&handle, &behind, (PhPixel){ 0, -8 });
  CHECK (grip.turn == PH_TURN_LIFT, "an angle that shows nothing");
  CHECK (ph_drag_steps (grip.way, 0, -8, 8) > 0.9, "up");
  drawn_rig_clear (&drawn);
}

static void
steps_and_values_follow_the_product_page (void)
{
  PhPixel left = { -1, 0 };
  /* One step per 8 px, one disc per 16. */
  CHECK_NEAR (ph_drag_steps (left, -48, 5, PH_DRAG_STEP_PX), 6, 1e-12);
  CHECK_NEAR (ph_drag_steps (left, 48, 5, PH_DRAG_DISC_PX), -3, 1e-12);
  CHECK_NEAR (ph_drag_value (20, 6, 1, -180, 180), 26, 0);
  /* Nothing for less than half a step; then whole degrees, from a start between them too. */
  CHECK_NEAR (ph_drag_value (20.4, 0.49, 1, -180, 180), 20.4, 0);
  CHECK_NEAR (ph_drag_value (20.4, 1, 1, -180, 180), 21, 0);
  CHECK_NEAR (ph_drag_value (20.4, -1, 1, -180, 180), 19, 0);
  /* Tenths as they are typed. */
  CHECK (ph_drag_value (20, 63, 0.1, -180, 180) == 26.3, "not 26.3");
  /* Limits stop it; a start outside may stay and come back. */
  CHECK_NEAR (ph_drag_value (20, 60, 1, -10, 25.5), 25.5, 0);
  CHECK_NEAR (ph_drag_value (20, -60, 1, -10, 25.5), -10, 0);
  CHECK_NEAR (ph_drag_value (30, 4, 1, -10, 25), 30, 0);
  CHECK_NEAR (ph_drag_value (30, -4, 1, -10, 25), 26, 0);
}

static void
a_stack_has_an_axis_where_it_is_seen_from_its_side (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("demo"));
  size_t stack = (size_t)ph_rig_find (drawn.rig, "front-stack");
  PhPixel way;
  float share;
  PhCamera side = camera_of (PH_VIEW_SIDE), behind = camera_of (PH_VIEW_BEHIND);
  CHECK (ph_handle_axis (drawn.compiled, stack, &side, &way, &share), "no axis");
  /* The front bar of the example points ahead and 8° down; the target is on the right. The slope
   * of the grip–nock line does not turn a view that does not lean. */
  CHECK_NEAR ((double)way.x, cos (ph_rad_from_deg (8)), 1e-3);
  CHECK_NEAR ((double)way.y, sin (ph_rad_from_deg (8)), 1e-3);
  CHECK_NEAR ((double)share, 1, 1e-3);
  if (ph_handle_axis (drawn.compiled, stack, &behind, &way, &share))
    CHECK (share < 0.2f, "seen end on, but %g of it shows", (double)share);
  CHECK (!ph_handle_axis (drawn.compiled, (size_t)ph_rig_find (drawn.rig, "sight"), &side, &way,
                          &share),
         "a sight has no axis");
  drawn_rig_clear (&drawn);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  ph_math_init ();
  CASE (the_end_is_where_the_physics_places_it);
  CASE (the_end_follows_the_pointer_in_every_view);
  CASE (the_side_turns_up_and_down_the_others_in_and_out);
  CASE (the_free_view_takes_the_angle_nearer_to_the_drag);
  CASE (a_motion_that_cannot_be_seen_is_not_chosen);
  CASE (steps_and_values_follow_the_product_page);
  CASE (a_stack_has_an_axis_where_it_is_seen_from_its_side);
  return check_end ();
}
