/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Light, dark, or as the desktop has it.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/settings.h"

G_BEGIN_DECLS

void ph_appearance_apply (PhAppearance appearance);

/** "system", "light", "dark" (the state of app.appearance), and back; false: another word. */
const char *ph_appearance_word (PhAppearance appearance);
gboolean ph_appearance_from_word (const char *word, PhAppearance *appearance);

G_END_DECLS
