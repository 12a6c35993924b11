/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A whole rig between a tree of JSON and the model, without the disk and without the check.
 */
#pragma once

#include "model/rig.h"
#include "store/json.h"

/** Fills `rig` (from ph_rig_new) with what can be read. Errors of type, of words and of format go
 * to `issues`; what is missing or out of range is ph_check_rig's. False: another format or a newer
 * version, of which nothing more was read. */
bool ph_rig_read (const PhJson *json, PhRig *rig, PhIssues *issues);

/** Its tree. The caller owns it. */
PhJsonNode *ph_rig_write (const PhRig *rig);

/** Whether the root is an object of that "format" and of version 1; else errors that say so. */
bool ph_format_read (const PhJson *json, const char *format, PhIssues *issues);
/** A new object with these two keys. */
PhJsonNode *ph_format_write (const char *format);

/** The parts of a list, in new memory; a part that could not be read has no more than id and
 * place. */
void ph_parts_read (const PhJson *json, const PhJsonNode *list, PhPart **parts, size_t *n,
                    PhIssues *issues);
