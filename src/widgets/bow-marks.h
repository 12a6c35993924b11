/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What stands over and under the bow in a view: the balance point, the plumb line, the line it
 * turns about, the lean's wedge, the selected part's lever arm, the scale bar, and every label,
 * laid out so that none covers another. A list of simple marks in pixels; who paints them is
 * another matter.
 */
#pragma once

#include <pango/pango.h>

#include "base/quantity.h"
#include "scene/outline.h"
#include "widgets/bow-lean.h"
#include "widgets/label-place.h"

G_BEGIN_DECLS

typedef enum
{
  PH_MARK_LINE,
  PH_MARK_FILL,    /* a polygon, faint */
  PH_MARK_BALANCE, /* engineering's quartered circle */
  PH_MARK_TEXT     /* on a plate of the ground's colour */
} PhMarkKind;

typedef enum
{
  PH_DASH_NONE,
  PH_DASH_PLUMB, /* dashes */
  PH_DASH_TURN   /* dash and dot */
} PhDash;

#define PH_MARK_PIXELS_MOST 34

typedef struct
{
  PhMarkKind kind;
  gboolean under;  /* beneath the bow */
  gboolean accent; /* of the selection; else ink */
  double alpha;    /* of its colour */
  double width_px; /* of a line; radius of the balance mark */
  PhDash dash;
  PhPixel at[PH_MARK_PIXELS_MOST]; /* ends of a line, corners of a fill, middle of a balance mark */
  size_t n_at;
  PangoLayout *layout; /* owned */
  PhLabelBox box;      /* of the text, its plate a little larger */
} PhMark;

typedef struct PhMarks PhMarks;

typedef struct PhMarkHand PhMarkHand; /* view-handles.h */

/** What the marks tell of. All borrowed while ph_marks_new runs. */
typedef struct
{
  const PhRig *rig;
  const PhReport *report;
  const PhDrawList *list; /* what labels keep off; null: nothing */
  PhSettle settle;
  int selected; /* index in rig->parts, PH_PART_BOW or PH_PART_NONE */
  PhUnits units;
  double lean_factor;
  PhLeanDrawn lean;
  const PhMarkHand *hand; /* null: nothing to take hold of */
  double corner_px[2]; /* width and height kept free at the upper right: the view's own buttons */
} PhMarkFacts;

/** Lays out the marks of one view. `context` gives fonts and resolution. Free with ph_marks_free.
 */
PhMarks *ph_marks_new (const PhMarkFacts *facts, const PhCamera *camera, PangoContext *context);
void ph_marks_free (PhMarks *marks);

size_t ph_marks_count (const PhMarks *marks);
const PhMark *ph_marks_get (const PhMarks *marks, size_t i);

/** "From the side", … Translated, borrowed. */
const char *ph_view_title (PhView view);

/** A distance without its sign, to whole millimetres, or tenths of an inch where every length is in
 * inches. New string. */
char *ph_place_said (double mm, PhUnits units);

/** "68 mm ahead of the grip". New string. */
char *ph_balance_said (const PhReport *report, PhUnits units);

G_END_DECLS
