/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A cubic that arrives with no speed left.
 */
#include "widgets/ease.h"

PhEase
ph_ease_rest (double at)
{
  return (PhEase){ at, at, 0 };
}

bool
ph_ease_is_over (const PhEase *ease, int64_t now_us)
{
  return ease->from == ease->to || now_us >= ease->start_us + PH_EASE_US;
}

double
ph_ease_at (const PhEase *ease, int64_t now_us)
{
  if (ph_ease_is_over (ease, now_us))
    return ease->to;
  if (now_us <= ease->start_us)
    return ease->from;
  double left = 1.0 - (double)(now_us - ease->start_us) / PH_EASE_US;
  return ease->to + (ease->from - ease->to) * left * left * left;
}

void
ph_ease_to (PhEase *ease, double to, int64_t now_us)
{
  if (to == ease->to)
    return;
  *ease = (PhEase){ ph_ease_at (ease, now_us), to, now_us };
}
