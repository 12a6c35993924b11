/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rig file: JSON text to a checked rig and back, and both with the disk. Loading is strict
 * (RFC 8259 JSON, UTF-8, no key twice) and all or nothing; saving is atomic and writes numbers so
 * that they read back as the very same doubles, whatever the locale.
 */
#pragma once

#include "base/status.h"
#include "model/edit.h"
#include "model/issue.h"
#include "model/rig.h"

/** 1 MiB: a larger file is refused before it is parsed. */
#define PH_RIG_FILE_MOST (1024 * 1024)

/** Parses and checks. On PH_OK `*rig` is a new checked rig and `issues` gains only notes; on any
 * other status `*rig` is untouched and `issues` says why, at least once. A rig without a name keeps
 * a null one: ph_rig_name_of_path is what serves then. */
PhStatus ph_rig_parse (const char *bytes, size_t size, PhRig **rig, PhIssues *issues);

/** The file's text, pretty-printed, ending in a newline. New string, `*size` its length. */
char *ph_rig_print (const PhRig *rig, size_t *size);

/** Reads `path` (a regular file of at most 1 MiB) and parses it. */
PhStatus ph_rig_load (const char *path, PhRig **rig, PhIssues *issues);

/** Writes beside, fsyncs, renames, fsyncs the folder; keeps the file's mode; follows a link to its
 * target. On PH_ERR_WRITE the file on disk is as it was and `*why` is a new sentence naming the
 * cause. */
PhStatus ph_rig_save (const PhRig *rig, const char *path, char **why);

/** The name of a rig that states none: its file's own, without folder and ".rig.json". New string,
 * well-formed UTF-8. */
char *ph_rig_name_of_path (const char *path);

/** A rig without archer, checks, body data and book: for Share layout. A bow held in the right
 * hand still says so, since all its y depend on it. Free with ph_rig_free. */
PhRig *ph_rig_without_archer (const PhRig *rig);

/** A fragment as JSON text for the clipboard ({"format": "plumbhold-parts", …}) and back. */
char *ph_fragment_print (const PhPart *parts, size_t n);
PhStatus ph_fragment_parse (const char *bytes, size_t size, PhPart **parts, size_t *n,
                            PhIssues *issues);
