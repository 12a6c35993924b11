/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What to do next is asked of the document while the page is seen, once a change has come to rest.
 */
#include "widgets/hand-page.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/document-hand.h"
#include "widgets/answer-words.h"
#include "widgets/check-guide.h"
#include "widgets/check-list.h"
#include "widgets/check-picture.h"
#include "widgets/columns-layout.h"
#include "widgets/hand-plot.h"
#include "widgets/level-panel.h"
#include "widgets/matters-line.h"
#include "widgets/tilt-words.h"

/* The record stands beside Level where both have room, else below it. */
#define COLUMN_SPACING 24
#define ROW_SPACING 18

struct _PhHandPage
{
  GtkWidget parent_instance;

  /* template */
  GtkStack *stack;
  GtkScrolledWindow *scroller;
  GtkLabel *next, *next_more, *sure;
  GtkBox *content, *empty, *pictures, *columns, *left, *right, *guide_box;
  GtkButton *add;

  GtkWidget *guide; /* child */

  /* owned */
  PhDocument *document;
  guint rest; /* source of a pending update, or 0 */
  gboolean stale;
};

enum
{
  REFUSED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (PhHandPage, ph_hand_page, GTK_TYPE_WIDGET)

#define REST_MS 120

static gboolean
in_guide (PhHandPage *self)
{
  return g_str_equal (gtk_stack_get_visible_child_name (self->stack), "guide");
}

/* What to do next. */

static char *
first_text (PhHandPage *self, const PhPartChecks *next)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  if (next->enough)
    {
      g_autofree char *half = ph_tilt_half (next->interval_now_deg);
      return g_strdup_printf (
          _ ("Enough: the bubble is known to %s. Another check would hardly tell "
             "more."),
          half);
    }
  if (next->n == 0)
    return g_strdup (_ ("Read the rig as it is"));
  g_autofree char *task =
      ph_check_task_words (rig, ph_document_get_compiled (self->document), &next->checks[0]);
  g_autofree char *gain =
      rig->archer.n_checks
          ? ph_check_gain_words (next->interval_now_deg, next->checks[0].interval_then_deg)
          : NULL;
  return gain ? g_strdup_printf ("%s: %s", task, gain) : g_strdup (task);
}

/* The other proposals, a line each. */
static char *
other_text (PhHandPage *self, const PhPartChecks *next)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  g_autoptr (GString) text = g_string_new (NULL);
  for (int i = 1; i < next->n && !next->enough; i++)
    {
      g_autofree char *task =
          ph_check_task_words (rig, ph_document_get_compiled (self->document), &next->checks[i]);
      g_autofree char *gain =
          ph_check_gain_words (next->interval_now_deg, next->checks[i].interval_then_deg);
      g_string_append_printf (text, "%s%s%s%s%s", i > 1 ? "\n" : "", _ ("or: "), task,
                              gain ? ": " : "", gain ? gain : "");
    }
  return g_strdup (text->str);
}

static void
show_text (GtkLabel *label, const char *text)
{
  gtk_label_set_text (label, text ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text && *text);
}

/* What is known now, of the rig that is about to be tried. */
static char *
sure_text (PhHandPage *self, const PhPartChecks *next)
{
  const PhReport *report = ph_document_get_report (self->document);
  gboolean level = ph_tilt_has_level (ph_document_get_rig (self->document));
  if (!report->hand_fitted)
    return g_strdup (level
                         ? _ ("Where the bubble settles depends on this archer’s hand: not known "
                              "yet. One check of two minutes tells most of it.")
                         : _ ("How far it leans depends on this archer’s hand: not known yet. One "
                              "check of two minutes tells most of it."));
  if (isnan (next->interval_now_deg))
    return g_strdup (_ ("With this hand the rig tips over instead of settling."));
  g_autofree char *half = ph_tilt_half (next->interval_now_deg);
  return g_strdup_printf (_ ("The rig about to be tried is known to %s now, 90 %% sure."), half);
}

static void
update (PhHandPage *self)
{
  const PhArcher *archer = &ph_document_get_rig (self->document)->archer;
  PhPartChecks next = ph_document_next_checks (self->document);
  g_autofree char *first = first_text (self, &next), *others = other_text (self, &next);
  g_autofree char *sure = sure_text (self, &next);
  self->stale = FALSE;
  show_text (self->next, first);
  show_text (self->next_more, archer->n_checks ? others : NULL);
  show_text (self->sure, sure);
  gtk_widget_set_visible (GTK_WIDGET (self->empty), archer->n_checks == 0);
  gtk_widget_set_visible (GTK_WIDGET (self->columns), archer->n_checks > 0);
  gtk_widget_remove_css_class (GTK_WIDGET (self->add), "suggested-action");
  if (!next.enough)
    gtk_widget_add_css_class (GTK_WIDGET (self->add), "suggested-action");
}

static gboolean
rest_cb (gpointer data)
{
  PhHandPage *self = data;
  if (ph_document_in_gesture (self->document))
    return G_SOURCE_CONTINUE;
  self->rest = 0;
  if (self->stale && gtk_widget_get_mapped (GTK_WIDGET (self)))
    update (self);
  return G_SOURCE_REMOVE;
}

static void
changed_cb (PhHandPage *self)
{
  self->stale = TRUE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)) && !self->rest)
    self->rest = g_timeout_add (REST_MS, rest_cb, self);
}

/* The guide. */

void
ph_hand_page_add_check (PhHandPage *self)
{
  g_return_if_fail (PH_IS_HAND_PAGE (self));
  if (in_guide (self))
    return;
  gtk_stack_set_visible_child_name (self->stack, "guide");
  ph_check_guide_start (PH_CHECK_GUIDE (self->guide));
}

static void
edit_cb (PhHandPage *self, guint i)
{
  gtk_stack_set_visible_child_name (self->stack, "guide");
  ph_check_guide_edit (PH_CHECK_GUIDE (self->guide), i);
}

static void
closed_cb (PhHandPage *self, gboolean recorded)
{
  (void)recorded;
  gtk_stack_set_visible_child_name (self->stack, "page");
  update (self);
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0);
  /* Another rig closes the guide too, whichever page is looked at: the focus stays there then. */
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    gtk_widget_grab_focus (GTK_WIDGET (self->add));
}

static void
refused_cb (PhHandPage *self, const char *why)
{
  g_signal_emit (self, signals[REFUSED], 0, why);
}

static void
ph_hand_page_map (GtkWidget *widget)
{
  PhHandPage *self = PH_HAND_PAGE (widget);
  if (self->stale)
    update (self);
  GTK_WIDGET_CLASS (ph_hand_page_parent_class)->map (widget);
}

static void
ph_hand_page_dispose (GObject *object)
{
  PhHandPage *self = PH_HAND_PAGE (object);
  GtkWidget *child;
  g_clear_handle_id (&self->rest, g_source_remove);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))))
    gtk_widget_unparent (child);
  self->columns = NULL;
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_hand_page_parent_class)->dispose (object);
}

static void
ph_hand_page_class_init (PhHandPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_hand_page_dispose;
  widget_class->map = ph_hand_page_map;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/hand-page.ui");
#define BIND(child) gtk_widget_class_bind_template_child (widget_class, PhHandPage, child)
  BIND (stack);
  BIND (scroller);
  BIND (next);
  BIND (next_more);
  BIND (sure);
  BIND (content);
  BIND (empty);
  BIND (pictures);
  BIND (columns);
  BIND (left);
  BIND (right);
  BIND (guide_box);
  BIND (add);
#undef BIND
  gtk_widget_class_bind_template_callback (widget_class, ph_hand_page_add_check);
  signals[REFUSED] = g_signal_new ("refused", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
add_picture (PhHandPage *self, int step, const char *text)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6), *label = gtk_label_new (text);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_CENTER);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 28);
  gtk_box_append (GTK_BOX (box), ph_check_picture_new (self->document, step));
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (self->pictures, box);
}

static void
ph_hand_page_init (PhHandPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_widget_set_layout_manager (GTK_WIDGET (self->columns),
                                 ph_columns_layout_new (COLUMN_SPACING, ROW_SPACING));
  gtk_widget_set_layout_manager (GTK_WIDGET (self->pictures),
                                 ph_columns_layout_new (COLUMN_SPACING, ROW_SPACING));
}

static void
fill (PhHandPage *self)
{
  add_picture (self, 1, _ ("1  One draws with eyes closed, an arrow nocked toward a safe target."));
  add_picture (self, 2, _ ("2  Bow and hand come to rest as for a shot."));
  add_picture (self, 3, _ ("3  The other reads from behind the bow arm; then it is let down."));
  GtkWidget *list = ph_check_list_new (self->document),
            *level = ph_level_panel_new (self->document);
  self->guide = ph_check_guide_new (self->document);
  gtk_box_append (self->left, level);
  gtk_box_append (self->right, list);
  gtk_box_append (self->right, ph_hand_plot_new (self->document));
  gtk_widget_set_hexpand (self->guide, TRUE); /* the box is no wider than it asks */
  gtk_box_append (self->guide_box, self->guide);
  gtk_box_append (self->content, ph_matters_line_new (self->document, TRUE)); /* below the draws */
  g_signal_connect_swapped (list, "edit", G_CALLBACK (edit_cb), self);
  g_signal_connect_swapped (list, "refused", G_CALLBACK (refused_cb), self);
  g_signal_connect_swapped (level, "refused", G_CALLBACK (refused_cb), self);
  g_signal_connect_swapped (level, "check-wanted", G_CALLBACK (ph_hand_page_add_check), self);
  g_signal_connect_swapped (self->guide, "closed", G_CALLBACK (closed_cb), self);
}

GtkWidget *
ph_hand_page_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhHandPage *self = g_object_new (PH_TYPE_HAND_PAGE, NULL);
  self->document = g_object_ref (document);
  fill (self);
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
  return GTK_WIDGET (self);
}
