/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each kind of number is read, written through the document and tried on a copy. 1 3/4 in between
 * stated and true draw length: physics page, 44.45 mm (1 in = 25.4 mm, NIST SP 811).
 */
#include "document-fixture.h"
#include "model/fields.h"
#include "widgets/guess.h"
#include "widgets/number-range.h"

static double
read_now (const Fixture *f, const PhNumberRef *ref)
{
  return ph_number_ref_read (ref, ph_document_get_rig (f->document));
}

static void
write_now (const Fixture *f, const PhNumberRef *ref, double value)
{
  g_autoptr (GError) error = NULL;
  CHECK (ph_number_ref_write (ref, f->document, value, &error), "%s", error ? error->message : "");
}

static void
each_kind_reads_back_what_was_written (void)
{
  Fixture f = fixture_new ();
  PhNumberRef refs[] = {
    ph_number_ref (PH_NUMBER_PART, "back-bar", "swing_deg", 0),
    ph_number_ref (PH_NUMBER_PART, "sight", "at_mm", 1),
    ph_number_ref (PH_NUMBER_BOW, NULL, "com_mm", 2),
    ph_number_ref (PH_NUMBER_ARCHER, NULL, "nock_height_mm", 0),
    ph_number_ref (PH_NUMBER_ARCHER, NULL, "holding_weight_n", 0),
    ph_number_ref_socket (NULL, "rear", 0),
    ph_number_ref_socket ("block", "a", 1),
    ph_number_ref (PH_NUMBER_END_COUNT, "back-bar", NULL, 0),
  };
  for (gsize i = 0; i < G_N_ELEMENTS (refs); i++)
    {
      write_now (&f, &refs[i], 7);
      CHECK_NEAR (read_now (&f, &refs[i]), 7, 0); /* the very double */
      CHECK (ph_document_undo (f.document));
      CHECK (read_now (&f, &refs[i]) != 7, "undone");
      ph_number_ref_clear (&refs[i]);
    }
  fixture_clear (&f);
}

static void
stated_draw_is_an_inch_and_three_quarters_more (void)
{
  Fixture f = fixture_new ();
  PhNumberRef ref = ph_number_ref (PH_NUMBER_STATED_DRAW, NULL, NULL, 0);
  CHECK_NEAR (read_now (&f, &ref), 660 + 1.75 * 25.4, 1e-12); /* one rounding */
  write_now (&f, &ref, 28 * 25.4);
  CHECK_NEAR (ph_document_get_rig (f.document)->archer.draw_length_mm, 26.25 * 25.4, 1e-12);
  ph_number_ref_clear (&ref);
  fixture_clear (&f);
}

static void
holding_weight_defaults_to_the_bow_kind (void)
{
  PhRig *rig = ph_rig_new ();
  PhNumberRef ref = ph_number_ref (PH_NUMBER_ARCHER, NULL, "holding_weight_n", 0);
  CHECK_NEAR (ph_number_ref_read (&ref, rig), 65, 0);
  rig->bow.kind = PH_BOW_RECURVE;
  CHECK_NEAR (ph_number_ref_read (&ref, rig), 160, 0);
  ph_number_ref_clear (&ref);
  ph_rig_free (rig);
}

static void
weights_at_an_empty_end_make_their_stack (void)
{
  Fixture f = fixture_new ();
  ph_document_remove (f.document, "back-stack");
  ph_document_select (f.document, "back-bar");
  size_t before = ph_document_get_rig (f.document)->n_parts;
  PhNumberRef ref = ph_number_ref (PH_NUMBER_END_COUNT, "back-bar", NULL, 0);
  CHECK_NEAR (read_now (&f, &ref), 0, 0);
  write_now (&f, &ref, 0);
  CHECK (ph_document_get_rig (f.document)->n_parts == before, "none makes no stack");
  write_now (&f, &ref, 3);
  CHECK (ph_document_get_rig (f.document)->n_parts == before + 1);
  CHECK_NEAR (read_now (&f, &ref), 3, 0);
  CHECK_TEXT (ph_document_get_selected (f.document), "back-bar");
  write_now (&f, &ref, 4);
  CHECK (ph_document_get_rig (f.document)->n_parts == before + 1, "the same stack counts on");
  ph_number_ref_clear (&ref);
  fixture_clear (&f);
}

static void
the_stack_behind_a_damper_is_the_bars (void)
{
  Fixture f = fixture_new ();
  PhPart damper = ph_part_default (PH_PART_DAMPER);
  damper.given = ph_given_bit (PH_OBJECT_PART, "mass_g")
                 | ph_given_bit (PH_OBJECT_PART, "length_mm")
                 | ph_given_bit (PH_OBJECT_PART, "diameter_mm");
  damper.name = strdup ("Damper");
  damper.mass_g = 30;
  damper.length_mm = 25;
  damper.diameter_mm = 30;
  ph_document_remove (f.document, "back-stack");
  CHECK (ph_document_add (f.document, &damper, "back-bar", NULL));
  ph_part_clear (&damper);
  PhNumberRef ref = ph_number_ref (PH_NUMBER_END_COUNT, "back-bar", NULL, 0);
  write_now (&f, &ref, 2);
  const PhRig *rig = ph_document_get_rig (f.document);
  int stack = ph_end_stack (rig, ph_rig_find (rig, "back-bar"));
  CHECK (stack >= 0 && strcmp (rig->parts[stack].on, "damper") == 0);
  ph_number_ref_clear (&ref);
  fixture_clear (&f);
}

static void
a_refused_number_says_why_and_changes_nothing (void)
{
  Fixture f = fixture_new ();
  g_autoptr (GError) error = NULL;
  PhNumberRef ref = ph_number_ref (PH_NUMBER_PART, "back-bar", "length_mm", 0);
  CHECK (!ph_number_ref_write (&ref, f.document, -5, &error));
  CHECK (error && *error->message);
  CHECK_NEAR (read_now (&f, &ref), 305, 0);
  ph_number_ref_clear (&ref);
  fixture_clear (&f);
}

static void
a_range_is_the_parts_own_limits_or_the_default (void)
{
  Fixture f = fixture_new ();
  PhRig *rig = ph_rig_copy (ph_document_get_rig (f.document));
  PhNumberRef ref = ph_number_ref (PH_NUMBER_PART, "back-bar", "swing_deg", 0);
  PhNumberRange range = ph_number_range (&ref, rig, PH_UNITS_MIXED);
  CHECK (range.slider && range.lo == -60 && range.hi == 60 && range.step == 1); /* deciding 1 */
  rig->parts[ph_rig_find (rig, "back-bar")].limit_swing = (PhLimits){ true, 5, 40 };
  range = ph_number_range (&ref, rig, PH_UNITS_MIXED);
  CHECK (range.lo == 5 && range.hi == 40);
  ph_number_ref_clear (&ref);
  ref = ph_number_ref (PH_NUMBER_PART, "back-bar", "length_mm", 0);
  CHECK_NEAR (ph_number_range (&ref, rig, PH_UNITS_METRIC).step, 10, 0);
  CHECK_NEAR (ph_number_range (&ref, rig, PH_UNITS_TRADE).step, 0.5, 0);
  ph_number_ref_clear (&ref);
  ref = ph_number_ref (PH_NUMBER_PART, "back-bar", "outer_mm", 0);
  CHECK (!ph_number_range (&ref, rig, PH_UNITS_METRIC).slider);
  ph_number_ref_clear (&ref);
  ph_rig_free (rig);
  fixture_clear (&f);
}

static void
a_guess_ends_when_its_number_was_measured (void)
{
  Fixture f = fixture_new ();
  PhStarter starter = { PH_BOW_COMPOUND, PH_BOW_HAND_LEFT, 28 * 25.4, NAN };
  ph_document_new_rig (f.document, &starter, "New");
  PhNumberRef mass = ph_number_ref (PH_NUMBER_BOW, NULL, "mass_g", 0);
  PhNumberRef com = ph_number_ref (PH_NUMBER_BOW, NULL, "com_mm", 1);
  PhNumberRef nock = ph_number_ref (PH_NUMBER_ARCHER, NULL, "nock_height_mm", 0);
  CHECK (ph_guess_is (&mass, ph_document_get_rig (f.document)) && ph_guess_advice (&mass));
  CHECK (!ph_guess_is (&nock, ph_document_get_rig (f.document)));
  CHECK (ph_guess_set_measured (&mass, f.document, NULL));
  CHECK_TEXT (ph_document_get_undo_label (f.document), "bow mass measured");
  const PhRig *rig = ph_document_get_rig (f.document);
  CHECK (!ph_guess_is (&mass, rig) && ph_guess_is (&com, rig), "the other number is still a guess");
  CHECK (rig->bow.n_sds == 1 && rig->bow.sds[0].n == 1);
  CHECK_NEAR (rig->bow.sds[0].v[0], 3, 0); /* deciding section 6: bow mass measured 3 g */
  CHECK (ph_document_undo (f.document) && ph_guess_is (&mass, ph_document_get_rig (f.document)));
  PhNumberRef sight = ph_number_ref (PH_NUMBER_PART, "sight", "mass_g", 0);
  PhNumberRef place = ph_number_ref (PH_NUMBER_PART, "sight", "at_mm", 0);
  CHECK (ph_guess_is (&sight, ph_document_get_rig (f.document)));
  CHECK (ph_guess_set_measured (&sight, f.document, NULL));
  CHECK_TEXT (ph_document_get_undo_label (f.document), "sight mass measured");
  CHECK (ph_guess_set_measured (&place, f.document, NULL));
  CHECK_TEXT (ph_document_get_undo_label (f.document), "sight place measured");
  ph_number_ref_clear (&sight);
  ph_number_ref_clear (&place);
  ph_number_ref_clear (&mass);
  ph_number_ref_clear (&com);
  ph_number_ref_clear (&nock);
  fixture_clear (&f);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (each_kind_reads_back_what_was_written);
  CASE (stated_draw_is_an_inch_and_three_quarters_more);
  CASE (holding_weight_defaults_to_the_bow_kind);
  CASE (weights_at_an_empty_end_make_their_stack);
  CASE (the_stack_behind_a_damper_is_the_bars);
  CASE (a_refused_number_says_why_and_changes_nothing);
  CASE (a_range_is_the_parts_own_limits_or_the_default);
  CASE (a_guess_ends_when_its_number_was_measured);
  return check_end ();
}
