/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * glBlitFramebuffer resolves; colour is RGBA8, as a GtkGLArea has it, since ES 3.0 resolves only
 * into the same format.
 */
#include "render/multisample.h"

#include <epoxy/gl.h>

#define SAMPLES 4

void
ph_multisample_free (PhMultisample *self)
{
  if (self->framebuffer)
    {
      glDeleteFramebuffers (1, &self->framebuffer);
      glDeleteRenderbuffers (1, &self->colour);
      glDeleteRenderbuffers (1, &self->depth);
    }
  *self = (PhMultisample){ 0 };
}

static bool
make (PhMultisample *self, int width, int height)
{
  ph_multisample_free (self);
  glGenFramebuffers (1, &self->framebuffer);
  glGenRenderbuffers (1, &self->colour);
  glGenRenderbuffers (1, &self->depth);
  glBindRenderbuffer (GL_RENDERBUFFER, self->colour);
  glRenderbufferStorageMultisample (GL_RENDERBUFFER, SAMPLES, GL_RGBA8, width, height);
  glBindRenderbuffer (GL_RENDERBUFFER, self->depth);
  glRenderbufferStorageMultisample (GL_RENDERBUFFER, SAMPLES, GL_DEPTH_COMPONENT24, width, height);
  glBindFramebuffer (GL_FRAMEBUFFER, self->framebuffer);
  glFramebufferRenderbuffer (GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_RENDERBUFFER, self->colour);
  glFramebufferRenderbuffer (GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_RENDERBUFFER, self->depth);
  self->width = width;
  self->height = height;
  return glCheckFramebufferStatus (GL_FRAMEBUFFER) == GL_FRAMEBUFFER_COMPLETE;
}

bool
ph_multisample_begin (PhMultisample *self, int width, int height)
{
  glGetIntegerv (GL_DRAW_FRAMEBUFFER_BINDING, &self->before);
  int before = self->before;
  if (self->framebuffer && self->width == width && self->height == height)
    {
      glBindFramebuffer (GL_FRAMEBUFFER, self->framebuffer);
      return true;
    }
  bool good = make (self, width, height);
  if (!good)
    {
      glBindFramebuffer (GL_FRAMEBUFFER, (GLuint)before);
      ph_multisample_free (self);
    }
  self->before = before;
  return good;
}

void
ph_multisample_end (PhMultisample *self)
{
  glBindFramebuffer (GL_READ_FRAMEBUFFER, self->framebuffer);
  glBindFramebuffer (GL_DRAW_FRAMEBUFFER, (GLuint)self->before);
  glBlitFramebuffer (0, 0, self->width, self->height, 0, 0, self->width, self->height,
                     GL_COLOR_BUFFER_BIT, GL_NEAREST);
  glBindFramebuffer (GL_FRAMEBUFFER, (GLuint)self->before);
}
