/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which places Add and Hang elsewhere offer, and in which order: common practice, no source. The
 * rule of the bars' lengths (0.44 of stature, 0.4 of the front bar) is the product page's own.
 */
#include "document-fixture.h"
#include "widgets/place-list.h"

static const PhPlaceOption *
option (const GPtrArray *places, guint i)
{
  return i < places->len ? places->pdata[i] : NULL;
}

static const PhPlaceOption *
option_named (const GPtrArray *places, const char *words)
{
  for (guint i = 0; i < places->len; i++)
    if (g_str_equal (option (places, i)->words, words))
      return option (places, i);
  return NULL;
}

static GPtrArray *
places_for (const Fixture *f, PhPartKind kind, PhPoints points, const char *near_id)
{
  PhPart part = ph_part_default (kind);
  GPtrArray *places = ph_place_list_new (f->document, &part, points, -1, near_id);
  ph_part_clear (&part);
  return places;
}

static void
a_back_bar_goes_on_a_socket_that_points_back (void)
{
  Fixture f = fixture_new ();
  ph_document_remove (f.document, "front-bar");
  g_autoptr (GPtrArray) back = places_for (&f, PH_PART_BAR, PH_POINTS_BACK, NULL);
  g_autoptr (GPtrArray) front = places_for (&f, PH_PART_BAR, PH_POINTS_AHEAD, NULL);
  CHECK (option (back, 0) && strcmp (option (back, 0)->on, "block:b") == 0);
  CHECK (option (front, 0) && strcmp (option (front, 0)->on, "bow:front") == 0);
  fixture_clear (&f);
}

static void
no_bar_is_screwed_to_a_stack (void)
{
  Fixture f = fixture_new ();
  g_autoptr (GPtrArray) places = places_for (&f, PH_PART_BAR, PH_POINTS_AHEAD, NULL);
  CHECK (!option_named (places, "front weights’s end")
         && !option_named (places, "back weights’s end"));
  CHECK (places->len == 1, "only the free socket of the side mount: %u", places->len);
  fixture_clear (&f);
}

static void
every_mount_taken_leaves_no_place (void)
{
  Fixture f = fixture_new ();
  CHECK (ph_document_duplicate (f.document, "back-bar", NULL));
  g_autoptr (GPtrArray) places = places_for (&f, PH_PART_BAR, PH_POINTS_BACK, NULL);
  CHECK (places->len == 0, "%u", places->len);
  fixture_clear (&f);
}

static void
weights_go_on_an_end_before_around_a_bar (void)
{
  Fixture f = fixture_new ();
  ph_document_remove (f.document, "back-stack");
  g_autoptr (GPtrArray) places = places_for (&f, PH_PART_WEIGHTS, PH_POINTS_ANYWHERE, NULL);
  CHECK_TEXT (option (places, 0)->words, "back bar’s end");
  CHECK (option_named (places, "along the front bar")
         && option_named (places, "along the back bar"));
  fixture_clear (&f);
}

static void
what_was_pointed_at_comes_first (void)
{
  Fixture f = fixture_new ();
  g_autoptr (GPtrArray) places = places_for (&f, PH_PART_WEIGHTS, PH_POINTS_ANYWHERE, "back-bar");
  CHECK_TEXT (option (places, 0)->words, "along the back bar");
  fixture_clear (&f);
}

static void
a_part_that_hangs_is_not_offered_its_own_place_or_itself (void)
{
  Fixture f = fixture_new ();
  const PhRig *rig = ph_document_get_rig (f.document);
  int moving = ph_rig_find (rig, "back-bar");
  g_autoptr (GPtrArray) places =
      ph_place_list_new (f.document, &rig->parts[moving], PH_POINTS_ANYWHERE, moving, NULL);
  CHECK (option_named (places, "side mount: b") && !option_named (places, "side mount: a"));
  for (guint i = 0; i < places->len; i++)
    CHECK (strcmp (option (places, i)->on, "back-stack") != 0
           && strcmp (option (places, i)->on, "back-bar") != 0);
  fixture_clear (&f);
}

static void
a_stack_moves_from_an_end_to_along_a_bar_and_back (void)
{
  Fixture f = fixture_new ();
  const PhRig *rig = ph_document_get_rig (f.document);
  int moving = ph_rig_find (rig, "back-stack");
  g_autoptr (GPtrArray) places =
      ph_place_list_new (f.document, &rig->parts[moving], PH_POINTS_ANYWHERE, moving, NULL);
  const PhPlaceOption *along = option_named (places, "along the back bar");
  CHECK (along && ph_place_hang (along, f.document, "back-stack", NULL));
  /* The middle of 305 mm less 5 discs of 7.2 mm, to the mm. */
  CHECK_NEAR (fixture_part (&f, "back-stack")->along_mm, 135, 0.5);
  g_autoptr (GPtrArray) again = ph_place_list_new (f.document, fixture_part (&f, "back-stack"),
                                                   PH_POINTS_ANYWHERE, moving, NULL);
  const PhPlaceOption *end = option_named (again, "back bar’s end");
  CHECK (!option_named (again, "along the back bar"));
  CHECK (end && ph_place_hang (end, f.document, "back-stack", NULL));
  CHECK (!ph_part_is_along (fixture_part (&f, "back-stack")));
  fixture_clear (&f);
}

static void
a_stack_is_added_along_a_bar (void)
{
  Fixture f = fixture_new ();
  PhPart stack = ph_part_copy (fixture_part (&f, "back-stack"));
  g_autoptr (GPtrArray) places =
      ph_place_list_new (f.document, &stack, PH_POINTS_ANYWHERE, -1, NULL);
  const PhPlaceOption *along = option_named (places, "along the front bar");
  CHECK (along && ph_place_add (along, f.document, &stack, NULL));
  const PhPart *added = fixture_part (&f, ph_document_get_selected (f.document));
  CHECK (added && ph_part_is_along (added) && strcmp (added->on, "front-bar") == 0);
  CHECK (ph_document_save (f.document, f.file, NULL) && ph_document_load (f.document, f.file, NULL),
         "and the file keeps it");
  ph_part_clear (&stack);
  fixture_clear (&f);
}

static void
bars_are_as_long_as_the_rule_says (void)
{
  Fixture f = fixture_new ();
  CHECK (ph_document_set_archer_number (f.document, "stature_mm", 1720, NULL));
  PhCatalogueItem front = { (char *)"Front bars", ph_part_default (PH_PART_BAR) };
  PhCatalogueItem back = { (char *)"Back bars", ph_part_default (PH_PART_BAR) };
  CHECK_NEAR (ph_rule_length_mm (f.document, &front), 756.8, 1e-9); /* 0.44 · 1720 */
  CHECK_NEAR (ph_rule_length_mm (f.document, &back), 304.8, 1e-9);  /* 0.4 · 762 */
  ph_document_remove (f.document, "front-bar");
  CHECK (isnan (ph_rule_length_mm (f.document, &back)), "no front bar, no rule");
  ph_part_clear (&front.part);
  ph_part_clear (&back.part);
  fixture_clear (&f);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (a_back_bar_goes_on_a_socket_that_points_back);
  CASE (no_bar_is_screwed_to_a_stack);
  CASE (every_mount_taken_leaves_no_place);
  CASE (weights_go_on_an_end_before_around_a_bar);
  CASE (what_was_pointed_at_comes_first);
  CASE (a_part_that_hangs_is_not_offered_its_own_place_or_itself);
  CASE (a_stack_moves_from_an_end_to_along_a_bar_and_back);
  CASE (a_stack_is_added_along_a_bar);
  CASE (bars_are_as_long_as_the_rule_says);
  return check_end ();
}
