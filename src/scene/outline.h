/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A draw list seen through a camera, flat: for each solid its silhouette as one polygon, the holes
 * in it, and the lit faces inside it, farthest first. What a painter on paper fills, and what
 * picking asks. Solids that run into one another are told apart by depth as a whole, which is right
 * for a bow in the flat views and nearly so in the free one. Costs some microseconds a solid.
 */
#pragma once

#include "scene/camera.h"
#include "scene/drawlist.h"

/** A polygon, or an open line: some of the outlines' pixels. */
typedef struct
{
  size_t first, n;
} PhPath;

/** A lit face: a polygon with a light for all of it (n_lights 1), or lights evenly apart on the way
 * from `from` to `to` (light.h says what they mean). */
typedef struct
{
  PhPath path;
  PhPixel from, to;
  size_t first_light, n_lights;
  bool holed; /* the outline's holes lie within this face: they are left out of it */
} PhFacet;

typedef struct
{
  size_t item;                  /* in the draw list */
  float depth_mm;               /* for the order: grows toward the eye */
  PhPath edge;                  /* the silhouette; a line's points */
  bool is_line;                 /* an open line: to be stroked */
  float width_px;               /* of a line; else the least width of the silhouette, about */
  size_t first_hole, n_holes;   /* paths */
  size_t first_facet, n_facets; /* to be filled in this order */
} PhOutline;

typedef struct PhOutlines PhOutlines;

PhOutlines *ph_outlines_new (void);
void ph_outlines_free (PhOutlines *outlines);

/** Computes them anew; memory is kept from one time to the next. */
void ph_outlines_update (PhOutlines *outlines, const PhDrawList *list, const PhCamera *camera);

/** The camera they were computed for. */
const PhCamera *ph_outlines_camera (const PhOutlines *outlines);

size_t ph_outlines_count (const PhOutlines *outlines);
/** The farthest is the first. Borrowed until the next update, like all that follow. */
const PhOutline *ph_outlines_get (const PhOutlines *outlines, size_t i);
const PhPixel *ph_outlines_pixels (const PhOutlines *outlines, PhPath path);
PhPath ph_outlines_hole (const PhOutlines *outlines, const PhOutline *outline, size_t i);
const PhFacet *ph_outlines_facet (const PhOutlines *outlines, const PhOutline *outline, size_t i);
const float *ph_outlines_lights (const PhOutlines *outlines, const PhFacet *facet);

/** The smallest upright rectangle around every outline whose part passes `part` (PH_PART_NONE: all
 * of them). False where there is none. */
bool ph_outlines_bounds (const PhOutlines *outlines, const PhDrawList *list, int part,
                         PhPixel *least, PhPixel *most);
