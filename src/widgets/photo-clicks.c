/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A dozen clicks at most: everything is counted anew when it is asked for.
 */
#include "widgets/photo-clicks.h"

/* What either way needs, first first. */
static const PhPhotoTarget targets[PH_PHOTO_WAYS][2] = {
  { PH_PHOTO_STRING, PH_PHOTO_EDGE },
  { PH_PHOTO_VIAL_LINE, PH_PHOTO_BUBBLE },
};

PhPhotoClicks
ph_photo_clicks_none (PhPhotoWay way)
{
  return (PhPhotoClicks){ .way = way, .asked = PH_PHOTO_NOTHING };
}

guint
ph_photo_clicks_count (const PhPhotoClicks *clicks, PhPhotoTarget on)
{
  guint count = 0;
  for (guint i = 0; i < clicks->n; i++)
    count += clicks->clicks[i].on == on;
  return count;
}

PhPhotoTarget
ph_photo_clicks_next (const PhPhotoClicks *clicks)
{
  if (clicks->asked != PH_PHOTO_NOTHING)
    return clicks->asked;
  for (int t = 0; t < 2; t++)
    if (ph_photo_clicks_count (clicks, targets[clicks->way][t]) < 2)
      return targets[clicks->way][t];
  return PH_PHOTO_NOTHING;
}

gboolean
ph_photo_clicks_are_complete (const PhPhotoClicks *clicks)
{
  return ph_photo_clicks_count (clicks, targets[clicks->way][0]) >= 2
         && ph_photo_clicks_count (clicks, targets[clicks->way][1]) >= 2;
}

gboolean
ph_photo_clicks_can_ask (const PhPhotoClicks *clicks, PhPhotoTarget on)
{
  guint count = ph_photo_clicks_count (clicks, on);
  return (on == PH_PHOTO_STRING || on == PH_PHOTO_EDGE) && count >= 2 && count < PH_PHOTO_LINE_MOST;
}

void
ph_photo_clicks_ask (PhPhotoClicks *clicks, PhPhotoTarget on)
{
  g_return_if_fail (ph_photo_clicks_can_ask (clicks, on));
  clicks->asked = on;
}

int
ph_photo_clicks_add (PhPhotoClicks *clicks, PhPhotoPoint at)
{
  PhPhotoTarget on = ph_photo_clicks_next (clicks);
  if (on == PH_PHOTO_NOTHING)
    return -1;
  clicks->asked = PH_PHOTO_NOTHING;
  clicks->clicks[clicks->n] = (PhPhotoClick){ on, at };
  return (int)clicks->n++;
}

void
ph_photo_clicks_move (PhPhotoClicks *clicks, guint i, PhPhotoPoint at)
{
  g_return_if_fail (i < clicks->n);
  clicks->clicks[i].at = at;
}

gboolean
ph_photo_clicks_undo (PhPhotoClicks *clicks)
{
  gboolean asked = clicks->asked != PH_PHOTO_NOTHING;
  clicks->asked = PH_PHOTO_NOTHING;
  if (asked)
    return TRUE;
  if (clicks->n == 0)
    return FALSE;
  clicks->n--;
  return TRUE;
}

PhPhotoLine
ph_photo_clicks_line (const PhPhotoClicks *clicks, PhPhotoTarget on, PhPhotoPoint *points)
{
  gsize n = 0;
  for (guint i = 0; i < clicks->n && n < PH_PHOTO_LINE_MOST; i++)
    if (clicks->clicks[i].on == on)
      points[n++] = clicks->clicks[i].at;
  return (PhPhotoLine){ points, n };
}

PhPhotoReading
ph_photo_clicks_read (const PhPhotoClicks *clicks, double rad_per_mark, double rad_per_mark_sd,
                      gboolean mirrored)
{
  g_assert (ph_photo_clicks_are_complete (clicks));
  PhPhotoPoint first[PH_PHOTO_LINE_MOST], second[PH_PHOTO_LINE_MOST];
  PhPhotoLine a = ph_photo_clicks_line (clicks, targets[clicks->way][0], first);
  PhPhotoLine b = ph_photo_clicks_line (clicks, targets[clicks->way][1], second);
  if (clicks->way == PH_PHOTO_BY_LINES)
    return ph_photo_read_lines (&a, &b, mirrored);
  PhPhotoVial vial = { .marks = { first[0], first[1] },
                       .bubble = { second[0], second[1] },
                       .rad_per_mark = rad_per_mark,
                       .rad_per_mark_sd = rad_per_mark_sd };
  return ph_photo_read_vial (&vial, mirrored);
}
