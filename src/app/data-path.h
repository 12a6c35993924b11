/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the files that come with the program are.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** The path of a file of the project's data folder ("catalogue.json"): below $PLUMBHOLD_DATA_DIR
 * where that is set (a run from the build folder), else where it is installed. The file need not
 * be there. (transfer full) */
char *ph_data_path (const char *name);

/** The folder of the translations: $PLUMBHOLD_LOCALE_DIR, else the installed one. Borrowed. */
const char *ph_locale_dir (void);

G_END_DECLS
