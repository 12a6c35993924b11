/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How a file on disk looked at one moment, to tell later whether somebody else wrote it since.
 * Links are followed. Two writes within the clock's step that keep size and inode go unseen;
 * since saving renames, the inode changes with every careful writer.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  gboolean known; /* false: there was no file, or none was looked at */
  guint64 inode;
  gint64 size, seconds, nanoseconds; /* size and time of the last change of content */
} PhFileStamp;

PhFileStamp ph_file_stamp_of (const char *path);
/** Whether `path` is there and looks otherwise than `before`, which is known. A file that is gone
 * has not been changed by anybody: it is simply written again. */
gboolean ph_file_stamp_differs (const PhFileStamp *before, const char *path);

/** As text of a key file, and back (not known where the text is none of ours). */
char *ph_file_stamp_to_text (const PhFileStamp *stamp);
PhFileStamp ph_file_stamp_from_text (const char *text);

G_END_DECLS
