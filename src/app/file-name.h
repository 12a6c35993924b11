/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a rig's file is called before the person says otherwise.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** What a rig's file ends in. */
#define PH_RIG_SUFFIX ".rig.json"

/** "Harbour club indoor" → "harbour-club-indoor.rig.json": letters and digits of any script in
 * lower case, everything between them one hyphen, at most some 60 bytes; "rig.rig.json" where the
 * title (may be null) has neither. (transfer full) */
char *ph_file_name_for (const char *rig_title);

G_END_DECLS
