/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "widgets/photo-words.h"

#include <glib/gi18n.h>
#include <math.h>

#include "base/units.h"
#include "document/format.h"
#include "widgets/tilt-words.h"

const char *
ph_photo_step_words (const PhPhotoClicks *clicks)
{
  static const char *const first[] = {
    N_ ("Click the string near its upper end."),
    N_ ("Click the plumb edge near its upper end: a door frame, a plumb line."),
    N_ ("Click the left one of the two lines beside the vial’s middle."),
    N_ ("Click the bubble’s left end."),
  };
  static const char *const second[] = {
    N_ ("Click the string as far down as it is seen."),
    N_ ("Click the plumb edge as far down as it is seen."),
    N_ ("Click the right one of the two lines beside the vial’s middle."),
    N_ ("Click the bubble’s right end."),
  };
  static const char *const more[] = {
    N_ ("Click one more point of the string."),
    N_ ("Click one more point of the plumb edge."),
  };
  PhPhotoTarget next = ph_photo_clicks_next (clicks);
  if (next == PH_PHOTO_NOTHING)
    return clicks->way == PH_PHOTO_BY_LINES
               ? _ ("All points are set. Do the drawn lines lie on string and edge?")
               : _ ("All points are set. Does each stand where it should?");
  guint count = ph_photo_clicks_count (clicks, next);
  return count == 0 ? _ (first[next]) : count == 1 ? _ (second[next]) : _ (more[next]);
}

char *
ph_photo_point_words (const PhPhotoClicks *clicks, guint i)
{
  static const char *const names[] = { N_ ("String"), N_ ("Plumb edge"), N_ ("Line of the vial"),
                                       N_ ("End of the bubble") };
  const PhPhotoClick *click = &clicks->clicks[i];
  g_autofree char *x = ph_format_number (click->at.x, 0), *y = ph_format_number (click->at.y, 0);
  guint count = 1;
  for (guint k = 0; k < i; k++)
    count += clicks->clicks[k].on == click->on;
  /* Translators: what the point lies on, which of its points it is, and pixels of the picture. */
  return g_strdup_printf (_ ("%s, point %u, at %s across and %s down"), _ (names[click->on]), count,
                          x, y);
}

static char *
marks_words (const PhPhotoReading *reading)
{
  g_autofree char *size = ph_format_number (fabs (reading->marks), 2);
  g_autofree char *sd = ph_format_number (reading->marks_sd, 2);
  if (round (fabs (reading->marks) * 100) == 0)
    return g_strdup_printf (_ ("Bubble centred, ±%s of a mark"), sd);
  return g_strdup_printf (reading->marks > 0 ? _ ("Bubble %s marks left ±%s")
                                             : _ ("Bubble %s marks right ±%s"),
                          size, sd);
}

char *
ph_photo_result_words (const PhPhotoClicks *clicks, const PhPhotoReading *reading, gboolean level)
{
  if (!ph_photo_clicks_are_complete (clicks))
    return NULL;
  if (reading->refused)
    return g_strdup_printf (_ ("This reading cannot be: %s."),
                            _ (ph_refused_text (reading->refused)));
  if (isnan (reading->tilt_rad))
    return marks_words (reading);
  g_autofree char *phrase = ph_tilt_phrase (ph_deg_from_rad (reading->tilt_rad), level);
  g_autofree char *half = ph_tilt_half (ph_deg_from_rad (reading->tilt_sd_rad));
  g_autofree char *first = g_utf8_substring (phrase, 0, 1);
  g_autofree char *capital = g_utf8_strup (first, -1);
  return g_strdup_printf ("%s%s %s", capital, g_utf8_next_char (phrase), half);
}

char *
ph_photo_result_more (const PhPhotoClicks *clicks, const PhPhotoReading *reading, gboolean level)
{
  if (!ph_photo_clicks_are_complete (clicks) || reading->refused)
    return NULL;
  if (isnan (reading->tilt_rad))
    return g_strdup (_ ("What a mark of your vial is worth is not known, so this is no angle yet: "
                        "say it above, or read the string against a plumb edge."));
  g_autofree char *bow = ph_tilt_phrase (ph_deg_from_rad (reading->tilt_rad), FALSE);
  return level ? g_strdup_printf (_ ("The bow %s."), bow) : NULL;
}

const char *
ph_photo_how (guint line)
{
  static const char *const lines[] = {
    N_ ("The camera stands straight behind the bow, five paces away or more, as high as the grip "
        "and level. Zoom in rather than walk in. Nobody stands forward of the string."),
    N_ ("A plumb edge is in the picture beside the bow: a door frame, or a weight on a cord."),
    N_ ("String and edge stand near the middle: a lens bends lines toward the picture’s rim."),
    N_ ("Where the sight has a level, its vial will do instead: close up, from straight behind, "
        "its lines sharp."),
  };
  return line < G_N_ELEMENTS (lines) ? _ (lines[line]) : NULL;
}
