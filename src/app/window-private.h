/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the files that make up PhWindow share. Not for other folders.
 */
#pragma once

#include "app/window.h"
#include "widgets/banner.h"
#include "widgets/toast.h"

struct _PhWindow
{
  GtkApplicationWindow parent_instance;

  /* template */
  GtkStack *pages, *heading;
  GtkLabel *title, *subtitle;
  GtkToggleButton *drawer_button;
  GtkButton *open, *make, *undo, *redo, *save, *flip;
  GtkMenuButton *reference, *menu_button;
  GtkLabel *reference_label;
  PhBanner *file_banner, *recovery_banner;
  PhToast *toast;
  GtkPaned *panes;
  GtkBox *side, *side_top, *side_form, *work;
  GtkRevealer *drawer;
  GtkWidget *scrim;
  GtkWidget *next;
  GtkLabel *next_words;

  /* borrowed */
  const PhCatalogue *catalogue;
  GtkWidget *parts, *form, *views, *bubble, *hand; /* children, to reach what they offer */

  /* owned */
  PhDocument *document;
  GSettings *settings; /* or null */
  char *removal;       /* undo label of what the toast offers to undo, or null */
  char **recovered;    /* paths still to offer, newest first */
  char **offered;      /* in `recovered`, the one in the banner */

  gboolean unattended; /* closes without a question */
  gboolean settled;    /* unsaved work was dealt with: close for good */
  gboolean narrow;     /* the side pane is a drawer */
  guint layout_idle;
};

/* window.c: the rig's name and state in the header. */
void ph_window_show_name (PhWindow *self);

/* window.c: the Hand page, with a check begun. */
void ph_window_add_check (PhWindow *self);

/* window-panels.c: the bubble and what stands below it. */
void ph_window_add_panels (PhWindow *self);

/* window-actions.c */
void ph_window_install_actions (GtkWidgetClass *widget_class);
void ph_window_init_actions (PhWindow *self);

/* window-files.c: what to do once unsaved work is saved or let go. `data` is owned by the pending
 * question and freed with `free_data` (may be null) when it is answered, whatever the answer. */
typedef void (*PhThen) (PhWindow *self, gpointer data);
void ph_window_settle (PhWindow *self, const char *before_what, PhThen then, gpointer data,
                       GDestroyNotify free_data);
void ph_window_save (PhWindow *self);
void ph_window_save_as (PhWindow *self);
void ph_window_share (PhWindow *self);
void ph_window_choose_and_open (PhWindow *self);
void ph_window_choose_reference (PhWindow *self);
/** The banner for a file that could not be opened; the sentence is made from `error`, `issues` (may
 * be null) are its details. */
void ph_window_tell_file_error (PhWindow *self, GFile *file, const GError *error,
                                const PhIssues *issues);

/* window-layout.c */
void ph_window_init_layout (PhWindow *self);
void ph_window_dispose_layout (PhWindow *self);

/* window-reference.c */
void ph_window_init_reference (PhWindow *self);
