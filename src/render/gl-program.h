/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A compiled pair of shaders. All calls need a current OpenGL context (3.3 core or ES 3.0).
 */
#pragma once

#include <stdbool.h>

#include "base/status.h"

typedef struct
{
  unsigned name; /* OpenGL's; 0 is none */
} PhProgram;

/** Compiles and links. `es` says which dialect the context speaks; the sources carry no version
 * line. On PH_ERR_GRAPHICS `*why` is a new string with the driver's own words. */
PhStatus ph_program_new (bool es, const char *vertex, const char *fragment, PhProgram *program,
                         char **why);
void ph_program_free (PhProgram *program);
