/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The views' pane alone in a window on a display, with a rig of DATA_DIR, for tests that call what
 * a virtual display cannot feed (touch) or must not lose (its OpenGL). One desk at a time.
 */
#pragma once

#include <glib/gstdio.h>

#include "check.h"
#include "math/root.h"
#include "widgets/bow-view-private.h"
#include "widgets/gl-view.h"
#include "widgets/style.h"
#include "widgets/views-pane-private.h"

typedef struct
{
  GtkWidget *window, *pane; /* borrowed from the toolkit */
  PhDocument *document;
  int n_refused;
  char *refused, *folder;
  int n_frames; /* painted since it was set to 0 */
} Desk;

static inline void
desk_refused_cb (Desk *desk, const char *why)
{
  desk->n_refused++;
  g_free (desk->refused);
  desk->refused = g_strdup (why);
}

static inline void
desk_painted_cb (Desk *desk)
{
  desk->n_frames++;
}

static inline gboolean
desk_time_cb (gpointer over)
{
  *(gboolean *)over = TRUE;
  return G_SOURCE_REMOVE;
}

/* Lets the program run for so long. */
static inline void
desk_run (int ms)
{
  gboolean over = FALSE;
  g_timeout_add ((guint)ms, desk_time_cb, &over);
  while (!over)
    g_main_context_iteration (NULL, TRUE);
}

/* Until the condition holds; a busy machine may take long. */
#define DESK_UNTIL(condition)                                                                      \
  do                                                                                               \
    {                                                                                              \
      for (int waited = 0; !(condition) && waited < 20000; waited += 20)                           \
        desk_run (20);                                                                             \
      CHECK ((condition), "within 20 s");                                                          \
    }                                                                                              \
  while (0)

static inline PhBowView *
desk_view (Desk *desk, PhView view)
{
  PhViewsPane *pane = PH_VIEWS_PANE (desk->pane);
  return PH_BOW_VIEW (view == PH_VIEW_FREE ? pane->free : pane->views[view]);
}

static inline PhGlView *
desk_area (Desk *desk, int nth)
{
  for (GtkWidget *child = gtk_widget_get_first_child (desk->pane); child;
       child = gtk_widget_get_next_sibling (child))
    if (PH_IS_GL_VIEW (child) && nth-- == 0)
      return PH_GL_VIEW (child);
  return NULL;
}

static inline gboolean
desk_is_still (Desk *desk)
{
  return ph_views_pane_is_still (PH_VIEWS_PANE (desk->pane));
}

static inline void
desk_show (Desk *desk)
{
  gtk_window_present (GTK_WINDOW (desk->window));
  DESK_UNTIL (gtk_widget_get_mapped (desk->pane));
  g_signal_connect_swapped (gtk_widget_get_frame_clock (desk->window), "after-paint",
                            G_CALLBACK (desk_painted_cb), desk);
  DESK_UNTIL (desk_is_still (desk));
}

static inline void
desk_open (Desk *desk, const char *rig)
{
  g_autofree char *path = g_strdup_printf (DATA_DIR "/%s.rig.json", rig);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  *desk = (Desk){ .document = ph_document_new () };
  desk->folder = g_dir_make_tmp (NULL, NULL);
  ph_document_set_recovery_folder (desk->document, desk->folder);
  CHECK (ph_document_load (desk->document, file, &error), "%s", error ? error->message : "");
  desk->window = gtk_window_new ();
  desk->pane = ph_views_pane_new (desk->document);
  g_object_ref (desk->pane);
  g_signal_connect_swapped (desk->pane, "refused", G_CALLBACK (desk_refused_cb), desk);
  gtk_window_set_default_size (GTK_WINDOW (desk->window), 930, 450);
  gtk_window_set_child (GTK_WINDOW (desk->window), desk->pane);
  desk_show (desk);
}

static inline void
desk_close (Desk *desk)
{
  gtk_window_destroy (GTK_WINDOW (desk->window));
  g_object_unref (desk->pane);
  desk_run (30);
  ph_document_forget_recovery (desk->document);
  g_rmdir (desk->folder);
  g_object_unref (desk->document);
  g_free (desk->folder);
  g_free (desk->refused);
}

/* Whether a view's marks have a text that contains the words. */
static inline gboolean
desk_says (PhBowView *view, const char *words)
{
  ph_bow_view_refresh_marks (view);
  for (size_t i = 0; i < ph_marks_count (view->marks); i++)
    {
      const PhMark *mark = ph_marks_get (view->marks, i);
      if (mark->kind == PH_MARK_TEXT && strstr (pango_layout_get_text (mark->layout), words))
        return TRUE;
    }
  return FALSE;
}

static inline double
desk_number (Desk *desk, const char *part, const char *key)
{
  PhNumberRef ref = ph_number_ref (PH_NUMBER_PART, part, key, 0);
  double value = ph_number_ref_read (&ref, ph_document_get_rig (desk->document));
  ph_number_ref_clear (&ref);
  return value;
}

static inline int
desk_part (Desk *desk, const char *id)
{
  return ph_rig_find (ph_document_get_rig (desk->document), id);
}

/* Where the selected part's end is taken hold of. */
static inline PhPixel
desk_tip (PhBowView *view, int part)
{
  PhPixel at = { -1, -1 };
  ph_bow_view_refresh_marks (view);
  CHECK (ph_view_tip (view->scene->compiled, part, &view->camera, &at));
  return at;
}
