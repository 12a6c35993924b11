/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the bow and its parts stand in a picture, in coarse cells: labels keep off them where they
 * can. String and cables do not count: thin lines behind a plate stay readable. A rig costs some
 * ten microseconds.
 */
#pragma once

#include "scene/camera.h"
#include "scene/drawlist.h"
#include "widgets/label-place.h"

/** Side of a cell [px]. */
#define PH_LABEL_CELL_PX 6.0

/** The solids of a list as that camera shows them; what is off does not count. Free with
 * ph_label_mask_free. */
PhLabelMask *ph_label_mask_new (const PhDrawList *list, const PhCamera *camera);
void ph_label_mask_free (PhLabelMask *mask);
