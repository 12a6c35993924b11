/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The parts catalogue: ours against the mass of its own materials, and bad ones refused.
 * Densities: carbon laminate 1600 kg/m³ (typical of 60 % fibre by volume, from memory), steel 7850,
 * tungsten heavy alloy 17000 kg/m³ (ASTM B777 class 1, from memory).
 */
#include "store/catalogue.h"

#include "base/units.h"
#include "check.h"
#include "model/fields.h"

static PhCatalogue catalogue;

static void
our_catalogue_is_read_without_a_word (void)
{
  PhIssues issues = { 0 };
  CHECK (ph_catalogue_load (DATA_DIR "/catalogue.json", &catalogue, &issues) == PH_OK);
  for (size_t i = 0; i < issues.n; i++)
    {
      char *line = ph_issue_line (&issues.items[i]);
      CHECK (false, "%s", line);
      free (line);
    }
  CHECK (catalogue.n > 50, "%zu items", catalogue.n);
  ph_issues_clear (&issues);
}

static void
every_item_has_a_group_a_name_of_its_own_and_a_source (void)
{
  for (size_t i = 0; i < catalogue.n; i++)
    {
      const PhPart *part = &catalogue.items[i].part;
      CHECK (catalogue.items[i].group && part->name && !part->id && !part->on, "item %zu", i);
      CHECK (part->source == PH_SOURCE_CATALOGUE, "%s", part->name);
      for (size_t k = 0; k < i; k++)
        CHECK (strcmp (catalogue.items[k].part.name, part->name) != 0, "%s", part->name);
    }
}

static void
bars_weigh_what_their_tubes_and_fittings_do (void)
{
  size_t n = 0;
  for (size_t i = 0; i < catalogue.n; i++)
    {
      const PhPart *bar = &catalogue.items[i].part;
      if (bar->kind != PH_PART_BAR)
        continue;
      double area = PH_PI / 4 * (bar->outer_mm * bar->outer_mm - bar->inner_mm * bar->inner_mm);
      double tube = area * bar->length_mm * 1e-9 * 1600 * 1000;
      /* Rounded to the gram. */
      CHECK_NEAR (bar->mass_g - bar->root_fitting_g - bar->tip_fitting_g, tube, 0.5);
      /* Whole inches, which is how bars are sold. */
      CHECK_NEAR (remainder (bar->length_mm / 25.4, 1), 0, 1e-9);
      n++;
    }
  CHECK (n > 30);
}

static void
weights_fill_their_thickness (void)
{
  for (size_t i = 0; i < catalogue.n; i++)
    {
      const PhPart *stack = &catalogue.items[i].part;
      if (stack->kind != PH_PART_WEIGHTS)
        continue;
      double density = strstr (stack->name, "tungsten") ? 17000 : 7850;
      double d = stack->diameter_mm - stack->bore_mm;
      double thick = stack->each_g / 1000 / (density * PH_PI / 4 * d * d * 1e-6) * 1000;
      CHECK_NEAR (stack->each_mm, thick, 0.05); /* rounded to 0.1 mm */
      CHECK (stack->count >= 1);
    }
}

static void
check_refused (const char *text, const char *says)
{
  PhIssues issues = { 0 };
  PhCatalogue read = { 0 };
  CHECK (ph_catalogue_parse (text, strlen (text), &read, &issues) != PH_OK, "%s", text);
  CHECK (!read.items && issues.n >= 1);
  char *line = issues.n ? ph_issue_line (&issues.items[0]) : NULL;
  CHECK (line && strstr (line, says), "«%s» lacks «%s»", line ? line : "", says);
  free (line);
  ph_issues_clear (&issues);
}

#define HEAD "{\"format\": \"plumbhold-catalogue\", \"version\": 1, "
#define DAMPER "\"kind\": \"damper\", \"length_mm\": 28, \"diameter_mm\": 26"

static void
bad_catalogue_is_refused_with_the_item_and_the_key (void)
{
  check_refused ("[]", "should be an object");
  check_refused ("{\"format\": \"plumbhold-rig\", \"version\": 1}", "plumbhold-catalogue");
  check_refused (HEAD "\"x\": 1}", "items: is missing");
  check_refused (HEAD "\"items\": {}}", "items: is an object");
  check_refused (HEAD "\"items\": [{\"group\": \"D\", \"name\": \"d\", " DAMPER "}]}",
                 "part #1: mass_g: is missing");
  check_refused (HEAD "\"items\": [{\"name\": \"d\", \"mass_g\": 3, " DAMPER "}]}",
                 "part #1: group: is missing");
  check_refused (HEAD "\"items\": [{\"group\": \"D\", \"mass_g\": 3, " DAMPER "}]}",
                 "part #1: name: is missing");
  check_refused (HEAD "\"items\": [{\"group\": \"D\", \"name\": \"d\", \"mass_g\": -3, " DAMPER
                      "}]}",
                 "part #1: mass_g: is -3 g");
  check_refused (HEAD "\"items\": [{\"group\": \"D\", \"kind\": \"rocket\"}]}", "part #1: kind");
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (our_catalogue_is_read_without_a_word);
  CASE (every_item_has_a_group_a_name_of_its_own_and_a_source);
  CASE (bars_weigh_what_their_tubes_and_fittings_do);
  CASE (weights_fill_their_thickness);
  CASE (bad_catalogue_is_refused_with_the_item_and_the_key);
  ph_catalogue_clear (&catalogue);
  return check_end ();
}
