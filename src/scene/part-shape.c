/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bars, weights, dampers and brackets at the size and place the physics gives them, and the bosses
 * that carry them on the riser. What is off is placed as if it were fitted.
 */
#include <assert.h>
#include <stdlib.h>

#include "base/text.h"
#include "physics/clearance.h"
#include "scene/drawlist-build.h"

#define NECK_RADIUS 8.0f
/* Thinner within a thin block, so that its lines do not shine through. */
#define NECK_LEAST 3.5f
#define NECK_UNDER 3.5f
/* Air between two discs, so that they can be counted: a share of the thickness, at most this. */
#define GAP_SHARE 0.14f
#define GAP_MOST 1.0f

static void
bar_shape (PhPen pen, const PhPart *part, PhPoint root, PhPoint end, PhPoint way, bool plain)
{
  float radius = (float)part->outer_mm / 2.0f;
  float length = (float)part->length_mm;
  float fitting = fminf ((float)part->fitting_mm, length / 2.0f);
  PhPoint from = root, to = end;
  bool at_root = !plain && part->root_fitting_g > 0, at_tip = !plain && part->tip_fitting_g > 0;
  if (at_root)
    from = ph_point_add_scaled (root, way, fitting);
  if (at_tip)
    to = ph_point_add_scaled (end, way, -fitting);
  ph_pen_tube (ph_pen_role (pen, PH_ROLE_BAR), from, to, radius, radius);
  pen = ph_pen_role (pen, PH_ROLE_FITTING);
  if (at_root)
    ph_pen_tube (pen, root, from, radius, radius);
  if (at_tip)
    ph_pen_tube (pen, to, end, radius, radius);
}

static void
weights_shape (PhPen pen, const PhPart *part, PhPoint root, PhPoint end, PhPoint way, bool plain)
{
  float radius = (float)part->diameter_mm / 2.0f, each = (float)part->each_mm;
  int count = (int)part->count;
  if (count == 0)
    return;
  pen = ph_pen_role (pen, PH_ROLE_WEIGHT);
  if (plain || count > PH_DISCS_MOST || each <= 0.0f)
    {
      ph_pen_tube (pen, root, end, radius, radius);
      return;
    }
  if (isnan (part->along_mm))
    ph_pen_tube (ph_pen_role (pen, PH_ROLE_FITTING), root, end, 0.55f * radius, 0.55f * radius);
  float gap = fminf (GAP_MOST, GAP_SHARE * each);
  for (int i = 0; i < count; i++)
    ph_pen_tube (pen, ph_point_add_scaled (root, way, (float)i * each + gap / 2.0f),
                 ph_point_add_scaled (root, way, (float)(i + 1) * each - gap / 2.0f), radius,
                 radius);
}

/* A rubber body with a waist: full, tapering, thin, and the same again. */
static void
damper_shape (PhPen pen, const PhPart *part, PhPoint root, PhPoint end)
{
  static const float cuts[][2] = { { 0, 1 },        { 0.26f, 1 }, { 0.4f, 0.62f },
                                   { 0.6f, 0.62f }, { 0.74f, 1 }, { 1, 1 } };
  float radius = (float)part->diameter_mm / 2.0f;
  pen = ph_pen_role (pen, PH_ROLE_DAMPER);
  for (size_t i = 0; i + 1 < sizeof cuts / sizeof cuts[0]; i++)
    ph_pen_tube (pen, ph_point_mix (root, end, cuts[i][0]),
                 ph_point_mix (root, end, cuts[i + 1][0]), cuts[i][1] * radius,
                 cuts[i + 1][1] * radius);
}

static PhPoint
own_to_bow (const PhFrame *frame, PhPoint root, const double own_mm[3])
{
  PhVec3 own = ph_vec3 (own_mm[0], own_mm[1], own_mm[2]);
  return ph_point_add (root, ph_point_of_vec (ph_frame_apply (frame, own)));
}

static void
bracket_shape (PhPen pen, const PhPart *part, const PhFrame *frame, PhPoint root)
{
  pen = ph_pen_role (pen, PH_ROLE_BRACKET);
  PhPoint middle = own_to_bow (frame, root, part->com_mm);
  ph_pen_box (pen, middle, ph_point_scale (ph_point_of_vec (frame->a), (float)part->size_mm[0] / 2),
              ph_point_scale (ph_point_of_vec (frame->l), (float)part->size_mm[1] / 2),
              ph_point_scale (ph_point_of_vec (frame->t), (float)part->size_mm[2] / 2));
  /* Necks, hidden where root and socket lie in the block, so that nothing hangs in the air. */
  float neck = NECK_RADIUS;
  for (int i = 0; i < 3; i++)
    neck = fmaxf (NECK_LEAST, fminf (neck, (float)part->size_mm[i] / 2 - NECK_UNDER));
  ph_pen_tube (pen, root, middle, neck, neck);
  for (size_t i = 0; i < part->n_sockets; i++)
    {
      const PhSocket *socket = &part->sockets[i];
      PhPoint at = own_to_bow (frame, root, socket->at_mm);
      PhVec3 own = ph_vec3 (socket->axis[0], socket->axis[1], socket->axis[2]);
      PhPoint axis = ph_point_unit (ph_point_of_vec (ph_frame_apply (frame, own)));
      ph_pen_tube (pen, middle, ph_point_add_scaled (at, axis, -neck / 2), neck, neck);
      ph_pen_tube (ph_pen_role (pen, PH_ROLE_FITTING), ph_point_add_scaled (at, axis, -NECK_RADIUS),
                   at, PH_BOSS_RADIUS, PH_BOSS_RADIUS);
    }
}

void
ph_part_shape (PhPen pen, const PhPart *part, const PhPlace *place, bool plain,
               const PhRiserLine *riser)
{
  PhPoint root = ph_point_of_m (place->root_m), end = ph_point_of_m (place->end_m);
  PhPoint way = ph_point_of_vec (place->frame.a);
  switch (part->kind)
    {
    case PH_PART_BAR:
      bar_shape (pen, part, root, end, way, plain);
      break;
    case PH_PART_WEIGHTS:
      weights_shape (pen, part, root, end, way, plain);
      break;
    case PH_PART_DAMPER:
      damper_shape (pen, part, root, end);
      break;
    case PH_PART_BRACKET:
      bracket_shape (pen, part, &place->frame, root);
      break;
    case PH_PART_ACCESSORY:
      ph_accessory_shape (pen, part, riser);
      break;
    }
}

/* Whether a mount carries something that is fitted, or only something that is off. */
static bool
mount_is_used (const PhRig *rig, const PhSocket *mount, PhItemState *state)
{
  bool used = false;
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      const char *socket = NULL;
      if (ph_rig_host (rig, i, &socket) >= 0 || !ph_text_equal (socket, mount->id))
        continue;
      if (!used || ph_rig_is_fitted (rig, i))
        *state = ph_rig_is_fitted (rig, i) ? PH_STATE_NORMAL : PH_STATE_OFF;
      used = true;
    }
  return used;
}

static void
bosses_shape (PhPen pen, const PhRig *rig, const PhRiserLine *riser)
{
  pen = ph_pen_role (pen, PH_ROLE_BOSS);
  for (size_t i = 0; i < rig->bow.n_mounts; i++)
    {
      const PhSocket *mount = &rig->bow.mounts[i];
      if (!mount_is_used (rig, mount, &pen.state))
        continue;
      PhPoint at = ph_point_of (mount->at_mm);
      ph_pen_tube (pen, ph_riser_nearest (riser, at, NULL), at, PH_BOSS_RADIUS, PH_BOSS_RADIUS);
      /* A knuckle: a bar that leaves at an angle stays joined. */
      if (pen.state == PH_STATE_NORMAL)
        ph_pen_sphere (pen, at, PH_BOSS_RADIUS);
    }
}

/* Every part placed, fitted or not: its own assembly, since the rig's leaves out what is off. A
 * host stands before its guests; nesting is at most 16, so at most as many passes. */
static PhAssembly *
place_all (const PhRig *rig, int *piece_of_part)
{
  PhPiece *pieces = ph_alloc_zeroed (rig->n_parts + 1, sizeof *pieces);
  int n = 0;
  for (size_t i = 0; i < rig->n_parts; i++)
    piece_of_part[i] = -1;
  for (int pass = 0; pass < PH_RIG_NESTING_MOST && (size_t)n < rig->n_parts; pass++)
    for (size_t i = 0; i < rig->n_parts; i++)
      {
        int host = ph_rig_host (rig, i, NULL);
        if (piece_of_part[i] >= 0 || (host >= 0 && piece_of_part[host] < 0))
          continue;
        pieces[n] = ph_compile_piece (rig, i, host < 0 ? PH_HOST_BOW : piece_of_part[host]);
        piece_of_part[i] = n++;
      }
  PhBowBody nothing = { 0 };
  PhAssembly *assembly = ph_assembly_new (&nothing, pieces, n);
  free (pieces);
  return assembly;
}

static PhItemState
state_of (const PhCompiled *compiled, const PhReport *report, size_t i)
{
  if (compiled->piece_of_part[i] < 0)
    return PH_STATE_OFF;
  if (report && report->part_clearance_m[i] < PH_CLEARANCE_LEAST_M)
    return PH_STATE_NEAR;
  return PH_STATE_NORMAL;
}

void
ph_parts_shape (PhDrawList *list, const PhRig *rig, const PhCompiled *compiled,
                const PhReport *report, const PhDrawOptions *options, const PhRiserLine *riser)
{
  assert (compiled->n_parts == rig->n_parts);
  PhPen pen = { .list = list, .part = PH_PART_BOW };
  bosses_shape (pen, rig, riser);
  int *everywhere = NULL;
  PhAssembly *all = NULL;
  if (compiled->n_pieces < rig->n_parts)
    {
      everywhere = ph_alloc_zeroed (rig->n_parts, sizeof *everywhere);
      all = place_all (rig, everywhere);
    }
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      int piece = compiled->piece_of_part[i];
      const PhPlace *place = NULL;
      if (piece >= 0)
        place = ph_assembly_place (compiled->assembly, piece);
      else if (everywhere[i] >= 0)
        place = ph_assembly_place (all, everywhere[i]);
      pen.part = (int)i;
      pen.state = state_of (compiled, report, i);
      if (place)
        ph_part_shape (pen, &rig->parts[i], place, options->plain, riser);
    }
  ph_assembly_free (all);
  free (everywhere);
}
