/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where a part can go, as a choice for a person: free places in words, the most sensible first.
 * No toolkit here.
 */
#pragma once

#include "document/document.h"
#include "store/catalogue.h"

G_BEGIN_DECLS

typedef struct
{
  char *on;        /* as in the rig file */
  gboolean along;  /* around the bar instead of at its end */
  double along_mm; /* then: where to put it first, the middle of the bar */
  char *below;     /* id of the part that hangs there now and then goes on the new one; null: the
                      place is free */
  char *through;   /* then: the new part's socket for it, null: its far end */
  gboolean back;   /* the new part is a bar that is to be turned back and out */
  char *words;     /* "bow: rear mount", "between the bow and the front bar" */
  int rank;        /* less is more sensible */
} PhPlaceOption;

/** Which way a part is meant to point, told from the catalogue's group. */
typedef enum
{
  PH_POINTS_ANYWHERE,
  PH_POINTS_AHEAD,
  PH_POINTS_BACK,
  PH_POINTS_ON /* an extender: on the way of what it hangs on */
} PhPoints;

PhPoints ph_points_of_group (const char *group);

/** How long a bar of that group should be for this archer: a front bar 0.44 of stature, a back bar
 * 0.4 of the rig's front bar (product page: a rule of our own). NAN: no rule. */
double ph_rule_length_mm (PhDocument *document, const PhCatalogueItem *item);

/** Places for a part like `part`: the free ones and, for one that is added and can carry what hangs
 * there now, between that and its host. What points back is offered no place from which it could
 * not. `moving` is its index when it already hangs in the rig (its
 * own place is left out), else −1. `near_id`, the part or "bow" that the person pointed at, comes
 * first where it has room; may be null. Array of PhPlaceOption; g_ptr_array_unref. */
GPtrArray *ph_place_list_new (PhDocument *document, const PhPart *part, PhPoints points, int moving,
                              const char *near_id);

/** Adds a copy of `part` there and selects it: one undo step. */
gboolean ph_place_add (const PhPlaceOption *place, PhDocument *document, const PhPart *part,
                       GError **error);
/** Hangs a part of the rig there, with all that hangs on it. */
gboolean ph_place_hang (const PhPlaceOption *place, PhDocument *document, const char *part_id,
                        GError **error);

G_END_DECLS
