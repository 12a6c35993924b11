/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rig files: what the format's page says about reading, writing and every error it lists. Files
 * are made from one good text by replacing a piece of it.
 */
#include "store/rig-file.h"

#include <float.h>
#include <locale.h>

#include "base/text.h"
#include "check.h"
#include "model/fields.h"

#define EXAMPLES "barebow", "demo", "heavy-front", "left-handed", "recurve", "v-bars"

static char *
slurp (const char *path)
{
  FILE *file = fopen (path, "rb");
  CHECK (file, "%s", path);
  if (!file)
    return ph_text_dup ("");
  char *text = ph_alloc (PH_RIG_FILE_MOST);
  text[fread (text, 1, PH_RIG_FILE_MOST - 1, file)] = '\0';
  fclose (file);
  return text;
}

static PhRig *
parse (const char *text, PhIssues *issues)
{
  PhRig *rig = NULL;
  PhStatus status = ph_rig_parse (text, strlen (text), &rig, issues);
  CHECK ((status == PH_OK) == (rig != NULL));
  CHECK ((status == PH_OK) == (ph_issues_errors (issues) == 0));
  return rig;
}

static PhRig *
parse_good (const char *text)
{
  PhIssues issues = { 0 };
  PhRig *rig = parse (text, &issues);
  for (size_t i = 0; i < issues.n && !rig; i++)
    CHECK (false, "%s: %s", issues.items[i].key ? issues.items[i].key : "", issues.items[i].text);
  ph_issues_clear (&issues);
  return rig;
}

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

static const char good[] =
    "{\"format\": \"plumbhold-rig\", \"version\": 1,\n"
    " \"archer\": {\"stature_mm\": 1700, \"hand\": {\"roll_bias_nm\": 0, \"bubble_tests\": [\n"
    "  {\"mass_g\": 3000, \"com_mm\": [70, 0, -50], \"draw_length_mm\": 660, \"nock_height_mm\": "
    "42,"
    " \"bubble_deg\": 1, \"sd_deg\": 0.3}]}},\n"
    " \"bow\": {\"kind\": \"compound\", \"mass_g\": 1950, \"com_mm\": [-18, -3, 12],"
    " \"gyration_mm\": [290, 295, 60], \"brace_height_mm\": 178,\n"
    "  \"mounts\": [{\"id\": \"front\", \"at_mm\": [62, 0, -72], \"axis\": [1, 0, 0]},\n"
    "   {\"id\": \"rear\", \"at_mm\": [-28, 0, -150], \"axis\": [-1, 0, 0]}]},\n"
    " \"parts\": [\n"
    "  {\"id\": \"sight\", \"kind\": \"accessory\", \"on\": \"bow\", \"mass_g\": 310,"
    " \"at_mm\": [150, -38, 95], \"size_mm\": [260, 30, 60]},\n"
    "  {\"id\": \"rod\", \"kind\": \"bar\", \"on\": \"bow:front\", \"length_mm\": 762, "
    "\"outer_mm\": 18,"
    " \"inner_mm\": 16, \"mass_g\": 165, \"tip_fitting_g\": 25},\n"
    "  {\"id\": \"disc\", \"kind\": \"weights\", \"on\": \"rod\", \"count\": 8, \"each_g\": 28.35,"
    " \"diameter_mm\": 25.4, \"each_mm\": 7.2},\n"
    "  {\"id\": \"block\", \"kind\": \"bracket\", \"on\": \"bow:rear\", \"mass_g\": 85,"
    " \"com_mm\": [12, 4, 0], \"size_mm\": [30, 40, 20], \"sockets\":"
    " [{\"id\": \"a\", \"at_mm\": [20, 14, 0], \"axis\": [1, 0, 0]}]},\n"
    "  {\"id\": \"tail\", \"kind\": \"damper\", \"on\": \"block:a\", \"mass_g\": 30, "
    "\"length_mm\": 28,"
    " \"diameter_mm\": 26}]}\n";

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
      char *text = replaced (good, broken[i].from, broken[i].to);
      PhRig *rig = parse (text, &issues);
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
  char *a = replaced (good, "\"mass_g\": 310", "\"mass_g\": \"310\"");
  char *b = replaced (a, "\"count\": 8", "\"count\": -8");
  char *c = replaced (b, "\"stature_mm\": 1700", "\"stature_mm\": -1");
  char *d = replaced (c, "\"outer_mm\": 18", "\"outer_mm\": null");
  PhRig *rig = parse (d, &issues);
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
  PhRig *mine = parse_good (good), *same = mine;
  CHECK (ph_rig_parse ("{", 1, &same, &issues) == PH_ERR_SYNTAX && same == mine);
  CHECK (ph_rig_parse ("{}", 2, &same, &issues) == PH_ERR_INVALID && same == mine);
  CHECK (ph_rig_load ("/nothing/there", &same, &issues) == PH_ERR_READ && same == mine);
  CHECK (ph_rig_load ("/dev", &same, &issues) == PH_ERR_READ && same == mine);
  CHECK (issues.n >= 4);
  ph_issues_clear (&issues);
  ph_rig_free (mine);
}

static void
defaults_stand_where_the_file_is_silent (void)
{
  PhRig *rig =
      parse_good ("{\"format\": \"plumbhold-rig\", \"version\": 1, \"bow\": {\"mass_g\": 1, "
                  "\"com_mm\": [0, 0, 0], \"gyration_mm\": [1, 1, 1]}}");
  if (!rig)
    return;
  const PhArcher *archer = &rig->archer;
  CHECK (archer->draw_length_mm == 680 && archer->nock_height_mm == 40);
  CHECK (archer->stature_mm == 1750 && archer->body_mass_g == 72000);
  CHECK (ph_rig_holding_weight_n (rig) == 65 && archer->wanted_bubble_deg == 0);
  CHECK (archer->roll_stiffness_nm_per_rad == 2 && archer->roll_bias_nm == 0);
  CHECK (archer->bow_hand == PH_BOW_HAND_LEFT && rig->bow.kind == PH_BOW_COMPOUND);
  CHECK (isnan (rig->bow.brace_height_mm) && isnan (rig->bow.axle_to_axle_mm));
  CHECK (!rig->name && rig->n_parts == 0 && rig->bow.n_mounts == 0);
  char *text = ph_rig_print (rig, NULL);
  CHECK (!strstr (text, "archer") && !strstr (text, "name") && !strstr (text, "kind"), "%s", text);
  free (text);
  ph_rig_free (rig);
}

/* Loads, prints, loads, prints: the rigs are equal and the texts the same bytes. */
static char *
check_round_trip (const char *text)
{
  PhRig *first = parse_good (text);
  if (!first)
    return ph_text_dup ("");
  size_t size;
  char *once = ph_rig_print (first, &size);
  CHECK (size == strlen (once));
  PhRig *second = parse_good (once);
  CHECK (second && ph_rig_equal (first, second));
  char *twice = second ? ph_rig_print (second, NULL) : ph_text_dup ("");
  CHECK_TEXT (twice, once);
  free (twice);
  ph_rig_free (first);
  ph_rig_free (second);
  return once;
}

static void
examples_load_without_a_note_and_survive_saving (void)
{
  static const char *const names[] = { EXAMPLES };
  for (size_t i = 0; i < sizeof names / sizeof *names; i++)
    {
      PhIssues issues = { 0 };
      char *path = ph_text_printf ("%s/%s.rig.json", DATA_DIR, names[i]);
      char *text = slurp (path);
      PhRig *rig = parse (text, &issues);
      CHECK (rig && issues.n == 0, "%s: %s", names[i], issues.n ? issues.items[0].text : "");
      CHECK (strcmp (names[i], "demo") == 0 || strstr (text, "Invented"), "%s", names[i]);
      free (check_round_trip (text));
      ph_rig_free (rig);
      ph_issues_clear (&issues);
      free (text);
      free (path);
    }
}

static void
file_with_every_key_is_written_as_it_stood (void)
{
  char *text = slurp (DATA_DIR "/../tests/golden/versions/every-key-1.rig.json");
  char *saved = check_round_trip (text);
  CHECK_TEXT (saved, text);
  free (saved);
  free (text);
}

static void
every_double_reads_back_bit_by_bit (void)
{
  static const double hard[] = {
    0.1 + 0.2, 1.0 / 3, 5e-324, DBL_MIN, 2999.9999999999995, -0.0, 1e-7, 123.45600000000002, 9.80665
  };
  PhRig *rig = parse_good (good);
  const char *locale = setlocale (LC_ALL, "de_DE.UTF-8");
  for (size_t i = 0; i < sizeof hard / sizeof *hard && rig; i++)
    {
      rig->parts[0].at_mm[1] = hard[i];
      char *text = ph_rig_print (rig, NULL);
      PhRig *again = parse_good (text);
      CHECK (again && memcmp (&again->parts[0].at_mm[1], &hard[i], sizeof (double)) == 0,
             "%.17g in %s", hard[i], locale ? locale : "C");
      ph_rig_free (again);
      free (text);
    }
  setlocale (LC_ALL, "C");
  ph_rig_free (rig);
}

static void
changed_default_is_written_and_untouched_default_is_not (void)
{
  PhRig *rig = parse_good (good);
  if (!rig)
    return;
  rig->archer.draw_length_mm = 700;
  ph_part_set_number (&rig->parts[1], "swing_deg", 0, 0);
  char *text = ph_rig_print (rig, NULL);
  CHECK (strstr (text, "\"draw_length_mm\": 700") && strstr (text, "\"swing_deg\": 0"), "%s", text);
  CHECK (!strstr (text, "lift_deg") && !strstr (text, "holding_weight_n"), "%s", text);
  free (text);
  ph_rig_free (rig);
}

static void
shared_layout_says_nothing_about_the_archer (void)
{
  PhRig *rig = parse_good (good);
  if (!rig)
    return;
  rig->book = ph_text_dup ("me.book.json");
  PhRig *shared = ph_rig_without_archer (rig);
  char *text = ph_rig_print (shared, NULL);
  CHECK (!strstr (text, "archer") && !strstr (text, "bubble") && !strstr (text, "book"), "%s",
         text);
  CHECK (rig->archer.n_checks == 1 && shared->archer.n_checks == 0 && shared->n_parts == 5);
  free (text);
  ph_rig_free (shared);
  rig->archer.bow_hand = PH_BOW_HAND_RIGHT;
  rig->archer.draw_length_mm = 800;
  rig->bow.brace_height_mm = 700;
  shared = ph_rig_without_archer (rig);
  text = ph_rig_print (shared, NULL);
  CHECK (strstr (text, "\"archer\": {\"bow_hand\": \"right\", \"draw_length_mm\": 800},"), "%s",
         text);
  ph_rig_free (shared);
  shared = parse_good (text);
  CHECK (shared, "a shared layout must load");
  free (text);
  ph_rig_free (shared);
  ph_rig_free (rig);
}

static void
parts_go_over_the_clipboard_and_come_back_equal (void)
{
  PhRig *rig = parse_good (good);
  PhPart *parts = NULL;
  size_t n = 0;
  PhIssues issues = { 0 };
  if (!rig)
    return;
  char *text = ph_fragment_print (rig->parts + 3, 2);
  CHECK (ph_fragment_parse (text, strlen (text), &parts, &n, &issues) == PH_OK && n == 2);
  char *again = n == 2 ? ph_fragment_print (parts, n) : NULL;
  CHECK_TEXT (again, text);
  for (size_t i = 0; i < n; i++)
    ph_part_clear (&parts[i]);
  free (parts);
  free (again);
  free (text);
  ph_rig_free (rig);
  ph_issues_clear (&issues);
}

static void
what_is_no_fragment_is_refused (void)
{
  static const char *const texts[] = {
    "",
    "hello",
    "{}",
    "{\"format\": \"plumbhold-rig\", \"version\": 1, \"parts\": []}",
    "{\"format\": \"plumbhold-parts\", \"version\": 1}",
    "{\"format\": \"plumbhold-parts\", \"version\": 1, \"parts\": []}",
    "{\"format\": \"plumbhold-parts\", \"version\": 1, \"parts\": [1]}",
    "{\"format\": \"plumbhold-parts\", \"version\": 1, \"parts\": [{\"id\": \"d\", \"kind\": "
    "\"damper\", \"on\": \"x\", \"mass_g\": -1, \"length_mm\": 1, \"diameter_mm\": 1}]}"
  };
  for (size_t i = 0; i < sizeof texts / sizeof *texts; i++)
    {
      PhPart *parts = NULL;
      size_t n = 0;
      PhIssues issues = { 0 };
      CHECK (ph_fragment_parse (texts[i], strlen (texts[i]), &parts, &n, &issues) != PH_OK, "%s",
             texts[i]);
      CHECK (!parts && n == 0 && ph_issues_errors (&issues) >= 1, "%s", texts[i]);
      ph_issues_clear (&issues);
    }
}

static void
name_of_a_nameless_rig_is_its_files (void)
{
  static const char *const pairs[][2] = { { "/a/b.rig.json", "b" },
                                          { "b.json", "b" },
                                          { "./b", "b" },
                                          { "/a/.rig.json", ".rig" },
                                          { "x/b\xFF.rig.json", "b?" } };
  for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++)
    {
      char *name = ph_rig_name_of_path (pairs[i][0]);
      CHECK_TEXT (name, pairs[i][1]);
      free (name);
    }
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
      ph_rig_free (parse (text, &issues));
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
  CASE (defaults_stand_where_the_file_is_silent);
  CASE (examples_load_without_a_note_and_survive_saving);
  CASE (file_with_every_key_is_written_as_it_stood);
  CASE (every_double_reads_back_bit_by_bit);
  CASE (changed_default_is_written_and_untouched_default_is_not);
  CASE (shared_layout_says_nothing_about_the_archer);
  CASE (parts_go_over_the_clipboard_and_come_back_equal);
  CASE (what_is_no_fragment_is_refused);
  CASE (name_of_a_nameless_rig_is_its_files);
  CASE (hostile_file_of_a_megabyte_is_refused_quickly);
  return check_end ();
}
