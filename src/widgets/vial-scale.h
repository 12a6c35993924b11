/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a mark of the sight's vial is worth: an expander in which it is worked out from a tilt that
 * was read on a phone or a digital level and from where the bubble then stands on a drawn vial, and
 * kept with the sight together with how well it is known. It is never assumed.
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
/** How well that is known [deg]; NAN where that is not stated. */
double ph_vial_deg_per_mark_sd (const PhRig *rig);

/** A digital level or a phone tells a tilt to 0.2° and the eye a bubble to a tenth of a mark: ours,
 * common practice, no source. */
#define PH_VIAL_TILT_SD_DEG 0.2
#define PH_VIAL_EYE_SD_MARKS 0.1

/** From a tilt and the marks that the bubble moved by it, whichever way: degrees a mark and its
 * deviation, of first order from the two above, independent. NANs where either is not above 0. */
void ph_vial_calibrate (double tilt_deg, double marks, double *deg_per_mark, double *sd);

G_END_DECLS
