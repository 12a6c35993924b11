/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Atomic replacement of a file's content on POSIX.
 */
#pragma once

#include <stddef.h>

#include "base/status.h"

/** Writes `bytes` beside `path`'s target, fsyncs, renames over it, fsyncs the folder. Keeps an
 * existing file's mode (new: 0666 less umask); follows links. PH_ERR_WRITE leaves the old file as
 * it was, removes what was written beside it, and `*why` is a new sentence with the cause. */
PhStatus ph_save_file (const char *path, const char *bytes, size_t size, char **why);
