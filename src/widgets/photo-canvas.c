/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The clicks are kept here, for both ways; each has a small child, so that the focus and a screen
 * reader meet it as they meet any control.
 */
#include "widgets/photo-canvas-private.h"
#include "widgets/photo-mark.h"
#include "widgets/photo-words.h"
#include "widgets/say.h"

#define LEAST_PX 240
#define USUAL_PX 560

enum
{
  CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (PhPhotoCanvas, ph_photo_canvas, GTK_TYPE_WIDGET)

PhPhotoClicks *
ph_photo_canvas_clicks (PhPhotoCanvas *self)
{
  return &self->ways[self->way];
}

const PhPhotoClicks *
ph_photo_canvas_get_clicks (PhPhotoCanvas *self)
{
  g_return_val_if_fail (PH_IS_PHOTO_CANVAS (self), NULL);
  return ph_photo_canvas_clicks (self);
}

const PhPhotoPicture *
ph_photo_canvas_get_picture (PhPhotoCanvas *self)
{
  g_return_val_if_fail (PH_IS_PHOTO_CANVAS (self), NULL);
  return self->picture;
}

/* The place. */

PhPhotoFrame
ph_photo_canvas_frame (PhPhotoCanvas *self)
{
  return (PhPhotoFrame){ MAX (gtk_widget_get_width (GTK_WIDGET (self)), 1),
                         MAX (gtk_widget_get_height (GTK_WIDGET (self)), 1),
                         ph_photo_picture_get_width (self->picture),
                         ph_photo_picture_get_height (self->picture) };
}

void
ph_photo_canvas_set_place (PhPhotoCanvas *self, PhPhotoPlace place)
{
  PhPhotoFrame frame = ph_photo_canvas_frame (self);
  self->place = place;
  self->fitted = place.scale <= ph_photo_place_fit (&frame).scale;
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
ph_photo_canvas_zoom (PhPhotoCanvas *self, double factor)
{
  g_return_if_fail (PH_IS_PHOTO_CANVAS (self));
  if (!self->picture)
    return;
  PhPhotoFrame frame = ph_photo_canvas_frame (self);
  ph_photo_canvas_set_place (
      self, ph_photo_place_zoom (&self->place, &frame, factor, frame.width / 2, frame.height / 2));
}

static void
place_marks (PhPhotoCanvas *self)
{
  const PhPhotoClicks *clicks = ph_photo_canvas_clicks (self);
  for (guint i = 0; i < self->n_marks; i++)
    {
      double x, y;
      ph_photo_place_to_frame (&self->place, clicks->clicks[i].at.x, clicks->clicks[i].at.y, &x,
                               &y);
      graphene_point_t corner = { (float)(x - PH_PHOTO_MARK_PX / 2.0),
                                  (float)(y - PH_PHOTO_MARK_PX / 2.0) };
      gtk_widget_allocate (self->marks[i], PH_PHOTO_MARK_PX, PH_PHOTO_MARK_PX, -1,
                           gsk_transform_translate (NULL, &corner));
    }
}

static void
ph_photo_canvas_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  PhPhotoCanvas *self = PH_PHOTO_CANVAS (widget);
  (void)width;
  (void)height;
  (void)baseline;
  if (!self->picture)
    return;
  PhPhotoFrame frame = ph_photo_canvas_frame (self);
  self->place = self->fitted ? ph_photo_place_fit (&frame)
                             : ph_photo_place_zoom (&self->place, &frame, 1, 0, 0);
  place_marks (self);
}

/* The points. */

static void
match_marks (PhPhotoCanvas *self)
{
  const PhPhotoClicks *clicks = ph_photo_canvas_clicks (self);
  GtkWidget *focus = gtk_widget_get_focus_child (GTK_WIDGET (self));
  while (self->n_marks > clicks->n)
    {
      GtkWidget *mark = self->marks[--self->n_marks];
      gboolean had_focus = mark == focus;
      gtk_widget_unparent (mark);
      if (had_focus)
        gtk_widget_grab_focus (self->n_marks ? self->marks[self->n_marks - 1] : GTK_WIDGET (self));
    }
  while (self->n_marks < clicks->n)
    {
      GtkWidget *mark = ph_photo_mark_new (clicks->clicks[self->n_marks].on);
      gtk_widget_set_parent (mark, GTK_WIDGET (self));
      self->marks[self->n_marks++] = mark;
    }
  for (guint i = 0; i < self->n_marks; i++)
    {
      g_autofree char *name = ph_photo_point_words (clicks, i);
      ph_say (self->marks[i], name);
    }
}

void
ph_photo_canvas_clicks_changed (PhPhotoCanvas *self)
{
  match_marks (self);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
drop_marks (PhPhotoCanvas *self)
{
  while (self->n_marks > 0)
    gtk_widget_unparent (self->marks[--self->n_marks]);
}

void
ph_photo_canvas_set_way (PhPhotoCanvas *self, PhPhotoWay way)
{
  g_return_if_fail (PH_IS_PHOTO_CANVAS (self));
  if (way == self->way)
    return;
  drop_marks (self);
  self->way = way;
  self->held = -1;
  ph_photo_canvas_hide_loupe (self);
  ph_photo_canvas_clicks_changed (self);
}

void
ph_photo_canvas_take_picture (PhPhotoCanvas *self, PhPhotoPicture *picture)
{
  g_return_if_fail (PH_IS_PHOTO_CANVAS (self));
  ph_photo_picture_free (self->picture);
  self->picture = picture;
  self->fitted = TRUE;
  self->held = -1;
  drop_marks (self);
  for (int way = 0; way < PH_PHOTO_WAYS; way++)
    self->ways[way] = ph_photo_clicks_none ((PhPhotoWay)way);
  ph_photo_canvas_hide_loupe (self);
  ph_photo_canvas_clicks_changed (self);
}

void
ph_photo_canvas_ask (PhPhotoCanvas *self, PhPhotoTarget on)
{
  g_return_if_fail (PH_IS_PHOTO_CANVAS (self));
  ph_photo_clicks_ask (ph_photo_canvas_clicks (self), on);
  gtk_widget_grab_focus (GTK_WIDGET (self));
  ph_photo_canvas_clicks_changed (self);
}

gboolean
ph_photo_canvas_undo (PhPhotoCanvas *self)
{
  g_return_val_if_fail (PH_IS_PHOTO_CANVAS (self), FALSE);
  if (self->held >= 0 || !ph_photo_clicks_undo (ph_photo_canvas_clicks (self)))
    return FALSE;
  ph_photo_canvas_hide_loupe (self);
  ph_photo_canvas_clicks_changed (self);
  return TRUE;
}

/* The loupe. */

void
ph_photo_canvas_show_loupe (PhPhotoCanvas *self, double picture_x, double picture_y)
{
  self->loupe = TRUE;
  self->loupe_x = picture_x;
  self->loupe_y = picture_y;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
ph_photo_canvas_hide_loupe (PhPhotoCanvas *self)
{
  self->loupe = FALSE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

double
ph_photo_canvas_loupe_scale (PhPhotoCanvas *self)
{
  return MAX (CLAMP (4 * self->place.scale, 2, 12), 1.5 * self->place.scale);
}

/* The focus. */

int
ph_photo_canvas_focused (PhPhotoCanvas *self)
{
  GtkWidget *focus = gtk_widget_get_focus_child (GTK_WIDGET (self));
  for (guint i = 0; i < self->n_marks; i++)
    if (self->marks[i] == focus)
      return (int)i;
  return -1;
}

/* First the picture, then its points as they were clicked: the toolkit's own order would be that of
   their places, which the keys change. */
static gboolean
ph_photo_canvas_focus (GtkWidget *widget, GtkDirectionType direction)
{
  PhPhotoCanvas *self = PH_PHOTO_CANVAS (widget);
  int last = (int)self->n_marks - 1, now = ph_photo_canvas_focused (self), to;
  gboolean back = direction == GTK_DIR_TAB_BACKWARD;
  if (!self->picture)
    return FALSE;
  if (now < 0 && !gtk_widget_has_focus (widget))
    to = back ? last : -1;
  else if (direction == GTK_DIR_TAB_FORWARD && now < last)
    to = now + 1;
  else if (back && now >= 0)
    to = now - 1;
  else
    return FALSE;
  return gtk_widget_grab_focus (to < 0 ? widget : self->marks[to]);
}

/* The object. */

static void
ph_photo_canvas_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  PhPhotoCanvas *self = PH_PHOTO_CANVAS (widget);
  if (!self->picture)
    return;
  ph_photo_canvas_paint (self, snapshot);
  GTK_WIDGET_CLASS (ph_photo_canvas_parent_class)->snapshot (widget, snapshot);
  if (self->loupe)
    ph_photo_canvas_paint_loupe (self, snapshot);
}

static void
ph_photo_canvas_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                         int *natural, int *minimum_baseline, int *natural_baseline)
{
  PhPhotoCanvas *self = PH_PHOTO_CANVAS (widget);
  (void)for_size;
  /* A child must be measured before it is placed. */
  for (guint i = 0; i < self->n_marks; i++)
    gtk_widget_measure (self->marks[i], orientation, -1, NULL, NULL, NULL, NULL);
  *minimum = LEAST_PX;
  *natural = USUAL_PX;
  *minimum_baseline = *natural_baseline = -1;
}

static void
ph_photo_canvas_dispose (GObject *object)
{
  PhPhotoCanvas *self = PH_PHOTO_CANVAS (object);
  drop_marks (self);
  g_clear_pointer (&self->picture, ph_photo_picture_free);
  G_OBJECT_CLASS (ph_photo_canvas_parent_class)->dispose (object);
}

static void
ph_photo_canvas_class_init (PhPhotoCanvasClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_photo_canvas_dispose;
  widget_class->snapshot = ph_photo_canvas_snapshot;
  widget_class->measure = ph_photo_canvas_measure;
  widget_class->focus = ph_photo_canvas_focus;
  widget_class->size_allocate = ph_photo_canvas_size_allocate;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_css_name (widget_class, "photocanvas");
  signals[CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
}

static void
ph_photo_canvas_init (PhPhotoCanvas *self)
{
  self->held = -1;
  self->fitted = TRUE;
  for (int way = 0; way < PH_PHOTO_WAYS; way++)
    self->ways[way] = ph_photo_clicks_none ((PhPhotoWay)way);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  ph_photo_canvas_init_input (self);
}
