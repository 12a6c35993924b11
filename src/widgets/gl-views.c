/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One start for all areas: they draw when every one can, and none draws when one cannot.
 */
#include "widgets/gl-views.h"

#include <glib/gi18n.h>

#define VIEWS_MOST 4

struct PhGlViews
{
  GtkWidget *pane; /* borrowed */
  PhGlViewsChanged changed;
  GtkWidget *areas[PH_GL_PLACES]; /* children of the pane; null before the start, or failed */
  PhBowView *views[VIEWS_MOST];   /* borrowed */
  PhGlPlace place[VIEWS_MOST];
  int n_views, n_ready;
  gboolean on, over;
  guint tick, start_source;
};

static void
redraw_cb (PhGlViews *self, gboolean moving, PhBowView *view)
{
  for (int i = 0; i < PH_GL_PLACES; i++)
    if (self->areas[i] && ph_gl_view_serves (PH_GL_VIEW (self->areas[i]), view))
      ph_gl_view_redraw (PH_GL_VIEW (self->areas[i]), moving);
}

static void
set_over (PhGlViews *self, gboolean on)
{
  self->on = on;
  for (int i = 0; i < self->n_views; i++)
    ph_bow_view_set_over_gl (self->views[i], on);
}

static void
give_up (PhGlViews *self, const char *why)
{
  if (self->over)
    return;
  self->over = TRUE;
  set_over (self, FALSE);
  for (int i = 0; i < PH_GL_PLACES; i++)
    g_clear_pointer (&self->areas[i], gtk_widget_unparent);
  /* Translators: %s is what the graphics driver says, in its own words. */
  g_autofree char *said = g_strdup_printf (_ ("The views are drawn without OpenGL (%s)."), why);
  self->changed (self->pane, said);
}

static void
ready_cb (PhGlViews *self)
{
  self->n_ready++;
  if (self->on || self->over || self->n_ready < PH_GL_PLACES)
    return;
  set_over (self, TRUE);
  self->changed (self->pane, NULL);
}

static void
start (PhGlViews *self)
{
  GskRenderer *renderer = gtk_native_get_renderer (gtk_widget_get_native (self->pane));
  if (g_str_equal (G_OBJECT_TYPE_NAME (renderer), "GskCairoRenderer"))
    {
      give_up (self, _ ("the window itself is not drawn with it"));
      return;
    }
  for (int i = 0; i < PH_GL_PLACES; i++)
    {
      GtkWidget *area = ph_gl_view_new ();
      self->areas[i] = area;
      g_signal_connect_swapped (area, "ready", G_CALLBACK (ready_cb), self);
      g_signal_connect_swapped (area, "failed", G_CALLBACK (give_up), self);
      for (int k = 0; k < self->n_views; k++)
        if (self->place[k] == (PhGlPlace)i)
          ph_gl_view_add (PH_GL_VIEW (area), self->views[k]);
      gtk_widget_insert_before (area, self->pane, gtk_widget_get_first_child (self->pane));
    }
}

static gboolean
start_cb (gpointer data)
{
  PhGlViews *self = data;
  self->start_source = 0;
  if (gtk_widget_get_mapped (self->pane))
    start (self);
  return G_SOURCE_REMOVE;
}

/* Called before the first frame is painted; an idle moment comes after it. */
static gboolean
tick_cb (GtkWidget *pane, GdkFrameClock *clock, gpointer data)
{
  PhGlViews *self = data;
  (void)pane;
  (void)clock;
  self->tick = 0;
  self->start_source = g_idle_add_full (G_PRIORITY_LOW, start_cb, self, NULL);
  return G_SOURCE_REMOVE;
}

static void
mapped_cb (PhGlViews *self)
{
  if (!self->areas[0] && !self->over && !self->tick && !self->start_source)
    self->tick = gtk_widget_add_tick_callback (self->pane, tick_cb, self, NULL);
}

PhGlViews *
ph_gl_views_new (GtkWidget *pane, PhGlViewsChanged changed)
{
  PhGlViews *self = g_new0 (PhGlViews, 1);
  self->pane = pane;
  self->changed = changed;
  g_signal_connect_swapped (pane, "map", G_CALLBACK (mapped_cb), self);
  return self;
}

void
ph_gl_views_free (PhGlViews *self)
{
  g_signal_handlers_disconnect_by_data (self->pane, self);
  if (self->tick)
    gtk_widget_remove_tick_callback (self->pane, self->tick);
  g_clear_handle_id (&self->start_source, g_source_remove);
  for (int i = 0; i < self->n_views; i++)
    g_signal_handlers_disconnect_by_data (self->views[i], self);
  for (int i = 0; i < PH_GL_PLACES; i++)
    g_clear_pointer (&self->areas[i], gtk_widget_unparent);
  g_free (self);
}

void
ph_gl_views_add (PhGlViews *self, PhGlPlace place, PhBowView *view)
{
  g_return_if_fail (self->n_views < VIEWS_MOST);
  self->views[self->n_views] = view;
  self->place[self->n_views++] = place;
  g_signal_connect_swapped (view, "redraw", G_CALLBACK (redraw_cb), self);
  if (self->areas[place])
    ph_gl_view_add (PH_GL_VIEW (self->areas[place]), view);
  if (self->on)
    ph_bow_view_set_over_gl (view, TRUE);
}

gboolean
ph_gl_views_are_on (const PhGlViews *self)
{
  return self->on;
}

gboolean
ph_gl_views_are_still (const PhGlViews *self)
{
  if (self->over)
    return TRUE;
  for (int i = 0; i < PH_GL_PLACES; i++)
    if (!self->areas[i] || !ph_gl_view_is_still (PH_GL_VIEW (self->areas[i])))
      return FALSE;
  return self->on;
}

void
ph_gl_views_allocate (PhGlViews *self, PhGlPlace place, const GtkAllocation *allocation)
{
  GtkWidget *area = self->areas[place];
  gboolean room = allocation->width > 0 && allocation->height > 0;
  if (!area)
    return;
  gtk_widget_set_child_visible (area, room);
  if (room)
    gtk_widget_size_allocate (area, allocation, -1);
}
