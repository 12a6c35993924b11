/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A whole file into memory, with the world's failures as sentences.
 */
#pragma once

#include "base/status.h"

#include <stddef.h>

/** Reads a regular file of at most `most` bytes. Never waits on a pipe or a device. On PH_OK
 * `*bytes` is new, `*size` long, with a NUL behind; else PH_ERR_READ or PH_ERR_TOO_LARGE, and
 * `*why` is a new sentence with the cause and what would help. */
PhStatus ph_read_file (const char *path, size_t most, char **bytes, size_t *size, char **why);
