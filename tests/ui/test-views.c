/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The views in a window: fine when nothing moves, a tip on its way while its number is there, the
 * way out when OpenGL fails or is lost, nothing left behind by realizing again and again, and what
 * fingers do. Needs a display (Xvfb will do).
 */
#include "views-desk.h"

#include "gl-names.h"

#define STEP_PX 8

#ifdef __SANITIZE_ADDRESS__
/* The driver unloads itself; what it keeps would then be reported without a place. */
int dlclose (void *handle);
int
dlclose (void *handle)
{
  (void)handle;
  return 0;
}
#endif

/* Presses the end of a part and pulls it by so many steps of its value. */
static void
pull (PhBowView *view, int part, double steps)
{
  PhPixel at = desk_tip (view, part);
  ph_view_drag_press (view, (double)at.x, (double)at.y, FALSE);
  CHECK (view->drag.held.kind == PH_HOLD_TURN && view->drag.held.part == part);
  /* Beyond the threshold in any direction tells which angle; then along its way. */
  ph_view_drag_move (view, 0.01, -PH_DRAG_THRESHOLD_PX, FALSE);
  PhPixel way = view->drag.way;
  ph_view_drag_move (view, (double)way.x * steps * STEP_PX, (double)way.y * steps * STEP_PX, FALSE);
}

static void
a_hint_stands_in_one_view_until_a_part_was_dragged (void)
{
  static const char hint[] = "Drag a bar’s end";
  Desk desk;
  desk_open (&desk, "demo");
  PhBowView *side = desk_view (&desk, PH_VIEW_SIDE), *behind = desk_view (&desk, PH_VIEW_BEHIND);
  ph_document_select (desk.document, "back-bar");
  CHECK (desk_says (side, hint) && !desk_says (behind, hint)
         && !desk_says (desk_view (&desk, PH_VIEW_ABOVE), hint));
  pull (behind, desk_part (&desk, "back-bar"), 2);
  ph_view_drag_give_up (behind);
  CHECK (desk_says (side, hint), "what was given up has taught nothing");
  pull (behind, desk_part (&desk, "back-bar"), 2);
  ph_view_drag_release (behind);
  CHECK (!desk_says (side, hint) && !desk_says (behind, hint));
  gboolean dragged = FALSE;
  ph_views_pane_set_show_free (PH_VIEWS_PANE (desk.pane), TRUE);
  g_object_get (desk_view (&desk, PH_VIEW_FREE), "dragged", &dragged, NULL);
  CHECK (dragged && !desk_says (desk_view (&desk, PH_VIEW_FREE), hint));
  desk_close (&desk);
}

static void
the_picture_is_fine_when_nothing_moves (void)
{
  Desk desk;
  desk_open (&desk, "demo");
  DESK_UNTIL (desk_is_still (&desk));
  gsize fine = ph_gl_view_triangles (desk_area (&desk, 0));
  ph_document_select (desk.document, "back-bar");
  pull (desk_view (&desk, PH_VIEW_SIDE), desk_part (&desk, "back-bar"), 3);
  CHECK (!desk_is_still (&desk), "a drag has just begun");
  desk.n_frames = 0;
  DESK_UNTIL (desk.n_frames > 0);
  gsize moving = ph_gl_view_triangles (desk_area (&desk, 0));
  CHECK (fine > 10000 && moving < 3000 * 2, "%zu fine, %zu moving in two views", fine, moving);
  ph_view_drag_release (desk_view (&desk, PH_VIEW_SIDE));
  DESK_UNTIL (desk_is_still (&desk));
  CHECK (ph_gl_view_triangles (desk_area (&desk, 0)) > 10000);
  desk_run (100);
  desk.n_frames = 0;
  desk_run (600);
  CHECK (desk.n_frames == 0, "%d frames though nothing moves", desk.n_frames);
  desk_close (&desk);
}

static double
drawn_far (PhPixel a, PhPixel b)
{
  return (double)hypotf (a.x - b.x, a.y - b.y);
}

static void
the_tip_eases_while_the_number_is_there_at_once (void)
{
  Desk desk;
  desk_open (&desk, "demo");
  PhBowView *side = desk_view (&desk, PH_VIEW_SIDE);
  ph_document_select (desk.document, "front-bar");
  DESK_UNTIL (desk_is_still (&desk));
  int bar = desk_part (&desk, "front-bar");
  PhPixel before = desk_tip (side, bar);
  double from = desk_number (&desk, "front-bar", "lift_deg");
  pull (side, bar, 6);
  CHECK (desk_number (&desk, "front-bar", "lift_deg") == from + 6);
  CHECK (desk_says (side, "down 2°"), "the words do not wait");
  CHECK (drawn_far (desk_tip (side, bar), before) < 1, "drawn where it was");
  double last = 0;
  int on_the_way = 0;
  for (int frame = 0; frame < 60 && side->scene->easing; frame++)
    {
      desk.n_frames = 0;
      DESK_UNTIL (desk.n_frames > 0);
      double far = drawn_far (desk_tip (side, bar), before);
      CHECK (far >= last - 0.5, "it turns back: %g after %g px", far, last);
      on_the_way += far > 1 && side->scene->easing;
      last = far;
      CHECK (desk_number (&desk, "front-bar", "lift_deg") == from + 6, "a number animates");
    }
  CHECK (on_the_way >= 1, "no frame between start and end");
  CHECK (!side->scene->easing);
  PhPixel there;
  ph_view_tip (ph_document_get_compiled (desk.document), bar, &side->camera, &there);
  CHECK (drawn_far (desk_tip (side, bar), there) < 1e-3, "exactly there at the end");
  CHECK (last > 20);
  ph_view_drag_give_up (side);
  CHECK (drawn_far (desk_tip (side, bar), before) < 1e-3, "what is given up is back at once");
  desk_close (&desk);
}

static void
without_animations_the_tip_is_there_at_once (void)
{
  Desk desk;
  desk_open (&desk, "demo");
  PhBowView *side = desk_view (&desk, PH_VIEW_SIDE);
  ph_document_select (desk.document, "front-bar");
  g_object_set (gtk_widget_get_settings (desk.window), "gtk-enable-animations", FALSE, NULL);
  int bar = desk_part (&desk, "front-bar");
  PhPixel before = desk_tip (side, bar);
  pull (side, bar, 6);
  CHECK (!side->scene->easing && drawn_far (desk_tip (side, bar), before) > 20);
  ph_view_drag_give_up (side);
  gtk_settings_reset_property (gtk_widget_get_settings (desk.window), "gtk-enable-animations");
  desk_close (&desk);
}

/* Seen through the window's own renderer: a picture of the pane with the bow in it. */
static gboolean
shows_a_bow (Desk *desk)
{
  PhBowView *side = desk_view (desk, PH_VIEW_SIDE);
  desk->n_frames = 0;
  gtk_widget_queue_draw (desk->pane);
  DESK_UNTIL (desk->n_frames > 0);
  g_autoptr (GdkPaintable) paintable = gtk_widget_paintable_new (desk->pane);
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  int width = gtk_widget_get_width (desk->pane), height = gtk_widget_get_height (desk->pane);
  gdk_paintable_snapshot (paintable, snapshot, width, height);
  g_autoptr (GskRenderNode) node = gtk_snapshot_free_to_node (snapshot);
  if (!node)
    return FALSE;
  g_autoptr (GdkTexture) texture =
      gsk_renderer_render_texture (gtk_native_get_renderer (GTK_NATIVE (desk->window)), node,
                                   &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  g_autofree guint32 *pixels = g_new (guint32, (gsize)width * (gsize)height);
  gdk_texture_download (texture, (guchar *)pixels, 4 * (gsize)width);
  /* The front bar's middle is black on a light ground. */
  PhPoint on = ph_point (300.0f, 0.0f, -105.0f);
  PhPixel at = ph_camera_project (&side->camera, on, NULL);
  for (int dy = -12; dy <= 12; dy++)
    {
      guint32 pixel = pixels[((int)at.y + dy) * width + (int)at.x];
      if ((pixel & 0xff) < 70 && ((pixel >> 8) & 0xff) < 70)
        return TRUE;
    }
  return FALSE;
}

static void
check_drawn_by_the_views (Desk *desk)
{
  CHECK (desk->n_refused == 1, "said %d times", desk->n_refused);
  CHECK (desk->refused && strstr (desk->refused, "drawn without OpenGL"), "%s", desk->refused);
  CHECK (!desk_area (desk, 0) && !desk_view (desk, PH_VIEW_SIDE)->over_gl);
  desk_run (200);
  CHECK (shows_a_bow (desk));
  CHECK (desk_is_still (desk), "there is nothing to wait for");
}

static void
where_opengl_is_lost_the_views_draw_and_it_is_said_once (void)
{
  Desk desk;
  desk_open (&desk, "demo");
  DESK_UNTIL (desk_is_still (&desk));
  CHECK (desk.n_refused == 0 && shows_a_bow (&desk));
  ph_document_select (desk.document, "back-bar");
  pull (desk_view (&desk, PH_VIEW_BEHIND), desk_part (&desk, "back-bar"), 3);
  ph_gl_view_pretend_lost (desk_area (&desk, 0));
  ph_gl_view_pretend_lost (desk_area (&desk, 1));
  DESK_UNTIL (desk.n_refused > 0);
  check_drawn_by_the_views (&desk);
  CHECK (ph_view_drag_is_on (desk_view (&desk, PH_VIEW_BEHIND)), "the drag goes on");
  ph_view_drag_release (desk_view (&desk, PH_VIEW_BEHIND));
  CHECK (desk_number (&desk, "back-bar", "swing_deg") != 20);
  /* The free view, made only now, draws by itself too. */
  ph_views_pane_set_show_free (PH_VIEWS_PANE (desk.pane), TRUE);
  desk_run (300);
  CHECK (!desk_view (&desk, PH_VIEW_FREE)->over_gl && desk.n_refused == 1);
  desk_close (&desk);
}

static void
without_gl_from_the_start_the_views_draw_and_it_is_said_once (void)
{
  const char *debug = g_getenv ("GDK_DEBUG");
  Desk desk;
  if (!debug || !strstr (debug, "gl-disable"))
    return;
  desk_open (&desk, "demo");
  DESK_UNTIL (desk.n_refused > 0);
  check_drawn_by_the_views (&desk);
  desk_close (&desk);
}

static void
realizing_again_and_again_leaves_nothing_behind (void)
{
  Desk desk;
  int after_first = 0;
  desk_open (&desk, "demo");
  DESK_UNTIL (desk_is_still (&desk));
  gtk_gl_area_make_current (GTK_GL_AREA (desk_area (&desk, 0)));
  gl_names_watch ();
  for (int i = 0; i < 20; i++)
    {
      int shown = gl_names;
      gtk_window_set_child (GTK_WINDOW (desk.window), NULL);
      CHECK (gl_names < shown, "round %d gives nothing back", i);
      CHECK (!gtk_widget_get_realized (GTK_WIDGET (desk_area (&desk, 0))));
      desk_run (20);
      gtk_window_set_child (GTK_WINDOW (desk.window), desk.pane);
      DESK_UNTIL (desk_is_still (&desk));
      CHECK (ph_gl_view_triangles (desk_area (&desk, 0)) > 10000, "round %d draws nothing", i);
      after_first = i == 1 ? gl_names : after_first;
      CHECK (i < 2 || gl_names <= after_first, "round %d: %d names, %d after the second", i,
             gl_names, after_first);
    }
  CHECK (desk.n_refused == 0, "%s", desk.refused);
  CHECK (shows_a_bow (&desk));
  desk_close (&desk);
}

/* Fingers. */

static void
tap (PhBowView *view, PhPixel at, gboolean touch)
{
  static guint32 time = 10000;
  time += 2000;
  ph_view_drag_press (view, (double)at.x, (double)at.y, touch);
  ph_bow_view_tap (view, (double)at.x, (double)at.y, touch, FALSE, time);
  view->drag.held.kind = PH_HOLD_NONE;
}

static void
a_tap_selects_then_its_handles_take_a_finger (void)
{
  Desk desk;
  desk_open (&desk, "demo");
  PhBowView *side = desk_view (&desk, PH_VIEW_SIDE);
  int bar = desk_part (&desk, "front-bar"), stack = desk_part (&desk, "front-stack");
  PhPixel tip = desk_tip (side, bar);
  PhPixel middle = { (tip.x + desk_tip (side, bar).x) / 2, tip.y };
  PhHandle handle;
  ph_document_select (desk.document, NULL);
  CHECK (ph_handle_of (side->scene->compiled, (gsize)bar, &handle));
  middle = ph_camera_project (&side->camera,
                              ph_point_mix (handle.root, ph_handle_tip (&handle), 0.5f), NULL);
  ph_view_drag_press (side, (double)middle.x, (double)middle.y, TRUE);
  CHECK (side->drag.held.kind == PH_HOLD_NONE,
         "a finger on what is not selected moves the picture");
  /* A little beside the bar: a finger is broad. */
  tap (side, (PhPixel){ middle.x, middle.y + 12 }, TRUE);
  CHECK_TEXT (ph_document_get_selected (desk.document), "front-bar");
  tap (side, (PhPixel){ middle.x, middle.y + 60 }, FALSE);
  CHECK (!ph_document_get_selected (desk.document), "and a tap on nothing drops it");
  tap (side, middle, TRUE);
  /* 22 px around the end are the handle's: 44 px in all. */
  for (int i = 0; i < 16; i++)
    {
      double angle = i * G_PI / 8;
      double x = (double)tip.x + 21.9 * cos (angle), y = (double)tip.y + 21.9 * sin (angle);
      PhHold hold = ph_view_hold_at (side, x, y, TRUE);
      CHECK (hold.kind == PH_HOLD_TURN && hold.part == bar, "direction %d", i);
    }
  ph_view_drag_press (side, (double)tip.x, (double)tip.y + 20, TRUE);
  ph_view_drag_move (side, 0, 3 * STEP_PX + 1, FALSE);
  CHECK (ph_view_drag_is_on (side) && desk_number (&desk, "front-bar", "lift_deg") < -8);
  ph_view_drag_release (side);
  /* − and + of the stack. */
  ph_document_select (desk.document, "front-stack");
  PhPixel at[2];
  ph_bow_view_refresh_marks (side);
  CHECK (ph_view_stack_handles (side->scene->compiled, stack, &side->camera, at));
  CHECK (drawn_far (at[0], at[1]) >= 44 - 1e-3);
  for (int k = 0; k < 2; k++)
    CHECK (ph_view_hold_at (side, (double)at[k].x, (double)at[k].y + 21.9, TRUE).kind
           == (k ? PH_HOLD_MORE : PH_HOLD_LESS));
  tap (side, (PhPixel){ at[1].x, at[1].y + 18 }, TRUE);
  CHECK (desk_number (&desk, "front-stack", "count") == 9);
  ph_bow_view_refresh_marks (side);
  ph_view_stack_handles (side->scene->compiled, stack, &side->camera, at);
  tap (side, at[0], TRUE);
  CHECK (desk_number (&desk, "front-stack", "count") == 8);
  desk_close (&desk);
}

static void
buttons_of_the_views_take_a_finger (void)
{
  Desk desk;
  desk_open (&desk, "demo");
  for (int view = PH_VIEW_SIDE; view <= PH_VIEW_ABOVE; view++)
    {
      PhBowView *shown = desk_view (&desk, (PhView)view);
      int n = 0;
      for (GtkWidget *button = gtk_widget_get_first_child (shown->corner); button;
           button = gtk_widget_get_next_sibling (button), n++)
        {
          graphene_rect_t box;
          CHECK (gtk_widget_compute_bounds (button, GTK_WIDGET (shown), &box));
          CHECK (box.size.width >= 44 && box.size.height >= 44, "view %d, button %d: %g x %g", view,
                 n, (double)box.size.width, (double)box.size.height);
          CHECK (box.origin.x + box.size.width <= (float)gtk_widget_get_width (GTK_WIDGET (shown)));
        }
      CHECK (n >= 1);
    }
  desk_close (&desk);
}

static GtkEventController *
controller_of (PhBowView *view, GType type)
{
  g_autoptr (GListModel) all = gtk_widget_observe_controllers (GTK_WIDGET (view));
  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (all, i);
      if (G_TYPE_CHECK_INSTANCE_TYPE (controller, type))
        return controller;
    }
  return NULL;
}

static void
a_long_press_opens_the_parts_menu (void)
{
  Desk desk;
  desk_open (&desk, "demo");
  PhBowView *side = desk_view (&desk, PH_VIEW_SIDE);
  GtkEventController *press = controller_of (side, GTK_TYPE_GESTURE_LONG_PRESS);
  PhPixel tip = desk_tip (side, desk_part (&desk, "front-bar"));
  CHECK (press && gtk_gesture_single_get_touch_only (GTK_GESTURE_SINGLE (press)));
  g_signal_emit_by_name (press, "pressed", 40.0, 300.0);
  CHECK (!side->menu, "there is no menu of nothing");
  side->drag.over = FALSE;
  g_signal_emit_by_name (press, "pressed", (double)tip.x - 120, (double)tip.y - 16);
  CHECK (side->menu && gtk_widget_get_visible (side->menu));
  CHECK_TEXT (ph_document_get_selected (desk.document), "front-bar");
  CHECK (!ph_view_drag_is_on (side) && side->drag.over, "the finger still down drags nothing");
  if (side->menu)
    gtk_popover_popdown (GTK_POPOVER (side->menu));
  desk_run (50);
  desk_close (&desk);
}

static void
two_fingers_scale_about_their_middle_and_move (void)
{
  Desk desk;
  desk_open (&desk, "demo");
  PhBowView *side = desk_view (&desk, PH_VIEW_SIDE), *behind = desk_view (&desk, PH_VIEW_BEHIND);
  CHECK (controller_of (side, GTK_TYPE_GESTURE_ZOOM) != NULL);
  DESK_UNTIL (desk_is_still (&desk));
  ph_document_select (desk.document, "front-bar");
  pull (side, desk_part (&desk, "front-bar"), 3);
  double scale = (double)side->camera.px_per_mm;
  ph_bow_view_pinch_begin (side, 300, 150);
  CHECK (!ph_view_drag_is_on (side) && desk_number (&desk, "front-bar", "lift_deg") == -8,
         "what one finger held is given up");
  PhPoint under = ph_camera_unproject (&side->camera, (PhPixel){ 300, 150 }, 0);
  ph_bow_view_pinch_to (side, 1.5, 300, 150);
  CHECK_REL ((double)side->camera.px_per_mm, 1.5 * scale, 1e-5);
  CHECK_REL ((double)behind->camera.px_per_mm, 1.5 * scale, 1e-5);
  ph_bow_view_pinch_to (side, 2.0, 340, 130);
  CHECK_REL ((double)side->camera.px_per_mm, 2.0 * scale, 1e-5);
  PhPixel now = ph_camera_project (&side->camera, under, NULL);
  /* Floats: a few thousandths of a pixel. */
  CHECK_NEAR ((double)now.x, 340, 0.05);
  CHECK_NEAR ((double)now.y, 130, 0.05);
  ph_bow_view_pinch_to (side, 0, 340, 130);
  CHECK_REL ((double)side->camera.px_per_mm, 2.0 * scale, 1e-5);
  desk_close (&desk);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  if (!gtk_init_check ())
    {
      printf ("no display: run it under xvfb-run\n");
      return 77;
    }
  ph_math_init ();
  ph_style_load (gdk_display_get_default ());
  CASE (without_gl_from_the_start_the_views_draw_and_it_is_said_once);
  CASE (a_hint_stands_in_one_view_until_a_part_was_dragged);
  CASE (the_picture_is_fine_when_nothing_moves);
  CASE (the_tip_eases_while_the_number_is_there_at_once);
  CASE (without_animations_the_tip_is_there_at_once);
  CASE (where_opengl_is_lost_the_views_draw_and_it_is_said_once);
  CASE (a_tap_selects_then_its_handles_take_a_finger);
  CASE (buttons_of_the_views_take_a_finger);
  CASE (a_long_press_opens_the_parts_menu);
  CASE (two_fingers_scale_about_their_middle_and_move);
  CASE (realizing_again_and_again_leaves_nothing_behind);
  return check_end ();
}
