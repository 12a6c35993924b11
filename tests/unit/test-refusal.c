/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a screen says of numbers that are out of their range: the form's words and the person's
 * units, and never a key of the file. The ranges are those of the rig file's page.
 */
#include "document/refusal.h"

#include <math.h>

#include "check.h"
#include "model/check-own.h"
#include "model/check.h"
#include "rigs.h"

/* The first error of the rig, as a sentence. */
static char *
refusal (PhRig *rig, PhUnits units)
{
  PhIssues issues = { 0 };
  CHECK (!ph_check_rig (rig, &issues) && issues.n > 0);
  char *sentence = ph_refusal_of_issue (rig, &issues.items[0], units);
  ph_issues_clear (&issues);
  return sentence;
}

static void
check_sentence (PhRig *rig, PhUnits units, const char *want)
{
  g_autofree char *sentence = refusal (rig, units);
  CHECK_TEXT (sentence, want);
}

static void
a_number_is_told_in_the_persons_words_and_units (void)
{
  PhRig *rig = rigs_example ();
  rig->bow.mass_g = 301433.15;
  check_sentence (rig, PH_UNITS_METRIC,
                  "The bow mass is 301.433 kg; from 0 kg to 20 kg would be right.");
  check_sentence (rig, PH_UNITS_TRADE,
                  "The bow mass is 664.55 lb; from 0 lb to 44.09 lb would be right.");
  rig->bow.mass_g = 1950;
  rig->bow.com_mm[1] = -4000;
  check_sentence (rig, PH_UNITS_METRIC,
                  "The bow balance point is 4000 mm right; from \xe2\x88\x92"
                  "3000 mm to 3000 mm would be right.");
  rig->bow.com_mm[1] = 0;
  rigs_set (&rig->parts[1], "length_mm", 4000);
  g_autofree char *length = refusal (rig, PH_UNITS_MIXED);
  CHECK (g_str_has_suffix (length, "the length is 157.5 in; from 0 in to 118 in would be right.")
             || g_str_has_suffix (length, "from 0 in to 118.11 in would be right."),
         "%s", length);
  ph_rig_free (rig);
}

/* Every number there is, out of its range. */
static void
check_no_key (PhObject object, void *owner, PhRig *rig, unsigned kind_bit, PhWhere where,
              const char *part)
{
  size_t n;
  const PhField *fields = ph_fields_of (object, &n);
  for (size_t i = 0; i < n; i++)
    {
      const PhField *field = &fields[i];
      if (!ph_field_components (field) || !(field->kinds & kind_bit))
        continue;
      double before = ph_field_number (field, owner, 0);
      ph_field_set_number (field, owner, 0, -1e9);
      PhSite site = { where, part, "" };
      PhIssues issues = { 0 };
      ph_check_fields (object, owner, UINT64_MAX, kind_bit, &site, &issues);
      ph_field_set_number (field, owner, 0, before);
      bool found = false;
      for (size_t k = 0; k < issues.n; k++)
        if (issues.items[k].field == field)
          {
            g_autofree char *sentence = ph_refusal_of_issue (rig, &issues.items[k], PH_UNITS_MIXED);
            CHECK (!strchr (sentence, '_') && strstr (sentence, "would be right"), "%s: %s",
                   field->key, sentence);
            found = true;
          }
      CHECK (found, "%s took -1e9", field->key);
      ph_issues_clear (&issues);
    }
}

static void
no_number_leaks_its_key (void)
{
  PhRig *rig = rigs_example ();
  check_no_key (PH_OBJECT_BOW, &rig->bow, rig, ~0u, PH_WHERE_BOW, NULL);
  check_no_key (PH_OBJECT_ARCHER, &rig->archer, rig, ~0u, PH_WHERE_ARCHER, NULL);
  check_no_key (PH_OBJECT_HAND, &rig->archer, rig, ~0u, PH_WHERE_ARCHER, NULL);
  PhCheck check = ph_check_default ();
  check_no_key (PH_OBJECT_CHECK, &check, rig, ~0u, PH_WHERE_ARCHER, NULL);
  for (size_t i = 0; i < rig->n_parts; i++)
    check_no_key (PH_OBJECT_PART, &rig->parts[i], rig, 1u << rig->parts[i].kind, PH_WHERE_PART,
                  rig->parts[i].id);
  PhPart damper = ph_part_default (PH_PART_DAMPER);
  check_no_key (PH_OBJECT_PART, &damper, rig, 1u << PH_PART_DAMPER, PH_WHERE_PART, "front-bar");
  ph_part_clear (&damper);
  ph_check_clear (&check);
  ph_rig_free (rig);
}

static void
what_is_tied_keeps_its_own_sentence (void)
{
  PhRig *rig = rigs_example ();
  rig->bow.mass_g = 0;
  for (size_t i = 0; i < rig->n_parts; i++)
    rig->parts[i].off = true;
  check_sentence (rig, PH_UNITS_METRIC, "The bow or a part on it must weigh something.");
  ph_rig_free (rig);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (a_number_is_told_in_the_persons_words_and_units);
  CASE (no_number_leaks_its_key);
  CASE (what_is_tied_keeps_its_own_sentence);
  return check_end ();
}
