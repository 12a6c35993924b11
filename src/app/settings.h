/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is remembered between runs (data/…gschema.xml says what each key means). Where the schema
 * is not installed everything works with the defaults and nothing is remembered.
 */
#pragma once

#include <gio/gio.h>

#include "base/quantity.h"

G_BEGIN_DECLS

typedef enum
{
  PH_APPEARANCE_SYSTEM,
  PH_APPEARANCE_LIGHT,
  PH_APPEARANCE_DARK
} PhAppearance;

/** The program's settings, or null where their schema is not installed. (transfer full) */
GSettings *ph_settings_new (void);

/* All take null. */
PhUnits ph_settings_get_units (GSettings *settings);
void ph_settings_set_units (GSettings *settings, PhUnits units);
PhAppearance ph_settings_get_appearance (GSettings *settings);
void ph_settings_set_appearance (GSettings *settings, PhAppearance appearance);
void ph_settings_get_window (GSettings *settings, int *width, int *height, gboolean *maximized);
void ph_settings_set_window (GSettings *settings, int width, int height, gboolean maximized);

G_END_DECLS
