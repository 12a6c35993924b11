/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What one takes hold of in a view: the end of the selected bar, − and + beside the selected stack;
 * and what is shown while it is held. Marks like any others (bow-marks.h), so that every painter
 * draws them. No toolkit here.
 */
#pragma once

#include "scene/handle.h"
#include "widgets/bow-marks.h"

G_BEGIN_DECLS

typedef enum
{
  PH_HOLD_NONE,
  PH_HOLD_TURN,  /* a bar or a bracket, to be turned */
  PH_HOLD_STACK, /* a stack, to be made longer or shorter */
  PH_HOLD_LESS,  /* its − */
  PH_HOLD_MORE   /* its + */
} PhHoldKind;

typedef struct
{
  PhHoldKind kind;
  int part; /* index in rig->parts */
} PhHold;

/** A handle takes a finger's press within half of this in each direction, and stands no nearer to
 * the picture's edge [px]. */
#define PH_HANDLE_TARGET_PX 44.0f

/** What the hand does in a view. */
struct PhMarkHand
{
  const PhCompiled *compiled;
  int turns;        /* the part with a handle at its end; −1: none */
  int stack;        /* the stack with − and +; −1: none */
  PhHold hot;       /* what is under the pointer or held */
  const char *hint; /* a line in the corner; null: none */

  gboolean turning; /* an angle is being dragged: */
  PhTurn turn;
  double start_deg, value_deg;
  double lo_deg, hi_deg; /* the part's own limits; NAN: it has none */

  gboolean held; /* a drag is under way: */
  PhPixel pointer;
  const char *value;  /* "out 26°" */
  const char *effect; /* "bubble 0.6° to the left"; null: nothing to say */
};

/** Where the handle of a part that turns stands. False: it has none. */
gboolean ph_view_tip (const PhCompiled *compiled, int part, const PhCamera *camera, PhPixel *at);
/** Where − and + of a stack stand, in this order. False: it is not a fitted stack. */
gboolean ph_view_stack_handles (const PhCompiled *compiled, int part, const PhCamera *camera,
                                PhPixel at[2]);

/** The nearest handle whose middle is no farther from a pixel than `reach_px`; − and + reach at
 * least a little beyond their rings. */
PhHold ph_view_handle_at (const PhMarkHand *hand, const PhCamera *camera, PhPixel at,
                          float reach_px);

G_END_DECLS
