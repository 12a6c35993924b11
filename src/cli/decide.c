/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words and cells for steps, level and hand.
 */
#include "cli/decide.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/number.h"
#include "base/text.h"

void
ph_decide_append_change (PhJsonNode *list, const PhRig *rig, const PhPartChange *change)
{
  PhJsonNode *node = ph_json_new_object ();
  ph_json_add_text (node, "part", rig->parts[change->part].id);
  ph_json_add_text (node, "key", change->key);
  if (strcmp (change->key, PH_KEY_MIRROR) == 0)
    {
      ph_json_add_flag (node, "from", change->from != 0);
      ph_json_add_flag (node, "to", change->to != 0);
    }
  else
    {
      ph_json_add_number (node, "from", change->from);
      ph_json_add_number (node, "to", change->to);
    }
  ph_json_append (list, node);
}

const char *
ph_decide_key_words (const char *key)
{
  if (strcmp (key, "swing_deg") == 0)
    return "sideways";
  return strcmp (key, "lift_deg") == 0 ? "up and down" : "weights";
}

char *
ph_decide_change_words (const PhRig *rig, const PhPartChange *change)
{
  char from[PH_NUMBER_SIZE], to[PH_NUMBER_SIZE];
  char *name = ph_text_cut (ph_part_name (&rig->parts[change->part]), 32), *words;
  if (strcmp (change->key, PH_KEY_MIRROR) == 0)
    words = ph_text_printf ("%s to the other side", name);
  else
    {
      const char *unit = strcmp (change->key, "count") == 0 ? "" : "°";
      words = ph_text_printf ("%s %s %s%s → %s%s", name, ph_decide_key_words (change->key),
                              ph_number_print (change->from, from), unit,
                              ph_number_print (change->to, to), unit);
    }
  free (name);
  return words;
}

const char *
ph_decide_show (PhQuantity quantity, PhUnits units, double file_value, char cell[PH_CELL])
{
  if (!isfinite (file_value))
    return "–";
  return ph_quantity_print (file_value, quantity, units, ".", cell, PH_CELL);
}

const char *
ph_decide_show_change (PhQuantity quantity, PhUnits units, double file_value, char cell[PH_CELL])
{
  if (!isfinite (file_value))
    return "–";
  double shown = ph_quantity_to_shown (quantity, units, file_value);
  int digits = ph_quantity_digits (quantity, units) + 1;
  const char *unit = ph_quantity_unit (quantity, units);
  ph_decide_show_signed (shown, digits, cell);
  size_t length = strlen (cell);
  snprintf (cell + length, PH_CELL - length, "%s%s", strcmp (unit, "°") == 0 ? "" : " ", unit);
  return cell;
}

const char *
ph_decide_show_signed (double value, int digits, char cell[PH_CELL])
{
  bool none = fabs (value) < 0.5 * pow (10, -digits);
  snprintf (cell, PH_CELL, "%+.*f", digits, none ? 0 : value);
  return cell;
}

void
ph_decide_print_json (PhJsonNode *root)
{
  char *text = ph_json_print (root, NULL);
  fputs (text, stdout);
  free (text);
  ph_json_node_free (root);
}
