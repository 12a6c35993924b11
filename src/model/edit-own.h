/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the edits share among their files.
 */
#pragma once

#include "model/issue.h"
#include "model/rig.h"

/** Ends an edit that was made on `draft`, a copy of `rig`: a draft that passes the check takes the
 * rig's place, another is dropped and its errors go to `issues`. Frees the draft either way. */
bool ph_edit_commit (PhRig *rig, PhRig *draft, PhIssues *issues);

/** A new id that no part of the rig has, made from `name` ("Back bar" → "back-bar", "back-bar-2",
 * …); `kind` serves where the name has nothing to make one of. New string. */
char *ph_edit_fresh_id (const PhRig *rig, const char *name, PhPartKind kind);
/** `name`, with a number after it where a part of the rig is called so already ("Back bar 2"). New
 * string. */
char *ph_edit_fresh_name (const PhRig *rig, const char *name);
