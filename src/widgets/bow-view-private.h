/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the bow view's own sources share: bow-view.c (drawing), bow-view-input.c (hand and keys),
 * bow-view-words.c (what a screen reader hears).
 */
#pragma once

#include "widgets/bow-marks.h"
#include "widgets/bow-view.h"

G_BEGIN_DECLS

struct _PhBowView
{
  GtkWidget parent_instance;

  PhDocument *document; /* owned */
  PhView view;
  double lean_factor;

  PhCamera camera;
  gboolean driven; /* a pane sets the camera */
  gboolean fitted;

  PhDrawList *list, *reference; /* reference: null without one */
  PhOutlines *outlines, *reference_outlines;
  PhMarks *marks;
  PhMarkFacts facts; /* its pointers hold only while marks are made */
  PhLeanDrawn reference_lean;
  gboolean list_stale;    /* the rig changed */
  gboolean picture_stale; /* the camera, the selection or the units did */

  GtkWidget *factor_button; /* from behind only */

  /* Hand and keys */
  double press_x, press_y;     /* of a drag */
  double dragged_x, dragged_y; /* already panned */
  gboolean panning;
  gboolean key_gesture; /* a held key's gesture is open */
  double pointer_x, pointer_y;
};

/** Rebuilds what is stale. */
void ph_bow_view_refresh (PhBowView *self);

/** Controllers; called once by init. */
void ph_bow_view_init_input (PhBowView *self);
void ph_bow_view_end_key_gesture (PhBowView *self);
/** The widget's focus function: Tab walks the parts. */
gboolean ph_bow_view_focus (GtkWidget *widget, GtkDirectionType direction);

/** Name and description for a screen reader; `event`, where given, is what a step just did. */
void ph_bow_view_tell (PhBowView *self, const char *event);

void ph_bow_view_emit_zoom (PhBowView *self, double factor, double x, double y);
void ph_bow_view_emit_pan (PhBowView *self, double dx, double dy);
void ph_bow_view_emit_fit (PhBowView *self);
void ph_bow_view_emit_refused (PhBowView *self, const char *why);
void ph_bow_view_emit_activated (PhBowView *self, const char *id);

G_END_DECLS
