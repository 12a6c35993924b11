/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a mark of the sight's vial is worth: an expander in which it is worked out from a tilt that
 * was read on a phone or a digital level, and kept with the sight. It is never assumed.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_VIAL_SCALE (ph_vial_scale_get_type ())
G_DECLARE_FINAL_TYPE (PhVialScale, ph_vial_scale, PH, VIAL_SCALE, GtkWidget)

GtkWidget *ph_vial_scale_new (PhDocument *document);

/** The sight that carries the level: the first fitted accessory with an aperture, of a bow whose
 * sights carry one; −1. */
int ph_vial_sight (const PhRig *rig);
/** Degrees a mark of its vial; NAN where there is no sight or it is not calibrated. */
double ph_vial_deg_per_mark (const PhRig *rig);

G_END_DECLS
