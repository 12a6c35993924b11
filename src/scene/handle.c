/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signs come from the picture: the end is projected a little before and after, whatever frame the
 * socket has. A handful of projections a call.
 */
#include "scene/handle.h"

#include "base/units.h"

/* Of the motion square to the line of sight: less of it is no motion to follow. */
#define SEEN_LEAST 0.15f
#define AXIS_LEAST 0.05f
/* Half of what is tried for the motion [degrees]. */
#define TRY_DEG 0.5

/* What goes straight on from a piece: a stack or a damper at its end, not turned; −1. */
static int
straight_guest (const PhAssembly *assembly, int piece)
{
  for (int g = ph_assembly_first_guest (assembly, piece); g >= 0;
       g = ph_assembly_next_guest (assembly, g))
    {
      const PhPiece *guest = ph_assembly_piece (assembly, g);
      bool goes_on = guest->kind == PH_PIECE_WEIGHTS || guest->kind == PH_PIECE_DAMPER;
      if (goes_on && guest->seat == PH_SEAT_END && guest->swing_rad == 0 && guest->lift_rad == 0)
        return g;
    }
  return -1;
}

static double
reach_m (const PhAssembly *assembly, int piece)
{
  const PhPiece *own = ph_assembly_piece (assembly, piece);
  if (own->kind == PH_PIECE_BRACKET)
    return own->size_m.x;
  double reach = 0;
  for (int i = piece; i >= 0; i = straight_guest (assembly, i))
    reach += ph_assembly_piece (assembly, i)->length_m;
  return reach;
}

static int
piece_of (const PhCompiled *compiled, size_t part)
{
  return part < compiled->n_parts ? compiled->piece_of_part[part] : -1;
}

bool
ph_handle_of (const PhCompiled *compiled, size_t part, PhHandle *handle)
{
  int i = piece_of (compiled, part);
  if (i < 0)
    return false;
  const PhPiece *piece = ph_assembly_piece (compiled->assembly, i);
  bool turns = piece->kind == PH_PIECE_BAR || piece->kind == PH_PIECE_BRACKET;
  if (!turns || (piece->seat != PH_SEAT_SOCKET && piece->seat != PH_SEAT_END))
    return false;
  handle->socket = ph_assembly_seat_frame (compiled->assembly, i);
  handle->swing_rad = piece->swing_rad;
  handle->lift_rad = piece->lift_rad;
  handle->root = ph_point_of_m (ph_assembly_place (compiled->assembly, i)->root_m);
  handle->reach_mm = (float)ph_to_milli (reach_m (compiled->assembly, i));
  return true;
}

double
ph_handle_degrees (const PhHandle *handle, PhTurn turn)
{
  return ph_deg_from_rad (turn == PH_TURN_SWING ? handle->swing_rad : handle->lift_rad);
}

PhPoint
ph_handle_tip (const PhHandle *handle)
{
  return ph_handle_tip_at (handle, PH_TURN_SWING, ph_handle_degrees (handle, PH_TURN_SWING));
}

PhPoint
ph_handle_tip_at (const PhHandle *handle, PhTurn turn, double degrees)
{
  double swing = handle->swing_rad, lift = handle->lift_rad;
  *(turn == PH_TURN_SWING ? &swing : &lift) = ph_rad_from_deg (degrees);
  PhVec3 way = ph_frame_direction (&handle->socket, swing, lift);
  return ph_point_add_scaled (handle->root, ph_point_of_vec (way), handle->reach_mm);
}

/* Of one degree more, in the picture; `*whole_px` is how far the end really goes, at its depth. */
static PhPixel
motion_of (const PhHandle *handle, const PhCamera *camera, PhTurn turn, float *whole_px)
{
  double now = ph_handle_degrees (handle, turn);
  PhPoint before = ph_handle_tip_at (handle, turn, now - TRY_DEG);
  PhPoint after = ph_handle_tip_at (handle, turn, now + TRY_DEG);
  PhPixel a = ph_camera_project (camera, before, NULL), b = ph_camera_project (camera, after, NULL);
  *whole_px = ph_point_length (ph_point_sub (after, before)) * camera->px_per_mm;
  return (PhPixel){ b.x - a.x, b.y - a.y };
}

PhPixel
ph_handle_motion (const PhHandle *handle, const PhCamera *camera, PhTurn turn)
{
  float whole;
  return motion_of (handle, camera, turn, &whole);
}

/* The share of the motion that is seen, and its way as a unit. */
static float
seen_motion (const PhHandle *handle, const PhCamera *camera, PhTurn turn, PhPixel *way)
{
  float whole;
  PhPixel motion = motion_of (handle, camera, turn, &whole);
  float seen = hypotf (motion.x, motion.y);
  *way = seen > 0.0f ? (PhPixel){ motion.x / seen, motion.y / seen } : (PhPixel){ 0.0f, 0.0f };
  return whole > 0.0f ? seen / whole : 0.0f;
}

/* Which of both: the one that is nearer to the drag, or where there is none the one seen better. */
static PhTurn
nearer_turn (const PhPixel way[2], const float seen[2], PhPixel drag)
{
  float fit[2], length = hypotf (drag.x, drag.y);
  for (int i = 0; i < 2; i++)
    {
      float along = length > 0.0f ? fabsf (way[i].x * drag.x + way[i].y * drag.y) / length : 1.0f;
      fit[i] = seen[i] < SEEN_LEAST ? along * seen[i] - 1.0f : along;
    }
  if (length <= 0.0f)
    return seen[PH_TURN_LIFT] > seen[PH_TURN_SWING] ? PH_TURN_LIFT : PH_TURN_SWING;
  return fit[PH_TURN_LIFT] > fit[PH_TURN_SWING] ? PH_TURN_LIFT : PH_TURN_SWING;
}

PhGrip
ph_handle_grip (const PhHandle *handle, const PhCamera *camera, PhPixel drag)
{
  PhPixel way[2];
  float seen[2];
  for (int i = 0; i < 2; i++)
    seen[i] = seen_motion (handle, camera, (PhTurn)i, &way[i]);
  PhTurn turn = camera->view == PH_VIEW_SIDE ? PH_TURN_LIFT : PH_TURN_SWING;
  if (camera->view == PH_VIEW_FREE)
    turn = nearer_turn (way, seen, drag);
  else if (seen[turn] < SEEN_LEAST && seen[!turn] >= SEEN_LEAST)
    turn = !turn;
  PhGrip grip = { turn, way[turn] };
  if (grip.way.x == 0.0f && grip.way.y == 0.0f)
    grip.way = turn == PH_TURN_LIFT ? (PhPixel){ 0.0f, -1.0f } : (PhPixel){ -1.0f, 0.0f };
  return grip;
}

double
ph_drag_steps (PhPixel way, double dx, double dy, double px_per_step)
{
  return ((double)way.x * dx + (double)way.y * dy) / px_per_step;
}

double
ph_drag_value (double start, double steps, double step, double lo, double hi)
{
  if (fabs (steps) < 0.5)
    return start;
  double value = round ((start + steps * step) / step) * step;
  /* 0.1 is no binary number: 26.3 as a person would type it. */
  value = round (value * 1e6) / 1e6;
  return fmax (fmin (lo, start), fmin (value, fmax (hi, start)));
}

bool
ph_handle_axis (const PhCompiled *compiled, size_t part, const PhCamera *camera, PhPixel *way,
                float *share)
{
  int i = piece_of (compiled, part);
  if (i < 0 || !ph_piece_has_length_axis (ph_assembly_piece (compiled->assembly, i)))
    return false;
  const PhPlace *place = ph_assembly_place (compiled->assembly, i);
  const float length = 100.0f;
  PhPoint root = ph_point_of_m (place->root_m);
  PhPoint end = ph_point_add_scaled (root, ph_point_of_vec (place->frame.a), length);
  PhPixel a = ph_camera_project (camera, root, NULL), b = ph_camera_project (camera, end, NULL);
  float seen = hypotf (b.x - a.x, b.y - a.y), whole = length * camera->px_per_mm;
  if (share)
    *share = seen / whole;
  if (seen < AXIS_LEAST * whole)
    return false;
  *way = (PhPixel){ (b.x - a.x) / seen, (b.y - a.y) / seen };
  return true;
}
