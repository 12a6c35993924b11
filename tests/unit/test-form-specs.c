/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The form against the table of the rig file's keys: every number that a kind of part, the bow or
 * the archer has can be seen and typed, once.
 */
#include "document-fixture.h"
#include "model/fields.h"
#include "widgets/form-specs.h"

/* How many rows a component of a key has for a kind of part (bow and archer: any kind). */
static int
rows_of (PhObject object, const char *key, int component, PhPartKind kind)
{
  gsize n;
  int rows = 0;
  PhNumberOf of = object == PH_OBJECT_PART  ? PH_NUMBER_PART
                  : object == PH_OBJECT_BOW ? PH_NUMBER_BOW
                                            : PH_NUMBER_ARCHER;
  const PhFormSpec *specs = ph_form_specs (object == PH_OBJECT_PART ? 0 : -1, &n);
  for (gsize i = 0; i < n; i++)
    rows += specs[i].of == of && strcmp (specs[i].key, key) == 0 && specs[i].component == component
            && (object != PH_OBJECT_PART || (specs[i].kinds & 1u << kind));
  return rows;
}

static void
check_object (PhObject object, PhPartKind kind)
{
  size_t n;
  const PhField *fields = ph_fields_of (object, &n);
  for (size_t i = 0; i < n; i++)
    {
      if (object == PH_OBJECT_PART && !(fields[i].kinds & 1u << kind))
        continue;
      for (int c = 0; c < ph_field_components (&fields[i]); c++)
        CHECK (rows_of (object, fields[i].key, c, kind) == 1, "%s of %s, component %d: %d rows",
               fields[i].key, ph_part_kind_word (kind), c,
               rows_of (object, fields[i].key, c, kind));
    }
}

static void
every_number_of_every_part_has_one_row (void)
{
  for (PhPartKind kind = PH_PART_BAR; kind < PH_PART_KINDS; kind++)
    check_object (PH_OBJECT_PART, kind);
}

static void
every_number_of_bow_and_archer_has_one_row (void)
{
  check_object (PH_OBJECT_BOW, PH_PART_BAR);
  check_object (PH_OBJECT_ARCHER, PH_PART_BAR);
}

static void
every_row_has_a_name_that_is_no_key (void)
{
  for (int part = -1; part <= 0; part++)
    {
      gsize n;
      const PhFormSpec *specs = ph_form_specs (part, &n);
      for (gsize i = 0; i < n; i++)
        {
          /* Points from the grip are named by their direction. */
          gboolean point = g_strcmp0 (specs[i].key, "at_mm") == 0;
          g_autofree char *label = ph_form_spec_label (&specs[i]);
          CHECK (point || !strchr (label, '_'), "%s", label);
        }
    }
}

static gboolean
applies (const Fixture *f, const char *id, const char *key)
{
  const PhRig *rig = ph_document_get_rig (f->document);
  gsize n;
  int part = ph_rig_find (rig, id);
  const PhFormSpec *specs = ph_form_specs (part, &n);
  for (gsize i = 0; i < n; i++)
    if (g_strcmp0 (specs[i].key, key) == 0 && ph_form_spec_applies (&specs[i], rig, part))
      return TRUE;
  return FALSE;
}

static void
a_stack_along_a_bar_has_a_place_instead_of_angles (void)
{
  Fixture f = fixture_new ();
  CHECK (applies (&f, "back-stack", "swing_deg") && !applies (&f, "back-stack", "along_mm"));
  CHECK (ph_document_set_number (f.document, "back-stack", "along_mm", 0, 100, NULL));
  CHECK (!applies (&f, "back-stack", "swing_deg") && applies (&f, "back-stack", "along_mm"));
  fixture_clear (&f);
}

static void
a_rest_without_an_aperture_shows_none (void)
{
  Fixture f = fixture_new ();
  CHECK (!applies (&f, "sight", "aperture_mm"));
  CHECK (ph_document_set_number (f.document, "sight", "aperture_mm", 0, 290, NULL));
  CHECK (applies (&f, "sight", "aperture_mm"));
  fixture_clear (&f);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (every_number_of_every_part_has_one_row);
  CASE (every_number_of_bow_and_archer_has_one_row);
  CASE (every_row_has_a_name_that_is_no_key);
  CASE (a_stack_along_a_bar_has_a_place_instead_of_angles);
  CASE (a_rest_without_an_aperture_shows_none);
  return check_end ();
}
