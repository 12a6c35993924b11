/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sentences around the directions of document/direction.h and the lengths of document/format.h.
 * Formats are literal, so that the compiler checks each against its translation's arguments.
 */
#include "widgets/part-words.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "base/text.h"
#include "base/units.h"
#include "document/format.h"

/* Half of the last digit shown of an angle, and of a position in mm. */
#define FLAT 0.05
/* Half a millimetre: what a tape does not tell from 0. */
#define FLAT_MM 0.5

static PhDirectionWords
pick (double value, const char *plus, const char *minus, const char *none)
{
  return (PhDirectionWords){ value > FLAT    ? plus
                             : value < -FLAT ? minus
                                             : none,
                             value < -FLAT ? -1 : 1, FALSE };
}

static PhDirectionWords
pick_sideways (double value, const char *left, const char *right, const char *none)
{
  PhDirectionWords words = pick (value, left, right, none);
  words.sideways = TRUE;
  return words;
}

PhDirectionWords
ph_words_way (PhWay way, double value)
{
  PhDirectionWords words;
  switch (way)
    {
    case PH_WAY_OUT_IN:
      return pick_sideways (value, _ ("Out to the left"), _ ("In to the right"), _ ("Out or in"));
    case PH_WAY_IN_OUT:
      words = pick_sideways (value, _ ("In to the left"), _ ("Out to the right"), _ ("Out or in"));
      if (fabs (value) <= FLAT)
        words.sign = -1;
      return words;
    case PH_WAY_FORWARD_BACK:
      return pick (value, _ ("Forward"), _ ("Back"), _ ("Forward or back"));
    case PH_WAY_UP_DOWN:
      return pick (value, _ ("Up"), _ ("Down"), _ ("Up or down"));
    case PH_WAY_AHEAD_BEHIND:
      return pick (value, _ ("Ahead of the grip"), _ ("Behind the grip"), _ ("Ahead or behind"));
    case PH_WAY_ABOVE_BELOW:
      return pick (value, _ ("Above the grip"), _ ("Below the grip"), _ ("Above or below"));
    case PH_WAY_LEFT_RIGHT:
    default:
      return pick_sideways (value, _ ("To the left"), _ ("To the right"), _ ("Left or right"));
    }
}

static const PhPlace *
place_of (const PhCompiled *compiled, size_t part)
{
  g_return_val_if_fail (part < compiled->n_parts, NULL);
  int piece = compiled->piece_of_part[part];
  return piece < 0 ? NULL : ph_assembly_place (compiled->assembly, piece);
}

static char *
length_text (double mm, PhUnits units)
{
  return ph_format_quantity (fabs (mm), PH_QUANTITY_LENGTH, units);
}

char *
ph_words_tape_side (const PhCompiled *compiled, size_t part, PhUnits units)
{
  const PhPlace *place = place_of (compiled, part);
  if (!place)
    return NULL;
  double y = ph_to_milli (place->end_m.y);
  g_autofree char *length = length_text (y, units);
  if (fabs (y) < FLAT_MM)
    return g_strdup (_ ("tip in line with the string"));
  return g_strdup_printf (
      y > 0 ? _ ("tip %s left of the string") : _ ("tip %s right of the string"), length);
}

char *
ph_words_tape_height (const PhCompiled *compiled, size_t part, PhUnits units)
{
  const PhPlace *place = place_of (compiled, part);
  if (!place)
    return NULL;
  double z = ph_to_milli (place->end_m.z);
  g_autofree char *length = length_text (z, units);
  if (fabs (z) < FLAT_MM)
    return g_strdup (_ ("tip level with the grip"));
  return g_strdup_printf (z > 0 ? _ ("tip %s above the grip") : _ ("tip %s below the grip"),
                          length);
}

/* One coordinate of a point from the grip; literal forms, so that the compiler checks them. */
static char *
coordinate_words (double mm, int component, PhUnits units)
{
  g_autofree char *length = length_text (mm, units);
  switch (component)
    {
    case 0:
      return g_strdup_printf (mm < 0 ? _ ("%s behind") : _ ("%s ahead"), length);
    case 1:
      return g_strdup_printf (mm < 0 ? _ ("%s right") : _ ("%s left"), length);
    default:
      return g_strdup_printf (mm < 0 ? _ ("%s below") : _ ("%s above"), length);
    }
}

char *
ph_words_point (const double at_mm[3], PhUnits units)
{
  GString *text = g_string_new (NULL);
  for (int i = 0; i < 3; i++)
    if (fabs (at_mm[i]) >= FLAT_MM)
      {
        g_autofree char *words = coordinate_words (at_mm[i], i, units);
        g_string_append (text, text->len ? ", " : "");
        g_string_append (text, words);
      }
  if (!text->len)
    g_string_append (text, _ ("at the grip"));
  return g_string_free (text, FALSE);
}

static const char *
source_word (PhSource source)
{
  switch (source)
    {
    case PH_SOURCE_GUESSED:
      return _ ("guessed");
    case PH_SOURCE_MEASURED:
      return _ ("measured");
    case PH_SOURCE_UNSTATED:
    case PH_SOURCE_CATALOGUE:
    default:
      return _ ("catalogue");
    }
}

/* The two numbers by which a part is named over the counter. */
static char *
size_words (const PhPart *part, PhUnits units)
{
  g_autofree char *first = NULL, *second = NULL;
  switch (part->kind)
    {
    case PH_PART_BAR:
      first = ph_format_quantity_short (part->length_mm, PH_QUANTITY_LENGTH, units);
      second = ph_format_quantity_short (part->outer_mm, PH_QUANTITY_DIAMETER, units);
      break;
    case PH_PART_WEIGHTS:
      first = ph_format_quantity_short (part->each_g, PH_QUANTITY_MASS, units);
      second = ph_format_quantity_short (part->diameter_mm, PH_QUANTITY_DIAMETER, units);
      break;
    case PH_PART_DAMPER:
      first = ph_format_quantity_short (part->mass_g, PH_QUANTITY_MASS, units);
      second = ph_format_quantity_short (part->diameter_mm, PH_QUANTITY_DIAMETER, units);
      break;
    case PH_PART_BRACKET:
    case PH_PART_ACCESSORY:
    default:
      return ph_format_quantity_short (part->mass_g, PH_QUANTITY_MASS, units);
    }
  return g_strdup_printf ("%s, %s", first, second);
}

char *
ph_words_source (const PhPart *part, PhUnits units)
{
  g_autofree char *size = size_words (part, units);
  return g_strdup_printf ("%s · %s", source_word (part->source), size);
}

char *
ph_words_bow_source (const PhRig *rig)
{
  const char *kinds[] = { N_ ("compound"), N_ ("recurve"), N_ ("barebow") };
  const char *hand = rig->archer.bow_hand == PH_BOW_HAND_LEFT ? _ ("held in the left hand")
                                                              : _ ("held in the right hand");
  return g_strdup_printf ("%s · %s, %s", source_word (rig->bow.source), _ (kinds[rig->bow.kind]),
                          hand);
}

char *
ph_words_inside (const char *name)
{
  const char *second = g_utf8_next_char (name);
  if (!*name || !g_unichar_islower (g_utf8_get_char (second)))
    return g_strdup (name);
  g_autofree char *first = g_utf8_strdown (name, second - name);
  return g_strconcat (first, second, NULL);
}

static char *
mount_words (const char *mount)
{
  g_autofree char *text = ph_text_cut (mount, 40);
  return g_strdup_printf (_ ("bow: %s mount"), text);
}

/* A part's name inside a sentence. */
static char *
name_words (const char *name)
{
  g_autofree char *cut = ph_text_cut (name, 40);
  return ph_words_inside (cut);
}

/* A bracket's only socket needs no name. One called left or right is where its place says: a rig
 * that was mirrored keeps its ids. */
static char *
socket_words (const PhPart *bracket, const char *socket)
{
  g_autofree char *name = name_words (ph_part_name (bracket));
  if (bracket->n_sockets == 1)
    return g_steal_pointer (&name);
  int s = ph_sockets_find (bracket->sockets, bracket->n_sockets, socket);
  double y = s < 0 ? 0 : bracket->sockets[s].at_mm[1];
  gboolean sided = strcmp (socket, "left") == 0 || strcmp (socket, "right") == 0;
  const char *words = socket;
  if (sided && fabs (y) >= FLAT_MM)
    words = y > 0 ? _ ("left") : _ ("right");
  else if (strcmp (socket, "front") == 0)
    words = _ ("front");
  return g_strdup_printf (_ ("%s: %s"), name, words);
}

char *
ph_words_place (const PhRig *rig, const char *on, gboolean along)
{
  const char *colon = strchr (on, ':');
  g_autofree char *host = colon ? g_strndup (on, (gsize)(colon - on)) : g_strdup (on);
  if (strcmp (host, "bow") == 0)
    return colon ? mount_words (colon + 1) : g_strdup (_ ("bow"));

  int i = ph_rig_find (rig, host);
  if (colon && i >= 0)
    return socket_words (&rig->parts[i], colon + 1);
  g_autofree char *name = name_words (i < 0 ? host : ph_part_name (&rig->parts[i]));
  if (colon)
    return g_strdup_printf (_ ("%s: %s"), name, colon + 1);
  return g_strdup_printf (along ? _ ("along the %s") : _ ("%s’s end"), name);
}

char *
ph_words_between (const PhRig *rig, size_t i)
{
  int host = ph_rig_host (rig, i, NULL);
  g_autofree char *name = name_words (ph_part_name (&rig->parts[i]));
  if (host < 0)
    return g_strdup_printf (_ ("between the bow and the %s"), name);
  g_autofree char *carrier = name_words (ph_part_name (&rig->parts[host]));
  return g_strdup_printf (_ ("between the %s and the %s"), carrier, name);
}
