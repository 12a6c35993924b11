/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Opening photos: upright as the camera was held, turned on request, and files that are none.
 */
#include "widgets/photo-picture.h"

#include <glib/gstdio.h>

#include "check.h"

static char *folder;

static char *
path_of (const char *name)
{
  return g_build_filename (folder, name, NULL);
}

static void
loaded_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  (void)source;
  *(GAsyncResult **)data = g_object_ref (result);
}

static PhPhotoPicture *
load (const char *name, GError **error)
{
  g_autofree char *path = path_of (name);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GAsyncResult) result = NULL;
  ph_photo_picture_load_async (file, NULL, loaded_cb, &result);
  while (!result)
    g_main_context_iteration (NULL, TRUE);
  return ph_photo_picture_load_finish (result, error);
}

/* White, with the upper left quarter black. */
static GdkPixbuf *
new_test_picture (int width, int height)
{
  GdkPixbuf *pixbuf = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, width, height);
  gdk_pixbuf_fill (pixbuf, 0xffffffff);
  g_autoptr (GdkPixbuf) corner = gdk_pixbuf_new_subpixbuf (pixbuf, 0, 0, width / 2, height / 2);
  gdk_pixbuf_fill (corner, 0x000000ff);
  return pixbuf;
}

static int
grey_at (GdkTexture *texture, int x, int y)
{
  int width = gdk_texture_get_width (texture), height = gdk_texture_get_height (texture);
  g_autofree guchar *pixels = g_malloc ((gsize)width * height * 4);
  gdk_texture_download (texture, pixels, (gsize)width * 4);
  return pixels[((gsize)y * width + x) * 4 + 1];
}

/* A JPEG file as a phone writes it: the sensor's picture, and after its first two bytes how it was
   held (Exif 2.3, tag 0x0112; 6: the first row is the right side, the first column the top). */
static void
write_phone_jpeg (const char *name, guchar orientation)
{
  guchar held[] = { 0xff, 0xe1, 0,    34,   'E', 'x', 'i', 'f', 0, 0, 'I', 'I', 42, 0, 8, 0, 0, 0,
                    1,    0,    0x12, 0x01, 3,   0,   1,   0,   0, 0, 0,   0,   0,  0, 0, 0, 0, 0 };
  g_autoptr (GdkPixbuf) pixbuf = new_test_picture (600, 400);
  g_autofree char *bytes = NULL, *path = path_of (name);
  gsize size = 0;
  held[28] = orientation;
  gdk_pixbuf_save_to_buffer (pixbuf, &bytes, &size, "jpeg", NULL, "quality", "95", NULL);
  g_autoptr (GByteArray) file = g_byte_array_new ();
  g_byte_array_append (file, (guchar *)bytes, 2);
  g_byte_array_append (file, held, sizeof held);
  g_byte_array_append (file, (guchar *)bytes + 2, (guint)size - 2);
  g_file_set_contents (path, (char *)file->data, file->len, NULL);
}

static void
write_png (const char *name, int width, int height)
{
  g_autoptr (GdkPixbuf) pixbuf = new_test_picture (width, height);
  g_autofree char *path = path_of (name);
  gdk_pixbuf_save (pixbuf, path, "png", NULL, NULL);
}

static void
a_photo_stands_as_the_camera_was_held (void)
{
  g_autoptr (GError) error = NULL;
  write_phone_jpeg ("held.jpg", 6);
  g_autoptr (PhPhotoPicture) picture = load ("held.jpg", &error);
  CHECK (picture, "%s", error ? error->message : "");
  if (!picture)
    return;
  CHECK (ph_photo_picture_get_width (picture) == 400);
  CHECK (ph_photo_picture_get_height (picture) == 600);
  /* The sensor's upper left corner is the upper right one. */
  GdkTexture *texture = ph_photo_picture_get_texture (picture, 1);
  CHECK (grey_at (texture, 300, 100) < 40);
  CHECK (grey_at (texture, 100, 100) > 215);
  CHECK (grey_at (texture, 300, 500) > 215);
}

static void
a_quarter_turn_goes_with_the_clock (void)
{
  write_png ("plain.png", 600, 400);
  g_autoptr (PhPhotoPicture) picture = load ("plain.png", NULL);
  g_autoptr (PhPhotoPicture) turned = ph_photo_picture_new_turned (picture);
  CHECK (ph_photo_picture_get_width (turned) == 400);
  GdkTexture *texture = ph_photo_picture_get_texture (turned, 1);
  CHECK (grey_at (texture, 300, 100) == 0);
  CHECK (grey_at (texture, 100, 100) == 255);
}

static void
small_views_take_small_textures (void)
{
  write_png ("large.png", 2400, 1600);
  g_autoptr (PhPhotoPicture) picture = load ("large.png", NULL);
  CHECK (gdk_texture_get_width (ph_photo_picture_get_texture (picture, 4)) == 2400);
  CHECK (gdk_texture_get_width (ph_photo_picture_get_texture (picture, 0.6)) == 2400);
  CHECK (gdk_texture_get_width (ph_photo_picture_get_texture (picture, 0.5)) == 1200);
  CHECK (gdk_texture_get_width (ph_photo_picture_get_texture (picture, 0.2)) == 600);
  CHECK (gdk_texture_get_width (ph_photo_picture_get_texture (picture, 0.01)) == 600);
}

static void
what_is_no_photo_says_what_to_do (const char *name, const char *part)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (PhPhotoPicture) picture = load (name, &error);
  CHECK (!picture);
  CHECK (error && strstr (error->message, name) && strstr (error->message, part), "%s",
         error ? error->message : "no error");
}

static void
files_that_are_no_photos_are_refused_with_a_way_out (void)
{
  g_autofree char *path = path_of ("notes.txt");
  g_file_set_contents (path, "not a picture", -1, NULL);
  write_png ("preview.png", 160, 90);
  what_is_no_photo_says_what_to_do ("notes.txt", "Choose a photo");
  what_is_no_photo_says_what_to_do ("gone.jpg", "Choose a photo");
  what_is_no_photo_says_what_to_do ("preview.png", "160 × 90");
}

static void
clear (void)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  while (dir && (name = g_dir_read_name (dir)))
    {
      g_autofree char *path = path_of (name);
      g_unlink (path);
    }
  g_rmdir (folder);
  g_free (folder);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  folder = g_dir_make_tmp ("plumbhold-photo-XXXXXX", NULL);
  CASE (a_photo_stands_as_the_camera_was_held);
  CASE (a_quarter_turn_goes_with_the_clock);
  CASE (small_views_take_small_textures);
  CASE (files_that_are_no_photos_are_refused_with_a_way_out);
  clear ();
  return check_end ();
}
