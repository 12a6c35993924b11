/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A readings file: one JSON object with one of
 * {"scales": {"f1_n", "f2_n", "d_mm", "sd_n", "sd_mm"}},
 * {"hanging": {"lines": [{"point_mm": [3], "direction": [3], "sd_mm"}]}},
 * {"swing": {"axis": "x|y|z", "mass_g", "distance_mm", "swings", "seconds", "sd_…"}},
 * {"two-string": {"axis", "mass_g", "spacing_mm", "length_mm", "swings", "seconds", "sd_…"}},
 * each sd_ under its value's key. A deviation may be left out: model/measure.h says what then
 * counts. Unknown keys are notes.
 */
#pragma once

#include "base/status.h"
#include "model/issue.h"
#include "model/measure.h"
#include "store/json.h"

#define PH_READINGS_FILE_MOST (1024 * 1024)

/** On PH_OK `*readings` is new and `issues` gains only notes; on any other status it is untouched
 * and `issues` says why, each naming its key ("hanging.lines[0].point_mm"). Whether the reading can
 * be is ph_measure's question, not this one's. */
PhStatus ph_readings_parse (const char *bytes, size_t size, PhReadings *readings, PhIssues *issues);
PhStatus ph_readings_load (const char *path, PhReadings *readings, PhIssues *issues);

/** The same object as compact or pretty text's tree: every value and deviation. The caller owns
 * it. */
PhJsonNode *ph_readings_write (const PhReadings *readings);
