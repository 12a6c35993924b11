/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The views in a window, a part turned all the time as a hand drags it: frames a second, how long a
 * turn takes to be in a painted frame, processor time a frame, triangles. Prints figures beside
 * their targets and never fails. Needs a display (Xvfb will do) that is otherwise idle; "painted"
 * is handed to the display server, there is no waiting for a screen.
 */
#include <glib/gstdio.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "math/root.h"
#include "widgets/gl-view.h"
#include "widgets/number-ref.h"
#include "widgets/style.h"
#include "widgets/views-pane.h"

#define SECONDS 4
/* A pointer's events: not in step with frames. */
#define EVENT_MS 7
#define SAMPLES_MOST 4000

typedef struct
{
  GMainLoop *loop;
  PhDocument *document;
  GtkWidget *pane;
  char *part;
  double base_deg;
  int n_events, n_frames, n_samples;
  gint64 pending, first, last;
  double latency_ms[SAMPLES_MOST];
  double cpu_ms;
  size_t triangles;
} Run;

static double
cpu_now_ms (void)
{
  struct timespec t;
  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &t);
  return 1e3 * (double)t.tv_sec + 1e-6 * (double)t.tv_nsec;
}

/* The most triangles of one area; an area at the left holds two views. */
static size_t
count_triangles (GtkWidget *pane)
{
  size_t most = 0;
  for (GtkWidget *child = gtk_widget_get_first_child (pane); child;
       child = gtk_widget_get_next_sibling (child))
    if (PH_IS_GL_VIEW (child))
      most = MAX (most, ph_gl_view_triangles (PH_GL_VIEW (child)));
  return most;
}

static void
painted_cb (Run *run)
{
  gint64 now = g_get_monotonic_time ();
  run->n_frames++;
  run->last = now;
  if (run->pending && run->n_samples < SAMPLES_MOST)
    run->latency_ms[run->n_samples++] = (double)(now - run->pending) / 1e3;
  run->pending = 0;
}

static gboolean
event_cb (gpointer data)
{
  Run *run = data;
  PhNumberRef ref = ph_number_ref (PH_NUMBER_PART, run->part, "swing_deg", 0);
  double turned = run->base_deg + 0.25 * (double)(abs (run->n_events++ % 80 - 40) - 20);
  if (!run->pending)
    run->pending = g_get_monotonic_time ();
  ph_number_ref_write (&ref, run->document, turned, NULL);
  ph_number_ref_clear (&ref);
  return G_SOURCE_CONTINUE;
}

static gboolean
stop_cb (gpointer data)
{
  Run *run = data;
  run->triangles = count_triangles (run->pane);
  g_main_loop_quit (run->loop);
  return G_SOURCE_REMOVE;
}

static gboolean
start_cb (gpointer data)
{
  Run *run = data;
  GdkFrameClock *clock = gtk_widget_get_frame_clock (run->pane);
  g_signal_connect_swapped (clock, "after-paint", G_CALLBACK (painted_cb), run);
  ph_document_begin_gesture (run->document);
  run->first = g_get_monotonic_time ();
  run->cpu_ms = cpu_now_ms ();
  g_timeout_add (EVENT_MS, event_cb, run);
  g_timeout_add_seconds (SECONDS, stop_cb, run);
  return G_SOURCE_REMOVE;
}

static int
compare (const void *a, const void *b)
{
  const double *x = a, *y = b;
  return *x < *y ? -1 : *x > *y;
}

static void
report (Run *run, const char *what, double least_fps)
{
  double seconds = (double)(run->last - run->first) / 1e6;
  double cpu = (cpu_now_ms () - run->cpu_ms) / MAX (run->n_frames, 1);
  qsort (run->latency_ms, (size_t)run->n_samples, sizeof *run->latency_ms, compare);
  double median = run->n_samples ? run->latency_ms[run->n_samples / 2] : 0;
  double late = run->n_samples ? run->latency_ms[run->n_samples * 95 / 100] : 0;
  printf ("%-28s %5.1f frames a second (target %.0f), turn to frame %.1f ms, 95 %% %.1f (target "
          "16.7),\n%-28s %.1f ms of processor a frame, %zu triangles in an area\n",
          what, run->n_frames / seconds, least_fps, median, late, "", cpu, run->triangles);
}

/* The first bar of the rig, or the first part that can be turned. */
static gboolean
choose_part (Run *run)
{
  const PhRig *rig = ph_document_get_rig (run->document);
  for (size_t i = 0; i < rig->n_parts; i++)
    if (rig->parts[i].kind == PH_PART_BAR || (i == 0 && rig->parts[0].kind == PH_PART_DAMPER))
      {
        run->part = g_strdup (rig->parts[i].id);
        run->base_deg = rig->parts[i].swing_deg;
        return TRUE;
      }
  return FALSE;
}

/* The views where they stand in the program's window: beside the parts, above bubble and readings.
 */
static GtkWidget *
surround (GtkWidget *pane)
{
  GtkWidget *grid = gtk_grid_new (), *side = gtk_label_new ("parts"),
            *below = gtk_label_new ("readings");
  gtk_widget_set_size_request (side, 345, -1);
  gtk_widget_set_size_request (below, -1, 300);
  gtk_widget_set_hexpand (pane, TRUE);
  gtk_widget_set_vexpand (pane, TRUE);
  gtk_grid_attach (GTK_GRID (grid), side, 0, 0, 1, 2);
  gtk_grid_attach (GTK_GRID (grid), pane, 1, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), below, 1, 1, 1, 1);
  return grid;
}

static void
measure (const char *what, const char *path, int width, int height, double least_fps)
{
  Run run = { .loop = g_main_loop_new (NULL, FALSE), .document = ph_document_new () };
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autofree char *folder = g_dir_make_tmp (NULL, NULL);
  ph_document_set_recovery_folder (run.document, folder);
  GtkWidget *window = gtk_window_new ();
  /* As the program's own: without a ground under the grounds. */
  gtk_widget_add_css_class (window, "ph-main");
  if (!ph_document_load (run.document, file, NULL) || !choose_part (&run))
    printf ("%s: cannot be read\n", path);
  else
    {
      run.pane = ph_views_pane_new (run.document);
      gtk_window_set_child (GTK_WINDOW (window), surround (run.pane));
      gtk_window_set_default_size (GTK_WINDOW (window), width, height);
      gtk_window_present (GTK_WINDOW (window));
      g_timeout_add (1500, start_cb, &run);
      g_main_loop_run (run.loop);
      report (&run, what, least_fps);
      ph_document_end_gesture (run.document);
    }
  while (g_source_remove_by_user_data (&run))
    ;
  gtk_window_destroy (GTK_WINDOW (window));
  ph_document_forget_recovery (run.document);
  g_rmdir (folder);
  g_object_unref (run.document);
  g_main_loop_unref (run.loop);
  g_free (run.part);
}

int
main (void)
{
  if (!gtk_init_check ())
    {
      printf ("no display: run it under xvfb-run\n");
      return 0;
    }
  ph_math_init ();
  ph_style_load (gdk_display_get_default ());
  measure ("demo, 1280 × 800", DEMO_RIG, 1280, 800, 60);
  measure ("demo, 1920 × 1080", DEMO_RIG, 1920, 1080, 60);
  measure ("256 parts, 1280 × 800", LARGE_RIG, 1280, 800, 30);
  return 0;
}
