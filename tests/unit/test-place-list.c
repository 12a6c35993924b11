/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which places Add and Hang elsewhere offer, and in which order: common practice, no source. The
 * rule of the bars' lengths (0.44 of stature, 0.4 of the front bar) is the product page's own. The
 * rigs of New are held against what an archer would screw together: side rods behind the front bar
 * as data/recurve.rig.json has them, 15 mm from the string (product page).
 */
#include <math.h>

#include "base/units.h"
#include "document-fixture.h"
#include "physics/clearance.h"
#include "store/rig-file.h"
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
  PhCatalogueItem front = { .group = (char *)"Front bars", .part = ph_part_default (PH_PART_BAR) };
  PhCatalogueItem back = { .group = (char *)"Back bars", .part = ph_part_default (PH_PART_BAR) };
  CHECK_NEAR (ph_rule_length_mm (f.document, &front), 756.8, 1e-9); /* 0.44 · 1720 */
  CHECK_NEAR (ph_rule_length_mm (f.document, &back), 304.8, 1e-9);  /* 0.4 · 762 */
  ph_document_remove (f.document, "front-bar");
  CHECK (isnan (ph_rule_length_mm (f.document, &back)), "no front bar, no rule");
  ph_part_clear (&front.part);
  ph_part_clear (&back.part);
  fixture_clear (&f);
}

/* What New makes. */

static PhCatalogue catalogue;

static const PhCatalogueItem *
item_named (const char *name)
{
  for (size_t i = 0; i < catalogue.n; i++)
    if (g_str_has_prefix (catalogue.items[i].part.name, name))
      return &catalogue.items[i];
  CHECK (FALSE, "no %s in the catalogue", name);
  return NULL;
}

static GPtrArray *
places_of (const Fixture *f, const PhCatalogueItem *item)
{
  return ph_place_list_new (f->document, &item->part, ph_points_of_group (item->group), -1, NULL);
}

/* Adds it where Add would put it without being asked; null: nowhere. */
static const PhPart *
add_first (const Fixture *f, const char *name)
{
  const PhCatalogueItem *item = item_named (name);
  g_autoptr (GPtrArray) places = places_of (f, item);
  if (!places->len || !ph_place_add (option (places, 0), f->document, &item->part, NULL))
    return NULL;
  return fixture_part (f, ph_document_get_selected (f->document));
}

static Fixture
fresh_bow (PhBowKind kind, PhBowHand hand)
{
  Fixture f = fixture_new ();
  PhStarter starter = { kind, hand, 711.2, NAN };
  ph_document_new_rig (f.document, &starter, "New");
  return f;
}

static const PhPlace *
place_of (const Fixture *f, const PhPart *part, double *clear_mm)
{
  const PhRig *rig = ph_document_get_rig (f->document);
  const PhCompiled *compiled = ph_document_get_compiled (f->document);
  int piece = compiled->piece_of_part[ph_rig_find (rig, part->id)];
  *clear_mm = ph_to_milli (ph_clearance_of (compiled->assembly, piece, &compiled->draw));
  return ph_assembly_place (compiled->assembly, piece);
}

/* To that side, 1 the left; −1 the right. */
static void
check_back_and_out (const Fixture *f, const PhPart *bar, int side)
{
  double clear_mm;
  CHECK (bar != NULL);
  const PhPlace *place = place_of (f, bar, &clear_mm);
  PhVec3 d = place->frame.a;
  CHECK (d.x < 0 && side * d.y > 0 && d.z < 0, "%g %g %g", d.x, d.y, d.z);
  CHECK (side * place->end_m.y > 0 && clear_mm >= 15, "%g mm", clear_mm);
}

static void
a_recurve_gets_its_v_behind_the_front_bar_and_rods_back_and_out (void)
{
  for (PhBowHand hand = PH_BOW_HAND_LEFT; hand <= PH_BOW_HAND_RIGHT; hand++)
    {
      Fixture f = fresh_bow (PH_BOW_RECURVE, hand);
      const PhPart *v = add_first (&f, "V bracket for an extender");
      CHECK (v && strcmp (v->on, "bow:front") == 0);
      g_autofree char *front = g_strconcat (v->id, ":front", NULL);
      CHECK_TEXT (fixture_part (&f, "front-bar")->on, front);
      CHECK_TEXT (ph_document_get_undo_label (f.document),
                  "put V bracket for an extender, rods back before front bar");
      /* As data/recurve.rig.json: left, then right, 10° down, no turn of their own. */
      const PhPart *left = add_first (&f, "Side rod 10 in");
      check_back_and_out (&f, left, 1);
      CHECK (left->swing_deg == 0 && left->lift_deg == -10);
      check_back_and_out (&f, add_first (&f, "Side rod 10 in"), -1);
      for (int i = 0; i < 3; i++)
        CHECK (ph_document_undo (f.document));
      CHECK_TEXT (fixture_part (&f, "front-bar")->on, "bow:front");
      CHECK (!ph_document_get_undo_label (f.document), "each was one step");
      fixture_clear (&f);
    }
}

static void
an_extender_goes_between_and_the_v_on_it (void)
{
  Fixture f = fresh_bow (PH_BOW_RECURVE, PH_BOW_HAND_LEFT);
  const PhPart *extender = add_first (&f, "Extender 4 in");
  CHECK (extender && strcmp (extender->on, "bow:front") == 0);
  CHECK_TEXT (fixture_part (&f, "front-bar")->on, extender->id);
  g_autofree char *id = g_strdup (extender->id);
  const PhPart *v = add_first (&f, "V bracket for an extender");
  CHECK (v && strcmp (v->on, id) == 0);
  check_back_and_out (&f, add_first (&f, "Side rod 8 in"), 1);
  CHECK (ph_document_save (f.document, f.file, NULL) && ph_document_load (f.document, f.file, NULL),
         "and the file has it");
  fixture_clear (&f);
}

static void
side_rods_turn_back_from_a_bracket_that_leads_ahead (void)
{
  Fixture f = fresh_bow (PH_BOW_RECURVE, PH_BOW_HAND_RIGHT);
  ph_document_remove (f.document, "front-bar");
  const PhPart *v = add_first (&f, "Adjustable mount, two bars");
  CHECK (v && strcmp (v->on, "bow:front") == 0, "below the sight, not above it");
  check_back_and_out (&f, add_first (&f, "Side rod 12 in"), 1);
  check_back_and_out (&f, add_first (&f, "Back bar 10 in"), -1);
  fixture_clear (&f);
}

static void
a_back_bar_never_points_ahead_of_its_own_accord (void)
{
  Fixture f = fresh_bow (PH_BOW_RECURVE, PH_BOW_HAND_LEFT);
  CHECK (!add_first (&f, "Back bar 10 in") && !add_first (&f, "Side rod 10 in"),
         "a new recurve has nothing that leads back");
  fixture_clear (&f);
  f = fresh_bow (PH_BOW_BAREBOW, PH_BOW_HAND_LEFT);
  CHECK (!add_first (&f, "Back bar 10 in"));
  fixture_clear (&f);
}

static void
a_back_bar_on_a_new_compound_starts_clear_of_the_string (void)
{
  for (PhBowHand hand = PH_BOW_HAND_LEFT; hand <= PH_BOW_HAND_RIGHT; hand++)
    {
      Fixture f = fresh_bow (PH_BOW_COMPOUND, hand);
      int side = hand == PH_BOW_HAND_LEFT ? 1 : -1; /* away from the sight */
      const PhPart *bar = add_first (&f, "Back bar 12 in");
      check_back_and_out (&f, bar, side);
      CHECK_TEXT (bar->on, "bow:rear");
      CHECK_NEAR (bar->swing_deg, side * 20, 0); /* as data/demo.rig.json */
      fixture_clear (&f);
    }
}

static void
a_bow_without_a_string_to_clear_takes_the_first_angle (void)
{
  Fixture f = fresh_bow (PH_BOW_COMPOUND, PH_BOW_HAND_LEFT);
  CHECK (ph_document_set_bow_number (f.document, "brace_height_mm", 0, NAN, NULL));
  CHECK (add_first (&f, "Back bar 12 in")->swing_deg == 20);
  fixture_clear (&f);
}

static void
a_front_bar_prefers_the_mount_below_the_grip (void)
{
  Fixture f = fresh_bow (PH_BOW_RECURVE, PH_BOW_HAND_LEFT);
  ph_document_remove (f.document, "front-bar");
  g_autoptr (GPtrArray) places = places_of (&f, item_named ("Front bar 28 in"));
  CHECK_TEXT (option (places, 0)->on, "bow:front");
  CHECK_TEXT (option (places, 1)->on, "bow:upper");
  fixture_clear (&f);
}

static void
a_v_on_a_compound_goes_where_its_rods_lead_back (void)
{
  Fixture f = fresh_bow (PH_BOW_COMPOUND, PH_BOW_HAND_LEFT);
  CHECK_TEXT (add_first (&f, "V bracket, 28")->on, "bow:rear");
  check_back_and_out (&f, add_first (&f, "Back bar 11 in"), 1);
  check_back_and_out (&f, add_first (&f, "Back bar 11 in"), -1);
  fixture_clear (&f);
}

static void
a_sight_stands_on_its_side_for_either_hand (void)
{
  for (PhBowHand hand = PH_BOW_HAND_LEFT; hand <= PH_BOW_HAND_RIGHT; hand++)
    {
      Fixture f = fresh_bow (PH_BOW_RECURVE, hand);
      double with_new = fixture_part (&f, "sight")->at_mm[1];
      const PhPart *sight = add_first (&f, "Sight for a recurve");
      CHECK (sight && sight->at_mm[1] == with_new && fabs (with_new) == 30, "%g and %g",
             sight->at_mm[1], with_new);
      fixture_clear (&f);
    }
}

static void
a_damper_goes_between_a_bar_and_its_weights (void)
{
  Fixture f = fixture_new ();
  g_autoptr (GPtrArray) places = places_of (&f, item_named ("Damper, small"));
  const PhPlaceOption *between =
      option_named (places, "between the front bar and the front weights");
  CHECK (between && ph_place_add (between, f.document, &item_named ("Damper, small")->part, NULL));
  const char *damper = ph_document_get_selected (f.document);
  CHECK_TEXT (fixture_part (&f, damper)->on, "front-bar");
  CHECK_TEXT (fixture_part (&f, "front-stack")->on, damper);
  fixture_clear (&f);
}

int
main (int argc, char **argv)
{
  PhIssues issues = { 0 };
  CHECK (ph_catalogue_load (DATA_DIR "/catalogue.json", &catalogue, &issues) == PH_OK);
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
  CASE (a_recurve_gets_its_v_behind_the_front_bar_and_rods_back_and_out);
  CASE (an_extender_goes_between_and_the_v_on_it);
  CASE (side_rods_turn_back_from_a_bracket_that_leads_ahead);
  CASE (a_back_bar_never_points_ahead_of_its_own_accord);
  CASE (a_back_bar_on_a_new_compound_starts_clear_of_the_string);
  CASE (a_bow_without_a_string_to_clear_takes_the_first_angle);
  CASE (a_front_bar_prefers_the_mount_below_the_grip);
  CASE (a_v_on_a_compound_goes_where_its_rods_lead_back);
  CASE (a_sight_stands_on_its_side_for_either_hand);
  CASE (a_damper_goes_between_a_bar_and_its_weights);
  ph_catalogue_clear (&catalogue);
  return check_end ();
}
