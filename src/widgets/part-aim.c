/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Directions come from the physics' own frames; clearances from really hanging the bar there, on a
 * copy of the rig: a few tens of microseconds for each angle that is tried. How far out a back bar
 * starts, and how far down, is common practice, no source.
 */
#include "widgets/part-aim.h"

#include <math.h>
#include <string.h>

#include "base/units.h"
#include "model/fields.h"
#include "physics/clearance.h"

/* Ahead of this share of its length a direction points ahead. */
#define AHEAD 0.5
/* A socket leads sideways from here on, or when it stands so far off the middle [m]. */
#define SIDEWAYS 0.1
#define OFF_MIDDLE_M 0.010

/* Back bars and side rods. */
#define OUT_DEG 20
#define ALREADY_OUT 0.26 /* the sine of 15° */
#define LIFT_DEG (-10)
#define STEP_DEG 5
#define MOST_DEG 175
/* What counts as back and out: at least so much of the length. */
#define BACK_LEAST 0.7
#define OUT_LEAST 0.1

gboolean
ph_aim_seat (PhDocument *document, const char *on, PhAimSeat *seat)
{
  const PhRig *rig = ph_document_get_rig (document);
  const PhCompiled *compiled = ph_document_get_compiled (document);
  const char *colon = strchr (on, ':');
  g_autofree char *id = colon ? g_strndup (on, (gsize)(colon - on)) : g_strdup (on);
  int host = ph_rig_find (rig, id);
  PhPlace place = { .frame = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } } };
  if (host >= 0)
    {
      int piece = compiled->piece_of_part[host];
      if (piece < 0)
        return FALSE;
      place = *ph_assembly_place (compiled->assembly, piece);
    }
  *seat = (PhAimSeat){ host, place.end_m, place.frame.a };
  if (!colon)
    return host >= 0;
  const PhSocket *sockets = host < 0 ? rig->bow.mounts : rig->parts[host].sockets;
  size_t n = host < 0 ? rig->bow.n_mounts : rig->parts[host].n_sockets;
  int s = ph_sockets_find (sockets, n, colon + 1);
  if (s < 0)
    return FALSE;
  const double *at = sockets[s].at_mm, *axis = sockets[s].axis;
  PhVec3 from_root = ph_vec3 (ph_from_milli (at[0]), ph_from_milli (at[1]), ph_from_milli (at[2]));
  seat->at_m = ph_vec3_add (place.root_m, ph_frame_apply (&place.frame, from_root));
  seat->axis = ph_frame_apply (&place.frame, ph_vec3_unit (ph_vec3 (axis[0], axis[1], axis[2])));
  return TRUE;
}

gboolean
ph_aim_can_point_back (PhDocument *document, const PhAimSeat *seat)
{
  if (seat->axis.x < AHEAD)
    return TRUE;
  const PhRig *rig = ph_document_get_rig (document);
  return seat->host >= 0 && rig->parts[seat->host].kind == PH_PART_BRACKET
         && (fabs (seat->axis.y) > SIDEWAYS || fabs (seat->at_m.y) > OFF_MIDDLE_M);
}

gboolean
ph_aim_sides_lead_back (const PhPart *bracket, const PhAimSeat *seat)
{
  PhFrame frame = ph_frame_of_axis (seat->axis);
  for (size_t i = 0; i < bracket->n_sockets; i++)
    {
      const double *axis = bracket->sockets[i].axis;
      PhVec3 own = ph_vec3_unit (ph_vec3 (axis[0], axis[1], axis[2]));
      if (fabs (own.y) > SIDEWAYS && ph_frame_apply (&frame, own).x > 0)
        return FALSE;
    }
  return TRUE;
}

const char *
ph_aim_through (const PhPart *bracket)
{
  const char *through = NULL;
  for (size_t i = 0; i < bracket->n_sockets; i++)
    {
      const double *at = bracket->sockets[i].at_mm, *axis = bracket->sockets[i].axis;
      PhVec3 own = ph_vec3_unit (ph_vec3 (axis[0], axis[1], axis[2]));
      if (own.x < 0.95 || fabs (ph_from_milli (at[1])) > OFF_MIDDLE_M)
        continue;
      if (through)
        return NULL;
      through = bracket->sockets[i].id;
    }
  return through;
}

int
ph_aim_side (const PhAimSeat *seat)
{
  if (fabs (seat->axis.y) > SIDEWAYS)
    return seat->axis.y > 0 ? 1 : -1;
  if (fabs (seat->at_m.y) > OFF_MIDDLE_M)
    return seat->at_m.y > 0 ? 1 : -1;
  return 0;
}

/* 1: to the archer's left. From the middle a back bar goes to the side away from the sight. */
static int
side_of (PhDocument *document, const PhAimSeat *seat)
{
  int side = ph_aim_side (seat);
  if (side != 0)
    return side;
  return ph_document_get_rig (document)->archer.bow_hand == PH_BOW_HAND_LEFT ? 1 : -1;
}

/* NAN where the string's way is not known. */
static double
clearance_m (const PhRig *rig, const PhPart *bar, const char *on)
{
  PhRig *copy = ph_rig_copy (rig);
  size_t index;
  double clear = NAN;
  if (ph_edit_add (copy, bar, on, &index, NULL))
    {
      PhCompiled *compiled = ph_compile_rig (copy);
      int piece = compiled->piece_of_part[index];
      if (piece >= 0)
        clear = ph_clearance_of (compiled->assembly, piece, &compiled->draw);
      ph_compiled_free (compiled);
    }
  ph_rig_free (copy);
  return clear;
}

static gboolean
points_back_and_out (const PhFrame *seat, double swing_deg, int side)
{
  PhVec3 d = ph_frame_direction (seat, ph_rad_from_deg (swing_deg), ph_rad_from_deg (LIFT_DEG));
  return d.x <= -BACK_LEAST && side * d.y >= OUT_LEAST;
}

static void
set_angles (PhPart *bar, double swing_deg)
{
  bar->swing_deg = swing_deg;
  bar->lift_deg = LIFT_DEG;
  bar->given |=
      ph_given_bit (PH_OBJECT_PART, "swing_deg") | ph_given_bit (PH_OBJECT_PART, "lift_deg");
}

void
ph_aim_back (PhDocument *document, PhPart *bar, const char *on)
{
  const PhRig *rig = ph_document_get_rig (document);
  PhAimSeat seat;
  if (!ph_aim_seat (document, on, &seat))
    return;
  PhFrame frame = ph_frame_of_axis (seat.axis);
  int side = side_of (document, &seat);
  double best = NAN, most = -INFINITY;
  double start = side * seat.axis.y >= ALREADY_OUT && seat.axis.x < 0 ? 0 : OUT_DEG;
  for (double turn = start; turn <= MOST_DEG; turn += STEP_DEG)
    for (int way = 1; way >= -1; way -= 2)
      {
        double swing = way * side * turn;
        if (!points_back_and_out (&frame, swing, side))
          continue;
        set_angles (bar, swing + 0.0);
        double clear = clearance_m (rig, bar, on);
        if (!(clear < PH_CLEARANCE_LEAST_M))
          return;
        best = clear > most ? swing : best;
        most = fmax (most, clear);
      }
  set_angles (bar, isnan (best) ? 0 : best);
}
