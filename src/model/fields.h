/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rig file's keys as one table: type, place in the struct, range, default, which kinds have
 * it and which need it. Loader, saver, checker, form and schema test all read this table, so a
 * key is described once. Not in it, because they are more than one value: archer, hand,
 * bubble_tests, draws_deg, bow, mounts, parts, sockets, limits, sd and price.
 */
#pragma once

#include "base/quantity.h"
#include "model/rig.h"

typedef enum
{
  PH_OBJECT_ARCHER,
  PH_OBJECT_HAND,
  PH_OBJECT_CHECK,
  PH_OBJECT_BOW,
  PH_OBJECT_PART
} PhObject;

typedef enum
{
  PH_FIELD_NUMBER, /* double */
  PH_FIELD_WHOLE,  /* double that must be whole */
  PH_FIELD_VECTOR, /* double[3] */
  PH_FIELD_FLAG,   /* bool */
  PH_FIELD_TEXT,   /* char * */
  PH_FIELD_WORD    /* an enum: one of `words` in the file */
} PhFieldType;

typedef struct PhField
{
  const char *key;
  PhFieldType type;
  size_t offset;     /* in PhArcher (archer and hand), PhCheck, PhBow or PhPart */
  double lo, hi;     /* each number lies in this range, in the key's own unit */
  bool lo_open;      /* lo itself is not allowed */
  bool hi_open;      /* hi itself is not allowed */
  double fallback;   /* value when absent; NAN: absent stays absent; 0 where it is required */
  unsigned kinds;    /* parts: bit per PhPartKind that knows the key; else all bits */
  unsigned required; /* bits of those kinds for which a missing key is an error */
  PhQuantity quantity;
  const char *const *words; /* WORD: the words, null-terminated */
  unsigned words_from;      /* WORD: the enum's value of the first word */
} PhField;

/** The fields of an object, in the order in which they are written. Index = bit of `given`. Held
 * in the file: a text that is not null, anything else whose bit is set. */
const PhField *ph_fields_of (PhObject object, size_t *n);
/** The field of that key, or null; `*index` where given. */
const PhField *ph_field_find (PhObject object, const char *key, size_t *index);
/** The field of a part's key if that kind knows it, else null. */
const PhField *ph_field_find_part (PhPartKind kind, const char *key, size_t *index);

/** The bit of `given` that belongs to a key of the object (asserted to be one). */
uint64_t ph_given_bit (PhObject object, const char *key);

/** Number at a field (component 0–2 of a vector, else 0) of a struct that has it. */
double ph_field_number (const PhField *field, const void *object, int component);
void ph_field_set_number (const PhField *field, void *object, int component, double value);
/** How many numbers a field holds: 3, 1 or 0. */
int ph_field_components (const PhField *field);

/** The other types. A text that is set is copied and the old one freed; null clears it. */
bool ph_field_flag (const PhField *field, const void *object);
void ph_field_set_flag (const PhField *field, void *object, bool value);
const char *ph_field_text (const PhField *field, const void *object);
void ph_field_set_text (const PhField *field, void *object, const char *text);
/** The word for the enum's value; null where it has none (a source that is not stated). */
const char *ph_field_word (const PhField *field, const void *object);
/** False where the word is none of `words`; nothing is changed then. */
bool ph_field_set_word (const PhField *field, void *object, const char *word);

/** Whether a value lies in the field's range; otherwise the sentence of what would be right
 * ("is -3 g; it should be from 0 to 20000 g"). `*why`, where given, is a new string, or null when
 * it does. Numbers have a decimal point in any locale. */
bool ph_field_accepts (const PhField *field, double value, char **why);

/** What is right for the field: "from 0 to 20000 g", "above 0 and up to 1000 GPa", "a whole number
 * from 0 to 1000". New string. */
char *ph_field_range (const PhField *field);

/** Sets one number of a part and marks the key as given. The kind must know it (asserted); nothing
 * is checked. */
void ph_part_set_number (PhPart *part, const char *key, int component, double value);
