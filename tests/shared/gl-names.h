/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Counts the OpenGL names of this process that are made and not given back, by standing between
 * libepoxy's table of functions and the driver. The toolkit's own names count too where it shares
 * the table. Call gl_names_watch with a context current, before what is counted.
 */
#pragma once

#include <epoxy/gl.h>

static int gl_names;

#define GL_NAMES_PAIR(make)                                                                        \
  static PFNGLGEN##make##PROC gl_names_gen_##make;                                                 \
  static PFNGLDELETE##make##PROC gl_names_delete_##make;                                           \
  static void gl_names_make_##make (GLsizei n, GLuint *names)                                      \
  {                                                                                                \
    gl_names_gen_##make (n, names);                                                                \
    gl_names += n;                                                                                 \
  }                                                                                                \
  static void gl_names_drop_##make (GLsizei n, const GLuint *names)                                \
  {                                                                                                \
    for (GLsizei i = 0; i < n; i++)                                                                \
      gl_names -= names[i] != 0;                                                                   \
    gl_names_delete_##make (n, names);                                                             \
  }
GL_NAMES_PAIR (BUFFERS)
GL_NAMES_PAIR (VERTEXARRAYS)
GL_NAMES_PAIR (TEXTURES)
GL_NAMES_PAIR (FRAMEBUFFERS)
GL_NAMES_PAIR (RENDERBUFFERS)

static PFNGLCREATESHADERPROC gl_names_create_shader;
static PFNGLDELETESHADERPROC gl_names_delete_shader;
static PFNGLCREATEPROGRAMPROC gl_names_create_program;
static PFNGLDELETEPROGRAMPROC gl_names_delete_program;

static GLuint
gl_names_make_shader (GLenum kind)
{
  gl_names++;
  return gl_names_create_shader (kind);
}

static void
gl_names_drop_shader (GLuint name)
{
  gl_names -= name != 0;
  gl_names_delete_shader (name);
}

static GLuint
gl_names_make_program (void)
{
  gl_names++;
  return gl_names_create_program ();
}

static void
gl_names_drop_program (GLuint name)
{
  gl_names -= name != 0;
  gl_names_delete_program (name);
}

/* The table's entries look themselves up when they are first called. */
#define GL_NAMES_WATCH(Kind, KIND)                                                                 \
  do                                                                                               \
    {                                                                                              \
      GLuint name = 0;                                                                             \
      glGen##Kind (1, &name);                                                                      \
      glDelete##Kind (1, &name);                                                                   \
      gl_names_gen_##KIND = epoxy_glGen##Kind;                                                     \
      gl_names_delete_##KIND = epoxy_glDelete##Kind;                                               \
      epoxy_glGen##Kind = gl_names_make_##KIND;                                                    \
      epoxy_glDelete##Kind = gl_names_drop_##KIND;                                                 \
    }                                                                                              \
  while (0)

static inline void
gl_names_watch (void)
{
  if (gl_names_create_program)
    return;
  GL_NAMES_WATCH (Buffers, BUFFERS);
  GL_NAMES_WATCH (VertexArrays, VERTEXARRAYS);
  GL_NAMES_WATCH (Textures, TEXTURES);
  GL_NAMES_WATCH (Framebuffers, FRAMEBUFFERS);
  GL_NAMES_WATCH (Renderbuffers, RENDERBUFFERS);
  glDeleteShader (glCreateShader (GL_VERTEX_SHADER));
  glDeleteProgram (glCreateProgram ());
  gl_names_create_shader = epoxy_glCreateShader;
  gl_names_delete_shader = epoxy_glDeleteShader;
  gl_names_create_program = epoxy_glCreateProgram;
  gl_names_delete_program = epoxy_glDeleteProgram;
  epoxy_glCreateShader = gl_names_make_shader;
  epoxy_glDeleteShader = gl_names_drop_shader;
  epoxy_glCreateProgram = gl_names_make_program;
  epoxy_glDeleteProgram = gl_names_drop_program;
}
