/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The points set on a photo, in the order in which they were clicked, and what the next click is
 * to hit. No toolkit here.
 */
#pragma once

#include <glib.h>

#include "physics/photo.h"

G_BEGIN_DECLS

/** Two ways of reading a tilt from a photo. */
typedef enum
{
  PH_PHOTO_BY_LINES, /* the string against a plumb edge */
  PH_PHOTO_BY_VIAL,  /* the bubble against its vial's lines */
  PH_PHOTO_WAYS
} PhPhotoWay;

/** What a point lies on. */
typedef enum
{
  PH_PHOTO_STRING,
  PH_PHOTO_EDGE,
  PH_PHOTO_VIAL_LINE,
  PH_PHOTO_BUBBLE,
  PH_PHOTO_NOTHING
} PhPhotoTarget;

/** A line takes more than its two points, up to so many. */
#define PH_PHOTO_LINE_MOST 6
#define PH_PHOTO_CLICKS_MOST (2 * PH_PHOTO_LINE_MOST)

typedef struct
{
  PhPhotoTarget on;
  PhPhotoPoint at;
} PhPhotoClick;

typedef struct
{
  PhPhotoWay way;
  PhPhotoClick clicks[PH_PHOTO_CLICKS_MOST];
  guint n;
  PhPhotoTarget asked; /* one more point of this is wanted next; or NOTHING */
} PhPhotoClicks;

/** None yet. */
PhPhotoClicks ph_photo_clicks_none (PhPhotoWay way);

guint ph_photo_clicks_count (const PhPhotoClicks *clicks, PhPhotoTarget on);
/** What the next click is to hit; NOTHING: all that is needed is there. */
PhPhotoTarget ph_photo_clicks_next (const PhPhotoClicks *clicks);
/** Whether every target has its two points. */
gboolean ph_photo_clicks_are_complete (const PhPhotoClicks *clicks);

/** Whether a further point, beyond the two, may be set on it: lines only. */
gboolean ph_photo_clicks_can_ask (const PhPhotoClicks *clicks, PhPhotoTarget on);
/** The next click goes on this line. */
void ph_photo_clicks_ask (PhPhotoClicks *clicks, PhPhotoTarget on);

/** Sets the next point. Its index, or −1 where none is wanted. */
int ph_photo_clicks_add (PhPhotoClicks *clicks, PhPhotoPoint at);
void ph_photo_clicks_move (PhPhotoClicks *clicks, guint i, PhPhotoPoint at);
/** Takes the last point back, and what was asked for. FALSE: there is nothing to take back. */
gboolean ph_photo_clicks_undo (PhPhotoClicks *clicks);

/** The points of a line, in the order of their clicks, into `points` (PH_PHOTO_LINE_MOST of them).
 */
PhPhotoLine ph_photo_clicks_line (const PhPhotoClicks *clicks, PhPhotoTarget on,
                                  PhPhotoPoint *points);
/** What complete clicks give. What a mark of the vial is worth, and how well that is known, as in
 * PhPhotoVial; lines do not need it. */
PhPhotoReading ph_photo_clicks_read (const PhPhotoClicks *clicks, double rad_per_mark,
                                     double rad_per_mark_sd, gboolean mirrored);

G_END_DECLS
