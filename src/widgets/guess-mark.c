/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is guessed and what to do about it is widgets/guess.h's to say; here it is only gathered for
 * one reading. The popover is made when it is asked for.
 */
#include "widgets/guess-mark.h"

#include <glib/gi18n.h>

#include "base/text.h"
#include "model/fields.h"
#include "widgets/guess.h"

struct _PhGuessMark
{
  GtkWidget parent_instance;

  GtkWidget *button; /* owned child */
  PhDocument *document;
  PhRestsOn rests_on;
};

G_DEFINE_FINAL_TYPE (PhGuessMark, ph_guess_mark, GTK_TYPE_WIDGET)

static const char *const rests_on_keys[][4] = {
  [PH_RESTS_ON_MASS] = { "mass_g", NULL },
  [PH_RESTS_ON_BALANCE] = { "mass_g", "com_mm", NULL },
  [PH_RESTS_ON_INERTIA] = { "mass_g", "com_mm", "gyration_mm", NULL },
  [PH_RESTS_ON_STRING] = { "brace_height_mm", "axle_to_axle_mm", NULL },
};

/* Of a part; the last is where its mass is, which its own mass does not rest on. */
static const char *const part_keys[] = { "mass_g", "each_g", "com_mm", "at_mm" };
#define PART_KEYS_OF_MASS 2

static gboolean
part_is_guessed (const PhRig *rig, size_t i, PhRestsOn rests_on)
{
  gsize n = rests_on == PH_RESTS_ON_MASS ? PART_KEYS_OF_MASS : G_N_ELEMENTS (part_keys);
  gboolean guessed = FALSE;
  if (rests_on == PH_RESTS_ON_STRING || !ph_rig_is_fitted (rig, i))
    return FALSE;
  for (gsize k = 0; k < n && !guessed; k++)
    {
      PhNumberRef ref = ph_number_ref (PH_NUMBER_PART, rig->parts[i].id, part_keys[k], 0);
      guessed = ph_field_find_part (rig->parts[i].kind, part_keys[k], NULL) != NULL
                && ph_guess_is (&ref, rig);
      ph_number_ref_clear (&ref);
    }
  return guessed;
}

/* "Sight, Rest"; empty where no part is guessed. (transfer full) */
static char *
guessed_parts (const PhRig *rig, PhRestsOn rests_on)
{
  GString *names = g_string_new (NULL);
  for (size_t i = 0; i < rig->n_parts; i++)
    if (part_is_guessed (rig, i, rests_on))
      {
        g_autofree char *name = ph_text_cut (ph_part_name (&rig->parts[i]), 40);
        g_string_append_printf (names, "%s%s", names->len ? ", " : "", name);
      }
  return g_string_free (names, FALSE);
}

static const char *
key_name (const char *key)
{
  if (g_str_equal (key, "mass_g"))
    return _ ("The bow’s mass");
  if (g_str_equal (key, "com_mm"))
    return _ ("The bow’s balance point");
  if (g_str_equal (key, "gyration_mm"))
    return _ ("How the bow’s mass is spread");
  if (g_str_equal (key, "brace_height_mm"))
    return _ ("Brace height");
  return _ ("Axle to axle");
}

/* One paragraph a guessed number of the bow, one for the parts; null where none is. */
static char *
advice_text (PhGuessMark *self)
{
  GString *text = g_string_new (NULL);
  for (const char *const *key = rests_on_keys[self->rests_on]; *key; key++)
    {
      PhNumberRef ref = ph_number_ref (PH_NUMBER_BOW, NULL, *key, 0);
      if (ph_guess_is (&ref, ph_document_get_rig (self->document)))
        g_string_append_printf (text, "%s%s: %s", text->len > 0 ? "\n\n" : "", key_name (*key),
                                ph_guess_advice (&ref));
      ph_number_ref_clear (&ref);
    }
  g_autofree char *parts = guessed_parts (ph_document_get_rig (self->document), self->rests_on);
  if (*parts)
    /* Translators: names of parts follow. */
    g_string_append_printf (text,
                            _ ("%sParts with a guessed mass or place: %s. Put each alone on "
                               "a kitchen scale, measure with a tape where it sits, and type "
                               "both."),
                            text->len > 0 ? "\n\n" : "", parts);
  gboolean none = text->len == 0;
  return g_string_free (text, none);
}

static gboolean
bow_is_guessed (PhGuessMark *self)
{
  gboolean guessed = FALSE;
  for (const char *const *key = rests_on_keys[self->rests_on]; *key && !guessed; key++)
    {
      PhNumberRef ref = ph_number_ref (PH_NUMBER_BOW, NULL, *key, 0);
      guessed = ph_guess_is (&ref, ph_document_get_rig (self->document));
      ph_number_ref_clear (&ref);
    }
  return guessed;
}

static gboolean
rests_on_a_guess (PhGuessMark *self)
{
  g_autofree char *parts = guessed_parts (ph_document_get_rig (self->document), self->rests_on);
  return *parts || bow_is_guessed (self);
}

/* To the measurement that would settle it; a tape settles what the string's sweep rests on. */
static GtkWidget *
measure_button_new (GtkWidget *popover)
{
  GtkWidget *button = gtk_button_new_with_label (_ ("Measure the bow…"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Measure the bow…"), -1);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.measure");
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (gtk_popover_popdown), popover);
  return button;
}

static void
create_popup_cb (GtkMenuButton *button, gpointer data)
{
  PhGuessMark *self = data;
  g_autofree char *text = advice_text (self);
  GtkWidget *popover = gtk_popover_new (), *label = gtk_label_new (text);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 44);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_add_css_class (label, "ph-guess-advice");
  gtk_widget_add_css_class (box, "guess-popover");
  gtk_box_append (GTK_BOX (box), label);
  if (self->rests_on != PH_RESTS_ON_STRING && bow_is_guessed (self))
    gtk_box_append (GTK_BOX (box), measure_button_new (popover));
  gtk_popover_set_child (GTK_POPOVER (popover), box);
  gtk_menu_button_set_popover (button, popover);
}

static void
changed_cb (PhGuessMark *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self), rests_on_a_guess (self));
}

static void
ph_guess_mark_dispose (GObject *object)
{
  PhGuessMark *self = PH_GUESS_MARK (object);
  g_clear_pointer (&self->button, gtk_widget_unparent);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_guess_mark_parent_class)->dispose (object);
}

static void
ph_guess_mark_class_init (PhGuessMarkClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_guess_mark_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
ph_guess_mark_init (PhGuessMark *self)
{
  GtkWidget *label = gtk_label_new (_ ("guessed"));
  self->button = gtk_menu_button_new ();
  gtk_menu_button_set_child (GTK_MENU_BUTTON (self->button), label);
  gtk_menu_button_set_has_frame (GTK_MENU_BUTTON (self->button), FALSE);
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (self->button), create_popup_cb, self,
                                         NULL);
  gtk_widget_set_tooltip_text (self->button, _ ("Rests on a guessed number: how to measure it"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("guessed"), -1);
  gtk_widget_add_css_class (GTK_WIDGET (self), "ph-guess-mark");
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
  gtk_widget_set_parent (self->button, GTK_WIDGET (self));
}

GtkWidget *
ph_guess_mark_new (PhDocument *document, PhRestsOn rests_on)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhGuessMark *self = g_object_new (PH_TYPE_GUESS_MARK, NULL);
  self->document = g_object_ref (document);
  self->rests_on = rests_on;
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
  return GTK_WIDGET (self);
}
