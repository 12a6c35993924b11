/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One instanced draw for all lines of a kind. They read depth and never write it.
 */
#include "render/line-drawer.h"

#include <epoxy/gl.h>
#include <stddef.h>
#include <stdlib.h>

#include "base/text.h"
#include "render/shaders.h"

typedef struct
{
  float x, y;
  uint8_t colour[4];
} Corner;

static void
attribute (GLuint place, GLint n, GLenum type, bool normalised, size_t stride, size_t offset)
{
  glEnableVertexAttribArray (place);
  glVertexAttribPointer (place, n, type, normalised ? GL_TRUE : GL_FALSE, (GLsizei)stride,
                         (const void *)offset);
}

static void
make_array (unsigned *array, unsigned *buffer)
{
  glGenVertexArrays (1, array);
  glGenBuffers (1, buffer);
  glBindVertexArray (*array);
  glBindBuffer (GL_ARRAY_BUFFER, *buffer);
}

static void
lay_out (PhLineDrawer *self)
{
  size_t stride = sizeof (PhStrip);
  make_array (&self->strip_array, &self->strip_buffer);
  attribute (PH_ATTRIBUTE_A, 3, GL_FLOAT, false, stride, offsetof (PhStrip, a));
  attribute (PH_ATTRIBUTE_B, 3, GL_FLOAT, false, stride, offsetof (PhStrip, b));
  attribute (PH_ATTRIBUTE_COLOUR, 4, GL_UNSIGNED_BYTE, true, stride, offsetof (PhStrip, colour));
  attribute (PH_ATTRIBUTE_LINE, 2, GL_FLOAT, false, stride, offsetof (PhStrip, half_px));
  for (GLuint i = 0; i < 4; i++)
    glVertexAttribDivisor (i, 1);
  make_array (&self->flat_array, &self->flat_buffer);
  attribute (PH_ATTRIBUTE_AT, 2, GL_FLOAT, false, sizeof (Corner), 0);
  attribute (PH_ATTRIBUTE_COLOUR, 4, GL_UNSIGNED_BYTE, true, sizeof (Corner),
             offsetof (Corner, colour));
  glBindVertexArray (0);
}

PhStatus
ph_line_drawer_init (PhLineDrawer *self, bool es, char **why)
{
  PhStatus status =
      ph_program_new (es, ph_shader_strip_vertex, ph_shader_strip_fragment, &self->strip, why);
  if (status == PH_OK)
    status = ph_program_new (es, ph_shader_flat_vertex, ph_shader_flat_fragment, &self->flat, why);
  if (status != PH_OK)
    {
      ph_program_free (&self->strip);
      return status;
    }
  self->to_clip = glGetUniformLocation (self->strip.name, "to_clip");
  self->half_size = glGetUniformLocation (self->strip.name, "half_size");
  self->pixel = glGetUniformLocation (self->strip.name, "pixel");
  self->nearer = glGetUniformLocation (self->strip.name, "nearer");
  self->faint = glGetUniformLocation (self->strip.name, "faint");
  self->flat_to_clip = glGetUniformLocation (self->flat.name, "to_clip");
  lay_out (self);
  return PH_OK;
}

void
ph_line_drawer_clear (PhLineDrawer *self)
{
  ph_program_free (&self->strip);
  ph_program_free (&self->flat);
  glDeleteVertexArrays (1, &self->strip_array);
  glDeleteBuffers (1, &self->strip_buffer);
  glDeleteVertexArrays (1, &self->flat_array);
  glDeleteBuffers (1, &self->flat_buffer);
}

static void
set_state (PhLinesWhere where)
{
  if (where == PH_LINES_OVER)
    glDisable (GL_DEPTH_TEST);
  else
    glEnable (GL_DEPTH_TEST);
  glDepthFunc (where == PH_LINES_HIDDEN ? GL_GREATER : GL_LESS);
  glDepthMask (GL_FALSE);
  glDisable (GL_CULL_FACE);
  glEnable (GL_BLEND);
  glBlendFunc (GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
}

void
ph_line_drawer_draw (PhLineDrawer *self, const PhStrips *strips, const PhLineView *view)
{
  if (strips->n == 0)
    return;
  glUseProgram (self->strip.name);
  glBindVertexArray (self->strip_array);
  glBindBuffer (GL_ARRAY_BUFFER, self->strip_buffer);
  glBufferData (GL_ARRAY_BUFFER, (GLsizeiptr)(strips->n * sizeof *strips->items), strips->items,
                GL_STREAM_DRAW);
  glUniformMatrix4fv (self->to_clip, 1, GL_FALSE, view->clip);
  glUniform2f (self->half_size, view->width_px * view->pixel / 2.0f,
               view->height_px * view->pixel / 2.0f);
  glUniform1f (self->pixel, view->pixel);
  glUniform1f (self->nearer, view->nearer);
  glUniform1f (self->faint, view->faint);
  set_state (view->where);
  glDrawArraysInstanced (GL_TRIANGLE_STRIP, 0, 4, (GLsizei)strips->n);
}

void
ph_line_drawer_fill (PhLineDrawer *self, const PhPixel *at, size_t n, const uint8_t colour[4],
                     const float clip[16])
{
  Corner *corners = ph_alloc (n * sizeof *corners);
  for (size_t i = 0; i < n; i++)
    corners[i] = (Corner){ at[i].x, at[i].y, { colour[0], colour[1], colour[2], colour[3] } };
  glUseProgram (self->flat.name);
  glBindVertexArray (self->flat_array);
  glBindBuffer (GL_ARRAY_BUFFER, self->flat_buffer);
  glBufferData (GL_ARRAY_BUFFER, (GLsizeiptr)(n * sizeof *corners), corners, GL_STREAM_DRAW);
  glUniformMatrix4fv (self->flat_to_clip, 1, GL_FALSE, clip);
  set_state (PH_LINES_OVER);
  glDrawArrays (GL_TRIANGLE_FAN, 0, (GLsizei)n);
  free (corners);
}
