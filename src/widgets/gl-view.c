/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The context is asked for here, not by GtkGLArea, so that ES can be tried where there is no core
 * profile. A renderer lives from realize to unrealize. A frame costs well under a millisecond of
 * this program's own time while the rig stays as it is.
 */
#include "widgets/gl-view.h"

#include <epoxy/gl.h>
#include <glib/gi18n.h>

#include "widgets/bow-view-private.h"
#include "widgets/marks-flats.h"
#include "widgets/view-palette.h"

#define STILL_AFTER_MS 150
#define VIEWS_MOST 3

struct _PhGlView
{
  GtkGLArea parent_instance;

  PhBowView *views[VIEWS_MOST]; /* borrowed */
  int n_views;
  PhRenderer *renderer; /* while realized */
  guint64 serial;       /* of the lists it has */
  GArray *flats;        /* of PhFlat */
  gboolean still;       /* nothing moved for a moment */
  gboolean drawn_still; /* and that has been drawn */
  guint still_source, news_source;
  gboolean failed, pretend_lost;
  char *why;
};

G_DEFINE_FINAL_TYPE (PhGlView, ph_gl_view, GTK_TYPE_GL_AREA)

enum
{
  READY,
  FAILED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* News. */

static gboolean
news_cb (gpointer data)
{
  PhGlView *self = data;
  self->news_source = 0;
  g_object_ref (self);
  if (self->failed)
    g_signal_emit (self, signals[FAILED], 0, self->why);
  else
    g_signal_emit (self, signals[READY], 0);
  g_object_unref (self);
  return G_SOURCE_REMOVE;
}

static void
tell (PhGlView *self)
{
  if (!self->news_source)
    self->news_source = g_idle_add (news_cb, self);
}

static void
fail (PhGlView *self, const char *why)
{
  if (self->failed)
    return;
  self->failed = TRUE;
  self->why = g_strdup (why);
  tell (self);
}

/* The context. */

static GdkGLContext *
try_context (GdkSurface *surface, gboolean es, GError **error)
{
  GdkGLContext *context = gdk_surface_create_gl_context (surface, error);
  if (!context)
    return NULL;
  gdk_gl_context_set_allowed_apis (context, es ? GDK_GL_API_GLES : GDK_GL_API_GL);
  gdk_gl_context_set_required_version (context, 3, es ? 0 : 3);
  if (!gdk_gl_context_realize (context, error))
    g_clear_object (&context);
  return context;
}

static GdkGLContext *
ph_gl_view_create_context (GtkGLArea *area)
{
  GdkSurface *surface = gtk_native_get_surface (gtk_widget_get_native (GTK_WIDGET (area)));
  gboolean es = g_strcmp0 (g_getenv ("PLUMBHOLD_GLES"), "1") == 0;
  GError *error = NULL;
  GdkGLContext *context = try_context (surface, es, &error);
  if (!context)
    context = try_context (surface, !es, NULL);
  if (!context)
    gtk_gl_area_set_error (area, error);
  g_clear_error (&error);
  return context;
}

static void
ph_gl_view_realize (GtkWidget *widget)
{
  PhGlView *self = PH_GL_VIEW (widget);
  GtkGLArea *area = GTK_GL_AREA (self);
  GTK_WIDGET_CLASS (ph_gl_view_parent_class)->realize (widget);
  gtk_gl_area_make_current (area);
  const GError *error = gtk_gl_area_get_error (area);
  char *why = NULL;
  if (error)
    fail (self, error->message);
  else if (ph_renderer_new (!epoxy_is_desktop_gl (), &self->renderer, &why) != PH_OK)
    fail (self, why);
  else
    tell (self);
  free (why);
  self->serial = 0;
}

static void
ph_gl_view_unrealize (GtkWidget *widget)
{
  PhGlView *self = PH_GL_VIEW (widget);
  gboolean lost = gtk_gl_area_get_error (GTK_GL_AREA (self)) != NULL;
  if (!lost)
    gtk_gl_area_make_current (GTK_GL_AREA (self));
  g_clear_handle_id (&self->still_source, g_source_remove);
  /* Whatever moved has stopped by the time it is seen again. */
  self->still = TRUE;
  self->drawn_still = FALSE;
  ph_renderer_free (self->renderer, lost);
  self->renderer = NULL;
  GTK_WIDGET_CLASS (ph_gl_view_parent_class)->unrealize (widget);
}

/* Drawing. */

/* Where the view stands in the area; false while it is not shown. */
static gboolean
place_of (PhGlView *self, PhBowView *view, PhRenderView *place)
{
  double x, y;
  GtkWidget *widget = GTK_WIDGET (view);
  if (!gtk_widget_get_mapped (widget) || gtk_widget_get_width (widget) < 1
      || !gtk_widget_translate_coordinates (widget, GTK_WIDGET (self), 0, 0, &x, &y))
    return FALSE;
  place->x_px = (float)x;
  place->y_px = (float)y;
  return TRUE;
}

static void
set_lists (PhGlView *self, const PhBowScene *scene)
{
  if (self->serial == scene->serial)
    return;
  ph_renderer_set_list (self->renderer, scene->list);
  ph_renderer_set_reference (self->renderer, scene->reference, scene->plain);
  self->serial = scene->serial;
}

/* What to draw of each shown view; their flats follow one another in one array. */
static size_t
gather (PhGlView *self, const PhPalette *palette, PhRenderView views[VIEWS_MOST])
{
  size_t first[VIEWS_MOST + 1] = { 0 }, n = 0;
  g_array_set_size (self->flats, 0);
  for (int i = 0; i < self->n_views; i++)
    {
      PhBowView *view = self->views[i];
      PhRenderView *to = &views[n];
      if (!place_of (self, view, to))
        continue;
      ph_bow_view_refresh_marks (view);
      set_lists (self, view->scene);
      to->camera = view->camera;
      to->reference_lean_rad = view->view == PH_VIEW_BEHIND ? view->reference_lean.lean_rad : 0.0f;
      to->selected = view->facts.selected;
      ph_marks_add_flats (view->marks, palette, self->flats);
      first[++n] = self->flats->len;
    }
  for (size_t i = 0; i < n; i++)
    {
      views[i].flats = &g_array_index (self->flats, PhFlat, first[i]);
      views[i].n_flats = first[i + 1] - first[i];
    }
  return n;
}

static gboolean
ph_gl_view_render (GtkGLArea *area, GdkGLContext *context)
{
  (void)context;
  PhGlView *self = PH_GL_VIEW (area);
  if (self->failed || gtk_gl_area_get_error (area) || !self->renderer || self->n_views == 0)
    return TRUE;
  GtkWidget *widget = GTK_WIDGET (self);
  int scale = gtk_widget_get_scale_factor (widget);
  PhRenderView views[VIEWS_MOST] = { 0 };
  PhPalette palette = ph_palette_of_widget (GTK_WIDGET (self->views[0]));
  PhRenderColours colours = ph_render_colours_of (&palette);
  size_t n = gather (self, &palette, views);
  PhRenderFrame frame = { .width = gtk_widget_get_width (widget) * scale,
                          .height = gtk_widget_get_height (widget) * scale,
                          .pixel = (float)scale,
                          .still = self->still,
                          .opaque = true };
  ph_shade_bytes (palette.ground, frame.ground);
  ph_renderer_draw (self->renderer, &frame, &colours, views, n);
  self->drawn_still = self->still;
  GLenum wrong = self->pretend_lost ? GL_CONTEXT_LOST : glGetError ();
  if (wrong != GL_NO_ERROR)
    {
      g_autofree char *why = g_strdup_printf ("OpenGL 0x%04x", wrong);
      fail (self, why);
    }
  return TRUE;
}

static gboolean
still_cb (gpointer data)
{
  PhGlView *self = data;
  self->still_source = 0;
  self->still = TRUE;
  gtk_gl_area_queue_render (GTK_GL_AREA (self));
  return G_SOURCE_REMOVE;
}

void
ph_gl_view_redraw (PhGlView *self, gboolean moving)
{
  g_return_if_fail (PH_IS_GL_VIEW (self));
  if (moving)
    {
      self->still = self->drawn_still = FALSE;
      g_clear_handle_id (&self->still_source, g_source_remove);
      self->still_source = g_timeout_add (STILL_AFTER_MS, still_cb, self);
    }
  gtk_gl_area_queue_render (GTK_GL_AREA (self));
}

gboolean
ph_gl_view_is_still (PhGlView *self)
{
  g_return_val_if_fail (PH_IS_GL_VIEW (self), FALSE);
  return self->drawn_still || !gtk_widget_get_mapped (GTK_WIDGET (self));
}

gsize
ph_gl_view_triangles (PhGlView *self)
{
  g_return_val_if_fail (PH_IS_GL_VIEW (self), 0);
  return self->renderer ? ph_renderer_triangles (self->renderer) : 0;
}

/* The object. */

static void
ph_gl_view_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (ph_gl_view_parent_class)->css_changed (widget, change);
  /* Another theme: other colours. */
  gtk_gl_area_queue_render (GTK_GL_AREA (widget));
}

static void
ph_gl_view_dispose (GObject *object)
{
  PhGlView *self = PH_GL_VIEW (object);
  g_clear_handle_id (&self->still_source, g_source_remove);
  g_clear_handle_id (&self->news_source, g_source_remove);
  self->n_views = 0;
  G_OBJECT_CLASS (ph_gl_view_parent_class)->dispose (object);
}

static void
ph_gl_view_finalize (GObject *object)
{
  PhGlView *self = PH_GL_VIEW (object);
  g_array_unref (self->flats);
  g_free (self->why);
  G_OBJECT_CLASS (ph_gl_view_parent_class)->finalize (object);
}

static void
ph_gl_view_class_init (PhGlViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GtkGLAreaClass *area_class = GTK_GL_AREA_CLASS (klass);

  object_class->dispose = ph_gl_view_dispose;
  object_class->finalize = ph_gl_view_finalize;
  widget_class->realize = ph_gl_view_realize;
  widget_class->unrealize = ph_gl_view_unrealize;
  widget_class->css_changed = ph_gl_view_css_changed;
  area_class->create_context = ph_gl_view_create_context;
  area_class->render = ph_gl_view_render;
  signals[READY] = g_signal_new ("ready", PH_TYPE_GL_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
  signals[FAILED] = g_signal_new ("failed", PH_TYPE_GL_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_set_css_name (widget_class, "bowarea");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
ph_gl_view_init (PhGlView *self)
{
  self->flats = g_array_new (FALSE, FALSE, sizeof (PhFlat));
  self->still = TRUE;
  gtk_gl_area_set_auto_render (GTK_GL_AREA (self), FALSE);
  gtk_gl_area_set_has_depth_buffer (GTK_GL_AREA (self), TRUE);
  gtk_widget_set_can_target (GTK_WIDGET (self), FALSE);
}

GtkWidget *
ph_gl_view_new (void)
{
  return g_object_new (PH_TYPE_GL_VIEW, NULL);
}

void
ph_gl_view_add (PhGlView *self, PhBowView *view)
{
  g_return_if_fail (PH_IS_GL_VIEW (self) && PH_IS_BOW_VIEW (view));
  g_return_if_fail (self->n_views < VIEWS_MOST);
  self->views[self->n_views++] = view;
}

gboolean
ph_gl_view_serves (PhGlView *self, PhBowView *view)
{
  g_return_val_if_fail (PH_IS_GL_VIEW (self), FALSE);
  for (int i = 0; i < self->n_views; i++)
    if (self->views[i] == view)
      return TRUE;
  return FALSE;
}

void
ph_gl_view_pretend_lost (PhGlView *self)
{
  g_return_if_fail (PH_IS_GL_VIEW (self));
  self->pretend_lost = TRUE;
  gtk_gl_area_queue_render (GTK_GL_AREA (self));
}
