/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Archer, bow and parts in the order in which the file has them. What was absent stays absent, so
 * that a file that is opened and saved again gains no key.
 */
#include "store/rig-json.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/number.h"
#include "base/text.h"
#include "store/part-json.h"
#include "store/reader.h"
#include "store/writer.h"

#define VERSION 1
#define EVERY (~0u)

bool
ph_format_read (const PhJson *json, const char *format, PhIssues *issues)
{
  PhPlace place = { .json = json, .issues = issues, .where = PH_WHERE_FILE };
  const PhJsonNode *root = ph_json_root (json);
  if (!ph_read_is_object (&place, NULL, root))
    return false;
  const PhJsonNode *its = ph_read_key (root, "format"), *version = ph_read_key (root, "version");
  const char *text = NULL;
  double number = VERSION;
  if (!its)
    ph_place_error (&place, "format", "is missing; it should be \"%s\"", format);
  else if (ph_read_text (&place, "format", its, &text) && strcmp (text, format) != 0)
    {
      char *cut = ph_text_cut (text, 80);
      ph_place_error (&place, "format", "is “%s”; it should be \"%s\"", cut, format);
      free (cut);
      text = NULL;
    }
  if (!version)
    ph_place_error (&place, "version", "is missing; it should be %d", VERSION);
  else if (!ph_read_number (&place, "version", version, &number))
    return false;
  char digits[PH_NUMBER_SIZE];
  if (number > VERSION && floor (number) == number)
    ph_place_error (&place, "version", "is %s, which a newer Plumbhold wrote; this one reads %d",
                    ph_number_print (number, digits), VERSION);
  else if (number != VERSION)
    ph_place_error (&place, "version", "is %s; it should be %d", ph_number_print (number, digits),
                    VERSION);
  return text && version && number == VERSION;
}

PhJsonNode *
ph_format_write (const char *format)
{
  PhJsonNode *root = ph_json_new_object ();
  ph_json_add_text (root, "format", format);
  ph_json_add_number (root, "version", VERSION);
  return root;
}

static void
read_draws (const PhPlace *place, const PhJsonNode *node, PhCheck *check)
{
  const PhJsonNode *list = ph_read_key (node, "draws_deg");
  if (!list || !ph_read_is_array (place, "draws_deg", list))
    return;
  check->given |= PH_GIVEN_LIST;
  check->draws_deg = ph_alloc ((ph_read_count (list) + 1) * sizeof *check->draws_deg);
  for (const PhJsonNode *draw = ph_read_first (list); draw; draw = ph_read_next (draw))
    if (ph_read_number (place, "draws_deg", draw, &check->draws_deg[check->n_draws]))
      check->n_draws++;
}

static void
read_check (const PhPlace *place, PhJsonNode *node, PhCheck *check)
{
  static const char *const also[] = { "draws_deg", NULL };
  *check = ph_check_default ();
  if (!ph_read_is_object (place, NULL, node))
    return;
  ph_read_fields (place, PH_OBJECT_CHECK, EVERY, node, check, &check->given);
  read_draws (place, node, check);
  ph_read_extras (place, node, true, PH_OBJECT_CHECK, EVERY, also, &check->extras);
}

static void
read_checks (const PhPlace *place, const PhJsonNode *hand, PhArcher *archer)
{
  const PhJsonNode *list = ph_read_key (hand, "bubble_tests");
  if (!list || !ph_read_is_array (place, "bubble_tests", list))
    return;
  archer->hand_given |= PH_GIVEN_CHECKS;
  archer->checks = ph_alloc_zeroed (ph_read_count (list) + 1, sizeof *archer->checks);
  for (PhJsonNode *node = ph_read_first (list); node; node = ph_read_next (node))
    {
      char *inside;
      PhPlace deeper = ph_place_inside (place, "bubble_tests", (int)archer->n_checks, &inside);
      read_check (&deeper, node, &archer->checks[archer->n_checks++]);
      free (inside);
    }
}

static void
read_hand (const PhPlace *place, const PhJsonNode *object, PhArcher *archer)
{
  static const char *const also[] = { "bubble_tests", NULL };
  PhJsonNode *node = ph_read_key (object, "hand");
  if (!node || !ph_read_is_object (place, "hand", node))
    return;
  archer->hand_present = true;
  char *inside;
  PhPlace deeper = ph_place_inside (place, "hand", -1, &inside);
  ph_read_fields (&deeper, PH_OBJECT_HAND, EVERY, node, archer, &archer->hand_given);
  read_checks (&deeper, node, archer);
  ph_read_extras (&deeper, node, true, PH_OBJECT_HAND, EVERY, also, &archer->hand_extras);
  free (inside);
}

static void
read_archer (const PhJson *json, PhArcher *archer, PhIssues *issues)
{
  static const char *const also[] = { "hand", NULL };
  PhPlace place = { .json = json, .issues = issues, .where = PH_WHERE_ARCHER };
  PhJsonNode *node = ph_read_key (ph_json_root (json), "archer");
  if (!node || !ph_read_is_object (&place, NULL, node))
    return;
  archer->present = true;
  ph_read_fields (&place, PH_OBJECT_ARCHER, EVERY, node, archer, &archer->given);
  read_hand (&place, node, archer);
  ph_read_extras (&place, node, true, PH_OBJECT_ARCHER, EVERY, also, &archer->extras);
}

static void
read_bow (const PhJson *json, PhBow *bow, PhIssues *issues)
{
  static const char *const also[] = { "mounts", "sd", NULL };
  PhPlace place = { .json = json, .issues = issues, .where = PH_WHERE_BOW };
  PhJsonNode *node = ph_read_key (ph_json_root (json), "bow");
  if (!node)
    ph_place_error (&place, NULL,
                    "is missing; it should be an object with mass_g, com_mm and "
                    "gyration_mm");
  if (!node || !ph_read_is_object (&place, NULL, node))
    return;
  ph_read_fields (&place, PH_OBJECT_BOW, EVERY, node, bow, &bow->given);
  ph_sockets_read (&place, node, "mounts", &bow->mounts, &bow->n_mounts, &bow->given);
  ph_sds_read (&place, node, &bow->sds, &bow->n_sds, &bow->given);
  ph_read_extras (&place, node, true, PH_OBJECT_BOW, EVERY, also, &bow->extras);
}

void
ph_parts_read (const PhJson *json, const PhJsonNode *list, PhPart **parts, size_t *n,
               PhIssues *issues)
{
  *n = 0;
  *parts = ph_alloc_zeroed (ph_read_count (list) + 1, sizeof **parts);
  for (PhJsonNode *node = ph_read_first (list); node; node = ph_read_next (node))
    {
      char label[PH_ISSUE_LABEL_SIZE];
      PhPlace place = { .json = json, .issues = issues, .where = PH_WHERE_PART };
      place.part = ph_part_read_label (node, *n, label);
      ph_part_read (&place, node, NULL, &(*parts)[(*n)++]);
    }
}

bool
ph_rig_read (const PhJson *json, PhRig *rig, PhIssues *issues)
{
  static const char *const known[] = { "format", "version", "name",  "notes", "book",
                                       "archer", "bow",     "parts", NULL };
  if (!ph_format_read (json, "plumbhold-rig", issues))
    return false;
  PhPlace place = { .json = json, .issues = issues, .where = PH_WHERE_FILE };
  PhJsonNode *root = ph_json_root (json);
  const PhJsonNode *parts = ph_read_key (root, "parts");
  rig->name = ph_read_optional_text (&place, root, "name");
  rig->notes = ph_read_optional_text (&place, root, "notes");
  rig->book = ph_read_optional_text (&place, root, "book");
  read_archer (json, &rig->archer, issues);
  read_bow (json, &rig->bow, issues);
  if (parts && ph_read_is_array (&place, "parts", parts))
    ph_parts_read (json, parts, &rig->parts, &rig->n_parts, issues);
  ph_read_extras (&place, root, false, PH_OBJECT_BOW, 0, known, &rig->extras);
  return true;
}

static void
write_checks (const PhArcher *archer, PhJsonNode *hand)
{
  if (!archer->n_checks && !(archer->hand_given & PH_GIVEN_CHECKS))
    return;
  PhJsonNode *list = ph_json_add_array (hand, "bubble_tests");
  for (size_t i = 0; i < archer->n_checks; i++)
    {
      const PhCheck *check = &archer->checks[i];
      PhJsonNode *node = ph_json_new_object ();
      ph_write_fields (PH_OBJECT_CHECK, EVERY, check, check->given, node);
      if (check->n_draws || check->given & PH_GIVEN_LIST)
        ph_json_add_numbers (node, "draws_deg", check->draws_deg, check->n_draws);
      ph_write_extras (&check->extras, node);
      ph_json_append (list, node);
    }
}

/* Adds the object unless it is empty and did not stand in the file. */
static void
add_if_any (PhJsonNode *object, const char *key, PhJsonNode *value, bool present)
{
  if (present || ph_read_first (value))
    ph_json_add (object, key, value);
  else
    ph_json_node_free (value);
}

static void
write_archer (const PhArcher *archer, PhJsonNode *root)
{
  PhJsonNode *node = ph_json_new_object (), *hand = ph_json_new_object ();
  ph_write_fields (PH_OBJECT_ARCHER, EVERY, archer, archer->given, node);
  ph_write_fields (PH_OBJECT_HAND, EVERY, archer, archer->hand_given, hand);
  write_checks (archer, hand);
  ph_write_extras (&archer->hand_extras, hand);
  add_if_any (node, "hand", hand, archer->hand_present);
  ph_write_extras (&archer->extras, node);
  add_if_any (root, "archer", node, archer->present);
}

static void
write_bow (const PhBow *bow, PhJsonNode *root)
{
  PhJsonNode *node = ph_json_add_object (root, "bow");
  ph_write_fields (PH_OBJECT_BOW, EVERY, bow, bow->given, node);
  ph_sockets_write (bow->mounts, bow->n_mounts, "mounts", bow->given, node);
  ph_sds_write (bow->sds, bow->n_sds, bow->given, node);
  ph_write_extras (&bow->extras, node);
}

PhJsonNode *
ph_rig_write (const PhRig *rig)
{
  PhJsonNode *root = ph_format_write ("plumbhold-rig");
  if (rig->name)
    ph_json_add_text (root, "name", rig->name);
  if (rig->notes)
    ph_json_add_text (root, "notes", rig->notes);
  if (rig->book)
    ph_json_add_text (root, "book", rig->book);
  write_archer (&rig->archer, root);
  write_bow (&rig->bow, root);
  PhJsonNode *parts = ph_json_add_array (root, "parts");
  for (size_t i = 0; i < rig->n_parts; i++)
    ph_json_append (parts, ph_part_write (&rig->parts[i]));
  ph_write_extras (&rig->extras, root);
  return root;
}
