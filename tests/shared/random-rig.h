/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Random rigs as pieces, each with the solids it is made of, and where these stand by the frame's
 * rules written out a second time: nothing here calls the physics but for the bodies. For tests
 * that hand the same solids to another library. Club and archers: none.
 */
#pragma once

#include <math.h>
#include <stdbool.h>
#include <string.h>

#include "physics/assembly.h"

#define RANDOM_RIG_MOST 256

/** A cylinder along the first own axis, or a box, in the part's own frame. */
typedef struct
{
  bool round;
  double mass, com[3], length, outer_radius, inner_radius, size[3];
} RigSolid;

typedef struct
{
  PhPiece piece;
  RigSolid solids[3];
  int n_solids;
  int depth;
} RigPart;

typedef struct
{
  PhBowBody bow;
  RigPart parts[RANDOM_RIG_MOST];
  PhPiece pieces[RANDOM_RIG_MOST];
  int n;
} RandomRig;

/** Knuth's MMIX linear congruence (from memory); the high bits. */
static inline double
rig_random (unsigned long long *state, double lo, double hi)
{
  *state = *state * 6364136223846793005ull + 1442695040888963407ull;
  return lo + (hi - lo) * (double)(*state >> 11) / 9007199254740992.0;
}

static inline PhVec3
rig_random_vec (unsigned long long *state, double size)
{
  return ph_vec3 (rig_random (state, -size, size), rig_random (state, -size, size),
                  rig_random (state, -size, size));
}

/* Mostly any direction; often one of the corners of the rules. */
static inline PhVec3
rig_random_axis (unsigned long long *state)
{
  static const PhVec3 corners[] = { { 1, 0, 0 }, { -1, 0, 0 }, { 0, 1, 0 },     { 0, -1, 0 },
                                    { 0, 0, 1 }, { 0, 0, -1 }, { 0, 0.8, 0.6 }, { 1e-3, 1, 1e-3 } };
  int pick = (int)rig_random (state, 0, 20);
  PhVec3 axis = pick < 8 ? corners[pick] : rig_random_vec (state, 1);
  return ph_vec3_unit (axis);
}

static inline double
rig_random_angle (unsigned long long *state)
{
  static const double corners[] = { 0, 0, 1.5707963267948966, -1.5707963267948966,
                                    3.141592653589793 };
  int pick = (int)rig_random (state, 0, 12);
  return pick < 5 ? corners[pick] : rig_random (state, -3.1, 3.1);
}

static inline RigSolid
rig_cylinder (double mass, double start, double length, double outer, double inner)
{
  return (RigSolid){ .round = true,
                     .mass = mass,
                     .com = { start + length / 2, 0, 0 },
                     .length = length,
                     .outer_radius = outer,
                     .inner_radius = inner };
}

static inline RigSolid
rig_box (double mass, PhVec3 com, PhVec3 size)
{
  return (
      RigSolid){ .mass = mass, .com = { com.x, com.y, com.z }, .size = { size.x, size.y, size.z } };
}

static inline void
rig_make_bar (unsigned long long *s, RigPart *part)
{
  PhPiece *p = &part->piece;
  double outer = rig_random (s, 0.004, 0.015), inner = outer * rig_random (s, 0, 0.99);
  double fitting = rig_random (s, 0.001, 0.02), root = rig_random (s, 0.001, 0.05);
  double tip = rig_random (s, 0.001, 0.05);
  p->length_m = rig_random (s, 0.05, 1);
  p->diameter_m = 2 * outer;
  p->inner_m = 2 * inner;
  p->tube_kg = rig_random (s, 0.01, 0.2);
  p->tip_fitting_kg = tip;
  p->body = ph_piece_bar_body (p->tube_kg, root, tip, fitting, p->length_m, 2 * outer, 2 * inner);
  part->solids[0] = rig_cylinder (p->tube_kg, 0, p->length_m, outer, inner);
  part->solids[1] = rig_cylinder (root, 0, fitting, outer, 0);
  part->solids[2] = rig_cylinder (tip, p->length_m - fitting, fitting, outer, 0);
  part->n_solids = 3;
}

static inline void
rig_make_round (unsigned long long *s, RigPart *part)
{
  PhPiece *p = &part->piece;
  double outer = rig_random (s, 0.005, 0.03), mass = rig_random (s, 0.01, 0.5);
  double inner = p->kind == PH_PIECE_WEIGHTS ? outer * rig_random (s, 0, 0.5) : 0;
  p->count = 1 + (int)rig_random (s, 0, 10);
  p->length_m = rig_random (s, 0.002, 0.1);
  p->diameter_m = 2 * outer;
  p->inner_m = 2 * inner;
  p->body = ph_body_cylinder (mass, 0, p->length_m, outer, inner);
  part->solids[0] = rig_cylinder (mass, 0, p->length_m, outer, inner);
  part->n_solids = 1;
}

static inline void
rig_make_box (unsigned long long *s, RigPart *part)
{
  PhPiece *p = &part->piece;
  double mass = rig_random (s, 0.01, 0.5);
  PhVec3 com = rig_random_vec (s, p->kind == PH_PIECE_BRACKET ? 0.03 : 0.3);
  p->size_m =
      ph_vec3 (rig_random (s, 0.01, 0.2), rig_random (s, 0.01, 0.2), rig_random (s, 0.01, 0.2));
  p->body = ph_body_box (mass, com, p->size_m);
  part->solids[0] = rig_box (mass, com, p->size_m);
  part->n_solids = 1;
}

/* A host for the next part and a seat on it. */
static inline void
rig_choose_seat (unsigned long long *s, RandomRig *rig, RigPart *part)
{
  PhPiece *p = &part->piece;
  p->host = (int)floor (rig_random (s, -2, rig->n));
  p->host = p->host < PH_HOST_BOW ? PH_HOST_BOW : p->host;
  const RigPart *host = p->host == PH_HOST_BOW ? NULL : &rig->parts[p->host];
  if (p->kind == PH_PIECE_ACCESSORY
      || (host && (host->piece.kind == PH_PIECE_ACCESSORY || host->depth >= 16)))
    {
      p->host = PH_HOST_BOW;
      host = NULL;
    }
  part->depth = host ? host->depth + 1 : 1;
  p->seat = p->kind == PH_PIECE_ACCESSORY                   ? PH_SEAT_FREE
            : !host || host->piece.kind == PH_PIECE_BRACKET ? PH_SEAT_SOCKET
            : host->piece.kind == PH_PIECE_BAR && p->kind == PH_PIECE_WEIGHTS
                    && rig_random (s, 0, 1) < 0.4
                ? PH_SEAT_ALONG
                : PH_SEAT_END;
  p->seat_at_m = rig_random_vec (s, host ? 0.05 : 0.3);
  p->seat_axis = rig_random_axis (s);
  p->along_m = host ? rig_random (s, 0, host->piece.length_m) : 0;
  p->swing_rad = rig_random_angle (s);
  p->lift_rad = rig_random_angle (s);
}

/** n parts on a bow; the same for the same state. */
static inline void
rig_make (RandomRig *rig, unsigned long long *s, int n)
{
  memset (rig, 0, sizeof *rig);
  rig->bow.mass_kg = rig_random (s, 1, 3);
  rig->bow.com_m = rig_random_vec (s, 0.03);
  /* No radius squared above the sum of the other two: a body could not have them. */
  double x = rig_random (s, 0.2, 0.4), z = rig_random (s, 0.03, 0.1);
  double y = sqrt (x * x + z * z * rig_random (s, -1, 1));
  rig->bow.gyration_m = ph_vec3 (x, y, z);
  for (rig->n = 0; rig->n < n; rig->n++)
    {
      RigPart *part = &rig->parts[rig->n];
      part->piece.kind = (PhPieceKind)rig_random (s, 0, 5);
      rig_choose_seat (s, rig, part);
      if (part->piece.kind == PH_PIECE_BAR)
        rig_make_bar (s, part);
      else if (ph_piece_has_length_axis (&part->piece))
        rig_make_round (s, part);
      else
        rig_make_box (s, part);
      rig->pieces[rig->n] = part->piece;
    }
}

/** Where a part stands: rows of `axes` are d, l', t' in the bow frame. */
typedef struct
{
  double root[3], end[3], axes[3][3];
} RigPlace;

/* The frame of an axis, word for word. */
static inline void
rig_axes (const double axis[3], double axes[3][3])
{
  double base[3] = { 0, 1, 0 }, dot = 0, length = 0;
  if (fabs (axis[1]) > 0.9999)
    {
      base[0] = 1;
      base[1] = 0;
    }
  for (int i = 0; i < 3; i++)
    dot += base[i] * axis[i];
  for (int i = 0; i < 3; i++)
    {
      axes[0][i] = axis[i];
      axes[1][i] = base[i] - dot * axis[i];
      length += axes[1][i] * axes[1][i];
    }
  for (int i = 0; i < 3; i++)
    axes[1][i] /= sqrt (length);
  for (int i = 0; i < 3; i++)
    axes[2][i] =
        axes[0][(i + 1) % 3] * axes[1][(i + 2) % 3] - axes[0][(i + 2) % 3] * axes[1][(i + 1) % 3];
  double up = fabs (axes[2][2]) < 1e-9 ? axes[2][0] : axes[2][2];
  for (int i = 0; i < 3; i++)
    axes[2][i] = up < 0 ? -axes[2][i] : axes[2][i];
}

static inline void
rig_along (const double from[3], double axes[3][3], PhVec3 own, double to[3])
{
  for (int i = 0; i < 3; i++)
    to[i] = from[i] + axes[0][i] * own.x + axes[1][i] * own.y + axes[2][i] * own.z;
}

/** Places part i, its host being placed. */
static inline void
rig_place (const RandomRig *rig, RigPlace *places, int i)
{
  const PhPiece *p = &rig->pieces[i];
  RigPlace bow = { { 0 }, { 0 }, { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } } };
  RigPlace *host = p->host == PH_HOST_BOW ? &bow : &places[p->host], *place = &places[i];
  *place = bow;
  if (p->seat == PH_SEAT_FREE)
    return;
  double nowhere[3] = { 0, 0, 0 }, axis[3], socket[3][3];
  if (p->seat == PH_SEAT_SOCKET)
    {
      rig_along (host->root, host->axes, p->seat_at_m, place->root);
      rig_along (nowhere, host->axes, p->seat_axis, axis);
    }
  else
    {
      double start = p->seat == PH_SEAT_ALONG ? p->along_m : rig->pieces[p->host].length_m;
      rig_along (host->root, host->axes, ph_vec3 (start, 0, 0), place->root);
      memcpy (axis, host->axes[0], sizeof axis);
    }
  double swing = p->seat == PH_SEAT_ALONG ? 0 : p->swing_rad;
  double lift = p->seat == PH_SEAT_ALONG ? 0 : p->lift_rad;
  rig_axes (axis, socket);
  rig_along (nowhere, socket,
             ph_vec3 (cos (lift) * cos (swing), cos (lift) * sin (swing), sin (lift)), axis);
  rig_axes (axis, place->axes);
  rig_along (place->root, place->axes, ph_vec3 (p->length_m, 0, 0), place->end);
}
