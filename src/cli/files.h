/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What all commands do with files and standard output.
 */
#pragma once

#include "model/issue.h"
#include "model/rig.h"

/** Most error lines that are printed for one file; a last line says how many more there are. */
#define PH_ERROR_LINES_MOST 50

/** Loads a rig. Null after its errors have been printed on standard error. */
PhRig *ph_files_load_rig (const char *path);

/** Prints the errors among `issues` as "PATH: …", one a line of at most 1,000 characters. */
void ph_files_print_errors (const char *path, const PhIssues *issues);

/** The exit code, once all output is out: PH_EXIT_ERRORS where it could not be written. */
int ph_files_finish (void);
