/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An OpenGL area that lies under some bow views and draws the bow of each where it stands. It takes
 * no input. While things change it draws plainly; a moment after the last change once more, finely.
 * GL 3.3 core, else ES 3.0 (the environment's PLUMBHOLD_GLES=1 asks for ES first: for tests).
 */
#pragma once

#include <gtk/gtk.h>

#include "widgets/bow-view.h"

G_BEGIN_DECLS

#define PH_TYPE_GL_VIEW (ph_gl_view_get_type ())
G_DECLARE_FINAL_TYPE (PhGlView, ph_gl_view, PH, GL_VIEW, GtkGLArea)

/* Signals, both from an idle moment:
 *   "ready" ()              it is realized and can draw
 *   "failed" (string why)   it cannot, or no longer; nothing more comes of it */

GtkWidget *ph_gl_view_new (void);

/** A view that shares a parent with the area and lies over it; borrowed. Not drawn while it is
 * hidden. */
void ph_gl_view_add (PhGlView *self, PhBowView *view);
gboolean ph_gl_view_serves (PhGlView *self, PhBowView *view);

/** Draw anew: `moving` plainly now and finely when nothing has moved for a moment; else as well as
 * it is now. */
void ph_gl_view_redraw (PhGlView *self, gboolean moving);

/** Whether what is to be seen is the fine picture of what stands now. */
gboolean ph_gl_view_is_still (PhGlView *self);

/** Triangles of the last frame, all its views together. */
gsize ph_gl_view_triangles (PhGlView *self);

/** For tests: the next frame finds its context lost, as when the driver was reset. */
void ph_gl_view_pretend_lost (PhGlView *self);

G_END_DECLS
