/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The draw list from its builders' side: what the shapes of bow and parts append to. Only for the
 * scene floor's own sources. Growing ends the program when memory runs out (base/text.h).
 */
#pragma once

#include "scene/drawlist.h"

struct PhDrawList
{
  PhItem *items;
  size_t n, room;
  PhStation *stations;
  size_t n_stations, stations_room;
  PhHole *holes;
  size_t n_holes, holes_room;
  PhPoint *points;
  size_t n_points, points_room;
  int selected;
};

/** What every item carries, set once for a run of solids. */
typedef struct
{
  PhDrawList *list;
  PhRole role;
  PhItemState state;
  int part;
} PhPen;

/** The same pen with another role. */
PhPen ph_pen_role (PhPen pen, PhRole role);

void ph_pen_tube (PhPen pen, PhPoint a, PhPoint b, float ra, float rb);
/** A round disc about `at`: a tube of that thickness along the unit `axis`. */
void ph_pen_disc (PhPen pen, PhPoint at, PhPoint axis, float radius, float thickness);
void ph_pen_box (PhPen pen, PhPoint at, PhPoint half_a, PhPoint half_b, PhPoint half_c);
/** A box along the bow frame's own axes, full sides. */
void ph_pen_block (PhPen pen, PhPoint at, PhPoint size);
void ph_pen_ring (PhPen pen, PhPoint at, PhPoint axis, float outer, float inner, float thickness);
void ph_pen_sphere (PhPen pen, PhPoint at, float radius);
void ph_pen_line (PhPen pen, const PhPoint *points, size_t n, float radius);
/** Copies stations and holes. */
void ph_pen_sweep (PhPen pen, const PhStation *stations, size_t n, const PhHole *holes,
                   size_t n_holes, float round);

/** Radius of what joins the riser to a mount's point [mm]. */
#define PH_BOSS_RADIUS 10.0f

/** Centreline of the bow's riser, bottom to top: what mounts and accessories are joined to. */
typedef struct
{
  PhStation stations[96];
  size_t n;
} PhRiserLine;

/** The point of the riser's centreline nearest to `to`, and the half depth there. */
PhPoint ph_riser_nearest (const PhRiserLine *riser, PhPoint to, float *half_depth);

/** +1 for a bow held in the left hand, −1 for the right: what y is multiplied with. */
float ph_rig_left (const PhRig *rig);
/** The nocking point. */
PhPoint ph_rig_nock (const PhRig *rig);

/** Appends riser, limbs, cams, string, cables, grip and what the options ask for; fills `riser`. */
void ph_bow_shape (PhDrawList *list, const PhRig *rig, const PhDrawOptions *options,
                   PhRiserLine *riser);
void ph_compound_shape (PhPen pen, const PhRig *rig, PhRiserLine *riser);
void ph_recurve_shape (PhPen pen, const PhRig *rig, PhRiserLine *riser);

/** Appends every part, fitted and off, and the bosses that carry them. */
void ph_parts_shape (PhDrawList *list, const PhRig *rig, const PhCompiled *compiled,
                     const PhReport *report, const PhDrawOptions *options,
                     const PhRiserLine *riser);
/** One placed part; `place` as the physics has it. */
void ph_part_shape (PhPen pen, const PhPart *part, const PhPlace *place, bool plain,
                    const PhRiserLine *riser);
void ph_accessory_shape (PhPen pen, const PhPart *part, const PhRiserLine *riser);
