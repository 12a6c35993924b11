/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A look at one placed piece.
 */
#include "document/direction.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* The piece of a part that turns on something, or −1. */
static int
turning_piece (const PhCompiled *compiled, size_t part)
{
  g_return_val_if_fail (part < compiled->n_parts, -1);
  int piece = compiled->piece_of_part[part];
  if (piece < 0)
    return -1;
  PhSeat seat = ph_assembly_piece (compiled->assembly, piece)->seat;
  return seat == PH_SEAT_SOCKET || seat == PH_SEAT_END ? piece : -1;
}

PhWay
ph_way_of_swing (const PhCompiled *compiled, size_t part)
{
  int piece = turning_piece (compiled, part);
  if (piece < 0)
    return PH_WAY_LEFT_RIGHT;
  PhFrame socket = ph_assembly_seat_frame (compiled->assembly, piece);
  if (fabs (socket.l.y) < fabs (socket.l.x))
    return PH_WAY_FORWARD_BACK;
  double end = ph_assembly_place (compiled->assembly, piece)->end_m.y;
  return fabs (end) <= PH_DIRECTION_NEAR_PLANE_M ? PH_WAY_LEFT_RIGHT
         : end > 0                               ? PH_WAY_OUT_IN
                                                 : PH_WAY_IN_OUT;
}

PhWay
ph_way_of_lift (const PhCompiled *compiled, size_t part)
{
  int piece = turning_piece (compiled, part);
  if (piece < 0)
    return PH_WAY_UP_DOWN;
  PhFrame socket = ph_assembly_seat_frame (compiled->assembly, piece);
  return fabs (socket.t.z) < fabs (socket.t.x) ? PH_WAY_FORWARD_BACK : PH_WAY_UP_DOWN;
}

PhWay
ph_way_of_position (int component)
{
  return component == 0   ? PH_WAY_AHEAD_BEHIND
         : component == 1 ? PH_WAY_LEFT_RIGHT
                          : PH_WAY_ABOVE_BELOW;
}

static gboolean
is_off_plane (PhWay way)
{
  return way == PH_WAY_OUT_IN || way == PH_WAY_IN_OUT;
}

PhWay
ph_way_of_change (PhWay before, PhWay after, gboolean crosses)
{
  gboolean near_plane = before == PH_WAY_LEFT_RIGHT || after == PH_WAY_LEFT_RIGHT;
  if (!is_off_plane (before) && !is_off_plane (after))
    return after;
  if (before != after && (crosses || !near_plane))
    return PH_WAY_LEFT_RIGHT;
  return is_off_plane (after) ? after : before;
}

const char *
ph_way_word (PhWay way, double value)
{
  static const char *const words[][2] = {
    [PH_WAY_LEFT_RIGHT] = { NC_ ("direction", "left"), NC_ ("direction", "right") },
    [PH_WAY_OUT_IN] = { NC_ ("direction", "out"), NC_ ("direction", "in") },
    [PH_WAY_IN_OUT] = { NC_ ("direction", "in"), NC_ ("direction", "out") },
    [PH_WAY_FORWARD_BACK] = { NC_ ("direction", "forward"), NC_ ("direction", "back") },
    [PH_WAY_UP_DOWN] = { NC_ ("direction", "up"), NC_ ("direction", "down") },
    [PH_WAY_AHEAD_BEHIND] = { NC_ ("direction", "ahead"), NC_ ("direction", "behind") },
    [PH_WAY_ABOVE_BELOW] = { NC_ ("direction", "above"), NC_ ("direction", "below") },
  };
  return g_dpgettext2 (GETTEXT_PACKAGE, "direction", words[way][value < 0]);
}
