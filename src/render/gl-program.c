/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Compile, link, and read the log where that fails.
 */
#include "render/gl-program.h"

#include <epoxy/gl.h>
#include <stdlib.h>

#include "base/text.h"

static char *
log_of (GLuint name, bool is_program)
{
  char text[2048] = "";
  if (is_program)
    glGetProgramInfoLog (name, sizeof text, NULL, text);
  else
    glGetShaderInfoLog (name, sizeof text, NULL, text);
  return ph_text_cut (text, 900);
}

static GLuint
compile (bool es, GLenum kind, const char *source, char **why)
{
  const char *parts[] = { es ? "#version 300 es\nprecision highp float;\n" : "#version 330 core\n",
                          source };
  GLuint shader = glCreateShader (kind);
  glShaderSource (shader, 2, parts, NULL);
  glCompileShader (shader);
  GLint good = GL_FALSE;
  glGetShaderiv (shader, GL_COMPILE_STATUS, &good);
  if (good)
    return shader;
  *why = log_of (shader, false);
  glDeleteShader (shader);
  return 0;
}

static PhStatus
link_both (GLuint vertex, GLuint fragment, PhProgram *program, char **why)
{
  GLuint name = glCreateProgram ();
  glAttachShader (name, vertex);
  glAttachShader (name, fragment);
  glLinkProgram (name);
  GLint good = GL_FALSE;
  glGetProgramiv (name, GL_LINK_STATUS, &good);
  if (good)
    {
      program->name = name;
      return PH_OK;
    }
  *why = log_of (name, true);
  glDeleteProgram (name);
  return PH_ERR_GRAPHICS;
}

PhStatus
ph_program_new (bool es, const char *vertex, const char *fragment, PhProgram *program, char **why)
{
  GLuint v = compile (es, GL_VERTEX_SHADER, vertex, why);
  if (!v)
    return PH_ERR_GRAPHICS;
  GLuint f = compile (es, GL_FRAGMENT_SHADER, fragment, why);
  PhStatus status = f ? link_both (v, f, program, why) : PH_ERR_GRAPHICS;
  glDeleteShader (v);
  if (f)
    glDeleteShader (f);
  return status;
}

void
ph_program_free (PhProgram *program)
{
  if (program->name)
    glDeleteProgram (program->name);
  program->name = 0;
}
