/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One stat () a question.
 */
#include "document/file-stamp.h"

#include <stdio.h>
#include <sys/stat.h>

PhFileStamp
ph_file_stamp_of (const char *path)
{
  struct stat found;
  if (path == NULL || stat (path, &found) != 0)
    return (PhFileStamp){ 0 };
  return (PhFileStamp){ .known = TRUE,
                        .inode = found.st_ino,
                        .size = found.st_size,
                        .seconds = found.st_mtim.tv_sec,
                        .nanoseconds = found.st_mtim.tv_nsec };
}

gboolean
ph_file_stamp_differs (const PhFileStamp *before, const char *path)
{
  PhFileStamp now = ph_file_stamp_of (path);
  return before->known && now.known
         && (before->inode != now.inode || before->size != now.size
             || before->seconds != now.seconds || before->nanoseconds != now.nanoseconds);
}

char *
ph_file_stamp_to_text (const PhFileStamp *stamp)
{
  if (!stamp->known)
    return g_strdup ("");
  return g_strdup_printf ("%" G_GUINT64_FORMAT " %" G_GINT64_FORMAT " %" G_GINT64_FORMAT
                          " %" G_GINT64_FORMAT,
                          stamp->inode, stamp->size, stamp->seconds, stamp->nanoseconds);
}

PhFileStamp
ph_file_stamp_from_text (const char *text)
{
  PhFileStamp stamp = { 0 };
  if (text != NULL
      && sscanf (text,
                 "%" G_GUINT64_FORMAT " %" G_GINT64_FORMAT " %" G_GINT64_FORMAT
                 " %" G_GINT64_FORMAT,
                 &stamp.inode, &stamp.size, &stamp.seconds, &stamp.nanoseconds)
             == 4)
    stamp.known = TRUE;
  return stamp;
}
