/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What hangs on what: repeated ids, places that are not there, cycles, nesting, taken sockets.
 * At most 256 parts come here, so walks of n² short steps are the worst.
 */
#include <assert.h>
#include <float.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/units.h"
#include "model/check-own.h"

#define WORDS_MOST 80

static const char *
label (const PhRig *rig, size_t i, char buffer[PH_ISSUE_LABEL_SIZE])
{
  return ph_issue_part_label (rig->parts[i].id, i, buffer);
}

static int
compare_ids (const void *a, const void *b)
{
  const PhPart *x = *(const PhPart *const *)a, *y = *(const PhPart *const *)b;
  int order = strcmp (x->id, y->id);
  return order ? order : (x > y) - (x < y);
}

static int
compare_places (const void *a, const void *b)
{
  const PhPart *x = *(const PhPart *const *)a, *y = *(const PhPart *const *)b;
  int order = strcmp (x->on, y->on);
  return order ? order : (x > y) - (x < y);
}

static void
check_ids_differ (const PhRig *rig, const PhPart **sorted, PhIssues *issues)
{
  size_t n = 0;
  for (size_t i = 0; i < rig->n_parts; i++)
    if (rig->parts[i].id)
      sorted[n++] = &rig->parts[i];
  qsort (sorted, n, sizeof *sorted, compare_ids);
  for (size_t i = 1; i < n; i++)
    if (strcmp (sorted[i]->id, sorted[i - 1]->id) == 0)
      ph_issues_add (issues, PH_WHERE_PART, sorted[i]->id, "id", false,
                     "is used by two parts, number %td and number %td; each should have its own",
                     sorted[i - 1] - rig->parts + 1, sorted[i] - rig->parts + 1);
}

/* A stack along a bar shares the bar's far end with whatever is there. */
static bool
takes_its_place (const PhRig *rig, const PhPart *part, int host)
{
  if (!part->on || part->kind == PH_PART_ACCESSORY)
    return false;
  return !(ph_part_is_along (part) && host >= 0 && rig->parts[host].kind == PH_PART_BAR);
}

static void
check_places_taken_once (const PhRig *rig, const int *hosts, const PhPart **sorted,
                         PhIssues *issues)
{
  size_t n = 0;
  bool *fitted = ph_rig_fitted (rig, hosts);
  for (size_t i = 0; i < rig->n_parts; i++)
    if (fitted[i] && takes_its_place (rig, &rig->parts[i], hosts[i]))
      sorted[n++] = &rig->parts[i];
  free (fitted);
  qsort (sorted, n, sizeof *sorted, compare_places);
  for (size_t i = 1; i < n; i++)
    if (strcmp (sorted[i]->on, sorted[i - 1]->on) == 0)
      {
        char own[PH_ISSUE_LABEL_SIZE], its[PH_ISSUE_LABEL_SIZE];
        char *place = ph_text_cut (sorted[i]->on, WORDS_MOST);
        char *other =
            ph_text_cut (label (rig, (size_t)(sorted[i - 1] - rig->parts), its), WORDS_MOST);
        ph_issues_add (issues, PH_WHERE_PART, label (rig, (size_t)(sorted[i] - rig->parts), own),
                       "on", false,
                       "\"%s\" already carries %s; one of the two should hang elsewhere or be off",
                       place, other);
        free (place);
        free (other);
      }
}

/* "front, rear" for a message; "none" without any. New string. */
static char *
list_ids (const PhSocket *sockets, size_t n)
{
  char *all = ph_text_dup ("");
  for (size_t i = 0; i < n && strlen (all) < 2 * WORDS_MOST; i++)
    {
      char *id = ph_text_cut (sockets[i].id ? sockets[i].id : "?", WORDS_MOST);
      char *longer = ph_text_printf ("%s%s%s", all, i ? ", " : "", id);
      free (id);
      free (all);
      all = longer;
    }
  char *cut = ph_text_cut (n ? all : "none", WORDS_MOST);
  free (all);
  return cut;
}

static void
check_socket (const PhRig *rig, size_t i, const char *socket, const PhSocket *sockets, size_t n,
              const char *what, PhIssues *issues)
{
  if (ph_sockets_find (sockets, n, socket) >= 0)
    return;
  char own[PH_ISSUE_LABEL_SIZE];
  char *asked = ph_text_cut (socket, WORDS_MOST), *known = list_ids (sockets, n);
  ph_issues_add (issues, PH_WHERE_PART, label (rig, i, own), "on", false,
                 "there is no %s \"%s\"; it should be one of: %s", what, asked, known);
  free (asked);
  free (known);
}

static void
check_on_bow (const PhRig *rig, size_t i, PhIssues *issues)
{
  const PhPart *part = &rig->parts[i];
  char own[PH_ISSUE_LABEL_SIZE];
  if (part->kind == PH_PART_ACCESSORY)
    {
      if (strcmp (part->on, "bow") != 0)
        ph_issues_add (issues, PH_WHERE_PART, label (rig, i, own), "on", false,
                       "an accessory sits on the bow itself; it should be \"bow\"");
    }
  else if (strcmp (part->on, "bow") == 0)
    ph_issues_add (issues, PH_WHERE_PART, label (rig, i, own), "on", false,
                   "only accessories sit on \"bow\" itself; it should be \"bow:\" and a mount");
  else
    check_socket (rig, i, part->on + strlen ("bow:"), rig->bow.mounts, rig->bow.n_mounts, "mount",
                  issues);
}

static void
check_on_part (const PhRig *rig, size_t i, int host, PhIssues *issues)
{
  const PhPart *part = &rig->parts[i], *carrier = &rig->parts[host];
  const char *socket = strchr (part->on, ':');
  char own[PH_ISSUE_LABEL_SIZE];
  if (part->kind == PH_PART_ACCESSORY)
    ph_issues_add (issues, PH_WHERE_PART, label (rig, i, own), "on", false,
                   "an accessory sits on the bow itself; it should be \"bow\"");
  else if (carrier->kind == PH_PART_ACCESSORY)
    ph_issues_add (issues, PH_WHERE_PART, label (rig, i, own), "on", false,
                   "nothing can hang on an accessory; it should be a mount of the bow, a bracket's "
                   "socket or the id of a bar, weights or damper");
  else if (carrier->kind == PH_PART_BRACKET && !socket)
    ph_issues_add (issues, PH_WHERE_PART, label (rig, i, own), "on", false,
                   "a bracket has no far end; it should name one of its sockets, PART:SOCKET");
  else if (socket)
    check_socket (rig, i, socket + 1, carrier->sockets,
                  carrier->kind == PH_PART_BRACKET ? carrier->n_sockets : 0, "socket", issues);
}

static void
check_on (const PhRig *rig, size_t i, int host, PhIssues *issues)
{
  const char *on = rig->parts[i].on;
  if (!on)
    return; /* missing: said with the numbers */
  if (strcmp (on, "bow") == 0 || strncmp (on, "bow:", strlen ("bow:")) == 0)
    check_on_bow (rig, i, issues);
  else if (host >= 0)
    check_on_part (rig, i, host, issues);
  else
    {
      char own[PH_ISSUE_LABEL_SIZE];
      char *asked = ph_text_cut (on, WORDS_MOST);
      ph_issues_add (issues, PH_WHERE_PART, label (rig, i, own), "on", false,
                     "there is no \"%s\"; it should be \"bow:\" and a mount, the id of a part, or "
                     "PART:SOCKET",
                     asked);
      free (asked);
    }
}

/* Walks from i to the bow: nesting, or 0 where it never arrives; `*returns` when it meets i. */
static int
walk_to_bow (const PhRig *rig, const int *hosts, size_t i, bool *returns)
{
  int nesting = 0;
  *returns = false;
  for (int at = (int)i; at >= 0; at = hosts[at])
    {
      if (nesting && (size_t)at == i)
        *returns = true;
      if (*returns || ++nesting > (int)rig->n_parts)
        return 0;
    }
  return nesting;
}

static void
check_nesting (const PhRig *rig, const int *hosts, size_t i, PhIssues *issues)
{
  bool returns;
  int nesting = walk_to_bow (rig, hosts, i, &returns);
  char own[PH_ISSUE_LABEL_SIZE];
  if (returns)
    ph_issues_add (issues, PH_WHERE_PART, label (rig, i, own), "on", false,
                   "hangs on itself in a circle; one of the parts in it should hang on the bow");
  else if (nesting > PH_RIG_NESTING_MOST)
    ph_issues_add (issues, PH_WHERE_PART, label (rig, i, own), "on", false,
                   "is part number %d in a row from the bow; there should be at most %d", nesting,
                   PH_RIG_NESTING_MOST);
}

void
ph_check_tree (const PhRig *rig, const int *hosts, PhIssues *issues)
{
  assert (rig->n_parts <= PH_RIG_PARTS_MOST);
  const PhPart **sorted = ph_alloc ((rig->n_parts + 1) * sizeof *sorted);
  check_ids_differ (rig, sorted, issues);
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      check_on (rig, i, hosts[i], issues);
      check_nesting (rig, hosts, i, issues);
    }
  check_places_taken_once (rig, hosts, sorted, issues);
  free (sorted);
}

void
ph_check_total_mass (const PhRig *rig, PhIssues *issues)
{
  /* Where the kilograms of a mass or its inverse would not be a number, it is no mass. */
  if (ph_from_milli (rig->bow.mass_g) >= DBL_MIN)
    return;
  for (size_t i = 0; i < rig->n_parts; i++)
    if (ph_from_milli (ph_part_mass_g (&rig->parts[i])) >= DBL_MIN && ph_rig_is_fitted (rig, i))
      return;
  ph_issues_add (issues, PH_WHERE_BOW, NULL, "mass_g", false,
                 "the whole rig weighs nothing; the bow or a fitted part should weigh more than "
                 "0 g");
}
