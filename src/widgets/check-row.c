/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "widgets/check-row.h"

#include <glib/gi18n.h>

#include "document/format.h"
#include "physics/cant.h"
#include "widgets/reading-result.h"
#include "widgets/tilt-words.h"

struct _PhCheckRow
{
  GtkListBoxRow parent_instance;
};

enum
{
  EDIT,
  ASIDE,
  DELETE,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (PhCheckRow, ph_check_row, GTK_TYPE_LIST_BOX_ROW)

static void
edit_cb (PhCheckRow *self)
{
  g_signal_emit (self, signals[EDIT], 0);
}

static void
aside_cb (PhCheckRow *self)
{
  g_signal_emit (self, signals[ASIDE], 0);
}

static void
delete_cb (PhCheckRow *self)
{
  g_signal_emit (self, signals[DELETE], 0);
}

static void
ph_check_row_class_init (PhCheckRowClass *klass)
{
  static const char *const names[] = { "edit", "aside", "delete" };
  for (gsize i = 0; i < N_SIGNALS; i++)
    signals[i] = g_signal_new (names[i], G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                               NULL, NULL, G_TYPE_NONE, 0);
}

static void
ph_check_row_init (PhCheckRow *self)
{
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (self), FALSE);
}

static void
add_label (GtkWidget *box, const char *text, const char *css_class)
{
  if (!text || !*text)
    return;
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (box), label);
}

static void
add_button (PhCheckRow *self, GtkWidget *box, const char *icon, const char *name,
            GCallback callback)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);
  gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (button, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect_swapped (button, "clicked", callback, self);
  gtk_box_append (GTK_BOX (box), button);
}

/* "2026-03-01 · bubble 0.6° left ±0.2°": 90 %, as every ± of the page and the plot's bars. */
static char *
reading_text (const PhCheck *check, gboolean level)
{
  g_autofree char *read = ph_tilt_phrase (check->bubble_deg, level);
  g_autofree char *sd = ph_tilt_half (PH_SD_90 * check->sd_deg);
  const char *date = check->date ? check->date : _ ("no date");
  return g_strdup_printf ("%s · %s %s", date, read, sd);
}

static const char *
state_text (const PhCheck *check, const PhCheckRecord *record)
{
  if (check->aside)
    return _ ("set aside: not used");
  return record->disagrees ? _ ("⚠ disagrees with the other checks: read it again, or set it aside")
                           : NULL;
}

GtkWidget *
ph_check_row_new (const PhCheck *check, const PhCheckRecord *record, gboolean level)
{
  PhCheckRow *self = g_object_new (PH_TYPE_CHECK_ROW, NULL);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 2);
  GtkWidget *texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autofree char *read = reading_text (check, level);
  g_autofree char *verdict = ph_check_verdict_words (check, record, level);
  const char *state = state_text (check, record);
  gtk_widget_set_hexpand (texts, TRUE);
  add_label (texts, read, check->aside ? "check-aside" : "check-read");
  add_label (texts, verdict, "quiet");
  add_label (texts, state, check->aside ? "quiet" : "check-disagrees");
  add_label (texts, check->note, "quiet");
  gtk_box_append (GTK_BOX (box), texts);
  add_button (self, box, "document-edit-symbolic", _ ("Put right"), G_CALLBACK (edit_cb));
  add_button (self, box, check->aside ? "view-reveal-symbolic" : "view-conceal-symbolic",
              check->aside ? _ ("Use again") : _ ("Set aside"), G_CALLBACK (aside_cb));
  add_button (self, box, "user-trash-symbolic", _ ("Delete"), G_CALLBACK (delete_cb));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (self), box);
  g_autofree char *spoken =
      g_strjoin ("; ", read, verdict ? verdict : "", state ? state : "", NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  return GTK_WIDGET (self);
}
