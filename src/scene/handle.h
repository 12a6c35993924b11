/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Taking hold of a part in a picture: where the end is that one drags, which of its two angles a
 * drag means there and with which sign, and how far so many pixels turn it. Drags are relative, so
 * that none of it depends on how long the part is or how far it is turned away from the eye.
 */
#pragma once

#include "model/compile.h"
#include "scene/camera.h"

/** One step of an angle per so many pixels, and one disc of a stack. */
#define PH_DRAG_STEP_PX 8.0
#define PH_DRAG_DISC_PX 16.0

typedef enum
{
  PH_TURN_SWING, /* in and out */
  PH_TURN_LIFT   /* up and down */
} PhTurn;

/** A fitted part that turns. */
typedef struct
{
  PhFrame socket; /* what its angles are counted from */
  double swing_rad, lift_rad;
  PhPoint root;   /* the point it turns about */
  float reach_mm; /* from there to its end; of a bar to the end of what goes straight on from it */
} PhHandle;

/** False: that part does not turn (an accessory, a stack, a part that is off). */
bool ph_handle_of (const PhCompiled *compiled, size_t part, PhHandle *handle);

double ph_handle_degrees (const PhHandle *handle, PhTurn turn);
/** Where the end is, and where it would be with that one angle changed. */
PhPoint ph_handle_tip (const PhHandle *handle);
PhPoint ph_handle_tip_at (const PhHandle *handle, PhTurn turn, double degrees);

/** What the end does in the picture for one degree more. */
PhPixel ph_handle_motion (const PhHandle *handle, const PhCamera *camera, PhTurn turn);

typedef struct
{
  PhTurn turn;
  PhPixel way; /* unit: where the end goes in the picture as the angle grows */
} PhGrip;

/** What a drag by `drag` (pixels, need not be long) means: from the side up and down, from behind
 * and from above in and out, unless the end would only move along the line of sight; in the free
 * view the angle whose motion is nearer to the drag. */
PhGrip ph_handle_grip (const PhHandle *handle, const PhCamera *camera, PhPixel drag);

/** By how many steps of so many pixels a drag goes along the way. */
double ph_drag_steps (PhPixel way, double dx, double dy, double px_per_step);

/** The value after so many steps: the start while it is less than half a step, then whole multiples
 * of the step, within lo … hi (a start outside them stays allowed). */
double ph_drag_value (double start, double steps, double step, double lo, double hi);

/** Where a part with an axis (bar, stack, damper) points in the picture, from its root outward, as
 * a unit; `*share`, where given, is how much of its length is seen. False: no such part, or it is
 * seen end on. */
bool ph_handle_axis (const PhCompiled *compiled, size_t part, const PhCamera *camera, PhPixel *way,
                     float *share);
