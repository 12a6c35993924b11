/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks that any object of a rig shares: its numbers by the field table, ids, sockets, stated
 * deviations, the length of names.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/number.h"
#include "base/text.h"
#include "model/check-own.h"

#define KEY_SIZE 160

static void
add_number_issue (const PhField *field, const void *owner, int component, const PhSite *site,
                  const char *key, PhIssues *issues)
{
  char *why;
  double value = ph_field_number (field, owner, component);
  if (ph_field_accepts (field, value, &why))
    return;
  if (field->type == PH_FIELD_VECTOR)
    ph_issues_add (issues, site->where, site->part, key, false, "number %d of 3 %s", component + 1,
                   why);
  else
    ph_issues_add (issues, site->where, site->part, key, false, "%s", why);
  ph_issues_name_number (issues, field, component, value);
  free (why);
}

static void
add_missing_issue (const PhField *field, const PhSite *site, const char *key, PhIssues *issues)
{
  if (!ph_field_components (field))
    {
      ph_issues_add (issues, site->where, site->part, key, false,
                     "is missing; it has no default and should be a text");
      return;
    }
  char *range = ph_field_range (field);
  ph_issues_add (issues, site->where, site->part, key, false,
                 "is missing; it has no default and should be %s%s",
                 field->type == PH_FIELD_VECTOR ? "three numbers, each " : "", range);
  free (range);
}

void
ph_check_fields (PhObject object, const void *owner, uint64_t given, unsigned kind_bit,
                 const PhSite *site, PhIssues *issues)
{
  size_t n;
  const PhField *fields = ph_fields_of (object, &n);
  for (size_t i = 0; i < n; i++)
    {
      const PhField *field = &fields[i];
      if (!(field->kinds & kind_bit) || field->type == PH_FIELD_WORD)
        continue;
      bool there = given >> i & 1;
      if (field->type == PH_FIELD_TEXT)
        there = ph_field_text (field, owner) != NULL;
      if (there && !ph_field_components (field))
        continue;
      char key[KEY_SIZE];
      snprintf (key, sizeof key, "%s%s", site->prefix, field->key);
      if (there)
        for (int c = 0; c < ph_field_components (field); c++)
          add_number_issue (field, owner, c, site, key, issues);
      else if (field->required & kind_bit)
        add_missing_issue (field, site, key, issues);
    }
}

void
ph_check_length (const char *text, const char *key, const PhSite *site, PhIssues *issues)
{
  /* A character is at most 4 bytes and at least 1: counting is for the long ones only. */
  if (text && strlen (text) > PH_NAME_MOST && ph_text_length (text) > PH_NAME_MOST)
    ph_issues_add (issues, site->where, site->part, key, false,
                   "has %zu characters; it should have at most %d", ph_text_length (text),
                   PH_NAME_MOST);
}

void
ph_check_id (const char *id, const char *key, const PhSite *site, PhIssues *issues)
{
  size_t length = strlen (id) > 4 * PH_ID_MOST ? PH_ID_MOST + 1 : ph_text_length (id);
  bool plain = !strchr (id, ':');
  for (const char *c = id; *c && plain; c++)
    /* C0 controls and DEL, and C1 controls (U+0080 to U+009F: bytes C2 80 to C2 9F). */
    if ((unsigned char)*c < 0x20 || *c == 0x7f
        || ((unsigned char)c[0] == 0xc2 && (unsigned char)c[1] >= 0x80
            && (unsigned char)c[1] < 0xa0))
      plain = false;
  if (length < 1 || length > PH_ID_MOST)
    ph_issues_add (issues, site->where, site->part, key, false, "should have 1 to %d characters",
                   PH_ID_MOST);
  else if (!plain)
    ph_issues_add (issues, site->where, site->part, key, false,
                   "should hold no colon and no control character");
  else if (strcmp (id, "bow") == 0)
    ph_issues_add (issues, site->where, site->part, key, false,
                   "should not be \"bow\", which is the bow itself");
}

static int
compare_socket_ids (const void *a, const void *b)
{
  const PhSocket *x = *(const PhSocket *const *)a, *y = *(const PhSocket *const *)b;
  int order = strcmp (x->id, y->id);
  return order ? order : (x > y) - (x < y);
}

/* Sorted, so that a file of nothing but mounts costs n log n. */
static void
check_socket_ids_differ (const PhSocket *sockets, size_t n, const char *list, const PhSite *site,
                         PhIssues *issues)
{
  const PhSocket **sorted = ph_alloc ((n + 1) * sizeof *sorted);
  size_t named = 0;
  for (size_t i = 0; i < n; i++)
    if (sockets[i].id)
      sorted[named++] = &sockets[i];
  qsort (sorted, named, sizeof *sorted, compare_socket_ids);
  for (size_t i = 1; i < named; i++)
    if (strcmp (sorted[i]->id, sorted[i - 1]->id) == 0)
      {
        char key[KEY_SIZE];
        char *id = ph_text_cut (sorted[i]->id, 80);
        snprintf (key, sizeof key, "%s[%td].id", list, sorted[i] - sockets);
        ph_issues_add (issues, site->where, site->part, key, false,
                       "\"%s\" is used twice; each should have an id of its own", id);
        free (id);
      }
  free (sorted);
}

static void
check_socket_position (const PhSocket *socket, const char *key, const PhSite *site,
                       PhIssues *issues)
{
  static const PhField position = {
    .type = PH_FIELD_VECTOR, .lo = -3000, .hi = 3000, .quantity = PH_QUANTITY_LENGTH
  };
  for (int c = 0; c < 3; c++)
    {
      char *why;
      if (!ph_field_accepts (&position, socket->at_mm[c], &why))
        ph_issues_add (issues, site->where, site->part, key, false, "number %d of 3 %s", c + 1,
                       why);
      free (why);
    }
}

static void
check_socket_axis (const PhSocket *socket, const char *key, const PhSite *site, PhIssues *issues)
{
  double x = socket->axis[0], y = socket->axis[1], z = socket->axis[2];
  if (!isfinite (x) || !isfinite (y) || !isfinite (z))
    ph_issues_add (issues, site->where, site->part, key, false,
                   "should be three finite numbers: a direction");
  else if (hypot (hypot (x, y), z) < PH_AXIS_LEAST)
    ph_issues_add (issues, site->where, site->part, key, false,
                   "is too short to be a direction; its length should be at least 1e-6");
}

void
ph_check_sockets (const PhSocket *sockets, size_t n, const char *list, const PhSite *site,
                  PhIssues *issues)
{
  for (size_t i = 0; i < n; i++)
    {
      char key[KEY_SIZE];
      snprintf (key, sizeof key, "%s[%zu].id", list, i);
      if (sockets[i].id)
        ph_check_id (sockets[i].id, key, site, issues);
      else
        ph_issues_add (issues, site->where, site->part, key, false,
                       "is missing; it has no default and should be a text");
      snprintf (key, sizeof key, "%s[%zu].at_mm", list, i);
      check_socket_position (&sockets[i], key, site, issues);
      snprintf (key, sizeof key, "%s[%zu].axis", list, i);
      check_socket_axis (&sockets[i], key, site, issues);
    }
  check_socket_ids_differ (sockets, n, list, site, issues);
}

void
ph_check_sds (PhObject object, unsigned kind_bit, const PhSd *sds, size_t n, const PhSite *site,
              PhIssues *issues)
{
  for (size_t i = 0; i < n; i++)
    {
      const PhField *field = ph_field_find (object, sds[i].key, NULL);
      char key[KEY_SIZE];
      char *own = ph_text_cut (sds[i].key, 80);
      snprintf (key, sizeof key, "sd.%.120s", own);
      free (own);
      ph_check_length (sds[i].key, key, site, issues);
      int wanted = field && field->kinds & kind_bit ? ph_field_components (field) : 0;
      if (wanted && wanted != sds[i].n)
        ph_issues_add (issues, site->where, site->part, key, false,
                       "has %d numbers; it should have %d, like the value itself", sds[i].n,
                       wanted);
      for (int c = 0; c < sds[i].n; c++)
        if (!isfinite (sds[i].v[c]) || sds[i].v[c] < 0)
          {
            ph_issues_add (issues, site->where, site->part, key, false,
                           "a standard deviation should be a finite number of 0 or more");
            break;
          }
    }
}
