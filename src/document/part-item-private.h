/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the parts list may do with its items. Not for other folders.
 */
#pragma once

#include "document/part-list.h"

/** What the texts of an item were made from. */
typedef struct
{
  double mass_g, count, each_g, length_mm;
  PhUnits units;
} PhPartItemMade;

struct _PhPartItem
{
  GObject parent_instance;

  char *id, *name; /* owned */
  int kind;
  gboolean off, fitted, locked;
  char *mass_text, *size_text; /* owned */
  PhPartItemMade made;
  GListStore *children; /* owned; null until something hangs on it */
  gboolean offered;     /* whether it had children when it was put into its list last */
  guint visit;          /* the round of the last look at the tree that met it */
};

/** (transfer full) */
PhPartItem *ph_part_item_new (const char *id);
/** Bring every property up to date and notify those that changed. */
void ph_part_item_update_part (PhPartItem *self, const PhPart *part, gboolean fitted,
                               PhUnits units);
void ph_part_item_update_bow (PhPartItem *self, const PhRig *rig, PhUnits units);
