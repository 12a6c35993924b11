/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The sum of squares whose least place is the fitted hand, and the way down one of its valleys.
 * Inside the physics only.
 */
#pragma once

#include "physics/hand.h"

typedef struct
{
  const PhBubbleCheck *checks;
  size_t n;
} PhHandData;

/** A hand and the sum of squares there. */
typedef struct
{
  double k, b, value;
} PhHandPoint;

/** The sum with its first and second derivatives; gradient and Hessian are halved. */
typedef struct
{
  double value;
  double k, b;
  double kk, kb, bb;
  double jkk, jkb, jbb; /* the Hessian's part JᵀJ, always positive */
} PhHandSum;

double ph_hand_value (const PhHandData *data, double k, double b);
PhHandSum ph_hand_sum (const PhHandData *data, double k, double b);

/** The step to where the quadratic through `sum` is least, K kept at or above its bound. */
void ph_hand_step (const PhHandSum *sum, double k, double *dk, double *db);

/** Goes down from *at to the bottom of its valley, or as near to a jump as its slope drives it. */
void ph_hand_descend (const PhHandData *data, PhHandPoint *at);

/** (JᵀJ)⁻¹ at the hand's own K and B. */
void ph_hand_set_covariance (const PhHandData *data, PhHand *hand);

/** The least of all valleys. */
PhHandPoint ph_hand_search (const PhHandData *data);
