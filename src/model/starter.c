/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The starter rig, built for a bow held in the left hand and mirrored for the other. All figures
 * are round ones of our own from common practice, no source: bow, mounts, the places and masses of
 * sight and rest as the design page has them; their sizes, the aperture and the front bar's tube
 * as stated at the tables below.
 */
#include "model/starter.h"

#include <assert.h>
#include <math.h>

#include "base/text.h"
#include "model/check.h"
#include "model/edit.h"
#include "model/fields.h"

#define MM_PER_INCH 25.4
/** 1 3/4 in: from the pivot to where the trade measures draw length. */
#define STATED_BEYOND_TRUE_MM 44.45

typedef struct
{
  const char *id;
  double at_mm[3], axis[3];
} Mount;

typedef struct
{
  double mass_g, com_mm[3], gyration_mm[3];
  double axle_to_axle_mm, brace_height_mm, nock_height_mm;
  int n_mounts;
  Mount mounts[2];
  double sight_g, sight_at_mm[3]; /* 0 g: none */
  double rest_g, rest_at_mm[3];
} Guess;

static const Guess guesses[] = {
  [PH_BOW_COMPOUND] = { 1950,
                        { -18, -3, 12 },
                        { 290, 295, 60 },
                        900,
                        178,
                        40,
                        2,
                        { { "front", { 62, 0, -72 }, { 1, 0, 0 } },
                          { "rear", { -28, 0, -150 }, { -1, 0, 0 } } },
                        310,
                        { 150, -38, 95 },
                        110,
                        { -20, -24, 40 } },
  [PH_BOW_RECURVE] = { 1650,
                       { -25, -2, 20 },
                       { 420, 425, 45 },
                       1650,
                       220,
                       45,
                       2,
                       { { "front", { 30, 0, -85 }, { 1, 0, 0 } },
                         { "upper", { 40, 0, 250 }, { 1, 0, 0 } } },
                       230,
                       { 120, -30, 110 },
                       15,
                       { 5, -14, 38 } },
  [PH_BOW_BAREBOW] = { 1700,
                       { -25, -2, 15 },
                       { 415, 420, 45 },
                       1650,
                       215,
                       45,
                       2,
                       { { "front", { 30, 0, -85 }, { 1, 0, 0 } },
                         { "low", { 20, 0, -180 }, { 1, 0, 0 } } },
                       0,
                       { 0, 0, 0 },
                       15,
                       { 5, -14, 38 } },
};

/* Box around a sight with its extension bar, and around a rest. */
static const double sight_size_mm[3] = { 260, 30, 60 };
static const double rest_size_mm[3] = { 60, 30, 40 };
/* From the sight's mass centre to its aperture: at the far end, 30 mm nearer the bow's plane. */
static const double aperture_beyond_mm[3] = { 140, 30, 25 };

/* A carbon tube of 18/16 mm with steel ends: 105 g of tube in 762 mm and 60 g of fittings. */
#define BAR_OUTER_MM 18
#define BAR_INNER_MM 16
#define BAR_TUBE_G_PER_MM (105.0 / 762.0)
#define BAR_ROOT_G 35
#define BAR_TIP_G 25
#define BAR_MODULUS_GPA 100
#define BAR_PER_STATURE 0.44
#define BAR_INCHES_UNTOLD 30

static void
set_number (PhObject object, void *owner, uint64_t *given, const char *key, double value)
{
  ph_field_set_number (ph_field_find (object, key, NULL), owner, 0, value);
  *given |= ph_given_bit (object, key);
}

static void
set_vector (PhObject object, void *owner, uint64_t *given, const char *key, const double v[3])
{
  for (int c = 0; c < 3; c++)
    ph_field_set_number (ph_field_find (object, key, NULL), owner, c, v[c]);
  *given |= ph_given_bit (object, key);
}

static void
set_text (PhPart *part, const char *key, const char *text)
{
  ph_field_set_text (ph_field_find (PH_OBJECT_PART, key, NULL), part, text);
  part->given |= ph_given_bit (PH_OBJECT_PART, key);
}

static PhPart
guessed_part (PhPartKind kind, const char *id, const char *name, const char *on)
{
  PhPart part = ph_part_default (kind);
  set_text (&part, "id", id);
  set_text (&part, "name", name);
  set_text (&part, "on", on);
  part.source = PH_SOURCE_GUESSED;
  part.given |= ph_given_bit (PH_OBJECT_PART, "source");
  return part;
}

static PhPart
accessory (const char *id, const char *name, double mass_g, const double at_mm[3],
           const double size_mm[3])
{
  PhPart part = guessed_part (PH_PART_ACCESSORY, id, name, "bow");
  ph_part_set_number (&part, "mass_g", 0, mass_g);
  set_vector (PH_OBJECT_PART, &part, &part.given, "at_mm", at_mm);
  set_vector (PH_OBJECT_PART, &part, &part.given, "size_mm", size_mm);
  return part;
}

static PhPart
sight_of (const Guess *guess)
{
  PhPart sight = accessory ("sight", "Sight", guess->sight_g, guess->sight_at_mm, sight_size_mm);
  for (int c = 0; c < 3; c++)
    ph_part_set_number (&sight, "aperture_mm", c, guess->sight_at_mm[c] + aperture_beyond_mm[c]);
  return sight;
}

static PhPart
front_bar (double stature_mm)
{
  double inches =
      isnan (stature_mm) ? BAR_INCHES_UNTOLD : round (BAR_PER_STATURE * stature_mm / MM_PER_INCH);
  /* Whole inches are whole tenths of a millimetre: 762, not 761.9999999999999. */
  double length_mm = round (inches * MM_PER_INCH * 10) / 10;
  PhPart bar = guessed_part (PH_PART_BAR, "front-bar", "Front bar", "bow:front");
  ph_part_set_number (&bar, "length_mm", 0, length_mm);
  ph_part_set_number (&bar, "outer_mm", 0, BAR_OUTER_MM);
  ph_part_set_number (&bar, "inner_mm", 0, BAR_INNER_MM);
  ph_part_set_number (&bar, "mass_g", 0,
                      round (BAR_TUBE_G_PER_MM * length_mm) + BAR_ROOT_G + BAR_TIP_G);
  ph_part_set_number (&bar, "root_fitting_g", 0, BAR_ROOT_G);
  ph_part_set_number (&bar, "tip_fitting_g", 0, BAR_TIP_G);
  ph_part_set_number (&bar, "modulus_gpa", 0, BAR_MODULUS_GPA);
  return bar;
}

static void
fill_bow (PhBow *bow, PhBowKind kind, const Guess *guess)
{
  bow->kind = kind;
  bow->source = PH_SOURCE_GUESSED;
  bow->given |= ph_given_bit (PH_OBJECT_BOW, "kind") | ph_given_bit (PH_OBJECT_BOW, "source");
  set_number (PH_OBJECT_BOW, bow, &bow->given, "mass_g", guess->mass_g);
  set_vector (PH_OBJECT_BOW, bow, &bow->given, "com_mm", guess->com_mm);
  set_vector (PH_OBJECT_BOW, bow, &bow->given, "gyration_mm", guess->gyration_mm);
  set_number (PH_OBJECT_BOW, bow, &bow->given, "axle_to_axle_mm", guess->axle_to_axle_mm);
  set_number (PH_OBJECT_BOW, bow, &bow->given, "brace_height_mm", guess->brace_height_mm);
  bow->n_mounts = (size_t)guess->n_mounts;
  bow->mounts = ph_alloc_zeroed (bow->n_mounts, sizeof *bow->mounts);
  for (size_t i = 0; i < bow->n_mounts; i++)
    {
      const Mount *mount = &guess->mounts[i];
      PhSocket *socket = &bow->mounts[i];
      socket->id = ph_text_dup (mount->id);
      for (int c = 0; c < 3; c++)
        {
          socket->at_mm[c] = mount->at_mm[c];
          socket->axis[c] = mount->axis[c];
        }
    }
}

static void
fill_archer (PhArcher *archer, const PhStarter *starter, const Guess *guess)
{
  archer->present = true;
  archer->given |= ph_given_bit (PH_OBJECT_ARCHER, "bow_hand");
  set_number (PH_OBJECT_ARCHER, archer, &archer->given, "draw_length_mm",
              starter->stated_draw_mm - STATED_BEYOND_TRUE_MM);
  set_number (PH_OBJECT_ARCHER, archer, &archer->given, "nock_height_mm", guess->nock_height_mm);
  if (!isnan (starter->stature_mm))
    set_number (PH_OBJECT_ARCHER, archer, &archer->given, "stature_mm", starter->stature_mm);
}

PhRig *
ph_starter_rig (const PhStarter *starter, const char *name)
{
  assert (starter->stated_draw_mm >= PH_STARTER_DRAW_LEAST_MM
          && starter->stated_draw_mm <= PH_STARTER_DRAW_MOST_MM);
  assert (isnan (starter->stature_mm)
          || (starter->stature_mm >= PH_STARTER_STATURE_LEAST_MM
              && starter->stature_mm <= PH_STARTER_STATURE_MOST_MM));
  const Guess *guess = &guesses[starter->kind];
  PhRig *rig = ph_rig_new ();
  rig->name = ph_text_dup (name);
  fill_archer (&rig->archer, starter, guess);
  fill_bow (&rig->bow, starter->kind, guess);
  if (guess->sight_g > 0)
    ph_rig_append (rig, sight_of (guess));
  ph_rig_append (rig, accessory ("rest", "Rest", guess->rest_g, guess->rest_at_mm, rest_size_mm));
  if (starter->kind != PH_BOW_BAREBOW)
    ph_rig_append (rig, front_bar (starter->stature_mm));
  if (starter->hand == PH_BOW_HAND_RIGHT)
    ph_edit_mirror (rig);
  bool sound = ph_check_rig (rig, NULL);
  assert (sound);
  (void)sound;
  return rig;
}
