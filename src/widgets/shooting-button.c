/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The fields show the units of the screen and hold SI behind them; a change of units rewrites the
 * fields without touching the values.
 */
#include "widgets/shooting-button.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/format.h"
#include "widgets/quantity-entry.h"

#define M_PER_YARD 0.9144 /* exact: 36 in */
#define SPEED_MOST 150.0
#define DISTANCE_MOST 200.0

struct _PhShootingButton
{
  GtkWidget parent_instance;

  /* template */
  GtkMenuButton *button;
  PhQuantityEntry *speed_field;
  GtkSpinButton *distance_field;
  GtkLabel *distance_unit;
  GtkDropDown *face_list;

  double speed_m_s, distance_m;
  int face_cm;
  PhUnits units;
  gboolean filling; /* the fields are being written by us */
};

enum
{
  PROP_0,
  PROP_SPEED,
  PROP_DISTANCE,
  PROP_FACE,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (PhShootingButton, ph_shooting_button, GTK_TYPE_WIDGET)

/* In the order of the list in shooting-button.ui. */
static const int faces_cm[] = { 122, 80, 60, 40 };

static double
m_per_distance_unit (PhShootingButton *self)
{
  return self->units == PH_UNITS_TRADE ? M_PER_YARD : 1.0;
}

/* The button says what is reckoned with: "280 ft/s, 50 m, 80 cm". */
static void
update_label (PhShootingButton *self)
{
  gboolean trade = self->units == PH_UNITS_TRADE;
  g_autofree char *speed = ph_format_quantity (self->speed_m_s, PH_QUANTITY_SPEED, self->units);
  g_autofree char *distance = ph_format_number (self->distance_m / m_per_distance_unit (self), 0);
  g_autofree char *text =
      trade ? g_strdup_printf (_ ("%s, %s yd, %d cm"), speed, distance, self->face_cm)
            : g_strdup_printf (_ ("%s, %s m, %d cm"), speed, distance, self->face_cm);
  gtk_menu_button_set_label (self->button, self->speed_m_s > 0.0 ? text : _ ("Set arrow speed"));
}

static void
fill_fields (PhShootingButton *self)
{
  gboolean trade = self->units == PH_UNITS_TRADE;
  self->filling = TRUE;
  ph_quantity_entry_set_units (self->speed_field, self->units);
  ph_quantity_entry_set_value (self->speed_field, self->speed_m_s > 0.0 ? self->speed_m_s : NAN);
  gtk_spin_button_set_range (self->distance_field, 1.0, DISTANCE_MOST / m_per_distance_unit (self));
  gtk_spin_button_set_value (self->distance_field, self->distance_m / m_per_distance_unit (self));
  gtk_label_set_text (self->distance_unit, trade ? _ ("yd") : _ ("m"));
  for (guint i = 0; i < G_N_ELEMENTS (faces_cm); i++)
    if (faces_cm[i] == self->face_cm)
      gtk_drop_down_set_selected (self->face_list, i);
  self->filling = FALSE;
  update_label (self);
}

static char *
speed_commit_cb (PhQuantityEntry *entry G_GNUC_UNUSED, double speed, gpointer data)
{
  PhShootingButton *self = data;
  if (speed < 0.0 || speed > SPEED_MOST)
    {
      g_autofree char *most = ph_format_quantity (SPEED_MOST, PH_QUANTITY_SPEED, self->units);
      return g_strdup_printf (_ ("The speed should be from 0 to %s."), most);
    }
  if (speed == self->speed_m_s)
    return NULL;
  self->speed_m_s = speed;
  update_label (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SPEED]);
  return NULL;
}

static void
distance_changed_cb (PhShootingButton *self)
{
  double distance = gtk_spin_button_get_value (self->distance_field) * m_per_distance_unit (self);
  if (self->filling || distance == self->distance_m)
    return;
  self->distance_m = distance;
  update_label (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_DISTANCE]);
}

static void
face_changed_cb (PhShootingButton *self)
{
  guint chosen = gtk_drop_down_get_selected (self->face_list);
  if (self->filling || chosen >= G_N_ELEMENTS (faces_cm) || faces_cm[chosen] == self->face_cm)
    return;
  self->face_cm = faces_cm[chosen];
  update_label (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_FACE]);
}

static void
ph_shooting_button_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  PhShootingButton *self = PH_SHOOTING_BUTTON (object);
  switch (id)
    {
    case PROP_SPEED:
      g_value_set_double (value, self->speed_m_s);
      break;
    case PROP_DISTANCE:
      g_value_set_double (value, self->distance_m);
      break;
    case PROP_FACE:
      g_value_set_int (value, self->face_cm);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
ph_shooting_button_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  PhShootingButton *self = PH_SHOOTING_BUTTON (object);
  switch (id)
    {
    case PROP_SPEED:
      self->speed_m_s = g_value_get_double (value);
      break;
    case PROP_DISTANCE:
      self->distance_m = g_value_get_double (value);
      break;
    case PROP_FACE:
      self->face_cm = g_value_get_int (value);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
  fill_fields (self);
}

static void
ph_shooting_button_dispose (GObject *object)
{
  PhShootingButton *self = PH_SHOOTING_BUTTON (object);
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self));
  g_clear_pointer (&child, gtk_widget_unparent);
  G_OBJECT_CLASS (ph_shooting_button_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  g_type_ensure (PH_TYPE_QUANTITY_ENTRY);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/shooting-button.ui");
  gtk_widget_class_bind_template_child (widget_class, PhShootingButton, button);
  gtk_widget_class_bind_template_child (widget_class, PhShootingButton, speed_field);
  gtk_widget_class_bind_template_child (widget_class, PhShootingButton, distance_field);
  gtk_widget_class_bind_template_child (widget_class, PhShootingButton, distance_unit);
  gtk_widget_class_bind_template_child (widget_class, PhShootingButton, face_list);
  gtk_widget_class_bind_template_callback (widget_class, distance_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, face_changed_cb);
}

static void
ph_shooting_button_class_init (PhShootingButtonClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;
  object_class->dispose = ph_shooting_button_dispose;
  object_class->get_property = ph_shooting_button_get_property;
  object_class->set_property = ph_shooting_button_set_property;
  props[PROP_SPEED] = g_param_spec_double ("speed", NULL, NULL, 0.0, SPEED_MOST, 0.0, flags);
  props[PROP_DISTANCE] =
      g_param_spec_double ("distance", NULL, NULL, 0.0, DISTANCE_MOST, 50.0, flags);
  props[PROP_FACE] = g_param_spec_int ("face", NULL, NULL, 1, 1000, 80, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  bind_children (widget_class);
}

static void
ph_shooting_button_init (PhShootingButton *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  ph_quantity_entry_set_quantity (self->speed_field, PH_QUANTITY_SPEED);
  ph_quantity_entry_set_label (self->speed_field, _ ("Arrow speed"));
  ph_quantity_entry_set_width_chars (self->speed_field, 8);
  ph_quantity_entry_set_commit (self->speed_field, speed_commit_cb, self);
  self->distance_m = 50.0;
  self->face_cm = 80;
  fill_fields (self);
}

GtkWidget *
ph_shooting_button_new (void)
{
  return g_object_new (PH_TYPE_SHOOTING_BUTTON, NULL);
}

PhShooting
ph_shooting_button_get (PhShootingButton *self)
{
  PhShooting shooting = { 0 };
  g_return_val_if_fail (PH_IS_SHOOTING_BUTTON (self), shooting);
  return (PhShooting){ self->speed_m_s, self->distance_m, self->face_cm * 10.0 };
}

void
ph_shooting_button_set_units (PhShootingButton *self, PhUnits units)
{
  g_return_if_fail (PH_IS_SHOOTING_BUTTON (self));
  if (self->units == units)
    return;
  self->units = units;
  fill_fields (self);
}

void
ph_shooting_button_bind (PhShootingButton *self, GSettings *settings)
{
  g_return_if_fail (PH_IS_SHOOTING_BUTTON (self));
  g_autoptr (GSettingsSchema) schema = NULL;
  if (!settings)
    return;
  g_object_get (settings, "settings-schema", &schema, NULL);
  if (!g_settings_schema_has_key (schema, "arrow-speed"))
    return;
  g_settings_bind (settings, "arrow-speed", self, "speed", G_SETTINGS_BIND_DEFAULT);
  g_settings_bind (settings, "target-distance", self, "distance", G_SETTINGS_BIND_DEFAULT);
  g_settings_bind (settings, "target-face", self, "face", G_SETTINGS_BIND_DEFAULT);
}
