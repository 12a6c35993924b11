/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The draw list is built once per change of the rig, outlines and marks once per change of camera
 * or selection, both only when the view is next drawn. A frame costs a cairo picture of the whole
 * view.
 */
#include "widgets/bow-view-private.h"

#include <glib/gi18n.h>
#include <math.h>

#include "widgets/bow-picture.h"
#include "widgets/view-palette.h"
#include "widgets/views-layout.h"

G_DEFINE_FINAL_TYPE (PhBowView, ph_bow_view, GTK_TYPE_WIDGET)

enum
{
  PROP_LEAN_FACTOR = 1,
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
  N_SIGNALS
};
static guint signals[N_SIGNALS];

#define LEAN_FACTOR 5.0
#define LEAST_WIDTH 120
#define LEAST_HEIGHT 70
/* Scales beyond which zooming does not go [px/mm]. */
#define SCALE_LEAST 0.03f
#define SCALE_MOST 20.0f

/* What is drawn. */

static double
slope_of (const PhRig *rig)
{
  return atan2 (rig->archer.nock_height_mm, rig->archer.draw_length_mm);
}

static void
rebuild_reference (PhBowView *self)
{
  PhShown compared = ph_document_get_compared (self->document);
  g_clear_pointer (&self->reference, ph_draw_list_free);
  if (!compared.rig)
    return;
  PhDrawOptions options = ph_draw_options_default ();
  options.plain = true;
  self->reference = ph_draw_list_new (compared.rig, compared.compiled, compared.report, &options);
}

static void
read_facts (PhBowView *self)
{
  PhMarkFacts *facts = &self->facts;
  PhShown shown = ph_document_get_shown (self->document);
  facts->rig = shown.rig;
  facts->report = shown.report;
  facts->units = ph_document_get_units (self->document);
  facts->lean_factor = self->lean_factor;
  facts->settle =
      ph_settle_of (shown.rig, shown.report, ph_document_get_compared (self->document).report);
  double slope = slope_of (facts->rig);
  facts->lean = ph_lean_drawn_of (&facts->settle, slope, self->lean_factor);
  self->reference_lean = ph_lean_drawn_reference (&facts->settle, slope, self->lean_factor);
  self->camera.slope_rad = (float)slope;
  self->camera.lean_rad = self->view == PH_VIEW_BEHIND ? facts->lean.lean_rad : 0.0f;
  ph_camera_update (&self->camera);
}

/* An index, PH_PART_BOW or PH_PART_NONE: the document tells the bow and nothing apart by id only.
 * Nothing is selected in a reference that is only looked at. */
static int
selected_part (PhBowView *self)
{
  if (!ph_document_get_selected (self->document) || ph_document_get_flipped (self->document))
    return PH_PART_NONE;
  int part = ph_document_get_selected_part (self->document);
  return part >= 0 ? part : PH_PART_BOW;
}

static void
rebuild_list (PhBowView *self)
{
  PhDrawOptions options = ph_draw_options_default ();
  g_clear_pointer (&self->list, ph_draw_list_free);
  PhShown shown = ph_document_get_shown (self->document);
  self->list = ph_draw_list_new (shown.rig, shown.compiled, shown.report, &options);
  rebuild_reference (self);
  self->list_stale = FALSE;
  self->picture_stale = TRUE;
}

static void
rebuild_picture (PhBowView *self)
{
  PhMarkFacts *facts = &self->facts;
  read_facts (self);
  facts->selected = selected_part (self);
  facts->corner_px[0] = facts->corner_px[1] = 0;
  if (self->factor_button)
    {
      facts->corner_px[0] = gtk_widget_get_width (self->factor_button) + 8;
      facts->corner_px[1] = gtk_widget_get_height (self->factor_button) + 8;
    }
  ph_draw_list_select (self->list, facts->selected);
  ph_outlines_update (self->outlines, self->list, &self->camera);
  if (self->reference)
    {
      PhCamera camera = self->camera;
      camera.lean_rad = self->view == PH_VIEW_BEHIND ? self->reference_lean.lean_rad : 0.0f;
      ph_camera_update (&camera);
      ph_outlines_update (self->reference_outlines, self->reference, &camera);
    }
  g_clear_pointer (&self->marks, ph_marks_free);
  self->marks =
      ph_marks_new (facts, &self->camera, gtk_widget_get_pango_context (GTK_WIDGET (self)));
  facts->rig = NULL;
  facts->report = NULL;
  self->picture_stale = FALSE;
}

/* The view that no pane looks after shows all there is. */
static void
fit_alone (PhBowView *self)
{
  PhMargins margins = ph_view_margins (self->view);
  PhExtent extent = ph_bow_view_get_extent (self);
  self->camera.px_per_mm =
      ph_extent_scale (extent, self->camera.width_px, self->camera.height_px, margins);
  ph_camera_centre (&self->camera, extent, margins);
  self->fitted = TRUE;
  self->picture_stale = TRUE;
}

void
ph_bow_view_refresh (PhBowView *self)
{
  if (self->list_stale)
    rebuild_list (self);
  if (!self->driven && !self->fitted)
    fit_alone (self);
  if (self->picture_stale)
    rebuild_picture (self);
}

static void
ph_bow_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  PhBowView *self = PH_BOW_VIEW (widget);
  float width = (float)gtk_widget_get_width (widget),
        height = (float)gtk_widget_get_height (widget);
  if (width < 1.0f || height < 1.0f)
    return;
  ph_bow_view_refresh (self);
  PhPalette palette = ph_palette_of_widget (widget);
  PhBowPicture picture = { self->list, self->outlines, self->reference, self->reference_outlines,
                           self->marks };
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));
  ph_bow_picture_paint (cr, &palette, &picture);
  cairo_destroy (cr);
  if (self->factor_button)
    gtk_widget_snapshot_child (widget, self->factor_button, snapshot);
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
  if (!self->factor_button)
    return;
  GtkRequisition size;
  gtk_widget_get_preferred_size (self->factor_button, NULL, &size);
  GtkAllocation place = { width - size.width - 4, 4, size.width, size.height };
  gtk_widget_size_allocate (self->factor_button, &place, baseline);
}

/* What it follows. */

static void
changed_cb (PhBowView *self)
{
  self->list_stale = TRUE;
  ph_bow_view_tell (self, NULL);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
picture_changed_cb (PhBowView *self)
{
  self->picture_stale = TRUE;
  ph_bow_view_tell (self, NULL);
  gtk_widget_queue_draw (GTK_WIDGET (self));
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
  picture_changed_cb (self);
  return TRUE;
}

static gboolean
default_pan_cb (PhBowView *self, double dx, double dy)
{
  ph_camera_pan (&self->camera, (float)dx, (float)dy);
  picture_changed_cb (self);
  return TRUE;
}

static gboolean
default_fit_cb (PhBowView *self)
{
  fit_alone (self);
  picture_changed_cb (self);
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
  g_clear_pointer (&self->factor_button, gtk_widget_unparent);
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_bow_view_parent_class)->dispose (object);
}

static void
ph_bow_view_finalize (GObject *object)
{
  PhBowView *self = PH_BOW_VIEW (object);
  ph_draw_list_free (self->list);
  ph_draw_list_free (self->reference);
  ph_outlines_free (self->outlines);
  ph_outlines_free (self->reference_outlines);
  ph_marks_free (self->marks);
  G_OBJECT_CLASS (ph_bow_view_parent_class)->finalize (object);
}

static void
ph_bow_view_get_property (GObject *object, guint id, GValue *value, GParamSpec *spec)
{
  if (id == PROP_LEAN_FACTOR)
    g_value_set_double (value, PH_BOW_VIEW (object)->lean_factor);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, spec);
}

static void
ph_bow_view_set_property (GObject *object, guint id, const GValue *value, GParamSpec *spec)
{
  if (id == PROP_LEAN_FACTOR)
    ph_bow_view_set_lean_factor (PH_BOW_VIEW (object), g_value_get_double (value));
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
}

static void
ph_bow_view_class_init (PhBowViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = ph_bow_view_dispose;
  object_class->finalize = ph_bow_view_finalize;
  object_class->get_property = ph_bow_view_get_property;
  object_class->set_property = ph_bow_view_set_property;
  widget_class->snapshot = ph_bow_view_snapshot;
  widget_class->measure = ph_bow_view_measure;
  widget_class->size_allocate = ph_bow_view_size_allocate;
  widget_class->focus = ph_bow_view_focus;

  properties[PROP_LEAN_FACTOR] =
      g_param_spec_double ("lean-factor", NULL, NULL, 1.0, 10.0, LEAN_FACTOR,
                           G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
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
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  ph_bow_view_init_input (self);
}

static void
add_factor_button (PhBowView *self)
{
  self->factor_button = gtk_button_new ();
  gtk_widget_add_css_class (self->factor_button, "flat");
  gtk_widget_add_css_class (self->factor_button, "lean-factor");
  /* Reached by L from the view itself: Tab is for the parts. */
  gtk_widget_set_focusable (self->factor_button, FALSE);
  gtk_widget_set_parent (self->factor_button, GTK_WIDGET (self));
  g_signal_connect_swapped (self->factor_button, "clicked", G_CALLBACK (factor_clicked_cb), self);
  show_factor (self);
}

GtkWidget *
ph_bow_view_new (PhDocument *document, PhView view)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  g_return_val_if_fail (view != PH_VIEW_FREE, NULL);
  PhBowView *self = g_object_new (PH_TYPE_BOW_VIEW, NULL);
  self->document = g_object_ref (document);
  self->view = view;
  self->camera = ph_camera_default (view);
  if (view == PH_VIEW_BEHIND)
    add_factor_button (self);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (document, "notify::flipped", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (document, "notify::selected", G_CALLBACK (picture_changed_cb), self);
  g_signal_connect_swapped (document, "notify::units", G_CALLBACK (picture_changed_cb), self);
  ph_bow_view_tell (self, NULL);
  return GTK_WIDGET (self);
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

PhExtent
ph_bow_view_get_extent (PhBowView *self)
{
  g_return_val_if_fail (PH_IS_BOW_VIEW (self), (PhExtent){ 0 });
  if (self->list_stale)
    rebuild_list (self);
  read_facts (self);
  float slope = self->camera.slope_rad;
  PhExtent extent = ph_extent_of (self->list, self->view, 0.0f, slope);
  if (self->camera.lean_rad != 0.0f)
    extent = ph_extent_join (extent,
                             ph_extent_of (self->list, self->view, self->camera.lean_rad, slope));
  if (self->reference)
    extent = ph_extent_join (extent, ph_extent_of (self->reference, self->view, 0.0f, slope));
  return extent;
}

void
ph_bow_view_set_camera (PhBowView *self, const PhCamera *camera)
{
  g_return_if_fail (PH_IS_BOW_VIEW (self) && camera != NULL);
  self->driven = TRUE;
  self->camera.px_per_mm = CLAMP (camera->px_per_mm, SCALE_LEAST, SCALE_MOST);
  self->camera.middle = camera->middle;
  self->picture_stale = TRUE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

const PhCamera *
ph_bow_view_get_camera (PhBowView *self)
{
  g_return_val_if_fail (PH_IS_BOW_VIEW (self), NULL);
  return &self->camera;
}
