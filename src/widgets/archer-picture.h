/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An archer at full draw, facing the reader: which hand holds the bow, at one look, where the words
 * "right-handed bow" mislead half of all beginners.
 */
#pragma once

#include <gtk/gtk.h>

#include "model/rig.h"

G_BEGIN_DECLS

#define PH_TYPE_ARCHER_PICTURE (ph_archer_picture_get_type ())
G_DECLARE_FINAL_TYPE (PhArcherPicture, ph_archer_picture, PH, ARCHER_PICTURE, GtkWidget)

/** Drawn in the text's colour, the bow in the accent's. (transfer floating) */
GtkWidget *ph_archer_picture_new (PhBowHand bow_hand);

G_END_DECLS
