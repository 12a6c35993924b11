/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One table of numbers a method, for reading and for writing.
 */
#include "store/readings-file.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "store/read-file.h"
#include "store/reader.h"

typedef struct
{
  const char *key;
  size_t offset;
  bool is_sd; /* may be left out, 0 or more */
} Number;

#define VALUE(key)                                                                                 \
  {                                                                                                \
#key, offsetof(PhReadings, key), false                                                         \
  }
#define SD(key)                                                                                    \
  {                                                                                                \
#key, offsetof(PhReadings, key), true                                                          \
  }

static const Number of_scales[] = { VALUE (f1_n), VALUE (f2_n), VALUE (d_mm),
                                    SD (sd_n),    SD (sd_mm),   { 0 } };
static const Number of_swing[] = { VALUE (mass_g),  VALUE (distance_mm),
                                   VALUE (swings),  VALUE (seconds),
                                   SD (sd_mass_g),  SD (sd_distance_mm),
                                   SD (sd_seconds), { 0 } };
static const Number of_two_string[] = {
  VALUE (mass_g), VALUE (spacing_mm), VALUE (length_mm), VALUE (swings),  VALUE (seconds),
  SD (sd_mass_g), SD (sd_spacing_mm), SD (sd_length_mm), SD (sd_seconds), { 0 }
};
static const Number none[] = { { 0 } };
static const Number *const numbers_of[PH_METHODS] = { of_scales, none, of_swing, of_two_string };

static double *
number_at (const PhReadings *readings, const Number *number)
{
  return (double *)(void *)((char *)(uintptr_t)readings + number->offset);
}

static bool
has_axis (PhMethod method)
{
  return method == PH_METHOD_SWING || method == PH_METHOD_TWO_STRING;
}

static void
read_number (const PhPlace *place, const PhJsonNode *object, const Number *number, double *value)
{
  const PhJsonNode *node = ph_read_key (object, number->key);
  if (!node && !number->is_sd)
    ph_place_error (place, number->key, "is missing; it should be a number");
  if (!node || !ph_read_number (place, number->key, node, value))
    return;
  if (!isfinite (*value))
    ph_place_error (place, number->key, "should be a finite number");
  else if (number->is_sd && *value < 0)
    ph_place_error (place, number->key, "a standard deviation should be 0 or more");
}

static void
read_axis (const PhPlace *place, const PhJsonNode *object, int *axis)
{
  const PhJsonNode *node = ph_read_key (object, "axis");
  const char *word = NULL;
  if (!node)
    ph_place_error (place, "axis", "is missing; it should be \"x\", \"y\" or \"z\"");
  else if (ph_read_text (place, "axis", node, &word))
    {
      if (strlen (word) == 1 && *word >= 'x' && *word <= 'z')
        *axis = *word - 'x';
      else
        ph_place_error (place, "axis", "should be \"x\", \"y\" or \"z\"");
    }
}

static void
read_vector (const PhPlace *place, const PhJsonNode *object, const char *key, double v[3])
{
  const PhJsonNode *node = ph_read_key (object, key);
  if (!node)
    ph_place_error (place, key, "is missing; it should be three numbers");
  else if (ph_read_numbers (place, key, node, v, 3)
           && !(isfinite (v[0]) && isfinite (v[1]) && isfinite (v[2])))
    ph_place_error (place, key, "should be three finite numbers");
}

static void
note_unknown (const PhPlace *place, const PhJsonNode *object, PhMethod method, bool line)
{
  static const char *const of_line[] = { "point_mm", "direction", "sd_mm", NULL };
  for (const PhJsonNode *node = ph_read_first (object); node; node = ph_read_next (node))
    {
      const char *key = ph_read_name (node);
      bool known = !line && strcmp (key, method == PH_METHOD_HANGING ? "lines" : "axis") == 0
                   && method != PH_METHOD_SCALES;
      for (const Number *number = numbers_of[method]; number->key; number++)
        known = known || strcmp (key, number->key) == 0;
      for (int i = 0; line && of_line[i]; i++)
        known = known || strcmp (key, of_line[i]) == 0;
      if (known)
        continue;
      char *cut = ph_text_cut (key, 80), *whole = ph_text_printf ("%s%s", place->inside, cut);
      ph_issues_add (place->issues, place->where, place->part, whole, true,
                     "is no key of this method; it is not used");
      free (whole);
      free (cut);
    }
}

static void
read_line (const PhPlace *place, const PhJsonNode *node, PhReadings *readings)
{
  static const Number sd = { "sd_mm", 0, true };
  PhReadLine line = { .sd_mm = PH_READING_SD_LINE_MM };
  if (!ph_read_is_object (place, NULL, node))
    return;
  size_t before = ph_issues_errors (place->issues);
  read_vector (place, node, "point_mm", line.point_mm);
  read_vector (place, node, "direction", line.direction);
  read_number (place, node, &sd, &line.sd_mm);
  note_unknown (place, node, PH_METHOD_HANGING, true);
  if (ph_issues_errors (place->issues) > before)
    return;
  const double *d = line.direction;
  if (d[0] == 0 && d[1] == 0 && d[2] == 0)
    ph_place_error (place, "direction", "is 0 long; it should point along the plumb line");
  else if (!(line.sd_mm > 0))
    ph_place_error (place, "sd_mm", "is 0; no plumb line is that exact, it should be above 0");
  else
    ph_readings_add_line (readings, &line);
}

static void
read_lines (const PhPlace *place, const PhJsonNode *object, PhReadings *readings)
{
  const PhJsonNode *list = ph_read_key (object, "lines");
  int index = 0;
  if (!list)
    ph_place_error (place, "lines", "is missing; it should be a list of plumb lines");
  if (!list || !ph_read_is_array (place, "lines", list))
    return;
  for (const PhJsonNode *node = ph_read_first (list); node; node = ph_read_next (node))
    {
      char *inside;
      PhPlace deeper = ph_place_inside (place, "lines", index++, &inside);
      read_line (&deeper, node, readings);
      free (inside);
    }
}

static void
read_method (const PhPlace *place, const PhJsonNode *object, PhReadings *readings)
{
  const char *word = ph_method_word (readings->method);
  if (!ph_read_is_object (place, word, object))
    return;
  char *inside;
  PhPlace deeper = ph_place_inside (place, word, -1, &inside);
  for (const Number *number = numbers_of[readings->method]; number->key; number++)
    read_number (&deeper, object, number, number_at (readings, number));
  if (has_axis (readings->method))
    read_axis (&deeper, object, &readings->axis);
  if (readings->method == PH_METHOD_HANGING)
    read_lines (&deeper, object, readings);
  note_unknown (&deeper, object, readings->method, false);
  free (inside);
}

static void
read_root (const PhJson *json, PhReadings *readings, PhIssues *issues)
{
  PhPlace place = { .json = json, .issues = issues, .where = PH_WHERE_FILE };
  const PhJsonNode *root = ph_json_root (json), *found = NULL;
  int methods = 0;
  if (!ph_read_is_object (&place, NULL, root))
    return;
  for (int m = 0; m < PH_METHODS; m++)
    {
      const PhJsonNode *node = ph_read_key (root, ph_method_word ((PhMethod)m));
      if (!node)
        continue;
      methods++;
      found = node;
      *readings = ph_readings_default ((PhMethod)m);
    }
  if (methods != 1)
    ph_place_error (&place, NULL,
                    "should hold one of \"scales\", \"hanging\", \"swing\", \"two-string\"; it "
                    "holds %s",
                    methods ? "more than one" : "none");
  else
    read_method (&place, found, readings);
}

PhStatus
ph_readings_parse (const char *bytes, size_t size, PhReadings *readings, PhIssues *issues)
{
  PhIssues found = { 0 };
  PhReadings read = ph_readings_default (PH_METHOD_SCALES);
  PhJson *json = ph_json_parse (bytes, size, &found);
  if (json)
    read_root (json, &read, &found);
  PhStatus status = !json ? PH_ERR_SYNTAX : ph_issues_errors (&found) ? PH_ERR_INVALID : PH_OK;
  ph_json_free (json);
  ph_issues_move (&found, issues);
  if (status == PH_OK)
    *readings = read;
  else
    ph_readings_clear (&read);
  return status;
}

PhStatus
ph_readings_load (const char *path, PhReadings *readings, PhIssues *issues)
{
  char *bytes, *why;
  size_t size;
  PhStatus status = ph_read_file (path, PH_READINGS_FILE_MOST, &bytes, &size, &why);
  if (status != PH_OK)
    {
      ph_issues_add (issues, PH_WHERE_FILE, NULL, NULL, false, "%s", why);
      free (why);
      return status;
    }
  status = ph_readings_parse (bytes, size, readings, issues);
  free (bytes);
  return status;
}

PhJsonNode *
ph_readings_write (const PhReadings *readings)
{
  static const char *const axes[] = { "x", "y", "z" };
  PhJsonNode *root = ph_json_new_object ();
  PhJsonNode *node = ph_json_add_object (root, ph_method_word (readings->method));
  if (has_axis (readings->method))
    ph_json_add_text (node, "axis", axes[readings->axis]);
  for (const Number *number = numbers_of[readings->method]; number->key; number++)
    ph_json_add_number (node, number->key, *number_at (readings, number));
  if (readings->method != PH_METHOD_HANGING)
    return root;
  PhJsonNode *lines = ph_json_add_array (node, "lines");
  for (size_t i = 0; i < readings->n_lines; i++)
    {
      PhJsonNode *line = ph_json_new_object ();
      ph_json_add_numbers (line, "point_mm", readings->lines[i].point_mm, 3);
      ph_json_add_numbers (line, "direction", readings->lines[i].direction, 3);
      ph_json_add_number (line, "sd_mm", readings->lines[i].sd_mm);
      ph_json_append (lines, line);
    }
  return root;
}
