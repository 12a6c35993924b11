/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One row of the parts list. A change of numbers costs one comparison; texts are made anew only
 * where what they say changed.
 */
#include "document/part-item-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "document/format.h"

G_DEFINE_FINAL_TYPE (PhPartItem, ph_part_item, G_TYPE_OBJECT)

enum
{
  PROP_0,
  PROP_ID,
  PROP_NAME,
  PROP_KIND,
  PROP_MASS_TEXT,
  PROP_SIZE_TEXT,
  PROP_OFF,
  PROP_FITTED,
  PROP_LOCKED,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

/* Items. */

const char *
ph_part_item_get_id (PhPartItem *self)
{
  g_return_val_if_fail (PH_IS_PART_ITEM (self), NULL);
  return self->id;
}

const char *
ph_part_item_get_name (PhPartItem *self)
{
  g_return_val_if_fail (PH_IS_PART_ITEM (self), NULL);
  return self->name;
}

int
ph_part_item_get_kind (PhPartItem *self)
{
  g_return_val_if_fail (PH_IS_PART_ITEM (self), -1);
  return self->kind;
}

gboolean
ph_part_item_get_off (PhPartItem *self)
{
  g_return_val_if_fail (PH_IS_PART_ITEM (self), FALSE);
  return self->off;
}

gboolean
ph_part_item_get_fitted (PhPartItem *self)
{
  g_return_val_if_fail (PH_IS_PART_ITEM (self), FALSE);
  return self->fitted;
}

gboolean
ph_part_item_get_locked (PhPartItem *self)
{
  g_return_val_if_fail (PH_IS_PART_ITEM (self), FALSE);
  return self->locked;
}

const char *
ph_part_item_get_mass_text (PhPartItem *self)
{
  g_return_val_if_fail (PH_IS_PART_ITEM (self), NULL);
  return self->mass_text;
}

const char *
ph_part_item_get_size_text (PhPartItem *self)
{
  g_return_val_if_fail (PH_IS_PART_ITEM (self), NULL);
  return self->size_text;
}

GListModel *
ph_part_item_get_children (PhPartItem *self)
{
  g_return_val_if_fail (PH_IS_PART_ITEM (self), NULL);
  if (self->children == NULL || g_list_model_get_n_items (G_LIST_MODEL (self->children)) == 0)
    return NULL;
  return G_LIST_MODEL (self->children);
}

static void
ph_part_item_get_property (GObject *object, guint prop, GValue *value, GParamSpec *pspec)
{
  PhPartItem *self = PH_PART_ITEM (object);
  switch (prop)
    {
    case PROP_ID:
      g_value_set_string (value, self->id);
      break;
    case PROP_NAME:
      g_value_set_string (value, self->name);
      break;
    case PROP_KIND:
      g_value_set_int (value, self->kind);
      break;
    case PROP_MASS_TEXT:
      g_value_set_string (value, self->mass_text);
      break;
    case PROP_SIZE_TEXT:
      g_value_set_string (value, self->size_text);
      break;
    case PROP_OFF:
      g_value_set_boolean (value, self->off);
      break;
    case PROP_FITTED:
      g_value_set_boolean (value, self->fitted);
      break;
    case PROP_LOCKED:
      g_value_set_boolean (value, self->locked);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop, pspec);
    }
}

static void
ph_part_item_finalize (GObject *object)
{
  PhPartItem *self = PH_PART_ITEM (object);
  g_clear_object (&self->children);
  g_free (self->id);
  g_free (self->name);
  g_free (self->mass_text);
  g_free (self->size_text);
  G_OBJECT_CLASS (ph_part_item_parent_class)->finalize (object);
}

static void
ph_part_item_init (PhPartItem *self)
{
  self->kind = -1;
  self->made.mass_g = NAN; /* nothing was made yet: a NAN differs from everything */
}

static void
ph_part_item_class_init (PhPartItemClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  const GParamFlags read = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;
  object_class->get_property = ph_part_item_get_property;
  object_class->finalize = ph_part_item_finalize;
  props[PROP_ID] = g_param_spec_string ("id", NULL, NULL, NULL, read);
  props[PROP_NAME] = g_param_spec_string ("name", NULL, NULL, NULL, read);
  props[PROP_KIND] = g_param_spec_int ("kind", NULL, NULL, -1, PH_PART_KINDS - 1, -1, read);
  props[PROP_MASS_TEXT] = g_param_spec_string ("mass-text", NULL, NULL, NULL, read);
  props[PROP_SIZE_TEXT] = g_param_spec_string ("size-text", NULL, NULL, NULL, read);
  props[PROP_OFF] = g_param_spec_boolean ("off", NULL, NULL, FALSE, read);
  props[PROP_FITTED] = g_param_spec_boolean ("fitted", NULL, NULL, FALSE, read);
  props[PROP_LOCKED] = g_param_spec_boolean ("locked", NULL, NULL, FALSE, read);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
notify (PhPartItem *self, int prop)
{
  g_object_notify_by_pspec (G_OBJECT (self), props[prop]);
}

/* Takes over `text`. */
static void
set_text (PhPartItem *self, char **kept, char *text, int prop)
{
  if (g_strcmp0 (*kept, text) == 0)
    {
      g_free (text);
      return;
    }
  g_free (*kept);
  *kept = text;
  notify (self, prop);
}

static void
set_flag (PhPartItem *self, gboolean *kept, gboolean flag, int prop)
{
  if (*kept == flag)
    return;
  *kept = flag;
  notify (self, prop);
}

/* "30 in", "8 × 1 oz"; empty where there is no size to tell. */
static char *
size_text (int kind, const PhPartItemMade *made)
{
  g_autofree char *one = NULL;
  switch (kind)
    {
    case PH_PART_BAR:
    case PH_PART_DAMPER:
      return ph_format_quantity_short (made->length_mm, PH_QUANTITY_LENGTH, made->units);
    case PH_PART_WEIGHTS:
      one = ph_format_quantity_short (made->each_g, PH_QUANTITY_MASS, made->units);
      return g_strdup_printf ("%.0f × %s", made->count, one);
    default:
      return g_strdup ("");
    }
}

static gboolean
same_made (const PhPartItemMade *a, const PhPartItemMade *b)
{
  return a->mass_g == b->mass_g && a->count == b->count && a->each_g == b->each_g
         && a->length_mm == b->length_mm && a->units == b->units;
}

static void
update_texts (PhPartItem *self, const PhPartItemMade *made)
{
  if (same_made (&self->made, made))
    return;
  PhQuantity quantity = self->kind < 0 ? PH_QUANTITY_BOW_MASS : PH_QUANTITY_MASS;
  self->made = *made;
  set_text (self, &self->mass_text, ph_format_quantity (made->mass_g, quantity, made->units),
            PROP_MASS_TEXT);
  set_text (self, &self->size_text, size_text (self->kind, made), PROP_SIZE_TEXT);
}

void
ph_part_item_update_part (PhPartItem *self, const PhPart *part, gboolean fitted, PhUnits units)
{
  const PhPartItemMade made = { .mass_g = ph_part_mass_g (part),
                                .count = part->count,
                                .each_g = part->each_g,
                                .length_mm = part->length_mm,
                                .units = units };
  if (self->kind != (int)part->kind)
    {
      self->kind = (int)part->kind;
      self->made.mass_g = NAN;
      notify (self, PROP_KIND);
    }
  if (g_strcmp0 (self->name, ph_part_name (part)) != 0)
    set_text (self, &self->name, g_strdup (ph_part_name (part)), PROP_NAME);
  set_flag (self, &self->off, part->off, PROP_OFF);
  set_flag (self, &self->fitted, fitted, PROP_FITTED);
  set_flag (self, &self->locked, part->locked, PROP_LOCKED);
  update_texts (self, &made);
}

void
ph_part_item_update_bow (PhPartItem *self, const PhRig *rig, PhUnits units)
{
  const PhPartItemMade made = { .mass_g = rig->bow.mass_g, .units = units };
  set_text (self, &self->name, g_strdup (_ ("Bow")), PROP_NAME);
  set_flag (self, &self->fitted, TRUE, PROP_FITTED);
  update_texts (self, &made);
}

PhPartItem *
ph_part_item_new (const char *id)
{
  PhPartItem *item = g_object_new (PH_TYPE_PART_ITEM, NULL);
  item->id = g_strdup (id);
  return item;
}
