/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The strip itself is in ui/banner.ui. Details are labels in a list that scrolls when long, since
 * a broken file may hold hundreds of errors: the first DETAILS_MOST are shown, and how many more.
 */
#include "widgets/banner.h"

#include <glib/gi18n.h>

#define DETAILS_MOST 100

struct _PhBanner
{
  GtkWidget parent_instance;

  /* template */
  GtkRevealer *revealer;
  GtkImage *icon;
  GtkLabel *label;
  GtkBox *strip, *answers, *details;
  GtkExpander *expander;
};

typedef struct
{
  PhBanner *banner;
  PhBannerAnswer answer;
  gpointer data;
} Answer;

G_DEFINE_FINAL_TYPE (PhBanner, ph_banner, GTK_TYPE_WIDGET)

static void
free_answer (gpointer data, GClosure *closure)
{
  (void)closure;
  g_free (data);
}

static void
empty_box (GtkBox *box)
{
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (box))))
    gtk_box_remove (box, child);
}

static void
answered_cb (GtkButton *button, Answer *answer)
{
  (void)button;
  /* Kept: closing throws the buttons away, and this answer with them. */
  Answer kept = *answer;
  g_object_ref (kept.banner);
  ph_banner_close (kept.banner);
  kept.answer (kept.banner, kept.data);
  g_object_unref (kept.banner);
}

static void
close_cb (PhBanner *self)
{
  ph_banner_close (self);
}

static void
add_detail (PhBanner *self, const char *text)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_box_append (self->details, label);
}

static void
fill_details (PhBanner *self, const PhIssues *issues)
{
  empty_box (self->details);
  size_t n = issues ? issues->n : 0;
  for (size_t i = 0; i < n && i < DETAILS_MOST; i++)
    {
      char *line = ph_issue_line (&issues->items[i]);
      add_detail (self, line);
      free (line);
    }
  if (n > DETAILS_MOST)
    {
      g_autofree char *more = g_strdup_printf (
          ngettext ("and %zu more", "and %zu more", n - DETAILS_MOST), n - DETAILS_MOST);
      add_detail (self, more);
    }
  gtk_expander_set_expanded (self->expander, FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->expander), n > 0);
}

void
ph_banner_say (PhBanner *self, PhBannerTone tone, const char *text, const PhIssues *issues)
{
  g_return_if_fail (PH_IS_BANNER (self) && text != NULL);
  gboolean error = tone == PH_BANNER_ERROR;
  gtk_image_set_from_icon_name (self->icon,
                                error ? "dialog-warning-symbolic" : "dialog-question-symbolic");
  gtk_label_set_text (self->label, text);
  if (error)
    gtk_widget_add_css_class (GTK_WIDGET (self->strip), "error");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->strip), "error");
  empty_box (self->answers);
  fill_details (self, issues);
  gtk_widget_set_visible (GTK_WIDGET (self), TRUE);
  gtk_revealer_set_reveal_child (self->revealer, TRUE);
}

void
ph_banner_add_answer (PhBanner *self, const char *label, PhBannerAnswer answer, gpointer data)
{
  g_return_if_fail (PH_IS_BANNER (self) && answer != NULL);
  GtkWidget *button = gtk_button_new_with_label (label);
  Answer *kept = g_new (Answer, 1);
  *kept = (Answer){ self, answer, data };
  g_signal_connect_data (button, "clicked", G_CALLBACK (answered_cb), kept, free_answer, 0);
  gtk_box_append (self->answers, button);
}

void
ph_banner_close (PhBanner *self)
{
  g_return_if_fail (PH_IS_BANNER (self));
  gtk_revealer_set_reveal_child (self->revealer, FALSE);
}

gboolean
ph_banner_get_open (PhBanner *self)
{
  return gtk_revealer_get_reveal_child (self->revealer);
}

static void
revealed_cb (PhBanner *self)
{
  /* Out of the tab order and of a screen reader's way once it has slid shut. */
  if (!gtk_revealer_get_child_revealed (self->revealer)
      && !gtk_revealer_get_reveal_child (self->revealer))
    gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

static void
ph_banner_dispose (GObject *object)
{
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))))
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (ph_banner_parent_class)->dispose (object);
}

static void
ph_banner_class_init (PhBannerClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_banner_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/banner.ui");
  gtk_widget_class_bind_template_child (widget_class, PhBanner, revealer);
  gtk_widget_class_bind_template_child (widget_class, PhBanner, strip);
  gtk_widget_class_bind_template_child (widget_class, PhBanner, icon);
  gtk_widget_class_bind_template_child (widget_class, PhBanner, label);
  gtk_widget_class_bind_template_child (widget_class, PhBanner, answers);
  gtk_widget_class_bind_template_child (widget_class, PhBanner, details);
  gtk_widget_class_bind_template_child (widget_class, PhBanner, expander);
  gtk_widget_class_bind_template_callback (widget_class, close_cb);
  gtk_widget_class_bind_template_callback (widget_class, revealed_cb);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_ALERT);
  gtk_widget_class_set_css_name (widget_class, "ph-banner");
}

static void
ph_banner_init (PhBanner *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
ph_banner_new (void)
{
  return g_object_new (PH_TYPE_BANNER, NULL);
}
