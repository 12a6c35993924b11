/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whether what a person typed into a search means a text. No toolkit here.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** True where each word of `search` is in `text`, whatever the case and however compounds are
 * written and whether there are more of it: "v bar", "V-bars" and "vbar" mean the same. `text` is a
 * list of phrases with commas between them: a word that was run together from two is looked for
 * inside each phrase. */
gboolean ph_search_matches (const char *text, const char *search);

G_END_DECLS
