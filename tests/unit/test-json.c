/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Strict JSON. What is and is not JSON: RFC 8259, its grammar rule by rule; UTF-8: RFC 3629. The
 * choice of awkward texts follows N. Seriot, "Parsing JSON is a minefield" (2016), from memory.
 */
#include "store/json.h"

#include <float.h>
#include <locale.h>

#include "base/number.h"
#include "base/text.h"
#include "check.h"
#include "store/reader.h"

/* Text and length, so that a NUL may stand inside. */
#define BYTES(literal) literal, sizeof (literal) - 1

typedef struct
{
  const char *bytes;
  size_t size;
  const char *says; /* what the error must hold */
} Bad;

static char *
error_of (const char *bytes, size_t size)
{
  PhIssues issues = { 0 };
  PhJson *json = ph_json_parse (bytes, size, &issues);
  CHECK (!json && issues.n == 1, "«%.60s» was accepted", bytes);
  char *line = issues.n ? ph_issue_line (&issues.items[0]) : ph_text_dup ("");
  ph_json_free (json);
  ph_issues_clear (&issues);
  return line;
}

static void
check_bad (const Bad *bad, size_t n)
{
  for (size_t i = 0; i < n; i++)
    {
      char *line = error_of (bad[i].bytes, bad[i].size);
      CHECK (strstr (line, bad[i].says), "case %zu: «%s» lacks «%s»", i, line, bad[i].says);
      free (line);
    }
}

static void
check_good (const char *const *texts, size_t n)
{
  for (size_t i = 0; i < n; i++)
    {
      PhIssues issues = { 0 };
      PhJson *json = ph_json_parse (texts[i], strlen (texts[i]), &issues);
      CHECK (json && issues.n == 0, "«%s» was refused", texts[i]);
      ph_json_free (json);
      ph_issues_clear (&issues);
    }
}

#define CHECK_BAD(list) check_bad (list, sizeof list / sizeof *list)
#define CHECK_GOOD(list) check_good (list, sizeof list / sizeof *list)

static void
every_kind_of_value_is_read (void)
{
  static const char *const good[] = { "{}",
                                      "[]",
                                      " \t\r\n[ ] \t\r\n",
                                      "null",
                                      "true",
                                      "\"\"",
                                      "0",
                                      "-0",
                                      "{\"a\":{\"b\":[1,{\"c\":[]}]}}",
                                      "[[],[[]],{}]",
                                      "[0,-0.5,1e3,1E+3,1e-3,123456789012345678901234567890,2.50]",
                                      "\"\\u00e9\\uD834\\uDD1E\\\"\\\\\\/\\b\\f\\n\\r\\t\"",
                                      "\"\xC3\xA9\xF0\x9D\x84\x9E\x7F\"",
                                      "{\"\":0}" };
  CHECK_GOOD (good);
}

static void
what_is_no_number_is_refused (void)
{
  static const Bad bad[] = { { BYTES ("[01]"), "leading zeros" },
                             { BYTES ("[-01]"), "leading zeros" },
                             { BYTES ("[+1]"), "+1" },
                             { BYTES ("[.5]"), "0.5" },
                             { BYTES ("[5.]"), "decimal point needs digits" },
                             { BYTES ("[1e]"), "exponent needs digits" },
                             { BYTES ("[1e+]"), "exponent needs digits" },
                             { BYTES ("[-]"), "minus sign needs digits" },
                             { BYTES ("[0x10]"), "no number" },
                             { BYTES ("[1.2.3]"), "no number" },
                             { BYTES ("[1_000]"), "no number" },
                             { BYTES ("[12mm]"), "no number" },
                             { BYTES ("[1 2]"), "comma or ]" },
                             { BYTES ("[\xEF\xBC\x91]"), "no JSON value" } };
  CHECK_BAD (bad);
}

static void
what_is_no_structure_is_refused (void)
{
  static const Bad bad[] = {
    { BYTES ("[1,]"), "comma before ]" },      { BYTES ("{\"a\":1,}"), "comma before }" },
    { BYTES ("[,1]"), "no JSON value" },       { BYTES ("[1,,2]"), "no JSON value" },
    { BYTES ("{a:1}"), "double quotes" },      { BYTES ("{'a':1}"), "double quotes" },
    { BYTES ("{1:1}"), "double quotes" },      { BYTES ("{\"a\" 1}"), "colon" },
    { BYTES ("{\"a\":}"), "no JSON value" },   { BYTES ("[1}"), "comma or ]" },
    { BYTES ("{\"a\":1]"), "comma or }" },     { BYTES ("]"), "no JSON value" },
    { BYTES ("[] []"), "after the end" },      { BYTES ("{} // end"), "after the end" },
    { BYTES ("/* c */ {}"), "no JSON value" }, { BYTES ("True"), "no JSON value" },
    { BYTES ("nul"), "no JSON value" },        { BYTES ("truex"), "behind a word" }
  };
  CHECK_BAD (bad);
}

static void
what_is_no_text_is_refused (void)
{
  static const Bad bad[] = {
    { BYTES ("[\"a\nb\"]"), "control character" }, { BYTES ("[\"a\tb\"]"), "control character" },
    { BYTES ("[\"a\0b\"]"), "NUL byte" },          { BYTES ("[\"\\u0000\"]"), "\\u0000" },
    { BYTES ("[\"\\x41\"]"), "unknown escape" },   { BYTES ("[\"\\u12\"]"), "four hexadecimal" },
    { BYTES ("[\"\\uD800\"]"), "surrogate" },      { BYTES ("[\"\\uD800\\u0041\"]"), "surrogate" },
    { BYTES ("[\"\\uDC00\"]"), "surrogate" },      { BYTES ("[\"\\uD834\\uD834\"]"), "surrogate" },
    { BYTES ("[\"abc]"), "no closing quote" },     { BYTES ("[\"abc\\\"]"), "no closing quote" }
  };
  CHECK_BAD (bad);
}

static void
what_is_cut_off_says_so (void)
{
  static const char whole[] =
      "{\"format\": \"plumbhold-rig\", \"bow\": {\"com_mm\": [-18, 1e3, 12]}}";
  for (size_t n = 0; n < sizeof whole - 1; n++)
    {
      char *line = error_of (whole, n);
      CHECK (strstr (line, "too early") || strstr (line, "no closing quote")
                 || strstr (line, "is empty"),
             "%zu bytes: %s", n, line);
      free (line);
    }
}

static void
bytes_that_are_not_utf8_are_refused_where_they_stand (void)
{
  static const Bad bad[] = { { BYTES ("{\n \"n\xC3\xA9\": \"\xFF\"}"), "line 2, column 9" },
                             { BYTES ("[\"\xC0\x80\"]"), "not UTF-8" },
                             { BYTES ("[\"\xED\xA0\x80\"]"), "not UTF-8" },
                             { BYTES ("[\"\xF4\x90\x80\x80\"]"), "not UTF-8" },
                             { BYTES ("[\"\xC3\"]"), "not UTF-8" },
                             { BYTES ("\xEF\xBB\xBF{}"), "byte-order mark" },
                             { BYTES ("\xFF\xFE{\0}\0"), "not UTF-8" },
                             { BYTES ("{\0}\0"), "double quotes" },
                             { BYTES (""), "is empty" },
                             { BYTES (" \n"), "blanks" } };
  CHECK_BAD (bad);
}

static void
error_names_line_and_column (void)
{
  char *line = error_of (BYTES ("{\n  \"mass_g\": 1,\n  \"é\": 01\n}"));
  CHECK (strncmp (line, "line 3, column 8: ", 18) == 0, "%s", line);
  free (line);
}

/* `depth` arrays in one another. */
static char *
nested (size_t depth, const char *open, const char *close, size_t *size)
{
  size_t a = strlen (open), b = strlen (close);
  char *text = ph_alloc (depth * (a + b) + 2);
  for (size_t i = 0; i < depth; i++)
    memcpy (text + i * a, open, a);
  text[depth * a] = '0';
  for (size_t i = 0; i < depth; i++)
    memcpy (text + depth * a + 1 + i * b, close, b);
  *size = depth * (a + b) + 1;
  text[*size] = '\0';
  return text;
}

static void
deep_nesting_is_refused_without_recursion (void)
{
  size_t size;
  char *text = nested (500000, "[", "]", &size);
  char *line = error_of (text, size);
  CHECK (strstr (line, "200 deep"), "%s", line);
  free (line);
  free (text);
  text = nested (10000, "{\"a\":", "}", &size);
  line = error_of (text, size);
  CHECK (strstr (line, "200 deep"), "%s", line);
  free (line);
  free (text);
  text = nested (200, "[", "]", &size);
  check_good ((const char *const *)&text, 1);
  free (text);
}

static double
number_in (const char *text)
{
  PhIssues issues = { 0 };
  PhJson *json = ph_json_parse (text, strlen (text), &issues);
  PhPlace place = { .json = json, .issues = &issues };
  double value = NAN;
  CHECK (json && ph_read_number (&place, "n", ph_read_first (ph_json_root (json)), &value), "%s",
         text);
  ph_json_free (json);
  ph_issues_clear (&issues);
  return value;
}

/* cJSON 1.7 alone copies at most 63 characters of a number: the second would be 1e59. */
static void
long_numbers_are_read_to_the_last_digit (void)
{
  CHECK (number_in ("[0.1000000000000000055511151231257827021181583404541015625]") == 0.1);
  CHECK (
      number_in ("[100000000000000000000000000000000000000000000000000000000000000000000000e-71]")
      == 1.0);
  CHECK (number_in ("[0.00000000000000000000000000000000000000000000000000000000000000000000025]")
         == 2.5e-70);
  CHECK (number_in ("[1.7976931348623157e308]") == DBL_MAX);
  CHECK (number_in ("[1e-400]") == 0);
  CHECK (signbit (number_in ("[-0]")));
}

static void
numbers_are_read_and_written_alike_in_any_locale (void)
{
  const char *found = setlocale (LC_ALL, "de_DE.UTF-8");
  CHECK (number_in ("[28.35]") == 28.35, "locale %s", found ? found : "C");
  PhJsonNode *root = ph_json_new_object ();
  ph_json_add_number (root, "a", 28.35);
  char *text = ph_json_print (root, NULL);
  CHECK_TEXT (text, "{\n  \"a\": 28.35\n}\n");
  free (text);
  ph_json_node_free (root);
  setlocale (LC_ALL, "C");
}

static void
numbers_too_large_and_words_for_them_are_marked_for_the_reader (void)
{
  static const char *const texts[] = { "1e999",     "-1e999", "NaN", "Infinity",
                                       "-Infinity", "nan",    "inf", "-inf" };
  for (size_t i = 0; i < sizeof texts / sizeof *texts; i++)
    {
      PhIssues issues = { 0 };
      char *text = ph_text_printf ("{\"mass_g\": %s}", texts[i]);
      PhJson *json = ph_json_parse (text, strlen (text), &issues);
      CHECK (json && ph_json_not_finite (json) == 1, "%s", text);
      PhPlace place = { .json = json, .issues = &issues };
      double value = 7;
      if (json)
        CHECK (!ph_read_number (&place, "mass_g", ph_read_first (ph_json_root (json)), &value));
      CHECK (value == 7 && issues.n == 1 && strstr (issues.items[0].text, texts[i])
             && strstr (issues.items[0].text, "finite"));
      ph_json_free (json);
      ph_issues_clear (&issues);
      free (text);
    }
}

static size_t
repeated_in (const char *text, char *first, size_t room)
{
  PhIssues issues = { 0 };
  const char **keys;
  PhJson *json = ph_json_parse (text, strlen (text), &issues);
  size_t n = ph_json_repeated_keys (ph_json_root (json), &keys);
  snprintf (first, room, "%s", n ? keys[0] : "");
  free (keys);
  ph_json_free (json);
  ph_issues_clear (&issues);
  return n;
}

static void
repeated_keys_are_found_also_when_written_otherwise (void)
{
  char first[20];
  CHECK (repeated_in ("{\"a\":1,\"b\":2}", first, 20) == 0);
  CHECK (repeated_in ("{\"a\":1,\"A\":2,\"\":3}", first, 20) == 0);
  CHECK (repeated_in ("{\"a\":1,\"b\":2,\"\\u0061\":3}", first, 20) == 1);
  CHECK_TEXT (first, "a");
  CHECK (repeated_in ("{\"b\":1,\"a\":2,\"b\":3,\"a\":4,\"b\":5}", first, 20) == 2);
}

static void
unknown_values_are_kept_as_they_were_written (void)
{
  static const char text[] = "{ \"x\": [1.50, 12345678901234567890, -0.0, 1E5, \"\\u00e9\\n\", "
                             "{\"y\": null, \"z\": true}] }";
  PhIssues issues = { 0 };
  PhJson *json = ph_json_parse (text, strlen (text), &issues);
  char *kept = ph_json_keep (json, ph_json_root (json));
  CHECK_TEXT (kept,
              "{\"x\":[1.50,12345678901234567890,-0.0,1E5,\"é\\n\",{\"y\":null,\"z\":true}]}");
  PhJsonNode *again = ph_json_kept (kept);
  char *printed = ph_json_print (again, NULL);
  CHECK_TEXT (printed, "{\n  \"x\": [1.50, 12345678901234567890, -0.0, 1E5, \"é\\n\", "
                       "{\"y\": null, \"z\": true}]\n}\n");
  free (printed);
  free (kept);
  ph_json_node_free (again);
  ph_json_free (json);
}

static void
text_that_is_printed_reads_back (void)
{
  char all[0x21 + 8];
  for (int c = 1; c <= 0x20; c++)
    all[c - 1] = (char)c;
  memcpy (all + 0x20, "\"\\/\x7F\xC3\xA9", 7);
  PhJsonNode *root = ph_json_new_object ();
  ph_json_add_text (root, all, all);
  char *text = ph_json_print (root, NULL);
  PhIssues issues = { 0 };
  PhJson *json = ph_json_parse (text, strlen (text), &issues);
  PhPlace place = { .json = json, .issues = &issues };
  const char *read = NULL;
  CHECK (json && ph_read_key (ph_json_root (json), all), "%s", text);
  if (json)
    ph_read_text (&place, all, ph_read_first (ph_json_root (json)), &read);
  CHECK_TEXT (read, all);
  ph_json_free (json);
  free (text);
  ph_json_node_free (root);
}

static void
what_fits_stands_on_one_line_and_the_rest_is_broken (void)
{
  PhJsonNode *root = ph_json_new_object ();
  double many[40];
  for (int i = 0; i < 40; i++)
    many[i] = 1000 + i;
  ph_json_add_numbers (root, "few", many, 3);
  ph_json_add_numbers (root, "none", many, 0);
  ph_json_add_numbers (root, "many", many, 40);
  ph_json_add_number (root, "missing", NAN);
  ph_json_add_text (root, "text", NULL);
  ph_json_add_flag (ph_json_add_object (root, "inside"), "flag", true);
  size_t size;
  char *text = ph_json_print (root, &size);
  CHECK (size == strlen (text));
  CHECK (strncmp (text,
                  "{\n  \"few\": [1000, 1001, 1002],\n  \"none\": [],\n  \"many\": [\n    1000,",
                  65)
             == 0,
         "%s", text);
  CHECK (strstr (text,
                 "\n  \"missing\": null,\n  \"text\": null,\n  \"inside\": {\"flag\": true}\n}\n"),
         "%s", text);
  for (const char *line = text; *line; line = strchr (line, '\n') + 1)
    CHECK (strchr (line, '\n') - line <= 100);
  free (text);
  ph_json_node_free (root);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (every_kind_of_value_is_read);
  CASE (what_is_no_number_is_refused);
  CASE (what_is_no_structure_is_refused);
  CASE (what_is_no_text_is_refused);
  CASE (what_is_cut_off_says_so);
  CASE (bytes_that_are_not_utf8_are_refused_where_they_stand);
  CASE (error_names_line_and_column);
  CASE (deep_nesting_is_refused_without_recursion);
  CASE (long_numbers_are_read_to_the_last_digit);
  CASE (numbers_are_read_and_written_alike_in_any_locale);
  CASE (numbers_too_large_and_words_for_them_are_marked_for_the_reader);
  CASE (repeated_keys_are_found_also_when_written_otherwise);
  CASE (unknown_values_are_kept_as_they_were_written);
  CASE (text_that_is_printed_reads_back);
  CASE (what_fits_stands_on_one_line_and_the_rest_is_broken);
  return check_end ();
}
