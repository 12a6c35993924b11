/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A walk over the fields that have a deviation; each is then moved a little on a copy of the rig.
 */
#include "model/uncertain.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"

#define SOURCES 3 /* guessed, catalogue, measured */

typedef struct
{
  const char *key;
  double sd[SOURCES][3]; /* in the field's unit, or a part of the value */
  bool relative;
  unsigned kinds; /* parts: bit per PhPartKind */
} Rule;

#define ALIKE(a)                                                                                   \
  {                                                                                                \
    a, a, a                                                                                        \
  }
#define THREE(a, b, c)                                                                             \
  {                                                                                                \
    ALIKE (a), ALIKE (b), ALIKE (c)                                                                \
  }

static const Rule bow_rules[] = {
  { "mass_g", THREE (150, 40, 3), false, ~0u },
  { "com_mm", { { 12, 4, 12 }, { 8, 3, 8 }, ALIKE (2) }, false, ~0u },
  { "gyration_mm", THREE (0.12, 0.08, 0.03), true, ~0u },
};

static const Rule part_rules[] = {
  { "mass_g", THREE (0.08, 0.03, 0.005), true, ~0u },
  { "each_g", THREE (0.08, 0.03, 0.005), true, ~0u },
  { "com_mm", THREE (8, 4, 1), false, 1u << PH_PART_BRACKET },
  { "at_mm", THREE (8, 4, 1), false, 1u << PH_PART_ACCESSORY },
  { "swing_deg", THREE (1, 1, 1), false, 1u << PH_PART_BAR | 1u << PH_PART_BRACKET },
  { "lift_deg", THREE (1, 1, 1), false, 1u << PH_PART_BAR | 1u << PH_PART_BRACKET },
};

/* The bow or a part, as one thing. */
typedef struct
{
  PhObject object;
  unsigned kind_bit;
  const void *owner;
  PhSource source;
  const PhSd *sds;
  size_t n_sds;
} Thing;

static Thing
thing_of (const PhRig *rig, int part)
{
  const PhBow *bow = &rig->bow;
  if (part < 0)
    return (Thing){ PH_OBJECT_BOW, ~0u, bow, ph_source_meant (bow->source), bow->sds, bow->n_sds };
  const PhPart *own = &rig->parts[part];
  return (Thing){ PH_OBJECT_PART, 1u << own->kind, own, ph_source_meant (own->source),
                  own->sds,       own->n_sds };
}

PhSource
ph_source_meant (PhSource source)
{
  return source == PH_SOURCE_UNSTATED ? PH_SOURCE_CATALOGUE : source;
}

const char *
ph_source_word (PhSource source)
{
  static const char *const words[SOURCES] = { "guessed", "catalogue", "measured" };
  return words[ph_source_meant (source) - PH_SOURCE_GUESSED];
}

static const Rule *
find_rule (const Thing *thing, const char *key)
{
  bool bow = thing->object == PH_OBJECT_BOW;
  const Rule *rules = bow ? bow_rules : part_rules;
  size_t n = bow ? sizeof bow_rules / sizeof *bow_rules : sizeof part_rules / sizeof *part_rules;
  for (size_t i = 0; i < n; i++)
    if (strcmp (rules[i].key, key) == 0 && rules[i].kinds & thing->kind_bit)
      return &rules[i];
  return NULL;
}

static double
sd_by_source (const Thing *thing, const PhField *field, int component, PhSource source)
{
  const Rule *rule = find_rule (thing, field->key);
  if (!rule)
    return 0;
  double sd = rule->sd[source - PH_SOURCE_GUESSED][component];
  double value = ph_field_number (field, thing->owner, component);
  return rule->relative ? sd * fabs (value) : sd;
}

static double
sd_of (const Thing *thing, const PhField *field, int component)
{
  for (size_t i = 0; i < thing->n_sds; i++)
    if (strcmp (thing->sds[i].key, field->key) == 0)
      return thing->sds[i].v[component];
  return sd_by_source (thing, field, component, thing->source);
}

double
ph_uncertain_sd (const PhRig *rig, int part, const char *key, int component)
{
  Thing thing = thing_of (rig, part);
  const PhField *field = ph_field_find (thing.object, key, NULL);
  assert (field && field->kinds & thing.kind_bit && component < ph_field_components (field));
  return sd_of (&thing, field, component);
}

/* Whether it is as unsure as it would be from a guess or a catalogue: what a measurement of the
 * thing's other numbers leaves. */
static bool
is_unmeasured (const Thing *thing, const PhField *field, int component, double sd)
{
  double then = sd_by_source (thing, field, component, PH_SOURCE_MEASURED);
  return sd > then
         && (sd == sd_by_source (thing, field, component, PH_SOURCE_GUESSED)
             || sd == sd_by_source (thing, field, component, PH_SOURCE_CATALOGUE));
}

static void
add_thing (PhUncertains *list, const PhRig *rig, int part)
{
  size_t n;
  Thing thing = thing_of (rig, part);
  const PhField *fields = ph_fields_of (thing.object, &n);
  for (size_t i = 0; i < n; i++)
    for (int c = 0; fields[i].kinds & thing.kind_bit && c < ph_field_components (&fields[i]); c++)
      {
        double sd = sd_of (&thing, &fields[i], c);
        if (!(sd > 0) || isnan (ph_field_number (&fields[i], thing.owner, c)))
          continue;
        bool ruled = find_rule (&thing, fields[i].key) != NULL;
        double then = sd_by_source (&thing, &fields[i], c, PH_SOURCE_MEASURED);
        list->items = ph_realloc (list->items, (list->n + 1) * sizeof *list->items);
        bool open = thing.source != PH_SOURCE_MEASURED || is_unmeasured (&thing, &fields[i], c, sd);
        list->items[list->n++] = (PhUncertain){
          part, &fields[i], c, sd, ruled ? fmin (sd, then) : sd, thing.source, open
        };
      }
}

PhUncertains
ph_uncertains_of (const PhRig *rig)
{
  PhUncertains list = { NULL, 0 };
  int *hosts = ph_rig_hosts (rig);
  bool *fitted = ph_rig_fitted (rig, hosts);
  add_thing (&list, rig, -1);
  for (size_t i = 0; i < rig->n_parts; i++)
    if (fitted[i])
      add_thing (&list, rig, (int)i);
  free (fitted);
  free (hosts);
  return list;
}

void
ph_uncertains_clear (PhUncertains *list)
{
  free (list->items);
  *list = (PhUncertains){ NULL, 0 };
}

/* Small against any number of a rig (mm, g, degrees), large against rounding. */
#define STEP 0.001

/* A rig of which one number at a time is moved. */
typedef struct
{
  PhRig *rig;
  PhCompiled *compiled;
  PhFrame *frames; /* of every piece, nothing moved */
  const double *now;
  PhRigValues values;
  void *data;
  size_t n;
} Mover;

static void *
owner_of (const Mover *mover, const PhUncertain *item)
{
  return item->part < 0 ? (void *)&mover->rig->bow : (void *)&mover->rig->parts[item->part];
}

/* Whether some piece's frame has jumped. Where a part's axis crosses the y–z plane its t turns
 * over, and all that hangs on it with it; that is how angles are counted, and nothing that an angle
 * set a little wrong would do. */
static bool
has_turned_over (const Mover *mover)
{
  for (size_t i = 0; i < mover->compiled->n_pieces; i++)
    {
      const PhFrame *now = &mover->frames[i];
      const PhFrame *then = &ph_assembly_place (mover->compiled->assembly, (int)i)->frame;
      if (ph_vec3_dot (now->t, then->t) < 0.5 || ph_vec3_dot (now->l, then->l) < 0.5)
        return true;
    }
  return false;
}

/* Values with the item's number set to `to`; whether they can be compared with those now. */
static bool
values_at (const Mover *mover, const PhUncertain *item, double to, double *out)
{
  ph_field_set_number (item->field, owner_of (mover, item), item->component, to);
  if (item->part < 0)
    {
      PhCompiled *moved = ph_compile_rig (mover->rig);
      mover->values (moved, mover->data, out);
      ph_compiled_free (moved);
      return true;
    }
  ph_compiled_update_part (mover->compiled, mover->rig, (size_t)item->part);
  mover->values (mover->compiled, mover->data, out);
  return !has_turned_over (mover);
}

/* The range of the item's number, `now` within it. */
static void
range_of (const Mover *mover, const PhUncertain *item, double now, double *lo, double *hi)
{
  *lo = fmin (item->field->lo, now);
  *hi = fmax (item->field->hi, now);
  if (item->part < 0 || strcmp (item->field->key, "mass_g") != 0)
    return;
  const PhPart *part = &mover->rig->parts[item->part];
  *lo = fmin (part->root_fitting_g + part->tip_fitting_g, now);
}

/* One-sided, three values: as near as central differences (an error of step²). */
static void
slopes_to_one_side (const Mover *mover, const PhUncertain *item, double now, double step,
                    double *slopes)
{
  double one[PH_SLOPES_MOST], two[PH_SLOPES_MOST];
  values_at (mover, item, now + step, one);
  values_at (mover, item, now + 2 * step, two);
  for (size_t k = 0; k < mover->n; k++)
    slopes[k] = (4 * one[k] - 3 * mover->now[k] - two[k]) / (2 * step);
}

static void
slopes_of (const Mover *mover, const PhUncertain *item, double *slopes)
{
  double above[PH_SLOPES_MOST], below[PH_SLOPES_MOST], lo, hi;
  double now = ph_field_number (item->field, owner_of (mover, item), item->component);
  range_of (mover, item, now, &lo, &hi);
  bool up = now + STEP <= hi && values_at (mover, item, now + STEP, above);
  bool down = now - STEP >= lo && values_at (mover, item, now - STEP, below);
  if (up && down)
    for (size_t k = 0; k < mover->n; k++)
      slopes[k] = (above[k] - below[k]) / (2 * STEP);
  else
    slopes_to_one_side (mover, item, now, down ? -STEP : STEP, slopes);
  ph_field_set_number (item->field, owner_of (mover, item), item->component, now);
  if (item->part >= 0)
    ph_compiled_update_part (mover->compiled, mover->rig, (size_t)item->part);
}

static PhFrame *
frames_of (const PhCompiled *compiled)
{
  PhFrame *frames = ph_alloc ((compiled->n_pieces + 1) * sizeof *frames);
  for (size_t i = 0; i < compiled->n_pieces; i++)
    frames[i] = ph_assembly_place (compiled->assembly, (int)i)->frame;
  return frames;
}

double *
ph_uncertain_slopes (const PhRig *rig, const PhUncertains *list, PhRigValues values, size_t n,
                     void *data)
{
  assert (n <= PH_SLOPES_MOST);
  double *slopes = ph_alloc ((list->n * n + 1) * sizeof *slopes), now[PH_SLOPES_MOST];
  PhRig *moved = ph_rig_copy (rig);
  PhCompiled *compiled = ph_compile_rig (moved);
  values (compiled, data, now);
  Mover mover = { moved, compiled, frames_of (compiled), now, values, data, n };
  for (size_t i = 0; i < list->n; i++)
    slopes_of (&mover, &list->items[i], &slopes[i * n]);
  free (mover.frames);
  ph_compiled_free (compiled);
  ph_rig_free (moved);
  return slopes;
}
