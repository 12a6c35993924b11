/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Marks are laid out once per change of rig, camera or selection, when the view is next drawn;
 * outlines only where they are painted or asked what is under the pointer.
 */
#include "widgets/bow-view-private.h"

#include <glib/gi18n.h>
#include <math.h>

G_DEFINE_FINAL_TYPE (PhBowView, ph_bow_view, GTK_TYPE_WIDGET)

enum
{
  PROP_LEAN_FACTOR = 1,
  PROP_DRAGGED,
  N_PROPERTIES
};
static GParamSpec *properties[N_PROPERTIES];

enum
{
  ZOOM,
  PAN,
  FIT,
  REFUSED,
  ACTIVATED,
  REDRAW,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

#define LEAN_FACTOR 5.0
#define LEAST_WIDTH 120
#define LEAST_HEIGHT 70
/* Scales beyond which zooming does not go [px/mm]. */
#define SCALE_LEAST 0.03f
#define SCALE_MOST 20.0f
#define ORBIT_RAD_PER_PX 0.0075f
/* The free view begins a little from behind and above. */
#define FREE_AZIMUTH_RAD 0.6f
#define FREE_ELEVATION_RAD 0.25f

static void
redraw (PhBowView *self, gboolean moving)
{
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit (self, signals[REDRAW], 0, moving);
}

/* Size. */

static void
ph_bow_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                     int *natural, int *minimum_baseline, int *natural_baseline)
{
  (void)widget;
  (void)for_size;
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? LEAST_WIDTH : LEAST_HEIGHT;
  *natural = 2 * *minimum;
  *minimum_baseline = *natural_baseline = -1;
}

static void
ph_bow_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  PhBowView *self = PH_BOW_VIEW (widget);
  self->camera.width_px = (float)width;
  self->camera.height_px = (float)height;
  self->fitted = FALSE;
  self->picture_stale = TRUE;
  GtkRequisition size;
  gtk_widget_get_preferred_size (self->corner, NULL, &size);
  GtkAllocation place = { width - size.width - 4, 4, size.width, size.height };
  gtk_widget_size_allocate (self->corner, &place, baseline);
  redraw (self, TRUE);
}

/* What it follows. */

static void
changed_cb (PhBowView *self)
{
  self->list_stale = TRUE;
  ph_bow_view_tell (self, NULL);
  redraw (self, TRUE);
}

/* A part is on its way to where the document has it already. */
static void
scene_moved_cb (PhBowView *self)
{
  self->list_stale = TRUE;
  redraw (self, TRUE);
}

static void
moved (PhBowView *self)
{
  self->picture_stale = TRUE;
  redraw (self, TRUE);
}

void
ph_bow_view_remark (PhBowView *self)
{
  self->picture_stale = TRUE;
  redraw (self, FALSE);
}

static void
picture_changed_cb (PhBowView *self)
{
  self->picture_stale = TRUE;
  ph_bow_view_tell (self, NULL);
  redraw (self, FALSE);
}

static void
show_factor (PhBowView *self)
{
  if (!self->factor_button)
    return;
  gboolean many = self->lean_factor > 1.0;
  gtk_button_set_label (GTK_BUTTON (self->factor_button), many ? _ ("5×") : _ ("1×"));
  gtk_widget_set_tooltip_text (self->factor_button,
                               many ? _ ("Draw the lean as it is (L)")
                                    : _ ("Draw the lean five times its size (L)"));
}

static void
factor_clicked_cb (PhBowView *self)
{
  ph_bow_view_set_lean_factor (self, self->lean_factor > 1.0 ? 1.0 : LEAN_FACTOR);
}

/* Signals and their own handling. */

static gboolean
default_zoom_cb (PhBowView *self, double factor, double x, double y)
{
  float to = CLAMP (self->camera.px_per_mm * (float)factor, SCALE_LEAST, SCALE_MOST);
  ph_camera_zoom (&self->camera, to / self->camera.px_per_mm, (PhPixel){ (float)x, (float)y });
  moved (self);
  return TRUE;
}

static gboolean
default_pan_cb (PhBowView *self, double dx, double dy)
{
  if (self->view == PH_VIEW_FREE)
    ph_camera_orbit (&self->camera, (float)dx * ORBIT_RAD_PER_PX, (float)dy * ORBIT_RAD_PER_PX);
  else
    ph_camera_pan (&self->camera, (float)dx, (float)dy);
  moved (self);
  return TRUE;
}

void
ph_bow_view_fit (PhBowView *self)
{
  g_return_if_fail (PH_IS_BOW_VIEW (self));
  self->fitted = FALSE;
  moved (self);
}

static gboolean
default_fit_cb (PhBowView *self)
{
  ph_bow_view_fit (self);
  return TRUE;
}

void
ph_bow_view_emit_zoom (PhBowView *self, double factor, double x, double y)
{
  gboolean handled;
  g_signal_emit (self, signals[ZOOM], 0, factor, x, y, &handled);
}

void
ph_bow_view_emit_pan (PhBowView *self, double dx, double dy)
{
  gboolean handled;
  g_signal_emit (self, signals[PAN], 0, dx, dy, &handled);
}

void
ph_bow_view_emit_fit (PhBowView *self)
{
  gboolean handled;
  g_signal_emit (self, signals[FIT], 0, &handled);
}

void
ph_bow_view_emit_refused (PhBowView *self, const char *why)
{
  g_signal_emit (self, signals[REFUSED], 0, why);
}

void
ph_bow_view_emit_activated (PhBowView *self, const char *id)
{
  g_signal_emit (self, signals[ACTIVATED], 0, id);
}

/* The object. */

static void
ph_bow_view_dispose (GObject *object)
{
  PhBowView *self = PH_BOW_VIEW (object);
  ph_bow_view_end_key_gesture (self);
  ph_view_drag_clear (&self->drag);
  g_clear_pointer (&self->corner, gtk_widget_unparent);
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_bow_view_parent_class)->dispose (object);
}

static void
ph_bow_view_finalize (GObject *object)
{
  PhBowView *self = PH_BOW_VIEW (object);
  ph_outlines_free (self->outlines);
  ph_outlines_free (self->reference_outlines);
  ph_marks_free (self->marks);
  g_clear_pointer (&self->balance_node, gsk_render_node_unref);
  G_OBJECT_CLASS (ph_bow_view_parent_class)->finalize (object);
}

static void
ph_bow_view_get_property (GObject *object, guint id, GValue *value, GParamSpec *spec)
{
  if (id == PROP_LEAN_FACTOR)
    g_value_set_double (value, PH_BOW_VIEW (object)->lean_factor);
  else if (id == PROP_DRAGGED)
    g_value_set_boolean (value, PH_BOW_VIEW (object)->dragged);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, spec);
}

static void
ph_bow_view_set_property (GObject *object, guint id, const GValue *value, GParamSpec *spec)
{
  if (id == PROP_LEAN_FACTOR)
    ph_bow_view_set_lean_factor (PH_BOW_VIEW (object), g_value_get_double (value));
  else if (id == PROP_DRAGGED)
    ph_bow_view_set_dragged (PH_BOW_VIEW (object), g_value_get_boolean (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, spec);
}

static guint
new_asking_signal (const char *name, GCallback handler, guint n, const GType *types)
{
  GClosure *closure = g_cclosure_new (handler, NULL, NULL);
  return g_signal_newv (name, PH_TYPE_BOW_VIEW, G_SIGNAL_RUN_LAST, closure,
                        g_signal_accumulator_true_handled, NULL, NULL, G_TYPE_BOOLEAN, n,
                        (GType *)types);
}

static void
install_signals (void)
{
  static const GType numbers[] = { G_TYPE_DOUBLE, G_TYPE_DOUBLE, G_TYPE_DOUBLE };
  signals[ZOOM] = new_asking_signal ("zoom", G_CALLBACK (default_zoom_cb), 3, numbers);
  signals[PAN] = new_asking_signal ("pan", G_CALLBACK (default_pan_cb), 2, numbers);
  signals[FIT] = new_asking_signal ("fit", G_CALLBACK (default_fit_cb), 0, numbers);
  signals[REFUSED] = g_signal_new ("refused", PH_TYPE_BOW_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[ACTIVATED] = g_signal_new ("activated", PH_TYPE_BOW_VIEW, G_SIGNAL_RUN_LAST, 0, NULL,
                                     NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[REDRAW] = g_signal_new ("redraw", PH_TYPE_BOW_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 1, G_TYPE_BOOLEAN);
}

static void
ph_bow_view_class_init (PhBowViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  object_class->dispose = ph_bow_view_dispose;
  object_class->finalize = ph_bow_view_finalize;
  object_class->get_property = ph_bow_view_get_property;
  object_class->set_property = ph_bow_view_set_property;
  widget_class->snapshot = ph_bow_view_snapshot;
  widget_class->measure = ph_bow_view_measure;
  widget_class->size_allocate = ph_bow_view_size_allocate;
  widget_class->focus = ph_bow_view_focus;

  properties[PROP_LEAN_FACTOR] =
      g_param_spec_double ("lean-factor", NULL, NULL, 1.0, 10.0, LEAN_FACTOR, flags);
  properties[PROP_DRAGGED] = g_param_spec_boolean ("dragged", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPERTIES, properties);
  install_signals ();
  gtk_widget_class_set_css_name (widget_class, "bowview");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
ph_bow_view_init (PhBowView *self)
{
  self->lean_factor = LEAN_FACTOR;
  self->outlines = ph_outlines_new ();
  self->reference_outlines = ph_outlines_new ();
  self->list_stale = TRUE;
  self->corner = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 2);
  gtk_widget_set_parent (self->corner, GTK_WIDGET (self));
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  ph_bow_view_init_input (self);
}

void
ph_bow_view_add_button (PhBowView *self, GtkWidget *button)
{
  g_return_if_fail (PH_IS_BOW_VIEW (self) && GTK_IS_BUTTON (button));
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_add_css_class (button, "view-corner");
  /* Each has a key in the view itself: Tab is for the parts. */
  gtk_widget_set_focusable (button, FALSE);
  gtk_box_append (GTK_BOX (self->corner), button);
}

static void
add_factor_button (PhBowView *self)
{
  self->factor_button = gtk_button_new ();
  ph_bow_view_add_button (self, self->factor_button);
  g_signal_connect_swapped (self->factor_button, "clicked", G_CALLBACK (factor_clicked_cb), self);
  show_factor (self);
}

GtkWidget *
ph_bow_view_new (PhDocument *document, PhView view)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhBowView *self = g_object_new (PH_TYPE_BOW_VIEW, NULL);
  self->document = g_object_ref (document);
  /* Made before this view listens: it must be stale before the view is. */
  self->scene = ph_bow_scene_of (document);
  self->view = view;
  self->camera = ph_camera_default (view);
  if (view == PH_VIEW_FREE)
    {
      self->camera.azimuth_rad = FREE_AZIMUTH_RAD;
      self->camera.elevation_rad = FREE_ELEVATION_RAD;
      ph_camera_update (&self->camera);
    }
  if (view == PH_VIEW_BEHIND)
    add_factor_button (self);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (changed_cb), self);
  ph_bow_scene_follow (document, G_OBJECT (self), G_CALLBACK (scene_moved_cb));
  g_signal_connect_swapped (document, "notify::flipped", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (document, "notify::selected", G_CALLBACK (picture_changed_cb), self);
  g_signal_connect_swapped (document, "notify::units", G_CALLBACK (picture_changed_cb), self);
  ph_bow_view_tell (self, NULL);
  return GTK_WIDGET (self);
}

void
ph_bow_view_set_over_gl (PhBowView *self, gboolean over)
{
  g_return_if_fail (PH_IS_BOW_VIEW (self));
  self->over_gl = over;
  if (over)
    gtk_widget_add_css_class (GTK_WIDGET (self), "over-gl");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "over-gl");
  redraw (self, FALSE);
}

PhView
ph_bow_view_get_view (PhBowView *self)
{
  g_return_val_if_fail (PH_IS_BOW_VIEW (self), PH_VIEW_SIDE);
  return self->view;
}

double
ph_bow_view_get_lean_factor (PhBowView *self)
{
  g_return_val_if_fail (PH_IS_BOW_VIEW (self), 1.0);
  return self->lean_factor;
}

void
ph_bow_view_set_lean_factor (PhBowView *self, double factor)
{
  g_return_if_fail (PH_IS_BOW_VIEW (self) && factor >= 1.0);
  if (factor == self->lean_factor)
    return;
  self->lean_factor = factor;
  show_factor (self);
  picture_changed_cb (self);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_LEAN_FACTOR]);
}

void
ph_bow_view_set_dragged (PhBowView *self, gboolean dragged)
{
  g_return_if_fail (PH_IS_BOW_VIEW (self));
  if (!dragged == !self->dragged)
    return;
  self->dragged = dragged;
  ph_bow_view_remark (self);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_DRAGGED]);
}

void
ph_bow_view_set_camera (PhBowView *self, const PhCamera *camera)
{
  g_return_if_fail (PH_IS_BOW_VIEW (self) && camera != NULL);
  self->driven = TRUE;
  self->camera.px_per_mm = CLAMP (camera->px_per_mm, SCALE_LEAST, SCALE_MOST);
  self->camera.middle = camera->middle;
  moved (self);
}

const PhCamera *
ph_bow_view_get_camera (PhBowView *self)
{
  g_return_val_if_fail (PH_IS_BOW_VIEW (self), NULL);
  return &self->camera;
}
