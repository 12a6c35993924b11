/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The environment comes first, so that a build can be run where it stands (src/run.sh).
 */
#include "app/data-path.h"

char *
ph_data_path (const char *name)
{
  const char *folder = g_getenv ("PLUMBHOLD_DATA_DIR");
  return g_build_filename (folder && *folder ? folder : PH_DATA_DIR, name, NULL);
}

const char *
ph_locale_dir (void)
{
  const char *folder = g_getenv ("PLUMBHOLD_LOCALE_DIR");
  return folder && *folder ? folder : PH_LOCALE_DIR;
}
