/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * g_settings_new () ends the program when the schema is missing, so it is looked up first. The
 * defaults used without it are the schema's own. Kept in a key file of our own, since a desktop's
 * settings store is not there everywhere; $GSETTINGS_BACKEND still has the last word.
 */
#define G_SETTINGS_ENABLE_BACKEND
#include "app/settings.h"

#include <gio/gsettingsbackend.h>
#include <glib/gstdio.h>
#include <unistd.h>

#define SCHEMA "org.plumbhold.Plumbhold"

/* Null: the desktop's own. Where the folder cannot be written nothing outlives the run. */
static GSettingsBackend *
new_backend (void)
{
  if (g_getenv ("GSETTINGS_BACKEND"))
    return NULL;
  g_autofree char *folder = g_build_filename (g_get_user_config_dir (), "plumbhold", NULL);
  if (g_mkdir_with_parents (folder, 0700) != 0 || g_access (folder, W_OK) != 0)
    return g_memory_settings_backend_new ();
  g_autofree char *path = g_build_filename (folder, "settings.ini", NULL);
  return g_keyfile_settings_backend_new (path, "/org/plumbhold/Plumbhold/", "plumbhold");
}

GSettings *
ph_settings_new (void)
{
  GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
  g_autoptr (GSettingsSchema) schema =
      source ? g_settings_schema_source_lookup (source, SCHEMA, TRUE) : NULL;
  if (!schema)
    return NULL;
  g_autoptr (GSettingsBackend) backend = new_backend ();
  return g_settings_new_full (schema, backend, NULL);
}

PhUnits
ph_settings_get_units (GSettings *settings)
{
  return settings ? (PhUnits)g_settings_get_enum (settings, "units") : PH_UNITS_MIXED;
}

void
ph_settings_set_units (GSettings *settings, PhUnits units)
{
  if (settings)
    g_settings_set_enum (settings, "units", (int)units);
}

PhAppearance
ph_settings_get_appearance (GSettings *settings)
{
  return settings ? (PhAppearance)g_settings_get_enum (settings, "appearance")
                  : PH_APPEARANCE_SYSTEM;
}

void
ph_settings_set_appearance (GSettings *settings, PhAppearance appearance)
{
  if (settings)
    g_settings_set_enum (settings, "appearance", (int)appearance);
}

void
ph_settings_get_window (GSettings *settings, int *width, int *height, gboolean *maximized)
{
  *width = 1280;
  *height = 800;
  *maximized = FALSE;
  if (!settings)
    return;
  g_settings_get (settings, "window-size", "(ii)", width, height);
  *maximized = g_settings_get_boolean (settings, "window-maximized");
}

void
ph_settings_set_window (GSettings *settings, int width, int height, gboolean maximized)
{
  if (!settings)
    return;
  g_settings_set (settings, "window-size", "(ii)", width, height);
  g_settings_set_boolean (settings, "window-maximized", maximized);
}
