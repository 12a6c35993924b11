/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rig's own check for parts that stand in no rig: on the clipboard, in the catalogue. They are
 * put on a bench bow that takes anything.
 */
#pragma once

#include "model/issue.h"
#include "model/part.h"

/** Whether the parts are sound: the first hung on a place that suits it, the others as they say.
 * `label` serves as the first one's id where it has none. Errors go to `issues`. */
bool ph_bench_check (const PhPart *parts, size_t n, const char *label, PhIssues *issues);
