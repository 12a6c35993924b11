/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a part that is added is called: by where it stands, since "Side rod 10 in 2" tells no one
 * which of two it is. No toolkit here.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** "Side rod 10 in", 1 → "Left side rod"; −1 → "Right side rod"; 0 → the name as it is. A name that
 * says a side already stays. (transfer full) */
char *ph_name_on_side (const char *name, int side);

/** Of the weights on the end of a bar of that name: "Left side rod" → "Left side rod weights",
 * "Back bar 12 in, slim" → "Back bar weights"; null → "Weights". (transfer full) */
char *ph_name_of_weights_on (const char *bar);

G_END_DECLS
