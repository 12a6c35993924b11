/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * POSIX's only way to a file that is either the old or the new one: write a second file in the
 * same folder, force it to the disk, rename it over the first, force the folder. Assumes that
 * folder and file lie on one file system (they do once links have been followed). A program that
 * may run under a file size limit ignores SIGXFSZ, so that the write fails instead of killing it.
 */
#include "store/save-file.h"

#include <errno.h>
#include <fcntl.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/text.h"

#define LINKS_MOST 40 /* as Linux itself: path_resolution (7) */
#define NAMES_MOST 1000

static PhStatus
fail (char **why, char *sentence)
{
  *why = sentence;
  return PH_ERR_WRITE;
}

static char *
sentence_of (int error)
{
  switch (error)
    {
    case ENOSPC:
    case EDQUOT:
      return ph_text_dup ("the disk is full; free some room or save elsewhere");
    case EFBIG:
      return ph_text_dup ("the file would be larger than is allowed here; save elsewhere");
    case EACCES:
    case EPERM:
      return ph_text_dup ("no permission to write in this folder; save elsewhere");
    case EROFS:
      return ph_text_dup ("the disk can only be read; save elsewhere");
    case ENOENT:
    case ENOTDIR:
      return ph_text_dup ("there is no such folder; make it or save elsewhere");
    case ENAMETOOLONG:
      return ph_text_dup ("the file name is too long; choose a shorter one");
    default:
      return ph_text_printf ("it cannot be written: %s", strerror (error));
    }
}

/* The folder part of a path, "." where it has none. New string. */
static char *
folder_of (const char *path)
{
  const char *slash = strrchr (path, '/');
  if (!slash)
    return ph_text_dup (".");
  return slash == path ? ph_text_dup ("/") : ph_text_printf ("%.*s", (int)(slash - path), path);
}

/* What a symbolic link says, seen from where it stands. Null: not a link. */
static char *
follow_once (const char *path)
{
  char text[4096];
  ssize_t n = readlink (path, text, sizeof text - 1);
  if (n < 0)
    return NULL;
  text[n] = '\0';
  if (text[0] == '/')
    return ph_text_dup (text);
  char *folder = folder_of (path);
  char *target = ph_text_printf ("%s/%s", folder, text);
  free (folder);
  return target;
}

/* Follows links to a file that may not be there yet. Null: they lead round in a circle. */
static char *
follow (const char *path)
{
  char *at = ph_text_dup (path);
  for (int i = 0; i < LINKS_MOST; i++)
    {
      char *next = follow_once (at);
      if (!next)
        return at;
      free (at);
      at = next;
    }
  free (at);
  return NULL;
}

static bool
write_all (int fd, const char *bytes, size_t size)
{
  while (size)
    {
      ssize_t n = write (fd, bytes, size);
      if (n < 0 && errno == EINTR)
        continue;
      if (n <= 0)
        {
          errno = n < 0 ? errno : ENOSPC;
          return false;
        }
      bytes += n;
      size -= (size_t)n;
    }
  return true;
}

/* Some file systems cannot sync; what they were given is then as safe as they can make it. */
static bool
sync_file (int fd)
{
  return fsync (fd) == 0 || errno == EINVAL || errno == ENOTSUP;
}

/* Opens a new file beside; `*name` is its path. The owner of an existing file is kept where we
 * may, its mode always. */
static int
open_beside (const char *folder, const struct stat *old, char **name)
{
  for (int i = 0; i < NAMES_MOST; i++)
    {
      *name = ph_text_printf ("%s/.plumbhold-%ld-%d", folder, (long)getpid (), i);
      int fd = open (*name, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, old ? 0600 : 0666);
      if (fd >= 0)
        return fd;
      int error = errno;
      free (*name);
      *name = NULL;
      errno = error;
      if (error != EEXIST)
        return -1;
    }
  return -1;
}

static bool
fill (int fd, const struct stat *old, const char *bytes, size_t size)
{
  bool fine = write_all (fd, bytes, size);
  if (fine && old)
    {
      if (fchown (fd, old->st_uid, old->st_gid) != 0)
        errno = 0; /* another's file: ours now, as with any editor */
      fine = fchmod (fd, old->st_mode & 07777) == 0;
    }
  fine = fine && sync_file (fd);
  int error = errno;
  if (close (fd) != 0 && fine) /* a network file system may say only here that it is full */
    return false;
  errno = error;
  return fine;
}

static void
sync_folder (const char *folder)
{
  int fd = open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (fd < 0)
    return;
  (void)sync_file (fd); /* the new file stands already: there is nothing left to undo */
  close (fd);
}

static PhStatus
replace (const char *target, const struct stat *old, const char *bytes, size_t size, char **why)
{
  char *folder = folder_of (target), *name = NULL;
  int fd = open_beside (folder, old, &name);
  bool fine = fd >= 0 && fill (fd, old, bytes, size) && rename (name, target) == 0;
  int error = errno;
  if (fine)
    sync_folder (folder);
  else if (name)
    unlink (name);
  free (name);
  free (folder);
  return fine ? PH_OK : fail (why, sentence_of (error));
}

PhStatus
ph_save_file (const char *path, const char *bytes, size_t size, char **why)
{
  struct stat info;
  char *target = follow (path);
  if (!target)
    return fail (why, ph_text_dup ("its links lead round in a circle"));
  bool exists = stat (target, &info) == 0;
  PhStatus status;
  if (exists && S_ISDIR (info.st_mode))
    status = fail (why, ph_text_dup ("it is a folder; give a file name"));
  else if (exists && !S_ISREG (info.st_mode))
    status = fail (why, ph_text_dup ("it is a pipe or device, not a file; give another name"));
  else if (exists && access (target, W_OK) != 0)
    status = fail (why, ph_text_dup ("the file may only be read; save under another name"));
  else
    status = replace (target, exists ? &info : NULL, bytes, size, why);
  free (target);
  return status;
}
