/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The OpenGL areas under a pane's views: one for the column of the views that share a place at the
 * left, one for the view from behind; never more. Started after the pane's first frame, so that a
 * window is there as soon as without them; where they fail, the views draw by themselves.
 */
#pragma once

#include "widgets/gl-view.h"

G_BEGIN_DECLS

typedef struct PhGlViews PhGlViews;

typedef enum
{
  PH_GL_COLUMN,
  PH_GL_BEHIND
} PhGlPlace;
#define PH_GL_PLACES 2

/** `changed` is called when the areas begin to draw, with null, or have failed, with a sentence for
 * the person. The pane's children are its views; the areas become children too, beneath them. */
typedef void (*PhGlViewsChanged) (GtkWidget *pane, const char *failed);
PhGlViews *ph_gl_views_new (GtkWidget *pane, PhGlViewsChanged changed);
/** Before the pane lets go of its children. */
void ph_gl_views_free (PhGlViews *self);

/** Puts a view over an area; any number of times, at any time. */
void ph_gl_views_add (PhGlViews *self, PhGlPlace place, PhBowView *view);

/** Whether the areas draw. */
gboolean ph_gl_views_are_on (const PhGlViews *self);

/** Whether every picture is the fine one of what stands now; the views' own pictures always are. */
gboolean ph_gl_views_are_still (const PhGlViews *self);

/** Where an area stands in the pane; without room it is hidden. */
void ph_gl_views_allocate (PhGlViews *self, PhGlPlace place, const GtkAllocation *allocation);

G_END_DECLS
