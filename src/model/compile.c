/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Parts in the file's units to SI pieces. This is the one place where mm, g, degrees and GPa
 * become m, kg, rad and Pa.
 */
#include "model/compile.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/units.h"
#include "model/fields.h"
#include "model/hand-kept.h"

_Static_assert((int)PH_PIECE_BAR == (int)PH_PART_BAR
                   && (int)PH_PIECE_WEIGHTS == (int)PH_PART_WEIGHTS
                   && (int)PH_PIECE_DAMPER == (int)PH_PART_DAMPER
                   && (int)PH_PIECE_BRACKET == (int)PH_PART_BRACKET
                   && (int)PH_PIECE_ACCESSORY == (int)PH_PART_ACCESSORY,
               "pieces and parts name their kinds in the same order");

static PhVec3
vec3_from_milli (const double v[3])
{
  return ph_vec3 (ph_from_milli (v[0]), ph_from_milli (v[1]), ph_from_milli (v[2]));
}

/* Divided by its largest component first: a direction may be written at any length. */
static PhVec3
unit_axis (const double v[3])
{
  double most = fmax (fabs (v[0]), fmax (fabs (v[1]), fabs (v[2])));
  assert (most > 0);
  return ph_vec3_unit (ph_vec3 (v[0] / most, v[1] / most, v[2] / most));
}

static void
seat_piece (const PhRig *rig, size_t i, PhPiece *piece)
{
  const PhPart *part = &rig->parts[i];
  const char *name;
  int host = ph_rig_host (rig, i, &name);
  const PhSocket *sockets = host < 0 ? rig->bow.mounts : rig->parts[host].sockets;
  size_t n = host < 0 ? rig->bow.n_mounts : rig->parts[host].n_sockets;
  if (part->kind == PH_PART_ACCESSORY)
    piece->seat = PH_SEAT_FREE;
  else if (ph_part_is_along (part))
    {
      piece->seat = PH_SEAT_ALONG;
      piece->along_m = ph_from_milli (part->along_mm);
    }
  else if (!name)
    piece->seat = PH_SEAT_END;
  else
    {
      int socket = ph_sockets_find (sockets, n, name);
      assert (socket >= 0); /* a checked rig names what is there */
      piece->seat = PH_SEAT_SOCKET;
      piece->seat_at_m = vec3_from_milli (sockets[socket].at_mm);
      piece->seat_axis = unit_axis (sockets[socket].axis);
    }
}

static void
compile_bar (const PhPart *part, PhPiece *piece)
{
  double root = ph_from_milli (part->root_fitting_g), tip = ph_from_milli (part->tip_fitting_g);
  piece->diameter_m = ph_from_milli (part->outer_mm);
  piece->inner_m = ph_from_milli (part->inner_mm);
  piece->tip_fitting_kg = tip;
  piece->tube_kg =
      fmax (0, ph_from_milli (part->mass_g - part->root_fitting_g - part->tip_fitting_g));
  piece->modulus_pa = part->modulus_gpa * 1e9;
  piece->body =
      ph_piece_bar_body (piece->tube_kg, root, tip, ph_from_milli (ph_part_fitting_mm (part)),
                         piece->length_m, piece->diameter_m, piece->inner_m);
}

static void
compile_round (const PhPart *part, PhPiece *piece)
{
  bool stack = part->kind == PH_PART_WEIGHTS;
  piece->diameter_m = ph_from_milli (part->diameter_mm);
  piece->inner_m = stack ? ph_from_milli (part->bore_mm) : 0;
  piece->count = stack ? (int)part->count : 0;
  piece->each_kg = stack ? ph_from_milli (part->each_g) : 0;
  piece->each_m = stack ? ph_from_milli (part->each_mm) : 0;
  piece->body = ph_body_cylinder (ph_from_milli (ph_part_mass_g (part)), 0, piece->length_m,
                                  piece->diameter_m / 2, piece->inner_m / 2);
}

static void
compile_box (const PhPart *part, PhPiece *piece)
{
  const double *com = part->kind == PH_PART_BRACKET ? part->com_mm : part->at_mm;
  piece->size_m = vec3_from_milli (part->size_mm);
  piece->body = ph_body_box (ph_from_milli (part->mass_g), vec3_from_milli (com), piece->size_m);
}

PhPiece
ph_compile_piece (const PhRig *rig, size_t i, int host_piece)
{
  const PhPart *part = &rig->parts[i];
  PhPiece piece = { .kind = (PhPieceKind)part->kind,
                    .host = host_piece,
                    .length_m = ph_from_milli (ph_part_length_mm (part)) };
  seat_piece (rig, i, &piece);
  if (piece.seat == PH_SEAT_SOCKET || piece.seat == PH_SEAT_END)
    {
      piece.swing_rad = ph_rad_from_deg (part->swing_deg);
      piece.lift_rad = ph_rad_from_deg (part->lift_deg);
    }
  switch (part->kind)
    {
    case PH_PART_BAR:
      compile_bar (part, &piece);
      break;
    case PH_PART_WEIGHTS:
    case PH_PART_DAMPER:
      compile_round (part, &piece);
      break;
    case PH_PART_BRACKET:
    case PH_PART_ACCESSORY:
      compile_box (part, &piece);
      break;
    }
  return piece;
}

PhDraw
ph_compile_draw (const PhRig *rig)
{
  const PhArcher *archer = &rig->archer;
  return (PhDraw){ .draw_length_m = ph_from_milli (archer->draw_length_mm),
                   .nock_height_m = ph_from_milli (archer->nock_height_mm),
                   .holding_weight_n = ph_rig_holding_weight_n (rig),
                   .stature_m = ph_from_milli (archer->stature_mm),
                   .body_mass_kg = ph_from_milli (archer->body_mass_g),
                   .brace_height_m = ph_from_milli (rig->bow.brace_height_mm),
                   .axle_to_axle_m = ph_from_milli (rig->bow.axle_to_axle_mm) };
}

static PhBowBody
compile_bow (const PhBow *bow)
{
  return (PhBowBody){ .mass_kg = ph_from_milli (bow->mass_g),
                      .com_m = vec3_from_milli (bow->com_mm),
                      .gyration_m = vec3_from_milli (bow->gyration_mm) };
}

/* Gives part i its piece, its hosts theirs before it; at most 16 deep in a checked rig. */
static void
order_part (PhCompiled *compiled, const int *hosts, size_t i)
{
  if (compiled->piece_of_part[i] >= 0)
    return;
  if (hosts[i] >= 0)
    order_part (compiled, hosts, (size_t)hosts[i]);
  compiled->piece_of_part[i] = (int)compiled->n_pieces;
  compiled->part_of_piece[compiled->n_pieces++] = (int)i;
}

static int
host_piece_of (const PhCompiled *compiled, int host)
{
  return host < 0 ? PH_HOST_BOW : compiled->piece_of_part[host];
}

PhCompiled *
ph_compile_rig (const PhRig *rig)
{
  assert (rig->n_parts <= PH_RIG_PARTS_MOST);
  PhCompiled *compiled = ph_alloc_zeroed (1, sizeof *compiled);
  int *hosts = ph_rig_hosts (rig);
  bool *fitted = ph_rig_fitted (rig, hosts);
  compiled->n_parts = rig->n_parts;
  compiled->part_of_piece = ph_alloc ((rig->n_parts + 1) * sizeof *compiled->part_of_piece);
  compiled->piece_of_part = ph_alloc ((rig->n_parts + 1) * sizeof *compiled->piece_of_part);
  for (size_t i = 0; i < rig->n_parts; i++)
    compiled->piece_of_part[i] = -1;
  for (size_t i = 0; i < rig->n_parts; i++)
    if (fitted[i])
      order_part (compiled, hosts, i);
  PhPiece *pieces = ph_alloc ((compiled->n_pieces + 1) * sizeof *pieces);
  for (size_t k = 0; k < compiled->n_pieces; k++)
    {
      size_t i = (size_t)compiled->part_of_piece[k];
      pieces[k] = ph_compile_piece (rig, i, host_piece_of (compiled, hosts[i]));
    }
  PhBowBody bow = compile_bow (&rig->bow);
  compiled->assembly = ph_assembly_new (&bow, pieces, (int)compiled->n_pieces);
  compiled->draw = ph_compile_draw (rig);
  free (pieces);
  free (fitted);
  free (hosts);
  return compiled;
}

void
ph_compiled_free (PhCompiled *compiled)
{
  if (!compiled)
    return;
  ph_assembly_free (compiled->assembly);
  free (compiled->part_of_piece);
  free (compiled->piece_of_part);
  free (compiled);
}

void
ph_compiled_update_part (PhCompiled *compiled, const PhRig *rig, size_t i)
{
  assert (i < compiled->n_parts && compiled->n_parts == rig->n_parts);
  int k = compiled->piece_of_part[i];
  if (k < 0)
    return;
  int host = ph_assembly_piece (compiled->assembly, k)->host;
  PhPiece piece = ph_compile_piece (rig, i, host);
  ph_assembly_set_piece (compiled->assembly, k, &piece);
}

static PhBubbleCheck
compile_check (const PhRig *rig, const PhCheck *check)
{
  PhDraw draw = ph_compile_draw (rig);
  draw.draw_length_m = ph_from_milli (check->draw_length_mm);
  draw.nock_height_m = ph_from_milli (check->nock_height_mm);
  return (PhBubbleCheck){
    .roll = ph_roll_of (ph_from_milli (check->mass_g), vec3_from_milli (check->com_mm), &draw),
    .bubble_rad = ph_rad_from_deg (check->bubble_deg),
    .sd_rad = ph_rad_from_deg (check->sd_deg),
  };
}

PhBubbleCheck *
ph_compile_checks (const PhRig *rig, size_t *n, size_t **index_of)
{
  const PhArcher *archer = &rig->archer;
  PhBubbleCheck *checks = ph_alloc ((archer->n_checks + 1) * sizeof *checks);
  if (index_of)
    *index_of = ph_alloc ((archer->n_checks + 1) * sizeof **index_of);
  *n = 0;
  for (size_t i = 0; i < archer->n_checks; i++)
    if (!archer->checks[i].aside)
      {
        if (index_of)
          (*index_of)[*n] = i;
        checks[(*n)++] = compile_check (rig, &archer->checks[i]);
      }
  return checks;
}

PhStatus
ph_compile_hand (const PhRig *rig, PhHand *hand, bool *fitted)
{
  size_t n;
  PhBubbleCheck *checks = ph_compile_checks (rig, &n, NULL);
  PhStatus status = PH_OK;
  *fitted = n > 0;
  if (n > 0)
    status = ph_hand_fit_kept (checks, n, hand);
  else
    *hand = (PhHand){ .stiffness_nm_per_rad = rig->archer.roll_stiffness_nm_per_rad,
                      .bias_nm = rig->archer.roll_bias_nm,
                      .kk = PH_HAND_STIFFNESS_SD * PH_HAND_STIFFNESS_SD,
                      .bb = PH_HAND_BIAS_SD * PH_HAND_BIAS_SD };
  free (checks);
  return status;
}
