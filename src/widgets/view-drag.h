/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A part taken hold of in a view, from the press to the release: one gesture of the document, live
 * at every step. Which device does it is another matter (bow-view-pointer.c).
 */
#pragma once

#include "widgets/bow-view.h"
#include "widgets/number-ref.h"
#include "widgets/view-handles.h"

G_BEGIN_DECLS

/** Nothing moves before the pointer went so far [px]. */
#define PH_DRAG_THRESHOLD_PX 4.0

typedef struct
{
  PhHold hover; /* what is under the pointer */
  PhHold held;  /* what the press took hold of */
  gboolean touch;
  gboolean started; /* beyond the threshold: the document's gesture is open */
  gboolean over;    /* given up: nothing more until the next press */
  double press_x, press_y;
  double last_x, last_y; /* of the pointer, from the press */

  PhNumberRef ref; /* what is dragged */
  PhTurn turn;     /* of an angle */
  PhPixel way;     /* in which the value grows */
  double px_per_step;
  double start, value, lo, hi; /* in the file's unit */
  double base, moved;          /* where the steps were last made finer or coarser, and since then */
  gboolean fine;

  PhRig *from_rig; /* as it stood: what the effect is told against */
  PhCompiled *from_compiled;
  PhReport *from_report;
  char *value_said, *effect_said;
  PhMarkHand marks;
} PhViewDrag;

/** The part that turns when that one is to be turned: a stack and a damper go with the bar that
 * carries them. −1: none. */
int ph_view_turning_part (const PhRig *rig, int part);

/** What a press at that point of the widget would take hold of. */
PhHold ph_view_hold_at (PhBowView *self, double x, double y, gboolean touch);
void ph_view_drag_hover (PhBowView *self, PhHold hold);

void ph_view_drag_press (PhBowView *self, double x, double y, gboolean touch);
/** The pointer is dx, dy from the press; `fine` in tenths. False: nothing is held. */
gboolean ph_view_drag_move (PhBowView *self, double dx, double dy, gboolean fine);
/** The button came up. */
void ph_view_drag_release (PhBowView *self);
/** Puts back what stood before; without effect where nothing is dragged. */
void ph_view_drag_give_up (PhBowView *self);
gboolean ph_view_drag_is_on (PhBowView *self);

/** What the marks show of it; borrowed until the next call. Null: nothing. */
const PhMarkHand *ph_view_drag_marks (PhBowView *self);

/** What was allocated. */
void ph_view_drag_clear (PhViewDrag *drag);

G_END_DECLS
