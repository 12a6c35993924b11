/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What was read stays with the guide until it is recorded or let go. Should the rig change in the
 * meantime, the draws were of another rig and are let go with a sentence.
 */
#include "widgets/check-guide.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/document-hand.h"
#include "widgets/cautions.h"
#include "widgets/check-choices.h"
#include "widgets/check-draws.h"
#include "widgets/check-seal.h"
#include "widgets/check-step.h"
#include "widgets/draw-entry.h"
#include "widgets/reading-result.h"
#include "widgets/tilt-words.h"
#include "widgets/vial-end.h"

struct _PhCheckGuide
{
  GtkWidget parent_instance;

  /* template */
  GtkLabel *title, *draw_say, *draws_so_far, *lost, *result, *prediction, *refusal;
  GtkStack *steps;
  GtkBox *choose_box, *safety_box, *draw_box, *end_box;
  GtkEntry *date, *note;
  GtkButton *back, *at_end, *enough, *next;

  /* owned */
  PhDocument *document;

  GtkWidget *choices, *entry, *end; /* children of their boxes */
  PhCheckStep step;
  int editing; /* index of the check that is put right, −1: a new one */
  PhCheckDraws draws;
  guint draw;       /* the one that is asked for */
  PhCheckSeal seal; /* owned */
};

enum
{
  CLOSED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (PhCheckGuide, ph_check_guide, GTK_TYPE_WIDGET)

static void show_step (PhCheckGuide *self, PhCheckStep step);

static gboolean
has_level (PhCheckGuide *self)
{
  return ph_tilt_has_level (ph_document_get_rig (self->document));
}

static void
show_text (GtkLabel *label, const char *text)
{
  gtk_label_set_text (label, text ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text && *text);
}

static void
close_guide (PhCheckGuide *self, gboolean recorded)
{
  g_signal_emit (self, signals[CLOSED], 0, recorded);
}

/* Before anything is read. */
static void
seal (PhCheckGuide *self)
{
  ph_check_seal_clear (&self->seal);
  self->seal = ph_check_seal_now (self->document);
  self->draws = ph_check_draws_none ();
  self->draw = 0;
}

/* Steps: the draws. */

static void
show_draw (PhCheckGuide *self)
{
  g_autofree char *read = ph_check_draws_words (&self->draws, self->draw, has_level (self));
  g_autofree char *so_far = self->draw ? g_strdup_printf (_ ("Read so far: %s"), read) : NULL;
  gboolean level = has_level (self);
  gtk_label_set_text (
      self->draw_say,
      level ? _ ("Eyes closed, draw and settle as for a shot. When it is still, the helper reads "
                 "the bubble. Let down slowly. The middle of the bubble counts, to the side where "
                 "the archer sees it.")
            : _ ("Eyes closed, draw and settle as for a shot. When it is still, the helper takes a "
                 "photo from straight behind or reads the bow against a plumb line. Let down "
                 "slowly. Read the photo here, or type how far the top limb leans, and to which "
                 "side for the archer."));
  show_text (self->draws_so_far, so_far);
  gboolean some = self->draw < self->draws.n;
  ph_draw_entry_set (PH_DRAW_ENTRY (self->entry), some ? self->draws.deg[self->draw] : (double)NAN,
                     some ? self->draws.photo_sd_deg[self->draw] : (double)NAN);
}

static void
to_draw (PhCheckGuide *self, guint draw)
{
  self->draw = draw;
  show_step (self, PH_STEP_DRAW);
  ph_draw_entry_edit (PH_DRAW_ENTRY (self->entry));
}

static gboolean
take_draw (PhCheckGuide *self)
{
  double deg, photo_sd_deg;
  if (!ph_draw_entry_take (PH_DRAW_ENTRY (self->entry), &deg, &photo_sd_deg))
    return FALSE;
  show_text (self->lost, NULL);
  ph_check_draws_take (&self->draws, self->draw, deg, photo_sd_deg);
  return TRUE;
}

/* Steps: at the vial's end. */

static void
move_changed_cb (PhCheckGuide *self)
{
  if (self->step == PH_STEP_END)
    gtk_widget_set_sensitive (GTK_WIDGET (self->next),
                              ph_vial_end_has_move (PH_VIAL_END (self->end)));
}

static void
take_move (PhCheckGuide *self)
{
  g_autoptr (GError) error = NULL;
  gboolean done = ph_vial_end_take (PH_VIAL_END (self->end), &error);
  show_text (self->refusal, error ? error->message : NULL);
  if (!done)
    return;
  seal (self);
  to_draw (self, 0);
}

/* Steps: the record. */

static void
show_result (PhCheckGuide *self)
{
  const PhReport *report = ph_document_get_report (self->document);
  PhReading reading = ph_check_draws_reading (&self->draws);
  PhReadingResult result = { .draws_deg = reading.draws_deg,
                             .n_draws = reading.n_draws,
                             .sd_deg = reading.sd_deg,
                             .predicted_deg = self->seal.predicted_deg,
                             .own_hand = self->editing >= 0 || report->hand_fitted,
                             .level = has_level (self) };
  g_autofree char *read = ph_reading_result_words (&result);
  g_autofree char *prediction = ph_reading_prediction_words (&result);
  gtk_label_set_text (self->result, read);
  gtk_label_set_text (self->prediction, prediction);
  if (ph_check_draws_from_photo (&self->draws)
      && !*gtk_editable_get_text (GTK_EDITABLE (self->note)))
    gtk_editable_set_text (GTK_EDITABLE (self->note), _ ("from a photo"));
}

/* Null: nothing. */
static const char *
what_is_wrong_with_date (const char *date)
{
  if (!*date)
    return NULL;
  if (!ph_is_date (date))
    return _ ("The date is no day of the calendar: write year-month-day, like 2026-03-01.");
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *today = g_date_time_format (now, "%Y-%m-%d");
  return strcmp (date, today) > 0 ? _ ("The date is still to come: write the day it was read.")
                                  : NULL;
}

static void
record (PhCheckGuide *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *date = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->date))));
  PhReading reading = ph_check_draws_reading (&self->draws);
  reading.date = *date ? date : NULL;
  reading.note = gtk_editable_get_text (GTK_EDITABLE (self->note));
  reading.predicted_deg = self->seal.predicted_deg;
  reading.predicted_at = self->seal.predicted_at;
  reading.predicted_90_deg = self->seal.sure_deg;
  const char *wrong = what_is_wrong_with_date (date);
  if (wrong)
    {
      show_text (self->refusal, wrong);
      gtk_widget_grab_focus (GTK_WIDGET (self->date));
      return;
    }
  gboolean done =
      self->editing < 0
          ? ph_document_add_check (self->document, &reading, &error)
          : ph_document_change_check (self->document, (guint)self->editing, &reading, &error);
  show_text (self->refusal, error ? error->message : NULL);
  if (done)
    close_guide (self, TRUE);
}

/* Steps: from one to the other. */

static void
show_title (PhCheckGuide *self)
{
  g_autofree char *draw =
      g_strdup_printf (_ ("Draw %u of %u"), self->draw + 1, (guint)PH_DRAWS_MOST);
  const char *title = ph_check_step_title (self->step);
  gtk_label_set_text (self->title, title ? title : draw);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  title ? title : draw, -1);
}

static void
show_step (PhCheckGuide *self, PhCheckStep step)
{
  self->step = step;
  gtk_stack_set_visible_child_name (self->steps, ph_check_step_name (step));
  show_title (self);
  show_text (self->refusal, NULL);
  gtk_button_set_label (self->next,
                        ph_check_step_next (self->step, self->draw, self->editing >= 0));
  gtk_widget_set_sensitive (GTK_WIDGET (self->next), TRUE);
  gtk_widget_set_visible (GTK_WIDGET (self->back), step > PH_STEP_SAFETY);
  gtk_widget_set_visible (GTK_WIDGET (self->at_end),
                          step == PH_STEP_DRAW && has_level (self) && self->editing < 0);
  gtk_widget_set_visible (GTK_WIDGET (self->enough),
                          step == PH_STEP_DRAW && self->draw + 1 < PH_DRAWS_MOST);
  if (step == PH_STEP_DRAW)
    show_draw (self);
  if (step == PH_STEP_END)
    move_changed_cb (self);
  if (step == PH_STEP_RECORD)
    show_result (self);
  if (step != PH_STEP_DRAW)
    gtk_widget_grab_focus (GTK_WIDGET (self->next));
}

static void
take_choice (PhCheckGuide *self)
{
  g_autoptr (GError) error = NULL;
  if (ph_check_choices_take (PH_CHECK_CHOICES (self->choices), &error))
    show_step (self, PH_STEP_SAFETY);
  else
    show_text (self->refusal, error->message);
}

static void
next_cb (PhCheckGuide *self)
{
  switch (self->step)
    {
    case PH_STEP_CHOOSE:
      take_choice (self);
      break;
    case PH_STEP_SAFETY:
      seal (self);
      to_draw (self, 0);
      break;
    case PH_STEP_END:
      take_move (self);
      break;
    case PH_STEP_RECORD:
      record (self);
      break;
    case PH_STEP_DRAW:
    default:
      if (!take_draw (self))
        break;
      if (self->draw + 1 < PH_DRAWS_MOST)
        to_draw (self, self->draw + 1);
      else
        show_step (self, PH_STEP_RECORD);
    }
}

/* The draws there are will do: this one too, where something is typed. */
static void
enough_cb (PhCheckGuide *self)
{
  gboolean empty = !ph_draw_entry_is_touched (PH_DRAW_ENTRY (self->entry));
  if (empty && self->draw > 0)
    self->draws.n = self->draw;
  else if (take_draw (self))
    self->draws.n = self->draw + 1;
  else
    return;
  show_step (self, PH_STEP_RECORD);
}

static void
back_cb (PhCheckGuide *self)
{
  if (self->step == PH_STEP_DRAW && self->draw == 0)
    {
      if (self->editing >= 0)
        close_guide (self, FALSE);
      else
        show_step (self, PH_STEP_SAFETY);
      return;
    }
  to_draw (self, self->step == PH_STEP_RECORD ? self->draws.n - 1
                 : self->step == PH_STEP_END  ? self->draw
                                              : self->draw - 1);
}

static void
at_end_cb (PhCheckGuide *self)
{
  show_step (self, PH_STEP_END);
  ph_vial_end_start (PH_VIAL_END (self->end));
}

static void
cancel_cb (PhCheckGuide *self)
{
  close_guide (self, FALSE);
}

static void
entered_cb (PhCheckGuide *self)
{
  next_cb (self);
}

/* The rig changed under the guide. */
static void
changed_cb (PhCheckGuide *self)
{
  gboolean reading = self->step >= PH_STEP_DRAW && gtk_widget_get_visible (GTK_WIDGET (self));
  if (!reading || self->editing >= 0 || ph_check_seal_fits (&self->seal, self->document))
    return;
  gboolean some = self->draws.n > 0;
  seal (self);
  to_draw (self, 0);
  show_text (self->lost, some ? _ ("The rig was changed: what had been read was of another rig, so "
                                   "it begins anew.")
                              : NULL);
}

static void
replaced_cb (PhCheckGuide *self)
{
  if (gtk_widget_get_visible (GTK_WIDGET (self)))
    close_guide (self, FALSE);
}

static void
renew (PhCheckGuide *self)
{
  if (self->entry)
    gtk_box_remove (self->draw_box, self->entry);
  self->entry = ph_draw_entry_new (self->document);
  gtk_box_append (self->draw_box, self->entry);
  g_signal_connect_swapped (self->entry, "entered", G_CALLBACK (entered_cb), self);
  show_text (self->lost, NULL);
  self->draws = ph_check_draws_none ();
  self->draw = 0;
  self->editing = -1;
}

void
ph_check_guide_start (PhCheckGuide *self)
{
  g_return_if_fail (PH_IS_CHECK_GUIDE (self));
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *today = g_date_time_format (now, "%Y-%m-%d");
  renew (self);
  ph_cautions_show (gtk_widget_get_first_child (GTK_WIDGET (self->safety_box)),
                    ph_tilt_has_level (ph_document_get_rig (self->document)));
  gtk_editable_set_text (GTK_EDITABLE (self->date), today);
  gtk_editable_set_text (GTK_EDITABLE (self->note), "");
  show_step (self, ph_check_choices_fill (PH_CHECK_CHOICES (self->choices)) ? PH_STEP_CHOOSE
                                                                            : PH_STEP_SAFETY);
}

void
ph_check_guide_edit (PhCheckGuide *self, guint i)
{
  g_return_if_fail (PH_IS_CHECK_GUIDE (self));
  const PhArcher *archer = &ph_document_get_rig (self->document)->archer;
  g_return_if_fail (i < archer->n_checks);
  const PhCheck *check = &archer->checks[i];
  renew (self);
  self->editing = (int)i;
  self->draws = ph_check_draws_of (check);
  ph_check_seal_clear (&self->seal);
  self->seal.predicted_deg = check->predicted_deg;
  gtk_editable_set_text (GTK_EDITABLE (self->date), check->date ? check->date : "");
  gtk_editable_set_text (GTK_EDITABLE (self->note), check->note ? check->note : "");
  to_draw (self, 0);
}

/* The object. */

static void
ph_check_guide_dispose (GObject *object)
{
  PhCheckGuide *self = PH_CHECK_GUIDE (object);
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))))
    gtk_widget_unparent (child);
  ph_check_seal_clear (&self->seal);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_check_guide_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
#define BIND(child) gtk_widget_class_bind_template_child (widget_class, PhCheckGuide, child)
  BIND (title);
  BIND (steps);
  BIND (choose_box);
  BIND (safety_box);
  BIND (end_box);
  BIND (draw_say);
  BIND (draws_so_far);
  BIND (lost);
  BIND (draw_box);
  BIND (result);
  BIND (prediction);
  BIND (date);
  BIND (note);
  BIND (refusal);
  BIND (back);
  BIND (at_end);
  BIND (enough);
  BIND (next);
#undef BIND
}

static void
ph_check_guide_class_init (PhCheckGuideClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_check_guide_dispose;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/check-guide.ui");
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, next_cb);
  gtk_widget_class_bind_template_callback (widget_class, enough_cb);
  gtk_widget_class_bind_template_callback (widget_class, back_cb);
  gtk_widget_class_bind_template_callback (widget_class, at_end_cb);
  gtk_widget_class_bind_template_callback (widget_class, cancel_cb);
  signals[CLOSED] = g_signal_new ("closed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                  NULL, NULL, G_TYPE_NONE, 1, G_TYPE_BOOLEAN);
}

static void
ph_check_guide_init (PhCheckGuide *self)
{
  self->editing = -1;
  self->seal.predicted_deg = NAN;
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_box_append (self->safety_box, ph_cautions_new (TRUE));
}

GtkWidget *
ph_check_guide_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhCheckGuide *self = g_object_new (PH_TYPE_CHECK_GUIDE, NULL);
  self->document = g_object_ref (document);
  self->choices = ph_check_choices_new (document);
  self->end = ph_vial_end_new (document);
  gtk_box_append (self->choose_box, self->choices);
  gtk_box_append (self->end_box, self->end);
  g_signal_connect_swapped (self->end, "move-changed", G_CALLBACK (move_changed_cb), self);
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "replaced", G_CALLBACK (replaced_cb), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
