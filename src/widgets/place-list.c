/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * ph_edit_places says what is free; here it is put in an order. Ranks are our own, common practice:
 * a bar screws to a socket that points its way, never to a stack of weights, and a front bar goes
 * below the grip before it goes above; weights go on a bar's end before they go around it or
 * straight on the bow; a damper sits at a bar's end. Brackets and extenders go between the bow and
 * a bar, dampers between a bar and its weights.
 */
#include "widgets/place-list.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "base/units.h"
#include "model/fields.h"
#include "model/front-tip.h"
#include "widgets/part-aim.h"
#include "widgets/part-name.h"
#include "widgets/part-words.h"

#define NEAR_FIRST (-100)
#define NOT_FITTED 50
#define NOT_SENSIBLE 1000
#define WRONG_WAY 15
#define ABOVE_THE_GRIP 8

/* From here on an axis goes straight ahead: within 18°. */
#define STRAIGHT 0.95

#define FRONT_PER_STATURE 0.44
#define BACK_PER_FRONT 0.4

PhPoints
ph_points_of_group (const char *group)
{
  if (g_str_has_prefix (group, "Front"))
    return PH_POINTS_AHEAD;
  if (g_str_has_prefix (group, "Back") || g_str_has_prefix (group, "Side"))
    return PH_POINTS_BACK;
  return g_str_has_prefix (group, "Extend") ? PH_POINTS_ON : PH_POINTS_ANYWHERE;
}

double
ph_rule_length_mm (PhDocument *document, const PhCatalogueItem *item)
{
  const PhRig *rig = ph_document_get_rig (document);
  if (item->part.kind != PH_PART_BAR)
    return NAN;
  if (ph_points_of_group (item->group) == PH_POINTS_AHEAD)
    return FRONT_PER_STATURE * rig->archer.stature_mm;
  if (!g_str_has_prefix (item->group, "Back"))
    return NAN;
  int front =
      ph_front_tip (ph_document_get_compiled (document), ph_document_get_report (document)).bar;
  return front < 0 ? NAN : BACK_PER_FRONT * rig->parts[front].length_mm;
}

static void
option_free (gpointer data)
{
  PhPlaceOption *option = data;
  g_free (option->on);
  g_free (option->below);
  g_free (option->through);
  g_free (option->words);
  g_free (option);
}

/* `seat` null: what carries it is not fitted, so that nobody knows where it would point. */
static int
rank_on_socket (PhDocument *document, const PhPart *part, PhPoints points, const PhAimSeat *seat)
{
  if (part->kind == PH_PART_WEIGHTS)
    return 30;
  if (part->kind == PH_PART_DAMPER)
    return 20;
  if (!seat)
    return points == PH_POINTS_ANYWHERE || points == PH_POINTS_ON ? 0 : WRONG_WAY;
  int above = seat->host < 0 && seat->axis.x > 0.5 && seat->at_m.z > 0 ? ABOVE_THE_GRIP : 0;
  if (part->kind == PH_PART_BRACKET)
    return above + (ph_aim_sides_lead_back (part, seat) ? 0 : WRONG_WAY);
  if (points == PH_POINTS_BACK)
    return !ph_aim_can_point_back (document, seat) ? NOT_SENSIBLE : seat->axis.x < 0.5 ? 0 : 6;
  if (points == PH_POINTS_AHEAD && seat->axis.x <= 0.5)
    return WRONG_WAY;
  return above + (points == PH_POINTS_AHEAD && seat->axis.x < STRAIGHT ? 4 : 0);
}

/* At the far end of something of that kind. */
static int
rank_on_end (PhDocument *document, const PhPart *part, PhPoints points, PhPartKind host,
             const PhAimSeat *seat)
{
  switch (part->kind)
    {
    case PH_PART_WEIGHTS:
      return host == PH_PART_BAR ? 0 : host == PH_PART_DAMPER ? 1 : 40;
    case PH_PART_DAMPER:
      return host == PH_PART_BAR ? 0 : 25;
    case PH_PART_BRACKET:
      if (host != PH_PART_BAR)
        return NOT_SENSIBLE;
      return seat && !ph_aim_sides_lead_back (part, seat) ? 10 + WRONG_WAY : 10;
    case PH_PART_BAR:
    case PH_PART_ACCESSORY:
    default:
      if (points == PH_POINTS_BACK && seat && !ph_aim_can_point_back (document, seat))
        return NOT_SENSIBLE;
      return host == PH_PART_BAR ? 20 : NOT_SENSIBLE;
    }
}

static int
rank_of (PhDocument *document, const PhPart *part, PhPoints points, const char *on,
         const char *near_id)
{
  const PhRig *rig = ph_document_get_rig (document);
  const char *colon = strchr (on, ':');
  g_autofree char *host_id = colon ? g_strndup (on, (gsize)(colon - on)) : g_strdup (on);
  int host = ph_rig_find (rig, host_id), rank = 0;
  PhAimSeat seat;
  const PhAimSeat *known = ph_aim_seat (document, on, &seat) ? &seat : NULL;
  if (colon)
    rank = rank_on_socket (document, part, points, known);
  else if (host >= 0)
    rank = rank_on_end (document, part, points, rig->parts[host].kind, known);
  if (rank == NOT_SENSIBLE)
    return rank;
  if (host >= 0 && !ph_rig_is_fitted (rig, (size_t)host))
    rank += NOT_FITTED;
  return g_strcmp0 (host_id, near_id) == 0 ? rank + NEAR_FIRST : rank;
}

static PhPlaceOption *
offer (GPtrArray *options, PhDocument *document, const char *on, double along_mm, int rank)
{
  PhPlaceOption *option = g_new0 (PhPlaceOption, 1);
  option->on = g_strdup (on);
  option->along = !isnan (along_mm);
  option->along_mm = along_mm;
  option->words = ph_words_place (ph_document_get_rig (document), on, option->along);
  option->rank = rank;
  g_ptr_array_add (options, option);
  return option;
}

static gboolean
is_own_place (const PhRig *rig, int moving, const char *on, gboolean along)
{
  return moving >= 0 && strcmp (rig->parts[moving].on, on) == 0
         && ph_part_is_along (&rig->parts[moving]) == along;
}

/* Around a bar there is always room. */
static void
offer_along (GPtrArray *options, PhDocument *document, const PhPart *part, int moving,
             const char *near_id)
{
  const PhRig *rig = ph_document_get_rig (document);
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      const PhPart *bar = &rig->parts[i];
      if (bar->kind != PH_PART_BAR || is_own_place (rig, moving, bar->id, TRUE)
          || (moving >= 0 && ph_rig_hangs_on (rig, i, (size_t)moving)))
        continue;
      double middle = fmax (0, (bar->length_mm - ph_part_length_mm (part)) / 2);
      int rank = ph_rig_is_fitted (rig, i) ? 35 : 35 + NOT_FITTED;
      if (g_strcmp0 (bar->id, near_id) == 0)
        rank += NEAR_FIRST;
      offer (options, document, bar->id, round (middle), rank);
    }
}

/* Whether `part` can carry part i in its stead; `*through` is then its socket for that, null: its
 * far end. */
static gboolean
can_go_before (const PhRig *rig, const PhPart *part, PhPoints points, size_t i,
               const char **through)
{
  const PhPart *now = &rig->parts[i];
  int host = ph_rig_host (rig, i, NULL);
  *through = NULL;
  if (ph_part_is_along (now) || !ph_rig_is_fitted (rig, i))
    return FALSE;
  if (part->kind == PH_PART_DAMPER)
    return now->kind == PH_PART_WEIGHTS && host >= 0 && rig->parts[host].kind == PH_PART_BAR;
  if (part->kind == PH_PART_BAR)
    return points == PH_POINTS_ON && (now->kind == PH_PART_BAR || now->kind == PH_PART_BRACKET);
  *through = part->kind == PH_PART_BRACKET ? ph_aim_through (part) : NULL;
  return *through && now->kind == PH_PART_BAR;
}

/* A bar that goes straight ahead comes first: that is where rods are fitted behind it. */
static int
rank_between (const PhPart *part, const PhAimSeat *seat)
{
  int rank = seat->axis.x >= STRAIGHT ? 1 : 4;
  if (part->kind == PH_PART_BRACKET && !ph_aim_sides_lead_back (part, seat))
    rank += WRONG_WAY;
  return part->kind == PH_PART_BRACKET && part->n_sockets > 1 ? rank : rank + 4;
}

static void
offer_between (GPtrArray *options, PhDocument *document, const PhPart *part, PhPoints points,
               const char *near_id)
{
  const PhRig *rig = ph_document_get_rig (document);
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      const char *through;
      PhAimSeat seat;
      if (!can_go_before (rig, part, points, i, &through)
          || !ph_aim_seat (document, rig->parts[i].on, &seat))
        continue;
      int rank = rank_between (part, &seat);
      if (g_strcmp0 (rig->parts[i].id, near_id) == 0)
        rank += NEAR_FIRST;
      PhPlaceOption *option = offer (options, document, rig->parts[i].on, NAN, rank);
      g_free (option->words);
      option->words = ph_words_between (rig, i);
      option->below = g_strdup (rig->parts[i].id);
      option->through = g_strdup (through);
    }
}

static int
by_rank (gconstpointer a, gconstpointer b)
{
  const PhPlaceOption *const *first = a, *const *second = b;
  return (*first)->rank - (*second)->rank;
}

GPtrArray *
ph_place_list_new (PhDocument *document, const PhPart *part, PhPoints points, int moving,
                   const char *near_id)
{
  const PhRig *rig = ph_document_get_rig (document);
  GPtrArray *options = g_ptr_array_new_with_free_func (option_free);
  char **places = ph_edit_places (rig, part->kind, moving);
  for (char **on = places; *on; on++)
    {
      int rank = rank_of (document, part, points, *on, near_id);
      if (rank == NOT_SENSIBLE || is_own_place (rig, moving, *on, FALSE))
        continue;
      offer (options, document, *on, NAN, rank)->back =
          part->kind == PH_PART_BAR && points == PH_POINTS_BACK;
    }
  ph_edit_places_free (places);
  if (part->kind == PH_PART_WEIGHTS)
    offer_along (options, document, part, moving, near_id);
  if (moving < 0)
    offer_between (options, document, part, points, near_id);
  g_ptr_array_sort (options, by_rank);
  return options;
}

/* Sights and rests of the catalogue stand as on a bow held in the left hand. */
static void
turn_for_hand (PhPart *part, const PhRig *rig)
{
  if (part->kind != PH_PART_ACCESSORY || rig->archer.bow_hand == PH_BOW_HAND_LEFT)
    return;
  part->at_mm[1] = 0 - part->at_mm[1];
  part->aperture_mm[1] = 0 - part->aperture_mm[1];
}

static void
take_name (PhPart *part, char *name)
{
  g_free (part->name);
  part->name = name;
}

/* By where it will stand. */
static void
name_for_place (PhPart *part, PhDocument *document, const PhPlaceOption *place)
{
  const PhRig *rig = ph_document_get_rig (document);
  PhAimSeat seat;
  int host = ph_rig_find (rig, place->on);
  if (place->back && part->name && ph_aim_seat (document, place->on, &seat))
    take_name (part, ph_name_on_side (part->name, ph_aim_side (&seat)));
  if (part->kind == PH_PART_WEIGHTS && host >= 0 && rig->parts[host].kind == PH_PART_BAR)
    take_name (part, ph_name_of_weights_on (rig->parts[host].name));
}

gboolean
ph_place_add (const PhPlaceOption *place, PhDocument *document, const PhPart *part, GError **error)
{
  PhPart copy = ph_part_copy (part);
  copy.along_mm = place->along_mm;
  if (place->along)
    copy.given |= ph_given_bit (PH_OBJECT_PART, "along_mm");
  turn_for_hand (&copy, ph_document_get_rig (document));
  if (place->back)
    ph_aim_back (document, &copy, place->on);
  name_for_place (&copy, document, place);
  gboolean added = place->below
                       ? ph_document_insert (document, &copy, place->below, place->through, error)
                       : ph_document_add (document, &copy, place->on, error);
  ph_part_clear (&copy);
  return added;
}

typedef struct
{
  const PhPlaceOption *place;
  const char *part;
} Move;

/* From an end to around a bar or back, which a plain re-hanging does not do. */
static bool
move (PhRig *rig, gpointer data, PhIssues *issues G_GNUC_UNUSED)
{
  const Move *m = data;
  int i = ph_rig_find (rig, m->part);
  if (i < 0)
    return false;
  PhPart *part = &rig->parts[i];
  g_free (part->on);
  part->on = ph_text_dup (m->place->on);
  part->along_mm = m->place->along_mm;
  uint64_t bit = ph_given_bit (PH_OBJECT_PART, "along_mm");
  part->given = m->place->along ? part->given | bit : part->given & ~bit;
  return true;
}

gboolean
ph_place_hang (const PhPlaceOption *place, PhDocument *document, const char *part_id,
               GError **error)
{
  const PhRig *rig = ph_document_get_rig (document);
  int i = ph_rig_find (rig, part_id);
  g_return_val_if_fail (i >= 0, FALSE);
  if (place->along == ph_part_is_along (&rig->parts[i]))
    return ph_document_rehang (document, part_id, place->on, error);
  Move m = { place, part_id };
  return ph_document_edit (document, move, &m, error);
}
