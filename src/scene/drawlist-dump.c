/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The draw list as text: exact to 0.01 mm, the same whatever the locale, so that a test compares
 * pictures without a driver. Numbers are printed as whole hundredths by hand: printf would follow
 * the locale.
 */
#include <assert.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "scene/drawlist.h"

typedef struct
{
  char *text;
  size_t n, room;
} Text;

static void
put (Text *text, const char *piece)
{
  size_t more = strlen (piece);
  if (text->n + more + 1 > text->room)
    {
      text->room = 2 * (text->n + more + 1);
      text->text = ph_realloc (text->text, text->room);
    }
  memcpy (text->text + text->n, piece, more + 1);
  text->n += more;
}

static void
put_number (Text *text, float value)
{
  char piece[48];
  long hundredths = lroundf (value * 100.0f);
  snprintf (piece, sizeof piece, " %s%ld.%02ld", hundredths < 0 ? "-" : "", labs (hundredths) / 100,
            labs (hundredths) % 100);
  put (text, piece);
}

static void
put_point (Text *text, PhPoint p)
{
  put_number (text, p.x);
  put_number (text, p.y);
  put_number (text, p.z);
}

const char *
ph_role_word (PhRole role)
{
  static const char *const words[PH_ROLES] = { "riser",   "limb",  "cam",     "string", "cable",
                                               "grip",    "bar",   "fitting", "weight", "damper",
                                               "bracket", "sight", "boss",    "arrow",  "hand" };
  assert (role < PH_ROLES);
  return words[role];
}

const char *
ph_solid_word (PhSolidKind solid)
{
  static const char *const words[] = { "tube", "box", "sweep", "ring", "sphere", "line" };
  assert (solid <= PH_SOLID_LINE);
  return words[solid];
}

static void
put_sweep (Text *text, const PhDrawList *list, const PhItem *item)
{
  const PhStation *stations = ph_draw_list_stations (list, item);
  const PhHole *holes = ph_draw_list_holes (list, item);
  put_number (text, item->sweep.round);
  for (size_t i = 0; i < item->sweep.n; i++)
    {
      put (text, " |");
      put_point (text, stations[i].at);
      put_point (text, stations[i].out);
      put_number (text, stations[i].half_depth);
      put_number (text, stations[i].half_across);
    }
  for (size_t i = 0; i < item->sweep.n_holes; i++)
    {
      put (text, " hole");
      put_number (text, holes[i].middle);
      put_number (text, holes[i].half_span);
      put_number (text, holes[i].half_open);
    }
}

static void
put_solid (Text *text, const PhDrawList *list, const PhItem *item)
{
  switch (item->solid)
    {
    case PH_SOLID_TUBE:
      put_point (text, item->tube.a);
      put_point (text, item->tube.b);
      put_number (text, item->tube.ra);
      put_number (text, item->tube.rb);
      break;
    case PH_SOLID_BOX:
      put_point (text, item->box.at);
      for (size_t i = 0; i < 3; i++)
        put_point (text, item->box.half[i]);
      break;
    case PH_SOLID_SWEEP:
      put_sweep (text, list, item);
      break;
    case PH_SOLID_RING:
      put_point (text, item->ring.at);
      put_point (text, item->ring.axis);
      put_number (text, item->ring.outer);
      put_number (text, item->ring.inner);
      put_number (text, item->ring.half_thick);
      break;
    case PH_SOLID_SPHERE:
      put_point (text, item->sphere.at);
      put_number (text, item->sphere.radius);
      break;
    case PH_SOLID_LINE:
      put_number (text, item->line.radius);
      for (size_t i = 0; i < item->line.n; i++)
        put_point (text, ph_draw_list_points (list, item)[i]);
      break;
    }
}

char *
ph_draw_list_dump (const PhDrawList *list)
{
  static const char *const states[] = { "", " off", " near" };
  Text text = { 0 };
  put (&text, "");
  for (size_t i = 0; i < ph_draw_list_count (list); i++)
    {
      const PhItem *item = ph_draw_list_item (list, i);
      char head[96];
      snprintf (head, sizeof head, "%s %s %d%s%s:", ph_role_word (item->role),
                ph_solid_word (item->solid), item->part, states[item->state],
                item->part == ph_draw_list_get_selected (list) ? " selected" : "");
      put (&text, head);
      put_solid (&text, list, item);
      put (&text, "\n");
    }
  return text.text;
}
