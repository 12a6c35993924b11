/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The canvas keeps the points; all words follow it. Another picture, or the same one turned, begins
 * anew.
 */
#include "widgets/photo-dialog.h"

#include <glib/gi18n.h>
#include <math.h>

#include "base/units.h"
#include "widgets/photo-canvas.h"
#include "widgets/photo-sketch.h"
#include "widgets/photo-words.h"
#include "widgets/say.h"
#include "widgets/tilt-words.h"
#include "widgets/vial-scale.h"

struct _PhPhotoDialog
{
  GtkWindow parent_instance;

  /* template */
  PhPhotoCanvas *canvas;
  GtkStack *pages;
  GtkToggleButton *by_lines, *by_vial;
  GtkCheckButton *mirrored;
  GtkWidget *panel, *ways, *more_string, *more_edge, *undo, *use, *opening;
  GtkLabel *error, *step, *result, *result_more;
  GtkBox *how, *sketch, *scale_box;

  /* owned */
  PhDocument *document;
  GFile *folder;
  GtkFileChooserNative *chooser;
  GCancellable *cancellable; /* of the picture on its way */
};

enum
{
  USED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (PhPhotoDialog, ph_photo_dialog, GTK_TYPE_WINDOW)

static void
show_text (GtkLabel *label, const char *text)
{
  gtk_label_set_text (label, text ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text && *text);
}

/* What came out. */

static PhPhotoReading
reading_now (PhPhotoDialog *self)
{
  const PhPhotoClicks *clicks = ph_photo_canvas_get_clicks (self->canvas);
  const PhRig *rig = ph_document_get_rig (self->document);
  double each = ph_vial_deg_per_mark (rig), each_sd = ph_vial_deg_per_mark_sd (rig);
  if (!ph_photo_clicks_are_complete (clicks))
    return (PhPhotoReading){ PH_NOT_REFUSED, NAN, NAN, NAN, NAN };
  return ph_photo_clicks_read (clicks, ph_rad_from_deg (each), ph_rad_from_deg (each_sd),
                               gtk_check_button_get_active (self->mirrored));
}

static void
show_result (PhPhotoDialog *self, const PhPhotoClicks *clicks)
{
  gboolean level = ph_tilt_has_level (ph_document_get_rig (self->document));
  PhPhotoReading reading = reading_now (self);
  g_autofree char *result = ph_photo_result_words (clicks, &reading, level);
  g_autofree char *more = ph_photo_result_more (clicks, &reading, level);
  if (reading.refused)
    gtk_widget_add_css_class (GTK_WIDGET (self->result), "error-text");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->result), "error-text");
  show_text (self->result, result);
  show_text (self->result_more, more);
  gtk_widget_set_sensitive (self->use, !isnan (reading.tilt_rad));
}

static void
show_more (const PhPhotoClicks *clicks, GtkWidget *button, PhPhotoTarget on)
{
  gtk_widget_set_visible (button, clicks->way == PH_PHOTO_BY_LINES);
  gtk_widget_set_sensitive (button, ph_photo_clicks_are_complete (clicks)
                                        && ph_photo_clicks_can_ask (clicks, on));
}

static void
update (PhPhotoDialog *self)
{
  const PhPhotoClicks *clicks = ph_photo_canvas_get_clicks (self->canvas);
  gboolean some = ph_photo_canvas_get_picture (self->canvas) != NULL;
  const char *step = ph_photo_step_words (clicks);
  gtk_stack_set_visible_child_name (self->pages, some ? "picture" : "how");
  gtk_widget_set_visible (self->panel, some);
  /* The toolkit forgets it while it is hidden. */
  gtk_window_set_default_widget (GTK_WINDOW (self), some ? self->use : NULL);
  gtk_label_set_text (self->step, step);
  ph_say (GTK_WIDGET (self->canvas), step);
  show_more (clicks, self->more_string, PH_PHOTO_STRING);
  show_more (clicks, self->more_edge, PH_PHOTO_EDGE);
  gtk_widget_set_sensitive (self->undo, clicks->n > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->scale_box), clicks->way == PH_PHOTO_BY_VIAL);
  show_result (self, clicks);
}

static void
use_cb (PhPhotoDialog *self)
{
  PhPhotoReading reading = reading_now (self);
  if (isnan (reading.tilt_rad))
    return;
  /* To the tenth that is shown, as any reading is. */
  double tilt_deg = round (ph_deg_from_rad (reading.tilt_rad) * 10) / 10;
  g_signal_emit (self, signals[USED], 0, tilt_deg, ph_deg_from_rad (reading.tilt_sd_rad));
  gtk_window_close (GTK_WINDOW (self));
}

/* Points. */

static void
way_cb (PhPhotoDialog *self)
{
  PhPhotoWay way =
      gtk_toggle_button_get_active (self->by_vial) ? PH_PHOTO_BY_VIAL : PH_PHOTO_BY_LINES;
  ph_photo_canvas_set_way (self->canvas, way);
  update (self);
}

static void
more_string_cb (PhPhotoDialog *self)
{
  ph_photo_canvas_ask (self->canvas, PH_PHOTO_STRING);
}

static void
more_edge_cb (PhPhotoDialog *self)
{
  ph_photo_canvas_ask (self->canvas, PH_PHOTO_EDGE);
}

static void
undo_cb (PhPhotoDialog *self)
{
  ph_photo_canvas_undo (self->canvas);
}

static void
zoom_in_cb (PhPhotoDialog *self)
{
  ph_photo_canvas_zoom (self->canvas, 1.5);
}

static void
zoom_out_cb (PhPhotoDialog *self)
{
  ph_photo_canvas_zoom (self->canvas, 1 / 1.5);
}

static void
zoom_fit_cb (PhPhotoDialog *self)
{
  ph_photo_canvas_zoom (self->canvas, 0);
}

static void
turn_cb (PhPhotoDialog *self)
{
  const PhPhotoPicture *picture = ph_photo_canvas_get_picture (self->canvas);
  PhPhotoPicture *turned = picture ? ph_photo_picture_new_turned (picture) : NULL;
  if (turned)
    ph_photo_canvas_take_picture (self->canvas, turned);
}

/* The picture. */

static void
loaded_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  PhPhotoDialog *self = data;
  g_autoptr (GError) error = NULL;
  PhPhotoPicture *picture = ph_photo_picture_load_finish (result, &error);
  (void)source;
  /* Closed in the meantime, or another one was chosen. */
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) || !self->document)
    {
      ph_photo_picture_free (picture);
      g_object_unref (self);
      return;
    }
  gtk_widget_set_visible (self->opening, FALSE);
  show_text (self->error, error ? error->message : NULL);
  if (picture)
    {
      ph_photo_canvas_take_picture (self->canvas, picture);
      gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
    }
  g_object_unref (self);
}

static void
open_file (PhPhotoDialog *self, GFile *file)
{
  g_cancellable_cancel (self->cancellable);
  g_set_object (&self->cancellable, NULL);
  self->cancellable = g_cancellable_new ();
  g_clear_object (&self->folder);
  self->folder = g_file_get_parent (file);
  show_text (self->error, NULL);
  gtk_widget_set_visible (self->opening, TRUE);
  ph_photo_picture_load_async (file, self->cancellable, loaded_cb, g_object_ref (self));
}

static void
chosen_cb (PhPhotoDialog *self, int response)
{
  g_autoptr (GFile) file = response == GTK_RESPONSE_ACCEPT
                               ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (self->chooser))
                               : NULL;
  g_clear_object (&self->chooser);
  if (file)
    open_file (self, file);
}

static void
choose_cb (PhPhotoDialog *self)
{
  g_autoptr (GtkFileFilter) pictures = gtk_file_filter_new (), all = gtk_file_filter_new ();
  if (self->chooser)
    return;
  self->chooser = gtk_file_chooser_native_new (_ ("Choose a Photo"), GTK_WINDOW (self),
                                               GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Open"), NULL);
  gtk_file_filter_set_name (pictures, _ ("Pictures"));
  gtk_file_filter_add_pixbuf_formats (pictures);
  gtk_file_filter_set_name (all, _ ("All files"));
  gtk_file_filter_add_pattern (all, "*");
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), pictures);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), all);
  if (self->folder)
    gtk_file_chooser_set_current_folder (GTK_FILE_CHOOSER (self->chooser), self->folder, NULL);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  g_signal_connect_swapped (self->chooser, "response", G_CALLBACK (chosen_cb), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static gboolean
dropped_cb (PhPhotoDialog *self, const GValue *value)
{
  open_file (self, g_value_get_object (value));
  return TRUE;
}

/* The object. */

static void
ph_photo_dialog_dispose (GObject *object)
{
  PhPhotoDialog *self = PH_PHOTO_DIALOG (object);
  if (self->cancellable)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_object (&self->chooser);
  g_clear_object (&self->folder);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_photo_dialog_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
#define BIND(child) gtk_widget_class_bind_template_child (widget_class, PhPhotoDialog, child)
  BIND (canvas);
  BIND (pages);
  BIND (by_lines);
  BIND (by_vial);
  BIND (mirrored);
  BIND (panel);
  BIND (ways);
  BIND (more_string);
  BIND (more_edge);
  BIND (undo);
  BIND (use);
  BIND (opening);
  BIND (how);
  BIND (sketch);
  BIND (error);
  BIND (step);
  BIND (result);
  BIND (result_more);
  BIND (scale_box);
#undef BIND
}

static void
bind_callbacks (GtkWidgetClass *widget_class)
{
#define BIND(callback) gtk_widget_class_bind_template_callback (widget_class, callback)
  BIND (update);
  BIND (use_cb);
  BIND (way_cb);
  BIND (more_string_cb);
  BIND (more_edge_cb);
  BIND (undo_cb);
  BIND (zoom_in_cb);
  BIND (zoom_out_cb);
  BIND (zoom_fit_cb);
  BIND (turn_cb);
  BIND (choose_cb);
#undef BIND
}

static void
ph_photo_dialog_class_init (PhPhotoDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_photo_dialog_dispose;
  g_type_ensure (PH_TYPE_PHOTO_CANVAS);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/photo-dialog.ui");
  bind_children (widget_class);
  bind_callbacks (widget_class);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  signals[USED] = g_signal_new ("used", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 2, G_TYPE_DOUBLE, G_TYPE_DOUBLE);
}

static void
fill_how (PhPhotoDialog *self)
{
  const char *words;
  for (guint i = 0; (words = ph_photo_how (i)); i++)
    {
      g_autofree char *text = g_strdup_printf ("•  %s", words);
      GtkWidget *label = gtk_label_new (text);
      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_box_append (self->how, label);
    }
  gtk_box_append (self->sketch, ph_photo_sketch_new ());
}

static void
ph_photo_dialog_init (PhPhotoDialog *self)
{
  GtkDropTarget *drop = gtk_drop_target_new (G_TYPE_FILE, GDK_ACTION_COPY);
  gtk_widget_init_template (GTK_WIDGET (self));
  fill_how (self);
  g_signal_connect_swapped (drop, "drop", G_CALLBACK (dropped_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drop));
}

GtkWidget *
ph_photo_dialog_new (GtkWindow *parent, PhDocument *document, GFile *folder)
{
  g_return_val_if_fail (GTK_IS_WINDOW (parent) && PH_IS_DOCUMENT (document), NULL);
  const PhRig *rig = ph_document_get_rig (document);
  PhPhotoDialog *self = g_object_new (PH_TYPE_PHOTO_DIALOG, "transient-for", parent,
                                      "destroy-with-parent", TRUE, NULL);
  self->document = g_object_ref (document);
  self->folder = folder ? g_object_ref (folder) : NULL;
  gtk_box_append (self->scale_box, ph_vial_scale_new (document));
  g_signal_connect_object (document, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  gtk_widget_set_visible (self->ways, ph_vial_sight (rig) >= 0);
  if (isnan (ph_vial_deg_per_mark (rig)))
    gtk_toggle_button_set_active (self->by_lines, TRUE);
  else
    gtk_toggle_button_set_active (self->by_vial, TRUE);
  update (self);
  return GTK_WIDGET (self);
}

GFile *
ph_photo_dialog_get_folder (PhPhotoDialog *self)
{
  g_return_val_if_fail (PH_IS_PHOTO_DIALOG (self), NULL);
  return self->folder;
}
