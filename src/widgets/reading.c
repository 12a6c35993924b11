/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A text that stays as it was costs a comparison (widgets/live-text.h). The
 * texts have a fixed number of characters, so that columns do not move while dragging.
 */
#include "widgets/reading.h"

#include "widgets/live-text.h"
#include "widgets/say.h"

struct _PhReading
{
  GtkWidget parent_instance;

  /* template */
  GtkBox *heading, *extra;
  GtkImage *warning;
  GtkLabel *title;
  PhLiveText *value, *detail, *change, *more;

  gboolean wants_more;
  char *more_text;
};

G_DEFINE_FINAL_TYPE (PhReading, ph_reading, GTK_TYPE_WIDGET)

static void
update_more (PhReading *self)
{
  ph_live_text_show (self->more, self->wants_more ? self->more_text : NULL);
}

/* "Mass: 2.974 kg, front 8, back 5, side 0 oz, +40 g" for a screen reader. */
static void
update_spoken (PhReading *self, const PhReadingText *text)
{
  GString *spoken = g_string_new (NULL);
  g_string_printf (spoken, "%s: %s", gtk_label_get_text (self->title),
                   text->value ? text->value : "");
  if (text->detail)
    g_string_append_printf (spoken, ", %s", text->detail);
  if (text->change)
    g_string_append_printf (spoken, ", %s", text->change);
  ph_say (GTK_WIDGET (self), spoken->str);
  g_string_free (spoken, TRUE);
}

void
ph_reading_show (PhReading *self, const PhReadingText *text)
{
  g_return_if_fail (PH_IS_READING (self) && text != NULL);
  ph_live_text_show (self->value, text->value);
  ph_live_text_show (self->detail, text->detail);
  ph_live_text_show (self->change, text->change);
  g_free (self->more_text);
  self->more_text = g_strdup (text->more);
  update_more (self);
  gtk_widget_set_visible (GTK_WIDGET (self->warning), text->warning);
  if (text->warning)
    gtk_widget_add_css_class (GTK_WIDGET (self), "warning");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "warning");
  update_spoken (self, text);
}

void
ph_reading_add_mark (PhReading *self, GtkWidget *mark)
{
  g_return_if_fail (PH_IS_READING (self) && GTK_IS_WIDGET (mark));
  gtk_box_append (self->heading, mark);
}

void
ph_reading_add_extra (PhReading *self, GtkWidget *extra)
{
  g_return_if_fail (PH_IS_READING (self) && GTK_IS_WIDGET (extra));
  gtk_box_append (self->extra, extra);
  gtk_widget_set_visible (GTK_WIDGET (self->extra), TRUE);
}

void
ph_reading_set_more (PhReading *self, gboolean more)
{
  g_return_if_fail (PH_IS_READING (self));
  self->wants_more = more;
  update_more (self);
}

static void
ph_reading_dispose (GObject *object)
{
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))))
    gtk_widget_unparent (child);
  g_clear_pointer (&PH_READING (object)->more_text, g_free);
  G_OBJECT_CLASS (ph_reading_parent_class)->dispose (object);
}

static void
ph_reading_class_init (PhReadingClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  g_type_ensure (PH_TYPE_LIVE_TEXT);
  G_OBJECT_CLASS (klass)->dispose = ph_reading_dispose;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/reading.ui");
  gtk_widget_class_bind_template_child (widget_class, PhReading, heading);
  gtk_widget_class_bind_template_child (widget_class, PhReading, extra);
  gtk_widget_class_bind_template_child (widget_class, PhReading, warning);
  gtk_widget_class_bind_template_child (widget_class, PhReading, title);
  gtk_widget_class_bind_template_child (widget_class, PhReading, value);
  gtk_widget_class_bind_template_child (widget_class, PhReading, detail);
  gtk_widget_class_bind_template_child (widget_class, PhReading, change);
  gtk_widget_class_bind_template_child (widget_class, PhReading, more);
}

static void
ph_reading_init (PhReading *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
ph_reading_new (const char *title)
{
  PhReading *self = g_object_new (PH_TYPE_READING, NULL);
  gtk_label_set_text (self->title, title);
  return GTK_WIDGET (self);
}
