/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the bow view's own sources share: bow-view.c (what is shown), bow-view-paint.c (drawing),
 * bow-view-input.c (keys), bow-view-pointer.c and view-drag.c (hand), bow-view-words.c (what a
 * screen reader hears). The area beneath (gl-view.c) reads it too.
 */
#pragma once

#include "widgets/bow-marks.h"
#include "widgets/bow-palette.h"
#include "widgets/bow-scene.h"
#include "widgets/bow-view.h"
#include "widgets/ease.h"
#include "widgets/view-drag.h"

G_BEGIN_DECLS

struct _PhBowView
{
  GtkWidget parent_instance;

  PhDocument *document; /* owned */
  PhView view;
  double lean_factor;
  gboolean dragged; /* somebody has dragged a part: no hint any more */

  PhCamera camera;
  gboolean driven; /* a pane sets the camera */
  gboolean fitted;

  const PhBowScene *scene; /* the document's */
  PhDrawList *list;        /* the scene's */
  PhOutlines *outlines, *reference_outlines;
  PhMarks *marks;
  PhMarkFacts facts; /* its pointers hold only while marks are made */
  PhLeanDrawn reference_lean;
  PhEase lean;            /* from behind: as it is drawn, on its way with a part */
  gboolean list_stale;    /* the rig changed */
  gboolean picture_stale; /* the camera, the selection or the units did */
  gboolean outlines_stale;

  gboolean over_gl; /* an area beneath draws the bow */
  GskRenderNode *balance_node;
  PhPalette balance_palette; /* that it was drawn with */

  GtkWidget *corner;        /* buttons at the upper right */
  GtkWidget *factor_button; /* from behind only */

  /* Hand and keys */
  PhViewDrag drag;
  double dragged_x, dragged_y; /* already panned */
  double pinch_scale, pinch_x, pinch_y;
  double click_x, click_y; /* of the last click */
  guint32 click_time;
  GtkWidget *menu;      /* a part's, or null */
  gboolean key_gesture; /* a held key's gesture is open */
  double pointer_x, pointer_y;
};

/** Rebuilds what is stale; the second without the outlines. */
void ph_bow_view_refresh (PhBowView *self);
void ph_bow_view_refresh_marks (PhBowView *self);

/** The widget's snapshot function. */
void ph_bow_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot);

/** Controllers; called once by init, the second by the first. */
void ph_bow_view_init_input (PhBowView *self);
void ph_bow_view_init_pointer (PhBowView *self);
/** So many weights more on the selected stack or at the selected bar's end, in a held key's
 * gesture. False: it cannot be. */
gboolean ph_bow_view_add_weights (PhBowView *self, int steps);
/** What was pressed (ph_view_drag_press) came up in the same place: a handle is used, else what is
 * there is selected; `deeper` what lies behind the selected part. */
void ph_bow_view_tap (PhBowView *self, double x, double y, gboolean touch, gboolean deeper,
                      guint32 time);
/** Two fingers about that point; then `scale` times as far apart as they began. */
void ph_bow_view_pinch_begin (PhBowView *self, double x, double y);
void ph_bow_view_pinch_to (PhBowView *self, double scale, double x, double y);
/** What the hand does is another: the marks are stale. */
void ph_bow_view_remark (PhBowView *self);
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
