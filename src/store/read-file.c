/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Opens without blocking (a named pipe would otherwise wait for its writer for ever), looks at
 * what it has opened, and only then reads. The size is not trusted: a file may grow meanwhile.
 */
#include "store/read-file.h"

#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/text.h"

static char *
sentence_of_open (int error)
{
  switch (error)
    {
    case ENOENT:
    case ENOTDIR:
      return ph_text_dup ("there is no such file");
    case EACCES:
    case EPERM:
      return ph_text_dup ("cannot be read: no permission");
    case ELOOP:
      return ph_text_dup ("cannot be read: its links lead round in a circle");
    case ENXIO:
      return ph_text_dup ("is not a file but a socket or device; choose a file");
    default:
      return ph_text_printf ("cannot be read: %s", strerror (error));
    }
}

static PhStatus
look (int fd, size_t most, char **why)
{
  struct stat info;
  if (fstat (fd, &info) != 0)
    {
      *why = ph_text_printf ("cannot be read: %s", strerror (errno));
      return PH_ERR_READ;
    }
  if (S_ISDIR (info.st_mode))
    {
      *why = ph_text_dup ("is a folder; choose a file in it");
      return PH_ERR_READ;
    }
  if (!S_ISREG (info.st_mode))
    {
      *why = ph_text_dup ("is not a file but a pipe or device; choose a file");
      return PH_ERR_READ;
    }
  if ((size_t)info.st_size <= most)
    return PH_OK;
  *why = ph_text_printf ("is too large: %lld bytes where at most %zu are read",
                         (long long)info.st_size, most);
  return PH_ERR_TOO_LARGE;
}

static PhStatus
read_all (int fd, size_t most, char *bytes, size_t *size, char **why)
{
  *size = 0;
  while (*size <= most)
    {
      ssize_t n = read (fd, bytes + *size, most + 1 - *size);
      if (n == 0)
        return PH_OK;
      if (n > 0)
        *size += (size_t)n;
      else if (errno != EINTR)
        {
          *why = ph_text_printf ("cannot be read: %s", strerror (errno));
          return PH_ERR_READ;
        }
    }
  *why = ph_text_printf ("is too large: at most %zu bytes are read", most);
  return PH_ERR_TOO_LARGE;
}

PhStatus
ph_read_file (const char *path, size_t most, char **bytes, size_t *size, char **why)
{
  int fd = open (path, O_RDONLY | O_NONBLOCK | O_CLOEXEC | O_NOCTTY);
  if (fd < 0)
    {
      *why = sentence_of_open (errno);
      return PH_ERR_READ;
    }
  PhStatus status = look (fd, most, why);
  if (status == PH_OK)
    {
      char *all = ph_alloc (most + 2);
      status = read_all (fd, most, all, size, why);
      if (status == PH_OK)
        {
          all[*size] = '\0';
          *bytes = all;
        }
      else
        free (all);
    }
  close (fd);
  return status;
}
