/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Decoded by GdkPixbuf, since a texture's own loader does not heed how the camera was held. Each
 * smaller size halves the one before by averages; together they cost a third more than the first:
 * 50 MB for a photo of 12 megapixels.
 */
#include "widgets/photo-picture.h"

#include <glib/gi18n.h>

/* Of a side [px]: below this nothing can be read. */
#define SIDE_LEAST 100
/* More than any camera's [px]. */
#define PIXELS_MOST 250e6
#define SIZES_MOST 8
#define SMALLEST_SIDE 400

struct _PhPhotoPicture
{
  GdkPixbuf *pixbuf;
  GdkTexture *sizes[SIZES_MOST]; /* each half of the one before */
  guint n_sizes;
};

static PhPhotoPicture *
new_of (GdkPixbuf *pixbuf)
{
  PhPhotoPicture *picture = g_new0 (PhPhotoPicture, 1);
  g_autoptr (GdkPixbuf) size = g_object_ref (pixbuf);
  picture->pixbuf = g_object_ref (pixbuf);
  picture->sizes[picture->n_sizes++] = gdk_texture_new_for_pixbuf (size);
  while (picture->n_sizes < SIZES_MOST
         && MAX (gdk_pixbuf_get_width (size), gdk_pixbuf_get_height (size)) >= 2 * SMALLEST_SIDE
         && MIN (gdk_pixbuf_get_width (size), gdk_pixbuf_get_height (size)) >= 2)
    {
      GdkPixbuf *half =
          gdk_pixbuf_scale_simple (size, gdk_pixbuf_get_width (size) / 2,
                                   gdk_pixbuf_get_height (size) / 2, GDK_INTERP_BILINEAR);
      if (!half) /* no memory: the larger ones serve */
        break;
      g_object_unref (size);
      size = half;
      picture->sizes[picture->n_sizes++] = gdk_texture_new_for_pixbuf (size);
    }
  return picture;
}

void
ph_photo_picture_free (PhPhotoPicture *picture)
{
  if (!picture)
    return;
  for (guint i = 0; i < picture->n_sizes; i++)
    g_object_unref (picture->sizes[i]);
  g_object_unref (picture->pixbuf);
  g_free (picture);
}

PhPhotoPicture *
ph_photo_picture_new_turned (const PhPhotoPicture *picture)
{
  g_autoptr (GdkPixbuf) turned =
      gdk_pixbuf_rotate_simple (picture->pixbuf, GDK_PIXBUF_ROTATE_CLOCKWISE);
  return turned ? new_of (turned) : NULL;
}

/* Loading. */

static gboolean
is_too_large (GFile *file)
{
  int width = 0, height = 0;
  const char *path = g_file_peek_path (file);
  return path && gdk_pixbuf_get_file_info (path, &width, &height)
         && (double)width * height > PIXELS_MOST;
}

static GdkPixbuf *
read_upright (GFile *file, GCancellable *cancellable, GError **error)
{
  g_autoptr (GFileInputStream) stream = g_file_read (file, cancellable, error);
  if (!stream)
    return NULL;
  g_autoptr (GdkPixbuf) held =
      gdk_pixbuf_new_from_stream (G_INPUT_STREAM (stream), cancellable, error);
  return held ? gdk_pixbuf_apply_embedded_orientation (held) : NULL;
}

static void
load (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  GFile *file = data;
  GError *error = NULL;
  g_autofree char *name = g_file_get_basename (file);
  (void)source;
  if (is_too_large (file))
    {
      g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_INVALID_DATA,
                               _ ("“%s” is larger than any photo. Choose the photo itself."), name);
      return;
    }
  g_autoptr (GdkPixbuf) pixbuf = read_upright (file, cancellable, &error);
  if (!pixbuf)
    {
      g_task_return_new_error (
          task, G_IO_ERROR, G_IO_ERROR_INVALID_DATA,
          _ ("“%s” could not be opened as a picture (%s). Choose a photo, such as a JPEG or a PNG "
             "file."),
          name, error ? error->message : _ ("no memory"));
      g_clear_error (&error);
      return;
    }
  int width = gdk_pixbuf_get_width (pixbuf), height = gdk_pixbuf_get_height (pixbuf);
  if (MIN (width, height) < SIDE_LEAST)
    g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_INVALID_DATA,
                             _ ("“%s” has only %d × %d pixels: too few to read a tilt from. Choose "
                                "the photo itself, not its small preview."),
                             name, width, height);
  else
    g_task_return_pointer (task, new_of (pixbuf), (GDestroyNotify)ph_photo_picture_free);
}

void
ph_photo_picture_load_async (GFile *file, GCancellable *cancellable, GAsyncReadyCallback callback,
                             gpointer data)
{
  g_return_if_fail (G_IS_FILE (file));
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, data);
  g_task_set_task_data (task, g_object_ref (file), g_object_unref);
  g_task_run_in_thread (task, load);
}

PhPhotoPicture *
ph_photo_picture_load_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

/* What it is. */

int
ph_photo_picture_get_width (const PhPhotoPicture *picture)
{
  return gdk_pixbuf_get_width (picture->pixbuf);
}

int
ph_photo_picture_get_height (const PhPhotoPicture *picture)
{
  return gdk_pixbuf_get_height (picture->pixbuf);
}

GdkTexture *
ph_photo_picture_get_texture (const PhPhotoPicture *picture, double scale)
{
  guint i = 0;
  while (i + 1 < picture->n_sizes && scale <= 0.5)
    {
      scale *= 2;
      i++;
    }
  return picture->sizes[i];
}
