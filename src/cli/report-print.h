/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A report on standard output, for programs and for people.
 */
#pragma once

#include "base/quantity.h"
#include "model/report.h"

/** One JSON object in file units (mm, g, degrees) with every digit; null for what cannot be
 * computed. `name` is the rig's or its file's. */
void ph_report_print_json (const PhRig *rig, const PhReport *report, const char *name);

/** The same for a person to read, in sensible digits. */
void ph_report_print_table (const PhRig *rig, const PhCompiled *compiled, const PhReport *report,
                            const char *name, PhUnits units);
