/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * EGL_PLATFORM_SURFACELESS_MESA: no display server is needed.
 */
#include "tests/render/offscreen.h"

#include <epoxy/egl.h>
#include <epoxy/gl.h>
#include <string.h>

static EGLDisplay
open_display (void)
{
  PFNEGLGETPLATFORMDISPLAYEXTPROC get
      = (PFNEGLGETPLATFORMDISPLAYEXTPROC)eglGetProcAddress ("eglGetPlatformDisplayEXT");
  return get ? get (EGL_PLATFORM_SURFACELESS_MESA, EGL_DEFAULT_DISPLAY, NULL) : EGL_NO_DISPLAY;
}

static EGLContext
open_context (EGLDisplay display, bool es)
{
  const EGLint core[] = { EGL_CONTEXT_MAJOR_VERSION,
                          3,
                          EGL_CONTEXT_MINOR_VERSION,
                          3,
                          EGL_CONTEXT_OPENGL_PROFILE_MASK,
                          EGL_CONTEXT_OPENGL_CORE_PROFILE_BIT,
                          EGL_NONE };
  const EGLint embedded[]
      = { EGL_CONTEXT_MAJOR_VERSION, 3, EGL_CONTEXT_MINOR_VERSION, 0, EGL_NONE };
  eglBindAPI (es ? EGL_OPENGL_ES_API : EGL_OPENGL_API);
  return eglCreateContext (display, EGL_NO_CONFIG_KHR, EGL_NO_CONTEXT, es ? embedded : core);
}

static void
make_framebuffer (Offscreen *self)
{
  glGenFramebuffers (1, &self->framebuffer);
  glGenRenderbuffers (1, &self->colour);
  glGenRenderbuffers (1, &self->depth);
  glBindRenderbuffer (GL_RENDERBUFFER, self->colour);
  glRenderbufferStorage (GL_RENDERBUFFER, GL_RGBA8, self->width, self->height);
  glBindRenderbuffer (GL_RENDERBUFFER, self->depth);
  glRenderbufferStorage (GL_RENDERBUFFER, GL_DEPTH_COMPONENT24, self->width, self->height);
  glBindFramebuffer (GL_FRAMEBUFFER, self->framebuffer);
  glFramebufferRenderbuffer (GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_RENDERBUFFER, self->colour);
  glFramebufferRenderbuffer (GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_RENDERBUFFER, self->depth);
}

bool
offscreen_open (Offscreen *self, bool es, int width, int height, const char **why)
{
  memset (self, 0, sizeof *self);
  self->width = width;
  self->height = height;
  self->display = open_display ();
  *why = "no EGL display";
  if (self->display == EGL_NO_DISPLAY || !eglInitialize (self->display, NULL, NULL))
    return false;
  self->context = open_context (self->display, es);
  *why = "no context";
  if (self->context == EGL_NO_CONTEXT
      || !eglMakeCurrent (self->display, EGL_NO_SURFACE, EGL_NO_SURFACE, self->context))
    return false;
  make_framebuffer (self);
  return glCheckFramebufferStatus (GL_FRAMEBUFFER) == GL_FRAMEBUFFER_COMPLETE;
}

void
offscreen_read (const Offscreen *self, uint8_t *rgba)
{
  size_t row = (size_t)self->width * 4;
  glBindFramebuffer (GL_FRAMEBUFFER, self->framebuffer);
  glPixelStorei (GL_PACK_ALIGNMENT, 1);
  for (int y = 0; y < self->height; y++)
    glReadPixels (0, self->height - 1 - y, self->width, 1, GL_RGBA, GL_UNSIGNED_BYTE,
                  rgba + (size_t)y * row);
}

void
offscreen_close (Offscreen *self)
{
  glDeleteFramebuffers (1, &self->framebuffer);
  glDeleteRenderbuffers (1, &self->colour);
  glDeleteRenderbuffers (1, &self->depth);
  eglMakeCurrent (self->display, EGL_NO_SURFACE, EGL_NO_SURFACE, EGL_NO_CONTEXT);
  eglDestroyContext (self->display, self->context);
}
