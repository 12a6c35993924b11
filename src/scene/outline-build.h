/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Outlines from their builders' side. Only for the scene floor's own sources.
 */
#pragma once

#include "scene/outline.h"

struct PhOutlines
{
  PhOutline *outlines;
  size_t n, room;
  PhPixel *pixels;
  size_t n_pixels, pixels_room;
  PhPath *holes;
  size_t n_holes, holes_room;
  PhFacet *facets;
  size_t n_facets, facets_room;
  float *lights;
  size_t n_lights, lights_room;
  PhCamera camera; /* of the last update */
};

/** Copies the pixels of a new path. */
PhPath ph_outlines_add_path (PhOutlines *outlines, const PhPixel *pixels, size_t n);
/** The convex hull of n ≤ PH_HULL_MOST pixels as a path; sorts them. */
PhPath ph_outlines_add_hull (PhOutlines *outlines, PhPixel *pixels, size_t n);
void ph_outlines_add_hole (PhOutlines *outlines, PhOutline *outline, PhPath path);
/** The face that was added last holds the outline's holes. */
void ph_outlines_last_is_holed (PhOutlines *outlines);
/** A face in one light. */
void ph_outlines_add_flat (PhOutlines *outlines, PhOutline *outline, PhPath path, float light);
/** A face whose light changes evenly from `from` to `to`; copies the lights. */
void ph_outlines_add_shaded (PhOutlines *outlines, PhOutline *outline, PhPath path, PhPixel from,
                             PhPixel to, const float *lights, size_t n_lights);

/** Fill edge, depth, width, holes and facets of `outline`, whose item is set. */
void ph_outline_tube (PhOutlines *outlines, PhOutline *outline, const PhCamera *camera,
                      const PhTube *tube);
void ph_outline_box (PhOutlines *outlines, PhOutline *outline, const PhCamera *camera,
                     const PhBox *box);
void ph_outline_ring (PhOutlines *outlines, PhOutline *outline, const PhCamera *camera,
                      const PhRing *ring);
void ph_outline_sphere (PhOutlines *outlines, PhOutline *outline, const PhCamera *camera,
                        const PhSphere *sphere);
void ph_outline_line (PhOutlines *outlines, PhOutline *outline, const PhCamera *camera,
                      const PhPoint *points, const PhLine *line);
void ph_outline_sweep (PhOutlines *outlines, PhOutline *outline, const PhCamera *camera,
                       const PhStation *stations, const PhHole *holes, const PhSweep *sweep);
