/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Hangs on the document as its data, and marks itself stale by the document's own signals. Numbers
 * of scenes are never used twice, so that a renderer that outlives one does not mistake the next.
 * While a part is on its way each frame costs what a step costs, for a tenth of a second; then no
 * frame is asked for.
 */
#include "widgets/bow-scene.h"

#include "widgets/ease.h"

/* What the views follow: an object only for its signal. */
#define PH_TYPE_SCENE_NEWS (ph_scene_news_get_type ())
G_DECLARE_FINAL_TYPE (PhSceneNews, ph_scene_news, PH, SCENE_NEWS, GObject)
struct _PhSceneNews
{
  GObject parent_instance;
};
G_DEFINE_FINAL_TYPE (PhSceneNews, ph_scene_news, G_TYPE_OBJECT)
static guint moved_signal;

static void
ph_scene_news_class_init (PhSceneNewsClass *klass)
{
  moved_signal = g_signal_new ("moved", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                               NULL, G_TYPE_NONE, 0);
}

static void
ph_scene_news_init (PhSceneNews *self)
{
  (void)self;
}

typedef struct
{
  PhBowScene shown;
  gboolean stale;
  PhDocument *document; /* borrowed: it owns this */
  PhSceneNews *news;

  PhRig *posed; /* the rig with the part on its way; null: it is where it should be */
  PhCompiled *posed_compiled;
  PhNumberRef ref;
  PhEase ease;
  GtkWidget *widget; /* weak: whose frames; null: nothing runs */
  guint tick;
} Scene;

#define KEY "ph-bow-scene"

static void
clear (Scene *scene)
{
  g_clear_pointer (&scene->shown.list, ph_draw_list_free);
  g_clear_pointer (&scene->shown.reference, ph_draw_list_free);
  g_clear_pointer (&scene->shown.plain, ph_draw_list_free);
  g_clear_pointer (&scene->posed_compiled, ph_compiled_free);
  g_clear_pointer (&scene->posed, ph_rig_free);
}

/* Whether the document still has the number that the part is on its way to. */
static gboolean
leads_there (const Scene *scene)
{
  const PhRig *rig = ph_document_get_rig (scene->document);
  return scene->shown.easing && !ph_document_get_flipped (scene->document)
         && ph_rig_find (rig, scene->ref.part) >= 0
         && ph_number_ref_read (&scene->ref, rig) == scene->ease.to;
}

static void
stop (Scene *scene)
{
  if (scene->widget && scene->tick)
    gtk_widget_remove_tick_callback (scene->widget, scene->tick);
  g_clear_weak_pointer (&scene->widget);
  scene->tick = 0;
  scene->shown.easing = FALSE;
  ph_number_ref_clear (&scene->ref);
}

static void
scene_free (gpointer data)
{
  Scene *scene = data;
  stop (scene);
  clear (scene);
  g_object_unref (scene->news);
  g_free (scene);
}

static void
pose (Scene *scene, PhShown *shown)
{
  double at = ph_ease_at (&scene->ease, scene->shown.now_us);
  scene->posed = ph_rig_copy (shown->rig);
  if (!ph_number_ref_apply (&scene->ref, scene->posed, at))
    {
      g_clear_pointer (&scene->posed, ph_rig_free);
      return;
    }
  scene->posed_compiled = ph_compile_rig (scene->posed);
  shown->rig = scene->posed;
  shown->compiled = scene->posed_compiled;
}

static void
rebuild (Scene *scene)
{
  static guint64 last;
  PhDocument *document = scene->document;
  PhShown shown = ph_document_get_shown (document);
  PhShown compared = ph_document_get_compared (document);
  PhDrawOptions options = ph_draw_options_default (), plain = options;
  plain.plain = true;
  clear (scene);
  if (leads_there (scene))
    pose (scene, &shown);
  scene->shown.compiled = shown.compiled;
  scene->shown.list = ph_draw_list_new (shown.rig, shown.compiled, shown.report, &options);
  scene->shown.serial = ++last;
  if (!compared.rig)
    return;
  scene->shown.reference =
      ph_draw_list_new (compared.rig, compared.compiled, compared.report, &plain);
  scene->shown.plain = ph_draw_list_new (shown.rig, shown.compiled, shown.report, &plain);
}

static void
stale_cb (PhDocument *document)
{
  Scene *scene = g_object_get_data (G_OBJECT (document), KEY);
  scene->stale = TRUE;
}

static Scene *
scene_new (PhDocument *document)
{
  Scene *scene = g_new0 (Scene, 1);
  scene->stale = TRUE;
  scene->document = document;
  scene->news = g_object_new (PH_TYPE_SCENE_NEWS, NULL);
  g_object_set_data_full (G_OBJECT (document), KEY, scene, scene_free);
  g_signal_connect (document, "changed", G_CALLBACK (stale_cb), NULL);
  g_signal_connect (document, "notify::flipped", G_CALLBACK (stale_cb), NULL);
  return scene;
}

static Scene *
get_scene (PhDocument *document)
{
  Scene *scene = g_object_get_data (G_OBJECT (document), KEY);
  return scene ? scene : scene_new (document);
}

const PhBowScene *
ph_bow_scene_of (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  Scene *scene = get_scene (document);
  if (scene->stale)
    rebuild (scene);
  scene->stale = FALSE;
  return &scene->shown;
}

void
ph_bow_scene_follow (PhDocument *document, GObject *owner, GCallback callback)
{
  g_return_if_fail (PH_IS_DOCUMENT (document));
  g_signal_connect_object (get_scene (document)->news, "moved", callback, owner, G_CONNECT_SWAPPED);
}

/* On its way. */

static void
tell (Scene *scene)
{
  scene->stale = TRUE;
  g_signal_emit (scene->news, moved_signal, 0);
}

static gboolean
tick_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  Scene *scene = data;
  (void)widget;
  scene->shown.now_us = gdk_frame_clock_get_frame_time (clock);
  if (leads_there (scene) && !ph_ease_is_over (&scene->ease, scene->shown.now_us))
    {
      tell (scene);
      return G_SOURCE_CONTINUE;
    }
  scene->tick = 0;
  stop (scene);
  tell (scene);
  return G_SOURCE_REMOVE;
}

static gboolean
wants_animations (GtkWidget *widget)
{
  gboolean wants = TRUE;
  g_object_get (gtk_widget_get_settings (widget), "gtk-enable-animations", &wants, NULL);
  return wants && gtk_widget_get_mapped (widget);
}

void
ph_bow_scene_ease (PhDocument *document, GtkWidget *widget, const PhNumberRef *ref, double from_deg)
{
  g_return_if_fail (PH_IS_DOCUMENT (document) && GTK_IS_WIDGET (widget));
  Scene *scene = get_scene (document);
  double to = ph_number_ref_read (ref, ph_document_get_rig (document));
  if (!wants_animations (widget))
    return;
  gint64 now = gdk_frame_clock_get_frame_time (gtk_widget_get_frame_clock (widget));
  gboolean goes_on = scene->shown.easing && scene->widget == widget
                     && g_strcmp0 (scene->ref.part, ref->part) == 0
                     && g_strcmp0 (scene->ref.key, ref->key) == 0;
  if (!goes_on)
    {
      stop (scene);
      scene->ease = ph_ease_rest (from_deg);
      scene->ref = ph_number_ref_copy (ref);
      g_set_weak_pointer (&scene->widget, widget);
      scene->tick = gtk_widget_add_tick_callback (widget, tick_cb, scene, NULL);
    }
  ph_ease_to (&scene->ease, to, now);
  scene->shown.easing = TRUE;
  scene->shown.now_us = now;
  tell (scene);
}
