/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A number on its smooth way to where it already is: what is drawn follows a step, what is said
 * does not wait. Plain numbers and a time that the caller gives.
 */
#pragma once

#include <stdbool.h>
#include <stdint.h>

/** How long the way takes [µs]: long enough to be seen, short enough not to be waited for. */
#define PH_EASE_US 100000

typedef struct
{
  double from, to;
  int64_t start_us;
} PhEase;

/** At rest there. */
PhEase ph_ease_rest (double at);

/** Where it is: from `from`, fast at first, never beyond `to`, there after PH_EASE_US. */
double ph_ease_at (const PhEase *ease, int64_t now_us);
bool ph_ease_is_over (const PhEase *ease, int64_t now_us);

/** Off to another place, from where it is now. */
void ph_ease_to (PhEase *ease, double to, int64_t now_us);
