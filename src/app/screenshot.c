/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rendered anew by the window's own renderer into a texture, 3D areas included, so that neither a
 * screen nor a compositor has a say. Needs device pixels: the scale factor is applied.
 */
#include "app/screenshot.h"

#include <glib/gi18n.h>

gboolean
ph_screenshot_write (GtkWidget *window, const char *path, GError **error)
{
  g_return_val_if_fail (GTK_IS_NATIVE (window), FALSE);
  int scale = gtk_widget_get_scale_factor (window);
  int width = gtk_widget_get_width (window), height = gtk_widget_get_height (window);
  graphene_rect_t bounds;
  g_autoptr (GdkPaintable) paintable = gtk_widget_paintable_new (window);
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  gtk_snapshot_scale (snapshot, (float)scale, (float)scale);
  /* At its own size, the toolkit's frame with it, which is then cut off: asked for another size it
   * would scale, and drop lines of the 3D areas. */
  if (!gtk_widget_compute_bounds (window, window, &bounds))
    bounds = GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height);
  gtk_snapshot_translate (snapshot, &bounds.origin);
  gdk_paintable_snapshot (paintable, snapshot, (double)bounds.size.width,
                          (double)bounds.size.height);
  GskRenderNode *node = gtk_snapshot_free_to_node (snapshot);
  if (!node)
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED, _ ("The window has nothing to show yet"));
      return FALSE;
    }
  g_autoptr (GdkTexture) texture = gsk_renderer_render_texture (
      gtk_native_get_renderer (GTK_NATIVE (window)), node,
      &GRAPHENE_RECT_INIT (0, 0, (float)(width * scale), (float)(height * scale)));
  gsk_render_node_unref (node);
  if (gdk_texture_save_to_png (texture, path))
    return TRUE;
  g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED, _ ("“%s” could not be written"), path);
  return FALSE;
}
