/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The tables of keys and the access to a struct through them. Ranges and defaults: the rig file's
 * own page. A lookup is a walk over at most 32 rows.
 */
#include "model/fields.h"

#include <assert.h>
#include <float.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/number.h"
#include "base/text.h"

#define EVERY (~0u)
#define KIND(name) (1u << PH_PART_##name)
#define BAR KIND (BAR)
#define WEIGHTS KIND (WEIGHTS)
#define DAMPER KIND (DAMPER)
#define BRACKET KIND (BRACKET)
#define ACCESSORY KIND (ACCESSORY)

/* What a range's ends are: both allowed, the lower one not, neither. */
#define CLOSED false, false
#define ABOVE true, false
#define INSIDE true, true

#define FIELD(STRUCT, TYPE, KEY, LO, HI, ENDS, FALLBACK, KINDS, REQUIRED, QUANTITY)                \
  {                                                                                                \
#KEY, PH_FIELD_##TYPE, offsetof(STRUCT, KEY), LO, HI, ENDS, FALLBACK, KINDS, REQUIRED,         \
        PH_QUANTITY_##QUANTITY, NULL, 0                                                            \
  }
#define PLAIN(STRUCT, TYPE, KEY, REQUIRED)                                                         \
  {                                                                                                \
#KEY, PH_FIELD_##TYPE, offsetof(STRUCT, KEY), 0, 0, CLOSED, 0, EVERY, REQUIRED,                \
        PH_QUANTITY_COUNT, NULL, 0                                                                 \
  }
#define WORD(STRUCT, KEY, WORDS, FROM, REQUIRED)                                                   \
  {                                                                                                \
#KEY, PH_FIELD_WORD, offsetof(STRUCT, KEY), 0, 0, CLOSED, 0, EVERY, REQUIRED,                  \
        PH_QUANTITY_COUNT, WORDS, FROM                                                             \
  }

static const char *const part_kinds[] = {
  "bar", "weights", "damper", "bracket", "accessory", NULL
};
static const char *const bow_kinds[] = { "compound", "recurve", "barebow", NULL };
static const char *const bow_hands[] = { "left", "right", NULL };
static const char *const sources[] = { "guessed", "catalogue", "measured", NULL };

static const PhField archer_fields[] = {
  WORD (PhArcher, bow_hand, bow_hands, PH_BOW_HAND_LEFT, 0),
  FIELD (PhArcher, NUMBER, stature_mm, 0, 3000, ABOVE, 1750, EVERY, 0, STATURE),
  FIELD (PhArcher, NUMBER, body_mass_g, 0, 300000, ABOVE, 72000, EVERY, 0, BOW_MASS),
  FIELD (PhArcher, NUMBER, draw_length_mm, 0, 3000, ABOVE, 680, EVERY, 0, LENGTH),
  FIELD (PhArcher, NUMBER, nock_height_mm, -300, 300, CLOSED, 40, EVERY, 0, LENGTH),
  /* Recurve and barebow 160: ph_rig_holding_weight_n. */
  FIELD (PhArcher, NUMBER, holding_weight_n, 0, 400, CLOSED, 65, EVERY, 0, FORCE),
  FIELD (PhArcher, NUMBER, wanted_bubble_deg, -30, 30, CLOSED, 0, EVERY, 0, ANGLE),
};

static const PhField hand_fields[] = {
  FIELD (PhArcher, NUMBER, roll_stiffness_nm_per_rad, 0, DBL_MAX, ABOVE, 2, EVERY, 0, STIFFNESS),
  FIELD (PhArcher, NUMBER, roll_bias_nm, -10, 10, CLOSED, 0, EVERY, 0, MOMENT),
};

static const PhField check_fields[] = {
  PLAIN (PhCheck, TEXT, date, 0),
  FIELD (PhCheck, NUMBER, mass_g, 0, 20000, ABOVE, 0, EVERY, EVERY, BOW_MASS),
  FIELD (PhCheck, VECTOR, com_mm, -3000, 3000, CLOSED, 0, EVERY, EVERY, LENGTH),
  FIELD (PhCheck, NUMBER, draw_length_mm, 0, 3000, ABOVE, 0, EVERY, EVERY, LENGTH),
  FIELD (PhCheck, NUMBER, nock_height_mm, -300, 300, CLOSED, 0, EVERY, EVERY, LENGTH),
  FIELD (PhCheck, NUMBER, bubble_deg, -60, 60, INSIDE, 0, EVERY, EVERY, ANGLE),
  FIELD (PhCheck, NUMBER, sd_deg, 0, DBL_MAX, ABOVE, 0.3, EVERY, 0, ANGLE),
  PLAIN (PhCheck, TEXT, note, 0),
  PLAIN (PhCheck, FLAG, aside, 0),
  FIELD (PhCheck, NUMBER, predicted_deg, -180, 180, CLOSED, NAN, EVERY, 0, ANGLE),
  PLAIN (PhCheck, TEXT, predicted_at, 0),
  FIELD (PhCheck, NUMBER, predicted_90_deg, 0, 360, ABOVE, NAN, EVERY, 0, ANGLE),
};

static const PhField bow_fields[] = {
  WORD (PhBow, kind, bow_kinds, PH_BOW_COMPOUND, 0),
  FIELD (PhBow, NUMBER, mass_g, 0, 20000, CLOSED, 0, EVERY, EVERY, BOW_MASS),
  FIELD (PhBow, VECTOR, com_mm, -3000, 3000, CLOSED, 0, EVERY, EVERY, LENGTH),
  FIELD (PhBow, VECTOR, gyration_mm, 0, 3000, CLOSED, 0, EVERY, EVERY, LENGTH),
  FIELD (PhBow, NUMBER, axle_to_axle_mm, 0, 3000, ABOVE, NAN, EVERY, 0, LENGTH),
  FIELD (PhBow, NUMBER, brace_height_mm, 0, 3000, ABOVE, NAN, EVERY, 0, LENGTH),
  WORD (PhBow, source, sources, PH_SOURCE_GUESSED, 0),
};

#define AXIAL (BAR | WEIGHTS | DAMPER | BRACKET)
#define HEAVY (BAR | DAMPER | BRACKET | ACCESSORY)
#define ROUND (WEIGHTS | DAMPER)
#define BOXED (BRACKET | ACCESSORY)

static const PhField part_fields[] = {
  PLAIN (PhPart, TEXT, id, EVERY),
  WORD (PhPart, kind, part_kinds, PH_PART_BAR, EVERY),
  PLAIN (PhPart, TEXT, name, 0),
  PLAIN (PhPart, TEXT, on, EVERY),
  PLAIN (PhPart, FLAG, off, 0),
  PLAIN (PhPart, FLAG, locked, 0),
  FIELD (PhPart, NUMBER, swing_deg, -180, 180, CLOSED, 0, AXIAL, 0, ANGLE),
  FIELD (PhPart, NUMBER, lift_deg, -180, 180, CLOSED, 0, AXIAL, 0, ANGLE),
  FIELD (PhPart, NUMBER, length_mm, 0, 3000, CLOSED, 0, BAR | DAMPER, BAR | DAMPER, LENGTH),
  FIELD (PhPart, NUMBER, outer_mm, 0, 3000, CLOSED, 0, BAR, BAR, DIAMETER),
  FIELD (PhPart, NUMBER, inner_mm, 0, 3000, CLOSED, 0, BAR, BAR, DIAMETER),
  FIELD (PhPart, NUMBER, mass_g, 0, 20000, CLOSED, 0, HEAVY, HEAVY, MASS),
  FIELD (PhPart, NUMBER, root_fitting_g, 0, 20000, CLOSED, 0, BAR, 0, MASS),
  FIELD (PhPart, NUMBER, tip_fitting_g, 0, 20000, CLOSED, 0, BAR, 0, MASS),
  FIELD (PhPart, NUMBER, fitting_mm, 0, 3000, CLOSED, 15, BAR, 0, DIAMETER),
  FIELD (PhPart, NUMBER, modulus_gpa, 0, 1000, ABOVE, 0, BAR, 0, MODULUS),
  FIELD (PhPart, WHOLE, count, 0, 1000, CLOSED, 0, WEIGHTS, WEIGHTS, COUNT),
  FIELD (PhPart, NUMBER, each_g, 0, 20000, CLOSED, 0, WEIGHTS, WEIGHTS, MASS),
  FIELD (PhPart, NUMBER, diameter_mm, 0, 3000, CLOSED, 0, ROUND, ROUND, DIAMETER),
  FIELD (PhPart, NUMBER, each_mm, 0, 3000, CLOSED, 0, WEIGHTS, WEIGHTS, DIAMETER),
  FIELD (PhPart, NUMBER, bore_mm, 0, 3000, CLOSED, 0, WEIGHTS, 0, DIAMETER),
  FIELD (PhPart, NUMBER, along_mm, 0, 3000, CLOSED, NAN, WEIGHTS, 0, LENGTH),
  FIELD (PhPart, VECTOR, com_mm, -3000, 3000, CLOSED, 0, BRACKET, BRACKET, LENGTH),
  FIELD (PhPart, VECTOR, at_mm, -3000, 3000, CLOSED, 0, ACCESSORY, ACCESSORY, LENGTH),
  FIELD (PhPart, VECTOR, size_mm, 0, 3000, CLOSED, 0, BOXED, BOXED, LENGTH),
  FIELD (PhPart, VECTOR, aperture_mm, -3000, 3000, CLOSED, NAN, ACCESSORY, 0, LENGTH),
  FIELD (PhPart, NUMBER, vial_deg_per_mark, 0, 10, ABOVE, NAN, ACCESSORY, 0, ANGLE),
  WORD (PhPart, source, sources, PH_SOURCE_GUESSED, 0),
};

#define LENGTH_OF(array) (sizeof (array) / sizeof *(array))

const PhField *
ph_fields_of (PhObject object, size_t *n)
{
  static const struct
  {
    const PhField *fields;
    size_t n;
  } tables[] = {
    [PH_OBJECT_ARCHER] = { archer_fields, LENGTH_OF (archer_fields) },
    [PH_OBJECT_HAND] = { hand_fields, LENGTH_OF (hand_fields) },
    [PH_OBJECT_CHECK] = { check_fields, LENGTH_OF (check_fields) },
    [PH_OBJECT_BOW] = { bow_fields, LENGTH_OF (bow_fields) },
    [PH_OBJECT_PART] = { part_fields, LENGTH_OF (part_fields) },
  };
  assert (object <= PH_OBJECT_PART);
  *n = tables[object].n;
  return tables[object].fields;
}

const PhField *
ph_field_find (PhObject object, const char *key, size_t *index)
{
  size_t n;
  const PhField *fields = ph_fields_of (object, &n);
  for (size_t i = 0; i < n; i++)
    if (strcmp (fields[i].key, key) == 0)
      {
        if (index)
          *index = i;
        return &fields[i];
      }
  return NULL;
}

const PhField *
ph_field_find_part (PhPartKind kind, const char *key, size_t *index)
{
  const PhField *field = ph_field_find (PH_OBJECT_PART, key, index);
  return field && field->kinds & 1u << kind ? field : NULL;
}

uint64_t
ph_given_bit (PhObject object, const char *key)
{
  size_t index = 0;
  const PhField *field = ph_field_find (object, key, &index);
  assert (field);
  (void)field;
  return (uint64_t)1 << index;
}

static const void *
place_of (const PhField *field, const void *object)
{
  return (const char *)object + field->offset;
}

static void *
writable_place_of (const PhField *field, void *object)
{
  return (char *)object + field->offset;
}

int
ph_field_components (const PhField *field)
{
  if (field->type == PH_FIELD_VECTOR)
    return 3;
  return field->type == PH_FIELD_NUMBER || field->type == PH_FIELD_WHOLE ? 1 : 0;
}

double
ph_field_number (const PhField *field, const void *object, int component)
{
  assert (component >= 0 && component < ph_field_components (field));
  return ((const double *)place_of (field, object))[component];
}

void
ph_field_set_number (const PhField *field, void *object, int component, double value)
{
  assert (component >= 0 && component < ph_field_components (field));
  ((double *)writable_place_of (field, object))[component] = value;
}

bool
ph_field_flag (const PhField *field, const void *object)
{
  assert (field->type == PH_FIELD_FLAG);
  return *(const bool *)place_of (field, object);
}

void
ph_field_set_flag (const PhField *field, void *object, bool value)
{
  assert (field->type == PH_FIELD_FLAG);
  *(bool *)writable_place_of (field, object) = value;
}

const char *
ph_field_text (const PhField *field, const void *object)
{
  assert (field->type == PH_FIELD_TEXT);
  return *(char *const *)place_of (field, object);
}

void
ph_field_set_text (const PhField *field, void *object, const char *text)
{
  assert (field->type == PH_FIELD_TEXT);
  char **place = writable_place_of (field, object);
  char *copy = ph_text_dup (text);
  free (*place);
  *place = copy;
}

/* Every enum of the table has the size of an unsigned: GCC and Clang give them that. */
_Static_assert(sizeof (PhPartKind) == sizeof (unsigned) && sizeof (PhBowKind) == sizeof (unsigned)
                   && sizeof (PhBowHand) == sizeof (unsigned)
                   && sizeof (PhSource) == sizeof (unsigned),
               "an enum of the field table is not an unsigned");

const char *
ph_field_word (const PhField *field, const void *object)
{
  assert (field->type == PH_FIELD_WORD);
  unsigned value;
  memcpy (&value, place_of (field, object), sizeof value);
  return value < field->words_from ? NULL : field->words[value - field->words_from];
}

bool
ph_field_set_word (const PhField *field, void *object, const char *word)
{
  assert (field->type == PH_FIELD_WORD);
  for (unsigned i = 0; field->words[i]; i++)
    if (strcmp (field->words[i], word) == 0)
      {
        unsigned value = i + field->words_from;
        memcpy (writable_place_of (field, object), &value, sizeof value);
        return true;
      }
  return false;
}

/* The file's own unit after a number in a sentence. */
static const char *
file_unit (const PhField *field)
{
  switch (field->quantity)
    {
    case PH_QUANTITY_LENGTH:
    case PH_QUANTITY_DIAMETER:
    case PH_QUANTITY_STATURE:
      return " mm";
    case PH_QUANTITY_MASS:
    case PH_QUANTITY_BOW_MASS:
      return " g";
    case PH_QUANTITY_ANGLE:
      return "°";
    case PH_QUANTITY_FORCE:
      return " N";
    case PH_QUANTITY_MODULUS:
      return " GPa";
    case PH_QUANTITY_STIFFNESS:
      return " N·m/rad";
    case PH_QUANTITY_MOMENT:
      return " N·m";
    case PH_QUANTITY_SPEED:
      return " m/s";
    case PH_QUANTITY_COUNT:
    default:
      return "";
    }
}

char *
ph_field_range (const PhField *field)
{
  char lo[PH_NUMBER_SIZE], hi[PH_NUMBER_SIZE];
  const char *unit = file_unit (field);
  const char *whole = field->type == PH_FIELD_WHOLE ? "a whole number " : "";
  ph_number_print (field->lo, lo);
  ph_number_print (field->hi, hi);
  if (field->hi >= DBL_MAX)
    return ph_text_printf ("above %s%s", lo, unit);
  if (!field->lo_open)
    return ph_text_printf ("%sfrom %s to %s%s", whole, lo, hi, unit);
  return ph_text_printf ("above %s and %s %s%s", lo, field->hi_open ? "below" : "up to", hi, unit);
}

bool
ph_field_accepts (const PhField *field, double value, char **why)
{
  bool fits = isfinite (value) && (field->lo_open ? value > field->lo : value >= field->lo)
              && (field->hi_open ? value < field->hi : value <= field->hi)
              && (field->type != PH_FIELD_WHOLE || floor (value) == value);
  if (!why)
    return fits;
  *why = NULL;
  if (fits)
    return true;
  char number[PH_NUMBER_SIZE];
  char *right = ph_field_range (field);
  if (isfinite (value))
    *why = ph_text_printf ("is %s%s; it should be %s", ph_number_print (value, number),
                           file_unit (field), right);
  else
    *why = ph_text_printf ("is not a finite number; it should be %s", right);
  free (right);
  return false;
}

void
ph_part_set_number (PhPart *part, const char *key, int component, double value)
{
  size_t index = 0;
  const PhField *field = ph_field_find_part (part->kind, key, &index);
  assert (field);
  ph_field_set_number (field, part, component, value);
  part->given |= (uint64_t)1 << index;
}
