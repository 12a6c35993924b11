/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is remembered between runs, against the real schema (GSETTINGS_SCHEMA_DIR, set by meson) and
 * without any.
 */
#include "app/settings.h"

#include "check.h"

static void
everything_works_without_settings (void)
{
  int width, height;
  gboolean maximized;
  CHECK (ph_settings_get_units (NULL) == PH_UNITS_MIXED);
  CHECK (ph_settings_get_appearance (NULL) == PH_APPEARANCE_SYSTEM);
  ph_settings_set_units (NULL, PH_UNITS_TRADE);
  ph_settings_set_window (NULL, 1, 1, TRUE);
  ph_settings_get_window (NULL, &width, &height, &maximized);
  CHECK (width == 1280 && height == 800 && !maximized);
}

static void
the_schema_has_the_defaults_used_without_it (void)
{
  g_autoptr (GSettings) settings = ph_settings_new ();
  int width, height;
  gboolean maximized;
  CHECK (settings != NULL);
  if (!settings)
    return;
  CHECK (ph_settings_get_units (settings) == ph_settings_get_units (NULL));
  CHECK (ph_settings_get_appearance (settings) == ph_settings_get_appearance (NULL));
  ph_settings_get_window (settings, &width, &height, &maximized);
  CHECK (width == 1280 && height == 800 && !maximized);
}

static void
choices_are_there_in_the_next_run (void)
{
  GSettings *settings = ph_settings_new ();
  CHECK (settings != NULL);
  if (!settings)
    return;
  ph_settings_set_units (settings, PH_UNITS_TRADE);
  ph_settings_set_appearance (settings, PH_APPEARANCE_DARK);
  ph_settings_set_window (settings, 1000, 700, TRUE);
  g_settings_sync ();
  g_object_unref (settings);

  settings = ph_settings_new ();
  int width, height;
  gboolean maximized;
  CHECK (ph_settings_get_units (settings) == PH_UNITS_TRADE);
  CHECK (ph_settings_get_appearance (settings) == PH_APPEARANCE_DARK);
  ph_settings_get_window (settings, &width, &height, &maximized);
  CHECK (width == 1000 && height == 700 && maximized);
  g_object_unref (settings);
}

int
main (int argc, char **argv)
{
  /* A folder of its own, before GLib looks for the person's. */
  g_autofree char *folder = g_dir_make_tmp ("plumbhold-settings-XXXXXX", NULL);
  g_setenv ("XDG_CONFIG_HOME", folder, TRUE);
  g_unsetenv ("GSETTINGS_BACKEND");
  check_start (argc, argv);
  CASE (everything_works_without_settings);
  CASE (the_schema_has_the_defaults_used_without_it);
  CASE (choices_are_there_in_the_next_run);

  g_autofree char *sub = g_build_filename (folder, "plumbhold", NULL);
  g_autofree char *file = g_build_filename (sub, "settings.ini", NULL);
  remove (file);
  remove (sub);
  remove (folder);
  return check_end ();
}
