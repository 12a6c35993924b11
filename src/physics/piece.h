/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A fitted part as numbers: what the physics needs to place and weigh it. SI, angles in rad.
 * No names and no files here; the model makes pieces from a checked rig, hosts before guests.
 */
#pragma once

#include <stdbool.h>

#include "physics/mass.h"

typedef enum
{
  PH_PIECE_BAR,
  PH_PIECE_WEIGHTS,
  PH_PIECE_DAMPER,
  PH_PIECE_BRACKET,
  PH_PIECE_ACCESSORY
} PhPieceKind;

/** How a piece sits on what carries it. */
typedef enum
{
  PH_SEAT_SOCKET, /* a mount of the bow, a socket of a bracket: point and axis of its own */
  PH_SEAT_END,    /* the far face of a bar, a stack or a damper: its axis d */
  PH_SEAT_ALONG,  /* a stack around a bar, near face at along_m; swing and lift not used */
  PH_SEAT_FREE    /* an accessory on the bow: com_m is the mass centre in the bow frame */
} PhSeat;

/** `host` of what sits on the bow itself. */
#define PH_HOST_BOW (-1)

typedef struct
{
  PhPieceKind kind;
  int host; /* PH_HOST_BOW or the index of a piece that stands earlier in the array */
  PhSeat seat;
  PhVec3 seat_at_m;  /* SOCKET: the point, in the host's own components from its root (bow: P) */
  PhVec3 seat_axis;  /* SOCKET: unit axis, in the host's own components */
  double along_m;    /* ALONG: near face from the bar's root */
  double swing_rad;  /* positive to the archer's left */
  double lift_rad;   /* positive upward */
  double length_m;   /* bar, damper, stack (count × thickness): root to far face; else 0 */
  double diameter_m; /* outer; of bar, damper, stack */
  double inner_m;    /* bar: inner diameter; stack: bore */
  int count;         /* stack: discs fitted */
  double each_kg;    /* stack: mass and thickness of a disc, so that a count can change */
  double each_m;
  double tube_kg;    /* bar: mass less both fittings */
  double tip_fitting_kg; /* bar */
  double modulus_pa;     /* bar: 0 is rigid */
  PhVec3 size_m; /* bracket (along, across, up, own frame), accessory (x, y, z): full sides */
  PhBody body;   /* mass, mass centre and inertia of the whole piece in its own frame */
} PhPiece;

/** The axis is that of a part that has one: bar, stack, damper. */
static inline bool
ph_piece_has_length_axis (const PhPiece *piece)
{
  return piece->kind <= PH_PIECE_DAMPER;
}

/** A bar's body: the tube, a hollow cylinder over the whole length, and in each end a fitting, a
 * solid cylinder of the outer diameter. Diameters, not radii; masses >= 0, 0 <= fitting_m <=
 * length_m, inner_m < outer_m. Length 0 and fitting 0 are discs. */
PhBody ph_piece_bar_body (double tube_kg, double root_fitting_kg, double tip_fitting_kg,
                          double fitting_m, double length_m, double outer_m, double inner_m);
