/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which numbers the form shows for a part of a kind, or for the bow and its archer, in which order,
 * and which of them only under More. No toolkit here.
 */
#pragma once

#include "widgets/number-ref.h"

G_BEGIN_DECLS

typedef struct
{
  PhNumberOf of;
  const char *key; /* null where `of` needs none */
  int component;
  const char *label;   /* English, for gettext; null: the key's own word */
  const char *remark;  /* English, always shown below; or null */
  const char *heading; /* English, above this number; or null */
  unsigned kinds;      /* parts: a bit for each PhPartKind */
  gboolean more;       /* under More */
} PhFormSpec;

/** Every number that a form may show; `part` −1: of bow and archer. */
const PhFormSpec *ph_form_specs (int part, gsize *n);

/** Whether this number applies to that part as it is now: a stack along a bar has no angles, an
 * accessory without an aperture does not show one. */
gboolean ph_form_spec_applies (const PhFormSpec *spec, const PhRig *rig, int part);

/** The row's name where it has no direction: "Mass", "Outer diameter". New string. */
char *ph_form_spec_label (const PhFormSpec *spec);

G_END_DECLS
