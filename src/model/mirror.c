/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rig for the other bow hand. Only signs turn, and left and right in
 * the parts' names, so that twice is the very same rig. Whether an
 * axis lies across the bow, where "left" comes from +x and swing and own y keep their signs, is
 * read from the places of all parts, those switched off too, before anything turns; it is the same
 * in the mirrored rig.
 */
#include <math.h>
#include <stdlib.h>

#include "base/text.h"
#include "model/compile.h"
#include "model/edit.h"
#include "model/fields.h"
#include "model/mirror-own.h"

/* Where the parts point; every part counted as fitted. */
PhAcross *
ph_across_of (const PhRig *rig)
{
  PhRig *all = ph_rig_copy (rig);
  for (size_t i = 0; i < all->n_parts; i++)
    all->parts[i].off = false;
  PhCompiled *compiled = ph_compile_rig (all);
  PhAcross *across = ph_alloc ((rig->n_parts + 1) * sizeof *across);
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      int k = compiled->piece_of_part[i];
      const PhPiece *piece = ph_assembly_piece (compiled->assembly, k);
      const PhPlace *host =
          piece->host == PH_HOST_BOW ? NULL : ph_assembly_place (compiled->assembly, piece->host);
      PhVec3 axis = piece->seat_axis;
      if (host)
        axis = piece->seat == PH_SEAT_SOCKET ? ph_frame_apply (&host->frame, axis) : host->frame.a;
      across[i].seat = fabs (axis.y) > PH_ACROSS;
      across[i].own = fabs (ph_assembly_place (compiled->assembly, k)->frame.a.y) > PH_ACROSS;
    }
  ph_compiled_free (compiled);
  ph_rig_free (all);
  return across;
}

static void
turn_limits (PhLimits *limits)
{
  double lo = limits->lo;
  limits->lo = limits->hi;
  limits->hi = lo;
  ph_mirror_turn (&limits->lo);
  ph_mirror_turn (&limits->hi);
}

static void
mirror_sockets (PhSocket *sockets, size_t n)
{
  for (size_t i = 0; i < n; i++)
    {
      ph_mirror_turn (&sockets[i].at_mm[1]);
      ph_mirror_turn (&sockets[i].axis[1]);
    }
}

void
ph_mirror_part (PhPart *part, PhAcross across)
{
  if (!across.seat)
    {
      ph_mirror_turn (&part->swing_deg);
      turn_limits (&part->limit_swing);
    }
  if (part->name)
    {
      char *name = ph_mirror_name (part->name);
      free (part->name);
      part->name = name;
    }
  ph_mirror_turn (&part->at_mm[1]);
  ph_mirror_turn (&part->aperture_mm[1]);
  if (across.own)
    return;
  ph_mirror_turn (&part->com_mm[1]);
  mirror_sockets (part->sockets, part->n_sockets);
}

static void
mirror_check (PhCheck *check)
{
  ph_mirror_turn (&check->com_mm[1]);
  ph_mirror_turn (&check->bubble_deg);
  ph_mirror_turn (&check->predicted_deg);
  for (size_t i = 0; i < check->n_draws; i++)
    ph_mirror_turn (&check->draws_deg[i]);
}

/* The other hand must stand in the file when it is not the default; what only a mirroring put
   there, the next one takes away again. */
static void
turn_hand (PhArcher *archer)
{
  uint64_t bit = ph_given_bit (PH_OBJECT_ARCHER, "bow_hand");
  archer->bow_hand = archer->bow_hand == PH_BOW_HAND_LEFT ? PH_BOW_HAND_RIGHT : PH_BOW_HAND_LEFT;
  if (archer->by_mirror)
    {
      archer->given &= ~bit;
      archer->by_mirror = false;
      archer->present &= !archer->present_by_mirror;
      archer->present_by_mirror = false;
      return;
    }
  archer->by_mirror = !(archer->given & bit);
  archer->present_by_mirror = !archer->present;
  archer->given |= bit;
  archer->present = true;
}

void
ph_edit_mirror (PhRig *rig)
{
  PhAcross *across = ph_across_of (rig);
  for (size_t i = 0; i < rig->n_parts; i++)
    ph_mirror_part (&rig->parts[i], across[i]);
  free (across);
  ph_mirror_turn (&rig->bow.com_mm[1]);
  mirror_sockets (rig->bow.mounts, rig->bow.n_mounts);
  turn_hand (&rig->archer);
  ph_mirror_turn (&rig->archer.roll_bias_nm);
  ph_mirror_turn (&rig->archer.wanted_bubble_deg);
  for (size_t i = 0; i < rig->archer.n_checks; i++)
    mirror_check (&rig->archer.checks[i]);
}
