/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Readings files: what is read, what is refused with its key, defaults, and back again; and a
 * reading used on a rig.
 */
#include "store/readings-file.h"

#include "check.h"
#include "model/checks.h"
#include "model/uncertain.h"
#include "rigs.h"

static bool
parse (const char *text, PhReadings *readings, const char *error)
{
  PhIssues issues = { 0 };
  bool fine = ph_readings_parse (text, strlen (text), readings, &issues) == PH_OK;
  CHECK (fine == (ph_issues_errors (&issues) == 0));
  if (error)
    {
      char *line = issues.n ? ph_issue_line (&issues.items[0]) : NULL;
      CHECK (line && strstr (line, error), "%s: %s", text, line ? line : "no issue");
      free (line);
    }
  ph_issues_clear (&issues);
  return fine;
}

static void
every_method_is_read_and_written_back (void)
{
  static const char *const texts[] = {
    "{\"scales\":{\"f1_n\":20.5,\"f2_n\":9.25,\"d_mm\":-400,\"sd_n\":0.1,\"sd_mm\":2}}",
    "{\"hanging\":{\"lines\":[{\"point_mm\":[1,2,3],\"direction\":[0,0.1,-1],\"sd_mm\":3}]}}",
    "{\"swing\":{\"axis\":\"z\",\"mass_g\":3100,\"distance_mm\":400,\"swings\":20,\"seconds\":29,"
    "\"sd_mass_g\":1,\"sd_distance_mm\":2.5,\"sd_seconds\":0.3}}",
    "{\"two-string\":{\"axis\":\"x\",\"mass_g\":3100,\"spacing_mm\":300,\"length_mm\":900,"
    "\"swings\":10,\"seconds\":30,\"sd_mass_g\":1,\"sd_spacing_mm\":0.5,\"sd_length_mm\":2,"
    "\"sd_seconds\":0.25}}",
  };
  for (size_t i = 0; i < sizeof texts / sizeof *texts; i++)
    {
      PhReadings first, second;
      CHECK (parse (texts[i], &first, NULL));
      CHECK (first.method == (PhMethod)i);
      PhJsonNode *tree = ph_readings_write (&first);
      char *text = ph_json_print (tree, NULL);
      CHECK (parse (text, &second, NULL));
      CHECK (second.n_lines == first.n_lines && second.axis == first.axis);
      if (i == 0)
        CHECK (second.f2_n == 9.25 && second.d_mm == -400 && second.sd_n == 0.1);
      if (i == 1)
        CHECK (second.lines[0].point_mm[2] == 3 && second.lines[0].direction[1] == 0.1
               && second.lines[0].sd_mm == 3);
      if (i == 2)
        CHECK (second.axis == 2 && second.sd_distance_mm == 2.5 && second.seconds == 29);
      if (i == 3)
        CHECK (second.axis == 0 && second.sd_spacing_mm == 0.5 && second.length_mm == 900);
      free (text);
      ph_json_node_free (tree);
      ph_readings_clear (&first);
      ph_readings_clear (&second);
    }
}

static void
deviations_that_are_left_out_are_the_documented_ones (void)
{
  PhReadings readings;
  CHECK (parse ("{\"scales\":{\"f1_n\":20,\"f2_n\":9,\"d_mm\":400}}", &readings, NULL));
  CHECK (readings.sd_n == 0.05 && readings.sd_mm == 1);
  CHECK (parse ("{\"hanging\":{\"lines\":[{\"point_mm\":[1,2,3],\"direction\":[0,0,1]}]}}",
                &readings, NULL));
  CHECK (readings.lines[0].sd_mm == 2);
  ph_readings_clear (&readings);
  CHECK (parse ("{\"swing\":{\"axis\":\"y\",\"mass_g\":3,\"distance_mm\":4,\"swings\":2,"
                "\"seconds\":2}}",
                &readings, NULL));
  CHECK (readings.sd_mass_g == 3 && readings.sd_distance_mm == 2 && readings.sd_seconds == 0.2);
}

static void
what_is_wrong_is_named_by_its_key (void)
{
  static const char *const wrong[][2] = {
    { "[1]", "object" },
    { "{", "line 1" },
    { "{}", "it holds none" },
    { "{\"scales\":{},\"swing\":{}}", "more than one" },
    { "{\"scales\":3}", "scales: is a number" },
    { "{\"scales\":{\"f1_n\":1,\"f2_n\":1}}", "scales.d_mm: is missing" },
    { "{\"scales\":{\"f1_n\":\"1\",\"f2_n\":1,\"d_mm\":3}}", "scales.f1_n: is a text" },
    { "{\"scales\":{\"f1_n\":1e999,\"f2_n\":1,\"d_mm\":3}}", "scales.f1_n" },
    { "{\"scales\":{\"f1_n\":1,\"f2_n\":1,\"d_mm\":3,\"sd_n\":-1}}", "scales.sd_n" },
    { "{\"scales\":{\"f1_n\":1,\"f1_n\":2,\"f2_n\":1,\"d_mm\":3}}", "scales.f1_n: stands twice" },
    { "{\"hanging\":{}}", "hanging.lines: is missing" },
    { "{\"hanging\":{\"lines\":[{\"point_mm\":[1,2],\"direction\":[0,0,1]}]}}",
      "hanging.lines[0].point_mm" },
    { "{\"hanging\":{\"lines\":[{\"point_mm\":[1,2,3],\"direction\":[0,0,0]}]}}",
      "hanging.lines[0].direction: is 0 long" },
    { "{\"hanging\":{\"lines\":[{\"point_mm\":[1,2,3],\"direction\":[0,0,1],\"sd_mm\":0}]}}",
      "hanging.lines[0].sd_mm" },
    { "{\"swing\":{\"axis\":\"w\",\"mass_g\":3,\"distance_mm\":4,\"swings\":2,\"seconds\":2}}",
      "swing.axis" },
    { "{\"two-string\":{\"mass_g\":3,\"spacing_mm\":4,\"length_mm\":2,\"swings\":2,"
      "\"seconds\":2}}",
      "two-string.axis: is missing" },
  };
  PhReadings untouched = ph_readings_default (PH_METHOD_TWO_STRING);
  for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++)
    CHECK (!parse (wrong[i][0], &untouched, wrong[i][1]), "%s", wrong[i][0]);
  CHECK (untouched.method == PH_METHOD_TWO_STRING);
}

static void
unknown_key_is_a_note (void)
{
  PhReadings readings;
  CHECK (parse ("{\"scales\":{\"f1_n\":20,\"f2_n\":9,\"d_mm\":400,\"sd_m\":1}}", &readings,
                "scales.sd_m: is no key of this method"));
}

static void
used_reading_states_what_each_key_is_worth (void)
{
  PhRig *rig = rigs_example ();
  PhReadings readings;
  ph_edit_set_source (rig, -1, PH_SOURCE_GUESSED);
  CHECK (parse ("{\"scales\":{\"f1_n\":22,\"f2_n\":8,\"d_mm\":300}}", &readings, NULL));
  PhMeasured measured = ph_measure (rig, &readings);
  CHECK (!measured.refused && measured.n_parts == 6);
  ph_edit_use_measured (rig, &measured);
  CHECK (rigs_sound (rig, true));
  CHECK (rig->bow.source == PH_SOURCE_MEASURED);
  CHECK_NEAR (rig->bow.com_mm[0], measured.value[0], 0);
  CHECK_NEAR (ph_uncertain_sd (rig, -1, "com_mm", 0), measured.sd[0], 0);
  /* What the scales do not say is as unsure as it was: guessed, though the bow is "measured". */
  CHECK_NEAR (ph_uncertain_sd (rig, -1, "com_mm", 1), 4, 0);
  CHECK_REL (ph_uncertain_sd (rig, -1, "gyration_mm", 0), 0.12 * 290, 1e-15);
  CHECK (ph_uncertain_sd (rig, -1, "mass_g", 0) < 40);
  ph_measured_clear (&measured);
  ph_rig_free (rig);
}

static void
reading_that_no_rig_takes_is_refused (void)
{
  PhRig *rig = rigs_example ();
  PhReadings readings;
  CHECK (parse ("{\"scales\":{\"f1_n\":1,\"f2_n\":60,\"d_mm\":9000}}", &readings, NULL));
  PhMeasured measured = ph_measure (rig, &readings);
  CHECK (measured.refused && strstr (measured.refused, "com_mm"), "%s",
         measured.refused ? measured.refused : "taken");
  CHECK (isnan (measured.value[0]) && isnan (measured.sd[0]));
  CHECK_NEAR (measured.bow.com_mm[0], -18, 0);
  ph_measured_clear (&measured);
  ph_rig_free (rig);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (every_method_is_read_and_written_back);
  CASE (deviations_that_are_left_out_are_the_documented_ones);
  CASE (what_is_wrong_is_named_by_its_key);
  CASE (unknown_key_is_a_note);
  CASE (used_reading_states_what_each_key_is_worth);
  CASE (reading_that_no_rig_takes_is_refused);
  return check_end ();
}
