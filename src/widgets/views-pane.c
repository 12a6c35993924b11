/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pane keeps one camera state (scale, x of side and above, height of side and behind, and one
 * number of each alone) and hands every view its camera. Rectangles follow from what had to be
 * shown when the rig was opened or fitted, so that nothing jumps while a part is moved.
 */
#include "widgets/views-pane-private.h"

#include <glib/gi18n.h>

#include "widgets/views-layout.h"

#define SCALE_LEAST 0.03f
#define SCALE_MOST 20.0f

G_DEFINE_FINAL_TYPE (PhViewsPane, ph_views_pane, GTK_TYPE_WIDGET)

enum
{
  PROP_SHOW_ABOVE = 1,
  PROP_LEAN_FACTOR,
  PROP_SHOW_FREE,
  PROP_FILLED,
  N_PROPERTIES
};
static GParamSpec *properties[N_PROPERTIES];

enum
{
  REFUSED,
  ACTIVATED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static PhBowView *
view_of (PhViewsPane *self, PhView view)
{
  return PH_BOW_VIEW (self->views[view]);
}

static void
measure_rig (PhViewsPane *self)
{
  self->extent.side = ph_bow_view_get_extent (view_of (self, PH_VIEW_SIDE));
  self->extent.behind = ph_bow_view_get_extent (view_of (self, PH_VIEW_BEHIND));
  self->extent.above = ph_bow_view_get_extent (view_of (self, PH_VIEW_ABOVE));
  self->measured = TRUE;
}

static PhViewsLayout
layout_now (PhViewsPane *self, PhViewRect *foot)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self));
  int height = gtk_widget_get_height (GTK_WIDGET (self));
  int foot_width, foot_height;
  if (!self->measured)
    measure_rig (self);
  ph_views_pane_measure_foot (self, width, &foot_width, &foot_height);
  return ph_views_layout_with_foot (&self->extent, self->show_above, (float)width, (float)height,
                                    PH_PANE_GAP, (float)foot_width, (float)foot_height, foot);
}

static void
hand_out (PhViewsPane *self)
{
  for (int i = 0; i < PH_PANE_VIEWS; i++)
    ph_bow_view_set_camera (PH_BOW_VIEW (self->views[i]), &self->cameras[i]);
}

/* What two views share stays shared: x of side and above, height of side and behind, counted from
 * their upper edges. */
static void
share (PhViewsPane *self)
{
  if (self->filling)
    return;
  PhCamera *side = &self->cameras[PH_VIEW_SIDE], *behind = &self->cameras[PH_VIEW_BEHIND];
  PhCamera *above = &self->cameras[PH_VIEW_ABOVE];
  above->px_per_mm = behind->px_per_mm = side->px_per_mm;
  above->middle.x = side->middle.x;
  behind->middle.z =
      side->middle.z - (behind->height_px - side->height_px) / 2.0f / side->px_per_mm;
}

/* A view that fills the pane shows all there is at a scale of its own. */
static void
aim_alone (PhViewsPane *self, PhView view)
{
  const PhExtent extents[] = { self->extent.side, self->extent.behind, self->extent.above };
  PhCamera *camera = &self->cameras[view];
  PhMargins margins = ph_view_margins (view);
  camera->width_px = (float)gtk_widget_get_width (GTK_WIDGET (self));
  camera->height_px = (float)gtk_widget_get_height (GTK_WIDGET (self));
  if (!self->moved)
    {
      camera->px_per_mm =
          ph_extent_scale (extents[view], camera->width_px, camera->height_px, margins);
      ph_camera_centre (camera, extents[view], margins);
    }
  ph_bow_view_set_camera (view_of (self, view), camera);
}

static void
aim (PhViewsPane *self, const PhViewsLayout *layout)
{
  PhCamera before[PH_PANE_VIEWS];
  for (int i = 0; i < PH_PANE_VIEWS; i++)
    before[i] = self->cameras[i];
  ph_views_cameras (&self->extent, layout, ph_views_scale (&self->extent, layout), 0.0f, 0.0f,
                    self->cameras);
  /* Nor does a word more below the views, in the middle of a drag, shrink the bow under the hand.
   */
  gboolean aimed = before[PH_VIEW_SIDE].px_per_mm > 0.0f;
  if (self->moved || (aimed && ph_document_in_gesture (self->document)))
    for (int i = 0; i < PH_PANE_VIEWS; i++)
      {
        self->cameras[i].px_per_mm = before[i].px_per_mm;
        self->cameras[i].middle = before[i].middle;
      }
  share (self);
  hand_out (self);
}

void
ph_views_pane_fit (PhViewsPane *self)
{
  g_return_if_fail (PH_IS_VIEWS_PANE (self));
  self->measured = FALSE;
  self->moved = FALSE;
  if (self->free)
    ph_bow_view_fit (PH_BOW_VIEW (self->free));
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

/* A part more must be seen whole; who zoomed chose what to see. */
static void
structure_changed_cb (PhViewsPane *self)
{
  if (self->moved || ph_document_in_gesture (self->document))
    return;
  self->measured = FALSE;
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

/* Moves in one view, for all. */

static gboolean
zoom_cb (PhViewsPane *self, double factor, double x, double y, PhBowView *view)
{
  PhCamera *camera = &self->cameras[ph_bow_view_get_view (view)];
  float to = CLAMP (camera->px_per_mm * (float)factor, SCALE_LEAST, SCALE_MOST);
  float by = to / camera->px_per_mm;
  for (int i = 0; i < PH_PANE_VIEWS; i++)
    {
      PhCamera *other = &self->cameras[i];
      PhPixel middle = { other->width_px / 2.0f, other->height_px / 2.0f };
      PhPixel at = other == camera ? (PhPixel){ (float)x, (float)y } : middle;
      ph_camera_zoom (other, by, at);
    }
  /* The side view leads in what is shared; pass it what was just zoomed elsewhere. */
  if (camera == &self->cameras[PH_VIEW_ABOVE])
    self->cameras[PH_VIEW_SIDE].middle.x = camera->middle.x;
  if (camera == &self->cameras[PH_VIEW_BEHIND])
    self->cameras[PH_VIEW_SIDE].middle.z =
        camera->middle.z
        + (camera->height_px - self->cameras[PH_VIEW_SIDE].height_px) / 2.0f / camera->px_per_mm;
  self->moved = TRUE;
  share (self);
  hand_out (self);
  return TRUE;
}

static gboolean
pan_cb (PhViewsPane *self, double dx, double dy, PhBowView *view)
{
  PhView which = ph_bow_view_get_view (view);
  PhCamera *side = &self->cameras[PH_VIEW_SIDE];
  ph_camera_pan (&self->cameras[which], (float)dx, (float)dy);
  if (which == PH_VIEW_ABOVE)
    ph_camera_pan (side, (float)dx, 0.0f);
  if (which == PH_VIEW_BEHIND)
    ph_camera_pan (side, 0.0f, (float)dy);
  self->moved = TRUE;
  share (self);
  hand_out (self);
  return TRUE;
}

static gboolean
fit_cb (PhViewsPane *self)
{
  ph_views_pane_fit (self);
  return TRUE;
}

static void
refused_cb (PhViewsPane *self, const char *why)
{
  g_signal_emit (self, signals[REFUSED], 0, why);
}

static void
activated_cb (PhViewsPane *self, const char *id)
{
  g_signal_emit (self, signals[ACTIVATED], 0, id);
}

/* Size. */

static void
allocate_one (PhViewsPane *self, const PhViewRect *all)
{
  static const GtkAllocation nothing;
  GtkAllocation place = ph_views_pane_allocation (all);
  gboolean behind = self->filling == self->views[PH_VIEW_BEHIND];
  for (int i = 0; i < PH_PANE_VIEWS; i++)
    ph_views_pane_allocate_view (self->views[i], self->views[i] == self->filling ? all : NULL);
  ph_views_pane_allocate_view (self->free, self->free == self->filling ? all : NULL);
  ph_views_pane_allocate_view (self->foot, NULL);
  ph_gl_views_allocate (self->gl, PH_GL_COLUMN, behind ? &nothing : &place);
  ph_gl_views_allocate (self->gl, PH_GL_BEHIND, behind ? &place : &nothing);
  for (int i = 0; i < PH_PANE_VIEWS; i++)
    if (self->views[i] == self->filling)
      aim_alone (self, (PhView)i);
}

/* The free view has the place of side and strip together. */
static void
allocate_all (PhViewsPane *self)
{
  PhViewRect foot;
  PhViewsLayout layout = layout_now (self, &foot);
  PhViewRect column = layout.side;
  gboolean free_view = self->show_free && self->free;
  if (self->show_above)
    column.height = layout.above.y + layout.above.height;
  GtkAllocation left = ph_views_pane_allocation (&column),
                right = ph_views_pane_allocation (&layout.behind);
  ph_views_pane_allocate_view (self->views[PH_VIEW_SIDE], free_view ? NULL : &layout.side);
  ph_views_pane_allocate_view (self->views[PH_VIEW_ABOVE],
                               free_view || !self->show_above ? NULL : &layout.above);
  ph_views_pane_allocate_view (self->free, free_view ? &column : NULL);
  ph_views_pane_allocate_view (self->views[PH_VIEW_BEHIND], &layout.behind);
  ph_views_pane_allocate_view (self->foot, &foot);
  ph_gl_views_allocate (self->gl, PH_GL_COLUMN, &left);
  ph_gl_views_allocate (self->gl, PH_GL_BEHIND, &right);
  aim (self, &layout);
}

static void
ph_views_pane_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  PhViewsPane *self = PH_VIEWS_PANE (widget);
  PhViewRect all = { 0, 0, (float)width, (float)height };
  (void)baseline;
  if (!self->measured)
    measure_rig (self);
  if (self->filling)
    allocate_one (self, &all);
  else
    allocate_all (self);
}

static void
ph_views_pane_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  GTK_WIDGET_CLASS (ph_views_pane_parent_class)->snapshot (widget, snapshot);
  ph_views_pane_snapshot_gaps (PH_VIEWS_PANE (widget), snapshot);
}

static void
gl_changed_cb (GtkWidget *pane, const char *failed)
{
  /* What is covered all over needs no ground of its own: each layer is a pass over the window. */
  if (failed)
    gtk_widget_remove_css_class (pane, "over-gl");
  else
    gtk_widget_add_css_class (pane, "over-gl");
  gtk_widget_queue_allocate (pane);
  if (failed)
    g_signal_emit (pane, signals[REFUSED], 0, failed);
}

/* The object. */

void
ph_views_pane_set_foot (PhViewsPane *self, GtkWidget *foot)
{
  g_return_if_fail (PH_IS_VIEWS_PANE (self));
  g_clear_pointer (&self->foot, gtk_widget_unparent);
  self->foot = foot;
  if (foot)
    gtk_widget_set_parent (foot, GTK_WIDGET (self));
}

void
ph_views_pane_set_show_above (PhViewsPane *self, gboolean show)
{
  g_return_if_fail (PH_IS_VIEWS_PANE (self));
  if (self->show_above == show)
    return;
  self->show_above = show;
  gtk_widget_set_visible (self->views[PH_VIEW_ABOVE], show);
  gtk_widget_queue_resize (GTK_WIDGET (self));
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_SHOW_ABOVE]);
}

gboolean
ph_views_pane_get_show_above (PhViewsPane *self)
{
  g_return_val_if_fail (PH_IS_VIEWS_PANE (self), FALSE);
  return self->show_above;
}

static void
factor_changed_cb (PhViewsPane *self)
{
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_LEAN_FACTOR]);
}

static void
ph_views_pane_get_property (GObject *object, guint id, GValue *value, GParamSpec *spec)
{
  PhViewsPane *self = PH_VIEWS_PANE (object);
  if (id == PROP_SHOW_ABOVE)
    g_value_set_boolean (value, self->show_above);
  else if (id == PROP_SHOW_FREE)
    g_value_set_boolean (value, self->show_free);
  else if (id == PROP_FILLED)
    g_value_set_boolean (value, self->filling != NULL);
  else if (id == PROP_LEAN_FACTOR)
    g_value_set_double (value, ph_bow_view_get_lean_factor (view_of (self, PH_VIEW_BEHIND)));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, spec);
}

static void
ph_views_pane_set_property (GObject *object, guint id, const GValue *value, GParamSpec *spec)
{
  PhViewsPane *self = PH_VIEWS_PANE (object);
  if (id == PROP_SHOW_ABOVE)
    ph_views_pane_set_show_above (self, g_value_get_boolean (value));
  else if (id == PROP_SHOW_FREE)
    ph_views_pane_set_show_free (self, g_value_get_boolean (value));
  else if (id == PROP_LEAN_FACTOR)
    ph_bow_view_set_lean_factor (view_of (self, PH_VIEW_BEHIND), g_value_get_double (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, spec);
}

static void
ph_views_pane_dispose (GObject *object)
{
  PhViewsPane *self = PH_VIEWS_PANE (object);
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_pointer (&self->gl, ph_gl_views_free);
  self->filling = NULL;
  for (int i = 0; i < PH_PANE_VIEWS; i++)
    g_clear_pointer (&self->views[i], gtk_widget_unparent);
  g_clear_pointer (&self->free, gtk_widget_unparent);
  g_clear_pointer (&self->foot, gtk_widget_unparent);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_views_pane_parent_class)->dispose (object);
}

static void
ph_views_pane_class_init (PhViewsPaneClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  object_class->dispose = ph_views_pane_dispose;
  object_class->get_property = ph_views_pane_get_property;
  object_class->set_property = ph_views_pane_set_property;
  widget_class->measure = ph_views_pane_measure;
  widget_class->get_request_mode = ph_views_pane_get_request_mode;
  widget_class->size_allocate = ph_views_pane_size_allocate;
  widget_class->snapshot = ph_views_pane_snapshot;

  properties[PROP_SHOW_ABOVE] = g_param_spec_boolean ("show-above", NULL, NULL, TRUE, flags);
  properties[PROP_LEAN_FACTOR] =
      g_param_spec_double ("lean-factor", NULL, NULL, 1.0, 10.0, 5.0, flags);
  properties[PROP_SHOW_FREE] = g_param_spec_boolean ("show-free", NULL, NULL, FALSE, flags);
  properties[PROP_FILLED] =
      g_param_spec_boolean ("filled", NULL, NULL, FALSE, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPERTIES, properties);
  signals[REFUSED] = g_signal_new ("refused", PH_TYPE_VIEWS_PANE, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[ACTIVATED] = g_signal_new ("activated", PH_TYPE_VIEWS_PANE, G_SIGNAL_RUN_LAST, 0, NULL,
                                     NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_set_css_name (widget_class, "viewspane");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
ph_views_pane_init (PhViewsPane *self)
{
  self->show_above = TRUE;
  self->gl = ph_gl_views_new (GTK_WIDGET (self), gl_changed_cb);
  ph_views_pane_init_filling (self);
}

/* The free view moves its own camera; the flat ones share theirs. */
void
ph_views_pane_add_view (PhViewsPane *self, GtkWidget *widget)
{
  PhView view = ph_bow_view_get_view (PH_BOW_VIEW (widget));
  gtk_widget_insert_before (widget, GTK_WIDGET (self), self->foot);
  if (view != PH_VIEW_FREE)
    {
      g_signal_connect_swapped (widget, "zoom", G_CALLBACK (zoom_cb), self);
      g_signal_connect_swapped (widget, "pan", G_CALLBACK (pan_cb), self);
      g_signal_connect_swapped (widget, "fit", G_CALLBACK (fit_cb), self);
    }
  g_signal_connect_swapped (widget, "refused", G_CALLBACK (refused_cb), self);
  g_signal_connect_swapped (widget, "activated", G_CALLBACK (activated_cb), self);
  ph_views_pane_add_buttons (self, PH_BOW_VIEW (widget));
  ph_gl_views_add (self->gl, view == PH_VIEW_BEHIND ? PH_GL_BEHIND : PH_GL_COLUMN,
                   PH_BOW_VIEW (widget));
}

GtkWidget *
ph_views_pane_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhViewsPane *self = g_object_new (PH_TYPE_VIEWS_PANE, NULL);
  self->document = g_object_ref (document);
  for (int i = 0; i < PH_PANE_VIEWS; i++)
    {
      self->views[i] = ph_bow_view_new (document, (PhView)i);
      ph_views_pane_add_view (self, self->views[i]);
    }
  g_signal_connect_swapped (self->views[PH_VIEW_BEHIND], "notify::lean-factor",
                            G_CALLBACK (factor_changed_cb), self);
  /* L works wherever the focus is, and a hint that has been followed is gone everywhere. */
  for (int i = 0; i < PH_PANE_VIEWS; i++)
    {
      GtkWidget *behind = self->views[PH_VIEW_BEHIND], *side = self->views[PH_VIEW_SIDE];
      if (self->views[i] != behind)
        g_object_bind_property (behind, "lean-factor", self->views[i], "lean-factor",
                                G_BINDING_BIDIRECTIONAL);
      if (self->views[i] != side)
        g_object_bind_property (side, "dragged", self->views[i], "dragged",
                                G_BINDING_BIDIRECTIONAL);
    }
  g_signal_connect_swapped (document, "replaced", G_CALLBACK (ph_views_pane_fit), self);
  g_signal_connect_swapped (document, "structure-changed", G_CALLBACK (structure_changed_cb), self);
  return GTK_WIDGET (self);
}
