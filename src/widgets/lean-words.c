/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Left and right each have a sentence of their own, never a word put into a sentence, so that they
 * can be translated. Sides are decided after rounding: what reads 0.0° is centred, and no screen
 * says "0.0° left".
 */
#include "widgets/lean-words.h"

#include <glib/gi18n.h>
#include <math.h>

#include "base/units.h"
#include "document/format.h"

#define FINE_BELOW_DEG 0.2

/* Tilts in degrees as they are shown. `side` is −1 left, +1 right, 0 where it rounds to nothing:
   of the bubble with a level, of the top limb without one. */
typedef struct
{
  double deg; /* rounded, no sign */
  int digits;
  int side;
} Shown;

static gboolean
deserves_fine (double sure_to_rad)
{
  return ph_deg_from_rad (sure_to_rad) < FINE_BELOW_DEG; /* false for NAN */
}

static Shown
shown_of (double tilt_rad, gboolean fine, gboolean level)
{
  double step = fine ? 0.05 : 0.1;
  double deg = round (fabs (ph_deg_from_rad (tilt_rad)) / step) * step;
  int limb = deg == 0.0 ? 0 : tilt_rad > 0.0 ? 1 : -1;
  return (Shown){ deg, fine ? 2 : 1, level ? -limb : limb };
}

static char *
degrees (Shown shown)
{
  g_autofree char *number = ph_format_number (shown.deg, shown.digits);
  return g_strconcat (number, "°", NULL);
}

char *
ph_lean_degrees (double tilt_rad, double sure_to_rad)
{
  return degrees (shown_of (tilt_rad, deserves_fine (sure_to_rad), TRUE));
}

/* Of the two ends, the nearer to plumb first. */
static void
order_ends (const PhLeanRange *range, double ends_rad[2])
{
  gboolean lo_nearer = fabs (range->lo_rad) <= fabs (range->hi_rad);
  ends_rad[0] = lo_nearer ? range->lo_rad : range->hi_rad;
  ends_rad[1] = lo_nearer ? range->hi_rad : range->lo_rad;
}

/* "0.7° to 2.5° right", "up to 0.4° left", "0.3° left to 0.5° right", "0.4° left", "centred". */
static char *
range_text (const PhLeanRange *range, gboolean level)
{
  double ends_rad[2];
  order_ends (range, ends_rad);
  Shown near = shown_of (ends_rad[0], FALSE, level), far = shown_of (ends_rad[1], FALSE, level);
  g_autofree char *a = degrees (near), *b = degrees (far);
  if (far.side == 0)
    return g_strdup (level ? _ ("centred") : _ ("plumb"));
  if (near.side == -far.side)
    return far.side < 0 ? g_strdup_printf (_ ("%s right to %s left"), a, b)
                        : g_strdup_printf (_ ("%s left to %s right"), a, b);
  if (g_str_equal (a, b))
    return far.side < 0 ? g_strdup_printf (_ ("%s left"), b) : g_strdup_printf (_ ("%s right"), b);
  if (near.side == 0)
    return far.side < 0 ? g_strdup_printf (_ ("up to %s left"), b)
                        : g_strdup_printf (_ ("up to %s right"), b);
  return far.side < 0 ? g_strdup_printf (_ ("%s to %s left"), a, b)
                      : g_strdup_printf (_ ("%s to %s right"), a, b);
}

/* "90 % sure between 0.1° and 0.7°"; the sides are said where the headline's does not hold. */
static char *
interval_text (const PhSettle *settle, gboolean fine, int headline_side)
{
  double ends_rad[2];
  order_ends (&settle->band, ends_rad);
  Shown near = shown_of (ends_rad[0], fine, settle->has_level);
  Shown far = shown_of (ends_rad[1], fine, settle->has_level);
  g_autofree char *a = degrees (near), *b = degrees (far);
  if (near.side == -far.side && far.side != 0)
    return far.side < 0 ? g_strdup_printf (_ ("90 %% sure between %s right and %s left"), a, b)
                        : g_strdup_printf (_ ("90 %% sure between %s left and %s right"), a, b);
  if (far.side == headline_side)
    return g_strdup_printf (_ ("90 %% sure between %s and %s"), a, b);
  return far.side < 0 ? g_strdup_printf (_ ("90 %% sure between %s and %s left"), a, b)
                      : g_strdup_printf (_ ("90 %% sure between %s and %s right"), a, b);
}

/* The bow's own lean beside the bubble's: left and right of the two are opposite, so it is said. */
static const char *
bow_text (const PhSettle *settle, Shown headline)
{
  if (!settle->has_level || headline.side == 0)
    return NULL;
  return headline.side < 0 ? _ ("the bow leans right") : _ ("the bow leans left");
}

static char *
wanted_text (double wanted_rad, gboolean level)
{
  PhLeanRange wanted = { wanted_rad, wanted_rad, false };
  if (wanted_rad == 0.0)
    return NULL;
  g_autofree char *text = range_text (&wanted, level);
  return g_strdup_printf (_ ("wanted: %s"), text);
}

static char *
end_text (double tilt_rad, double vial_rad, gboolean level)
{
  if (!(fabs (tilt_rad) > vial_rad))
    return NULL;
  g_autofree char *number = ph_format_number (ph_deg_from_rad (vial_rad), 0);
  return level ? g_strdup_printf (_ ("past the end of the vial, which is drawn to %s°"), number)
               : g_strdup_printf (_ ("past the end of the scale, which is drawn to %s°"), number);
}

/* Takes `part` over; null adds nothing. */
static void
add_part (GString *text, char *part)
{
  if (part)
    g_string_append_printf (text, "%s%s", text->len > 0 ? " · " : "", part);
  g_free (part);
}

static char *
end_text_of (GString *text)
{
  gboolean empty = text->len == 0;
  return g_string_free (text, empty);
}

static void
say_known (PhLeanWords *words, const PhSettle *settle, double vial_rad, double wanted_rad)
{
  gboolean level = settle->has_level;
  gboolean fine = deserves_fine (settle->band.hi_rad - settle->band.lo_rad);
  Shown shown = shown_of (settle->tilt_rad, fine, level);
  g_autofree char *number = degrees (shown);
  words->is_number = TRUE;
  if (shown.side == 0)
    words->headline = g_strdup (level ? _ ("Centred") : _ ("Plumb"));
  else if (shown.side < 0)
    words->headline = g_strdup_printf (_ ("%s left"), number);
  else
    words->headline = g_strdup_printf (_ ("%s right"), number);

  GString *detail = g_string_new (NULL);
  if (!isnan (settle->band.lo_rad))
    add_part (detail, interval_text (settle, fine, shown.side));
  add_part (detail, g_strdup (bow_text (settle, shown)));
  add_part (detail, end_text (settle->tilt_rad, vial_rad, level));
  add_part (detail, wanted_text (wanted_rad, level));
  words->detail = end_text_of (detail);
}

static const char *
assumed_headline (const PhSettle *settle)
{
  if (!settle->settles && settle->heavy_side == 0)
    return _ (
        "Where it settles depends on your hand: not known yet. The weight alone tips it over.");
  if (!settle->settles)
    return settle->heavy_side < 0 ? _ ("Where it settles depends on your hand: not known yet. "
                                       "The weight alone tips it over to the left.")
                                  : _ ("Where it settles depends on your hand: not known yet. "
                                       "The weight alone tips it over to the right.");
  if (settle->heavy_side == 0)
    return _ ("Where it settles depends on your hand: not known yet. "
              "The weight alone leaves it plumb.");
  return settle->heavy_side < 0 ? _ ("Where it settles depends on your hand: not known yet. "
                                     "The weight alone leans it left.")
                                : _ ("Where it settles depends on your hand: not known yet. "
                                     "The weight alone leans it right.");
}

static void
say_assumed (PhLeanWords *words, const PhSettle *settle, double vial_rad, double wanted_rad)
{
  gboolean level = settle->has_level;
  GString *detail = g_string_new (NULL);
  words->headline = g_strdup (assumed_headline (settle));
  if (isnan (settle->band.lo_rad))
    add_part (detail, g_strdup (_ ("no hand from firm to loose holds it")));
  else
    {
      g_autofree char *range = range_text (&settle->band, level);
      add_part (detail, level ? g_strdup_printf (_ ("a firm to a loose hand: bubble %s"), range)
                              : g_strdup_printf (_ ("a firm to a loose hand: %s"), range));
      if (settle->band.some_topple)
        add_part (detail, g_strdup (_ ("the loosest hands cannot hold it")));
      add_part (detail, end_text (settle->tilt_rad, vial_rad, level));
    }
  add_part (detail, wanted_text (wanted_rad, level));
  words->detail = end_text_of (detail);
}

static void
say_topples (PhLeanWords *words, const char *reason)
{
  const char *sentence = reason ? _ (reason) : _ ("this rig topples rather than settles");
  g_autofree char *first = g_utf8_substring (sentence, 0, 1);
  g_autofree char *capital = g_utf8_strup (first, -1);
  const char *stop = g_str_has_suffix (sentence, ".") ? "" : ".";
  words->headline = g_strconcat (capital, g_utf8_next_char (sentence), stop, NULL);
  words->detail = g_strdup (_ ("Weight lower, or nearer the bow’s plane, lets it settle."));
}

/* "0.3° more to the left"; `lo`, `hi` are of the tilt. */
static char *
change_text (const PhLeanRange *change, gboolean level, gboolean fine)
{
  double ends_rad[2];
  order_ends (change, ends_rad);
  Shown near = shown_of (ends_rad[0], fine, level), far = shown_of (ends_rad[1], fine, level);
  g_autofree char *a = degrees (near), *b = degrees (far);
  if (far.side == 0)
    return g_strdup (_ ("no change"));
  if (near.side == -far.side)
    return far.side < 0 ? g_strdup_printf (_ ("%s to the right to %s to the left"), a, b)
                        : g_strdup_printf (_ ("%s to the left to %s to the right"), a, b);
  if (g_str_equal (a, b))
    return far.side < 0 ? g_strdup_printf (_ ("%s more to the left"), b)
                        : g_strdup_printf (_ ("%s more to the right"), b);
  if (near.side == 0)
    return far.side < 0 ? g_strdup_printf (_ ("up to %s more to the left"), b)
                        : g_strdup_printf (_ ("up to %s more to the right"), b);
  return far.side < 0 ? g_strdup_printf (_ ("%s to %s more to the left"), a, b)
                      : g_strdup_printf (_ ("%s to %s more to the right"), a, b);
}

static char *
compare_text (const PhSettle *settle, const char *name)
{
  gboolean fine = settle->hand_known && deserves_fine (settle->band.hi_rad - settle->band.lo_rad);
  if (!settle->has_reference)
    return NULL;
  if (!name || !*name)
    name = _ ("the reference");
  if (isnan (settle->change.lo_rad))
    return isnan (settle->reference_tilt_rad)
               ? g_strdup_printf (_ ("Against %s: that one tips over"), name)
               : NULL;
  g_autofree char *change = change_text (&settle->change, settle->has_level, fine);
  return g_strdup_printf (_ ("Against %s: %s"), name, change);
}

static char *
spoken_text (const PhLeanWords *words, const char *title)
{
  GString *text = g_string_new (NULL);
  g_string_printf (text, "%s: %s", title, words->headline);
  if (words->detail)
    g_string_append_printf (text, "; %s", words->detail);
  if (words->compare)
    g_string_append_printf (text, "; %s", words->compare);
  return g_string_free (text, FALSE);
}

PhLeanWords
ph_lean_words_of (const PhSettle *settle, const char *reason, const char *reference_name,
                  double vial_rad, double wanted_rad)
{
  PhLeanWords words = { NULL, FALSE, NULL, NULL, NULL };
  if (!settle->hand_known)
    say_assumed (&words, settle, vial_rad, wanted_rad);
  else if (settle->settles)
    say_known (&words, settle, vial_rad, wanted_rad);
  else
    say_topples (&words, reason);
  words.compare = compare_text (settle, reference_name);
  words.spoken = spoken_text (&words, ph_lean_title (settle));
  return words;
}

void
ph_lean_words_clear (PhLeanWords *words)
{
  g_free (words->headline);
  g_free (words->detail);
  g_free (words->compare);
  g_free (words->spoken);
  *words = (PhLeanWords){ NULL, FALSE, NULL, NULL, NULL };
}

const char *
ph_lean_title (const PhSettle *settle)
{
  return settle->has_level ? _ ("Bubble") : _ ("Lean, as a photo or a plumb line shows it");
}
