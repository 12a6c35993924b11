/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The few kinds of solid a bow and its rig are drawn from. A solid says what stands where and what
 * it is, never how it is coloured: a painter on paper and a renderer with lights read the same
 * items. All lengths in mm, all points and directions in the bow frame (physics/frame.h), floats.
 */
#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "scene/point.h"

typedef enum
{
  PH_SOLID_TUBE,  /* between two ends, a radius at each: bars, discs, cams, waisted dampers */
  PH_SOLID_BOX,   /* a block in any pose */
  PH_SOLID_SWEEP, /* a rounded section along a smooth curve: riser, limbs, grip */
  PH_SOLID_RING,  /* a flat ring about its axis: the sight's aperture */
  PH_SOLID_SPHERE,
  PH_SOLID_LINE /* a thin round line through points: string, cables, arrow */
} PhSolidKind;

typedef enum
{
  PH_ROLE_RISER,
  PH_ROLE_LIMB,
  PH_ROLE_CAM,
  PH_ROLE_STRING,
  PH_ROLE_CABLE,
  PH_ROLE_GRIP,
  PH_ROLE_BAR,
  PH_ROLE_FITTING, /* bar ends, axles, limb pockets, the cable guard */
  PH_ROLE_WEIGHT,
  PH_ROLE_DAMPER,
  PH_ROLE_BRACKET,
  PH_ROLE_SIGHT, /* sight, rest and every other accessory */
  PH_ROLE_BOSS,  /* what joins the riser to a mount's point */
  PH_ROLE_ARROW,
  PH_ROLE_HAND /* hand and forearm: to show which way is forward */
} PhRole;
#define PH_ROLES 15

typedef enum
{
  PH_STATE_NORMAL,
  PH_STATE_OFF, /* listed, not fitted: a dotted outline */
  PH_STATE_NEAR /* less than 15 mm from where the string goes: hatched */
} PhItemState;

/** `part` of what belongs to the bow itself. */
#define PH_PART_BOW (-1)
/** Nothing at all: where a part is asked for. */
#define PH_PART_NONE (-2)

/** One section of a sweep: a rounded rectangle about `at`. */
typedef struct
{
  PhPoint at;        /* on the centreline */
  PhPoint out;       /* unit, square to the curve in the bow's plane: the depth's direction */
  PhPoint side;      /* unit, square to both: the width's direction */
  float half_depth;  /* along out */
  float half_across; /* along side */
} PhStation;

/** A hole through a sweep along `side`: an oval about a place on the centreline. Places are counted
 * in stations (2.5 lies half-way between the third and the fourth). */
typedef struct
{
  float middle;    /* [stations] */
  float half_span; /* along the curve [stations] */
  float half_open; /* along out [mm] */
} PhHole;

typedef struct
{
  PhPoint a, b; /* middles of the two faces */
  float ra, rb; /* radii there */
} PhTube;

typedef struct
{
  PhPoint at;      /* middle */
  PhPoint half[3]; /* half a side each, square to one another */
} PhBox;

typedef struct
{
  size_t first, n;            /* stations in the list, n ≥ 2 */
  size_t first_hole, n_holes; /* holes in the list */
  float round;                /* corner radius over the smaller half side, 0 to 1 */
} PhSweep;

typedef struct
{
  PhPoint at, axis;   /* middle and unit axis */
  float outer, inner; /* radii */
  float half_thick;   /* along the axis */
} PhRing;

typedef struct
{
  PhPoint at;
  float radius;
} PhSphere;

typedef struct
{
  size_t first, n; /* points in the list, n ≥ 2 */
  float radius;
} PhLine;

typedef struct
{
  PhSolidKind solid;
  PhRole role;
  PhItemState state;
  int part; /* index in rig->parts, or PH_PART_BOW */
  union
  {
    PhTube tube;
    PhBox box;
    PhSweep sweep;
    PhRing ring;
    PhSphere sphere;
    PhLine line;
  };
} PhItem;
