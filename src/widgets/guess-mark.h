/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The word "guessed" beside a reading that rests on a guessed number of the bow or a part: a
 * small button that says which they are, what measurement would replace each, and leads there. Hides itself when none is.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

/** Which numbers of the bow, and of the parts, a reading rests on. */
typedef enum
{
  PH_RESTS_ON_MASS,    /* mass alone */
  PH_RESTS_ON_BALANCE, /* mass and mass centre */
  PH_RESTS_ON_INERTIA, /* and gyration */
  PH_RESTS_ON_STRING   /* brace height and axle to axle */
} PhRestsOn;

#define PH_TYPE_GUESS_MARK (ph_guess_mark_get_type ())
G_DECLARE_FINAL_TYPE (PhGuessMark, ph_guess_mark, PH, GUESS_MARK, GtkWidget)

/** Follows the document by itself. */
GtkWidget *ph_guess_mark_new (PhDocument *document, PhRestsOn rests_on);

G_END_DECLS
