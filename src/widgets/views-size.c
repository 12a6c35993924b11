/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What room the views' pane asks for. It depends on the foot's words and on the least sizes of the
 * views, not on the rig.
 */
#include "widgets/views-pane-private.h"

#define FOOT_SHARE 0.36
#define WIDTH_NATURAL 600
/* Under this a whole bow between the words above and below it is no longer a picture. */
#define BEHIND_LEAST_HEIGHT 200

/* The foot's size in a pane of that width: its natural width, where that is no more than FOOT_SHARE
 * of the pane, and the height it needs at that. */
void
ph_views_pane_measure_foot (PhViewsPane *self, int pane_width, int *width, int *height)
{
  int least, natural;
  *width = *height = 0;
  if (!self->foot)
    return;
  gtk_widget_measure (self->foot, GTK_ORIENTATION_HORIZONTAL, -1, &least, &natural, NULL, NULL);
  *width = MAX (least, MIN (natural, (int)(FOOT_SHARE * pane_width)));
  gtk_widget_measure (self->foot, GTK_ORIENTATION_VERTICAL, *width, NULL, height, NULL, NULL);
}

static void
measure_child (GtkWidget *child, GtkOrientation orientation, int *least, int *natural)
{
  *least = *natural = 0;
  if (child)
    gtk_widget_measure (child, orientation, -1, least, natural, NULL, NULL);
}

void
ph_views_pane_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                       int *natural, int *minimum_baseline, int *natural_baseline)
{
  PhViewsPane *self = PH_VIEWS_PANE (widget);
  int side[2], behind[2], above[2], foot[2];
  measure_child (self->views[PH_VIEW_SIDE], orientation, &side[0], &side[1]);
  measure_child (self->views[PH_VIEW_BEHIND], orientation, &behind[0], &behind[1]);
  measure_child (self->views[PH_VIEW_ABOVE], orientation, &above[0], &above[1]);
  measure_child (self->foot, orientation, &foot[0], &foot[1]);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = side[0] + MAX (behind[0], foot[0]);
      *natural = MAX (WIDTH_NATURAL, side[1] + MAX (behind[1], foot[1]));
    }
  else
    {
      ph_views_pane_measure_foot (self, for_size > 0 ? for_size : WIDTH_NATURAL, &foot[1],
                                  &foot[0]);
      behind[0] = MAX (behind[0], BEHIND_LEAST_HEIGHT);
      *minimum = MAX (side[0] + (self->show_above ? above[0] : 0), behind[0] + foot[0]);
      *natural = MAX (360, *minimum);
    }
  *minimum_baseline = *natural_baseline = -1;
}

GtkSizeRequestMode
ph_views_pane_get_request_mode (GtkWidget *widget)
{
  (void)widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}
