/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rig file's keys as one table: type, place in the struct, range, default, which kinds have
 * it and which need it. Loader, saver, checker, form and schema test all read this table, so a
 * key is described once.
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
  PH_FIELD_TEXT    /* char * */
} PhFieldType;

typedef struct
{
  const char *key;
  PhFieldType type;
  size_t offset;     /* in PhArcher, PhCheck, PhBow or PhPart */
  double lo, hi;     /* each number lies in this range, in the key's own unit */
  bool lo_open;      /* lo itself is not allowed */
  bool hi_open;      /* hi itself is not allowed */
  double fallback;   /* value when absent; NAN: absent stays absent */
  unsigned kinds;    /* parts: bit per PhPartKind that knows the key; else all bits */
  unsigned required; /* bits of those kinds for which a missing key is an error */
  PhQuantity quantity;
} PhField;

/** The fields of an object, in the order in which they are written. Index = bit of `given`. */
const PhField *ph_fields_of (PhObject object, size_t *n);
/** The field of that key, or null; `*index` where given. */
const PhField *ph_field_find (PhObject object, const char *key, size_t *index);

/** Number at a field (component 0–2 of a vector, else 0) of a struct that has it. */
double ph_field_number (const PhField *field, const void *object, int component);
void ph_field_set_number (const PhField *field, void *object, int component, double value);

/** Whether a value lies in the field's range; otherwise the sentence of what would be right
 * ("is −3; a mass lies between 0 and 20000"). `*why` is a new string, or null when it does. */
bool ph_field_accepts (const PhField *field, double value, char **why);
