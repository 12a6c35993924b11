/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Hangs on the document as its data, and marks itself stale by the document's own signals. Numbers
 * of scenes are never used twice, so that a renderer that outlives one does not mistake the next.
 */
#include "widgets/bow-scene.h"

typedef struct
{
  PhBowScene shown;
  gboolean stale;
} Scene;

#define KEY "ph-bow-scene"

static void
clear (PhBowScene *scene)
{
  g_clear_pointer (&scene->list, ph_draw_list_free);
  g_clear_pointer (&scene->reference, ph_draw_list_free);
  g_clear_pointer (&scene->plain, ph_draw_list_free);
}

static void
scene_free (gpointer data)
{
  Scene *scene = data;
  clear (&scene->shown);
  g_free (scene);
}

static void
rebuild (PhBowScene *scene, PhDocument *document)
{
  static guint64 last;
  PhShown shown = ph_document_get_shown (document);
  PhShown compared = ph_document_get_compared (document);
  PhDrawOptions options = ph_draw_options_default (), plain = options;
  plain.plain = true;
  clear (scene);
  scene->list = ph_draw_list_new (shown.rig, shown.compiled, shown.report, &options);
  scene->serial = ++last;
  if (!compared.rig)
    return;
  scene->reference = ph_draw_list_new (compared.rig, compared.compiled, compared.report, &plain);
  scene->plain = ph_draw_list_new (shown.rig, shown.compiled, shown.report, &plain);
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
  g_object_set_data_full (G_OBJECT (document), KEY, scene, scene_free);
  g_signal_connect (document, "changed", G_CALLBACK (stale_cb), NULL);
  g_signal_connect (document, "notify::flipped", G_CALLBACK (stale_cb), NULL);
  return scene;
}

const PhBowScene *
ph_bow_scene_of (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  Scene *scene = g_object_get_data (G_OBJECT (document), KEY);
  if (!scene)
    scene = scene_new (document);
  if (scene->stale)
    rebuild (&scene->shown, document);
  scene->stale = FALSE;
  return &scene->shown;
}
