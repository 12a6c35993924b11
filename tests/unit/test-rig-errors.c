/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every error that the rig format's page lists: one mistake in a good file makes one line, which
 * names part and key and says what would be right.
 */
#include "base/text.h"
#include "check.h"
#include "rig-file-fixture.h"

/* `text` with the first `from` in it replaced by `to`. */
static char *
replaced (const char *text, const char *from, const char *to)
{
  const char *at = strstr (text, from);
  CHECK (at, "the text lacks «%s»", from);
  if (!at)
    return ph_text_dup (text);
  return ph_text_printf ("%.*s%s%s", (int)(at - text), text, to, at + strlen (from));
}

typedef struct
{
  const char *from, *to;
  const char *line; /* beginning of the one error line that is wanted */
} Broken;

/* One mistake makes one line, and that line begins as wanted. */
static void
check_broken (const Broken *broken, size_t n)
{
  for (size_t i = 0; i < n; i++)
    {
      PhIssues issues = { 0 };
      char *text = replaced (good_rig, broken[i].from, broken[i].to);
      PhRig *rig = parse_rig (text, &issues);
      CHECK (!rig, "accepted: %s", broken[i].to);
      CHECK (ph_issues_errors (&issues) == 1, "%s: %zu errors", broken[i].to,
             ph_issues_errors (&issues));
      for (size_t k = 0; k < issues.n; k++)
        {
          char *line = ph_issue_line (&issues.items[k]);
          if (!issues.items[k].is_note)
            CHECK (strncmp (line, broken[i].line, strlen (broken[i].line)) == 0, "%s gives «%s»",
                   broken[i].to, line);
          free (line);
        }
      ph_rig_free (rig);
      ph_issues_clear (&issues);
      free (text);
    }
}

#define CHECK_BROKEN(list) check_broken (list, sizeof list / sizeof *list)

static void
missing_key_without_a_default_is_named (void)
{
  static const Broken broken[] = {
    { "\"format\": \"plumbhold-rig\", ", "", "format: is missing; it should be \"plumb" },
    { "\"version\": 1,", "\"v\": 1,", "version: is missing; it should be 1" },
    { "\"bow\": {", "\"bough\": {", "bow: is missing; it should be an object" },
    { "\"mass_g\": 1950, ", "", "bow: mass_g: is missing; it has no default" },
    { "\"com_mm\": [-18, -3, 12],", "", "bow: com_mm: is missing" },
    { "\"gyration_mm\": [290, 295, 60], ", "", "bow: gyration_mm: is missing" },
    { "\"mounts\": [", "\"mounts\": [{\"at_mm\": [0, 0, 0], \"axis\": [1, 0, 0]}, ",
      "bow: mounts[0].id: is missing" },
    { "\"at_mm\": [62, 0, -72], ", "", "bow: mounts[0].at_mm: is missing" },
    { ", \"axis\": [1, 0, 0]}]},", "}]},", "part block: sockets[0].axis: is missing" },
    { " \"mass_g\": 310,", "", "part sight: mass_g: is missing" },
    { " \"at_mm\": [150, -38, 95],", "", "part sight: at_mm: is missing" },
    { "\"length_mm\": 762, ", "", "part rod: length_mm: is missing" },
    { "\"outer_mm\": 18,", "", "part rod: outer_mm: is missing" },
    { " \"inner_mm\": 16,", "", "part rod: inner_mm: is missing" },
    { " \"mass_g\": 165,", "", "part rod: mass_g: is missing" },
    { " \"count\": 8,", "", "part disc: count: is missing" },
    { " \"each_g\": 28.35,", "", "part disc: each_g: is missing" },
    { ", \"each_mm\": 7.2", "", "part disc: each_mm: is missing" },
    { " \"com_mm\": [12, 4, 0],", "", "part block: com_mm: is missing" },
    { "\"size_mm\": [30, 40, 20], ", "", "part block: size_mm: is missing" },
    { "\"id\": \"tail\", ", "", "part #5: id: is missing" },
    { "\"kind\": \"damper\", ", "", "part tail: kind: is missing; it should be \"bar\", \"w" },
    { "\"on\": \"block:a\", ", "", "part tail: on: is missing" },
    { " \"bubble_deg\": 1,", "", "archer: hand.bubble_tests[0].bubble_deg: is missing" }
  };
  CHECK_BROKEN (broken);
}

static void
wrong_type_is_named_with_what_it_should_be (void)
{
  static const Broken broken[] = {
    { "\"plumbhold-rig\"", "7", "format: is a number; it should be a text" },
    { "\"version\": 1", "\"version\": \"1\"", "version: is a text; it should be a number" },
    { "\"archer\": {", "\"name\": 3, \"archer\": {", "name: is a number; it should be a text" },
    { "\"stature_mm\": 1700", "\"stature_mm\": \"1700\"",
      "archer: stature_mm: is a text; it should be a number" },
    { "\"roll_bias_nm\": 0", "\"roll_bias_nm\": null",
      "archer: hand.roll_bias_nm: is null; it should be a number" },
    { "\"com_mm\": [70, 0, -50]", "\"com_mm\": [70, 0]",
      "archer: hand.bubble_tests[0].com_mm: has 2 entries; it should be a list of 3" },
    { "\"com_mm\": [-18, -3, 12]", "\"com_mm\": [-18, \"3\", 12]",
      "bow: com_mm: is a text; it should be a number" },
    { "\"com_mm\": [-18, -3, 12]", "\"com_mm\": 12",
      "bow: com_mm: is a number; it should be a list of 3 numbers" },
    { "\"kind\": \"compound\"", "\"kind\": 1", "bow: kind: is a number; it should be a text" },
    { "\"id\": \"rear\"", "\"id\": 5", "bow: mounts[1].id: is a number; it should be a text" },
    { "\"on\": \"rod\"", "\"on\": [\"rod\"]", "part disc: on: is a list; it should be a text" },
    { "\"mass_g\": 310", "\"mass_g\": true", "part sight: mass_g: is true or false; it sh" },
    { "\"mass_g\": 310", "\"mass_g\": 310, \"off\": 1",
      "part sight: off: is a number; it should be true or false" },
    { "\"mass_g\": 310", "\"mass_g\": 310, \"limits\": []",
      "part sight: limits: is a list; it should be an object" },
    { "\"mass_g\": 310", "\"mass_g\": 310, \"limits\": {\"swing_deg\": [1]}",
      "part sight: limits.swing_deg: has 1 entries; it should be a list of 2 numbers" },
    { "\"mass_g\": 310", "\"mass_g\": 310, \"sd\": {\"mass_g\": \"3\"}",
      "part sight: sd.mass_g: is a text; it should be a number" },
    { "\"mass_g\": 310", "\"mass_g\": 310, \"price\": {\"amount\": \"9\", \"currency\": \"EUR\"}",
      "part sight: price.amount: is a text; it should be a number" },
    { "\"sockets\": [", "\"sockets\": 1, \"s\": [",
      "part block: sockets: is a number; it should be a list" },
    { "\"parts\": [", "\"parts\": {}, \"p\": [", "parts: is an object; it should be a list" }
  };
  CHECK_BROKEN (broken);
}

static void
wrong_words_formats_and_versions_are_named (void)
{
  static const Broken broken[] = {
    { "plumbhold-rig", "plumbhold-book",
      "format: is “plumbhold-book”; it should be \"plumbhold-rig\"" },
    { "\"version\": 1", "\"version\": 2", "version: is 2, which a newer Plumbhold wrote" },
    { "\"version\": 1", "\"version\": 0", "version: is 0; it should be 1" },
    { "\"version\": 1", "\"version\": 1.5", "version: is 1.5; it should be 1" },
    { "\"damper\"", "\"rocket\"",
      "part tail: kind: is “rocket”; it should be \"bar\", \"weights\", \"damper\", "
      "\"bracket\" or \"accessory\"" },
    { "\"bracket\"", "\"Bracket\"", "part block: kind: is “Bracket”" },
    { "\"compound\"", "\"longbow\"",
      "bow: kind: is “longbow”; it should be \"compound\", \"recurve\" or \"barebow\"" },
    { "\"stature_mm\"", "\"bow_hand\": \"both\", \"stature_mm\"",
      "archer: bow_hand: is “both”; it should be \"left\" or \"right\"" },
    { "\"mass_g\": 310", "\"mass_g\": 310, \"source\": \"hearsay\"",
      "part sight: source: is “hearsay”" }
  };
  CHECK_BROKEN (broken);
}

static void
key_that_stands_twice_is_named (void)
{
  static const Broken broken[] = {
    { "\"version\": 1", "\"version\": 1, \"version\": 1", "version: stands twice" },
    { "\"stature_mm\"", "\"stature_mm\": 1, \"stature_mm\"", "archer: stature_mm: stands twi" },
    { "\"roll_bias_nm\"", "\"roll_bias_nm\": 0, \"roll_bias_nm\"",
      "archer: hand.roll_bias_nm: stands twice" },
    { "\"mass_g\": 3000", "\"mass_g\": 3000, \"mass_\\u0067\": 1",
      "archer: hand.bubble_tests[0].mass_g: stands twice" },
    { "\"mass_g\": 1950", "\"mass_g\": 1950, \"mass_g\": 1950", "bow: mass_g: stands twice" },
    { "{\"id\": \"rear\"", "{\"id\": \"rear\", \"id\": \"rear\"",
      "bow: mounts[1].id: stands twice" },
    { "\"mass_g\": 310", "\"mass_g\": 310, \"mass_g\": 310", "part sight: mass_g: stands tw" },
    { "\"mass_g\": 310", "\"mass_g\": 310, \"new\": 1, \"new\": 2",
      "part sight: new: stands twice" },
    { "\"mass_g\": 310", "\"mass_g\": 310, \"new\": [{\"a\": 1, \"a\": 2}]",
      "part sight: new: has the key “a” twice" },
    { "\"mass_g\": 310", "\"mass_g\": 310, \"sd\": {\"mass_g\": 3, \"mass_g\": 4}",
      "part sight: sd.mass_g: stands twice" }
  };
  CHECK_BROKEN (broken);
}

static void
number_that_is_not_finite_or_out_of_range_is_named (void)
{
  static const Broken broken[] = {
    { "\"mass_g\": 310", "\"mass_g\": -3", "part sight: mass_g: is -3 g; it should be from 0" },
    { "\"mass_g\": 310", "\"mass_g\": 20001", "part sight: mass_g: is 20001 g" },
    { "\"mass_g\": 310", "\"mass_g\": 1e999", "part sight: mass_g: is 1e999, not a finite" },
    { "\"mass_g\": 310", "\"mass_g\": NaN", "part sight: mass_g: is NaN, not a finite" },
    { "\"mass_g\": 310", "\"mass_g\": -Infinity", "part sight: mass_g: is -Infinity, not a" },
    { "\"mass_g\": 310", "\"mass_g\": 310, \"new\": {\"x\": [1e400]}",
      "part sight: new: is 1e400, not a finite number" },
    { "[150, -38, 95]", "[150, -1e500, 95]", "part sight: at_mm: is -1e500, not a finite" },
    { "[150, -38, 95]", "[150, -3800, 95]", "part sight: at_mm: number 2 of 3 is -3800 mm" },
    { "\"count\": 8", "\"count\": 8.5", "part disc: count: is 8.5; it should be a whole" },
    { "\"count\": 8, \"each_g\": 28.35", "\"count\": 1001, \"each_g\": 1",
      "part disc: count: is 1001" },
    { "\"count\": 8", "\"count\": 1000", "part disc: count: is 28350 g" },
    { "\"outer_mm\": 18", "\"outer_mm\": 16", "part rod: inner_mm: is 16 mm; it should be l" },
    { "\"tip_fitting_g\": 25", "\"tip_fitting_g\": 166", "part rod: tip_fitting_g: is 166 g" },
    { "\"tip_fitting_g\": 25", "\"fitting_mm\": 763", "part rod: fitting_mm: is 763 mm" },
    { "\"tip_fitting_g\": 25", "\"modulus_gpa\": 0", "part rod: modulus_gpa: is 0 GPa" },
    { "\"tip_fitting_g\": 25", "\"lift_deg\": 180.1", "part rod: lift_deg: is 180.1°" },
    { "\"each_mm\": 7.2", "\"each_mm\": 7.2, \"bore_mm\": 25.4", "part disc: bore_mm: is 25.4" },
    { "\"each_mm\": 7.2", "\"each_mm\": 7.2, \"along_mm\": 763",
      "part disc: along_mm: is 763 mm; it should be at most the bar's length" },
    { "\"bubble_deg\": 1,", "\"bubble_deg\": 60,",
      "archer: hand.bubble_tests[0].bubble_deg: is 60°" },
    { "\"sd_deg\": 0.3", "\"sd_deg\": 0", "archer: hand.bubble_tests[0].sd_deg: is 0°" },
    { "\"brace_height_mm\": 178", "\"brace_height_mm\": 680", "bow: brace_height_mm: is 680" },
    { "[62, 0, -72], \"axis\": [1, 0, 0]", "[62, 0, -72], \"axis\": [1e-7, 0, 0]",
      "bow: mounts[0].axis: is too short" },
    { "\"stature_mm\": 1700", "\"stature_mm\": 0", "archer: stature_mm: is 0 mm" },
    { "\"stature_mm\"", "\"nock_height_mm\": 301, \"stature_mm\"", "archer: nock_height_mm" },
    { "\"roll_bias_nm\": 0", "\"roll_bias_nm\": 10.5", "archer: hand.roll_bias_nm: is 10.5" }
  };
  CHECK_BROKEN (broken);
}

static void
what_hangs_nowhere_or_in_a_ring_is_named (void)
{
  static const Broken broken[] = {
    { "\"on\": \"bow:front\"", "\"on\": \"bow:nose\"", "part rod: on: there is no mount \"no" },
    { "\"on\": \"block:a\"", "\"on\": \"block:b\"", "part tail: on: there is no socket \"b\"" },
    { "\"on\": \"block:a\"", "\"on\": \"block\"", "part tail: on: a bracket has no far end" },
    { "\"on\": \"block:a\"", "\"on\": \"nobody\"", "part tail: on: there is no \"nobody\"" },
    { "\"on\": \"block:a\"", "\"on\": \"sight\"", "part tail: on: nothing can hang on an acc" },
    { "\"on\": \"block:a\"", "\"on\": \"rod\"", "part tail: on: \"rod\" already carries disc" },
    { "\"on\": \"block:a\"", "\"on\": \"tail\"", "part tail: on: " },
    { "\"id\": \"tail\"", "\"id\": \"rod\"", "part rod: id: is used by two parts" },
    { "\"id\": \"tail\"", "\"id\": \"a:b\"", "part a:b: id: should hold no colon" },
    { "\"id\": \"tail\"", "\"id\": \"\"", "part #5: id: should have 1 to 64" },
    { "\"mounts\": [",
      "\"mounts\": [{\"id\": \"a\\n\", \"at_mm\": [0, 0, 0], \"axis\": [1, 0, 0]}, ",
      "bow: mounts[0].id: should hold no colon" }
  };
  CHECK_BROKEN (broken);
}

static void
several_mistakes_are_all_told_at_once (void)
{
  PhIssues issues = { 0 };
  char *a = replaced (good_rig, "\"mass_g\": 310", "\"mass_g\": \"310\"");
  char *b = replaced (a, "\"count\": 8", "\"count\": -8");
  char *c = replaced (b, "\"stature_mm\": 1700", "\"stature_mm\": -1");
  char *d = replaced (c, "\"outer_mm\": 18", "\"outer_mm\": null");
  PhRig *rig = parse_rig (d, &issues);
  CHECK (!rig && ph_issues_errors (&issues) == 4, "%zu", ph_issues_errors (&issues));
  free (a);
  free (b);
  free (c);
  free (d);
  ph_issues_clear (&issues);
}

static void
failed_load_leaves_the_rig_in_hand_untouched (void)
{
  PhIssues issues = { 0 };
  PhRig *mine = parse_good_rig (good_rig), *same = mine;
  CHECK (ph_rig_parse ("{", 1, &same, &issues) == PH_ERR_SYNTAX && same == mine);
  CHECK (ph_rig_parse ("{}", 2, &same, &issues) == PH_ERR_INVALID && same == mine);
  CHECK (ph_rig_load ("/nothing/there", &same, &issues) == PH_ERR_READ && same == mine);
  CHECK (ph_rig_load ("/dev", &same, &issues) == PH_ERR_READ && same == mine);
  CHECK (issues.n >= 4);
  ph_issues_clear (&issues);
  ph_rig_free (mine);
}

/* Linear or nearly so: 1 MiB of the worst that a file can hold. The suite's time limit tells. */
static void
hostile_file_of_a_megabyte_is_refused_quickly (void)
{
  static const char head[] = "{\"format\":\"plumbhold-rig\",\"version\":1,";
  static const char *const pieces[][3] = { { "\"parts\":[", "{},", "{}]}" },
                                           { "\"bow\":{", "\"k%zu\":1,", "\"z\":1}}" },
                                           { "\"bow\":{\"mounts\":[", "{\"id\":\"%zu\"},",
                                             "{}]}}" },
                                           { "\"bow\":{\"k\":[", "{\"a\":1,\"a\":2},", "0]}}" } };
  for (size_t i = 0; i < sizeof pieces / sizeof *pieces; i++)
    {
      PhIssues issues = { 0 };
      char *text = ph_alloc (PH_RIG_FILE_MOST);
      size_t at = (size_t)snprintf (text, PH_RIG_FILE_MOST, "%s%s", head, pieces[i][0]);
      const char *number = strstr (pieces[i][1], "%zu");
      int before = number ? (int)(number - pieces[i][1]) : (int)strlen (pieces[i][1]);
      for (size_t k = 0; at < PH_RIG_FILE_MOST - 64; k++)
        at += number ? (size_t)sprintf (text + at, "%.*s%zu%s", before, pieces[i][1], k, number + 3)
                     : (size_t)sprintf (text + at, "%s", pieces[i][1]);
      strcpy (text + at, pieces[i][2]);
      ph_rig_free (parse_rig (text, &issues));
      CHECK (ph_issues_errors (&issues) > 0);
      ph_issues_clear (&issues);
      free (text);
    }
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (missing_key_without_a_default_is_named);
  CASE (wrong_type_is_named_with_what_it_should_be);
  CASE (wrong_words_formats_and_versions_are_named);
  CASE (key_that_stands_twice_is_named);
  CASE (number_that_is_not_finite_or_out_of_range_is_named);
  CASE (what_hangs_nowhere_or_in_a_ring_is_named);
  CASE (several_mistakes_are_all_told_at_once);
  CASE (failed_load_leaves_the_rig_in_hand_untouched);
  CASE (hostile_file_of_a_megabyte_is_refused_quickly);
  return check_end ();
}
