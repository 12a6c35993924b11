/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each write is one atomic save (two with a reference): it waits for the disk, so it belongs at
 * the end of a gesture, never inside one. Names are random, so a name is never used twice and an
 * owner file that was removed cannot be mistaken for a later one.
 */
#include "document/recovery.h"

#include <errno.h>
#include <fcntl.h>
#include <gio/gio.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#define RIG_SUFFIX ".rig.json"
#define REFERENCE_SUFFIX ".reference.json"
#define OWNER_SUFFIX ".owner"
#define GROUP "recovery"

struct PhRecovery
{
  char *folder; /* owned */
  char *base;   /* owned; path without suffix; null: nothing is kept */
  int lock;     /* descriptor of the owner file; −1: none */
};

void
ph_origin_clear (PhOrigin *origin)
{
  g_clear_pointer (&origin->uri, g_free);
  g_clear_pointer (&origin->own_name, g_free);
  origin->stamp = (PhFileStamp){ 0 };
}

PhRecovery *
ph_recovery_new (const char *folder)
{
  PhRecovery *self = g_new0 (PhRecovery, 1);
  self->folder = g_strdup (folder);
  self->lock = -1;
  return self;
}

static void
let_go (PhRecovery *self)
{
  if (self->lock >= 0)
    close (self->lock);
  self->lock = -1;
  g_clear_pointer (&self->base, g_free);
}

void
ph_recovery_free (PhRecovery *self)
{
  if (self == NULL)
    return;
  let_go (self);
  g_free (self->folder);
  g_free (self);
}

static char *
with_suffix (const char *base, const char *suffix)
{
  return g_strconcat (base, suffix, NULL);
}

/* "…/NAME" of "…/NAME.rig.json". */
static char *
base_of_rig (const char *path)
{
  g_return_val_if_fail (g_str_has_suffix (path, RIG_SUFFIX), NULL);
  return g_strndup (path, strlen (path) - strlen (RIG_SUFFIX));
}

static void
remove_set (const char *base)
{
  /* The rig first: a set without it is no longer found. */
  static const char *const suffixes[] = { RIG_SUFFIX, REFERENCE_SUFFIX, OWNER_SUFFIX };
  for (size_t i = 0; i < G_N_ELEMENTS (suffixes); i++)
    {
      g_autofree char *path = with_suffix (base, suffixes[i]);
      g_unlink (path);
    }
}

static GKeyFile *
read_owner (const char *base)
{
  g_autofree char *path = with_suffix (base, OWNER_SUFFIX);
  GKeyFile *keys = g_key_file_new ();
  g_key_file_load_from_file (keys, path, G_KEY_FILE_NONE, NULL);
  return keys;
}

/* Whether a lock that the file system will not give is somebody's, judged by the process number. */
static gboolean
owner_runs (const char *base)
{
  g_autoptr (GKeyFile) keys = read_owner (base);
  int pid = g_key_file_get_integer (keys, GROUP, "pid", NULL);
  return pid > 0 && (kill (pid, 0) == 0 || errno == EPERM);
}

/* Locks the owner file of a set that was left behind: a descriptor, or −1 where it is in use. */
static int
lock_left_behind (const char *base)
{
  g_autofree char *path = with_suffix (base, OWNER_SUFFIX);
  int fd = open (path, O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (fd < 0)
    return -1;
  if (flock (fd, LOCK_EX | LOCK_NB) == 0 || (errno != EWOULDBLOCK && !owner_runs (base)))
    return fd;
  close (fd);
  return -1;
}

/* Whether `path` still leads to the open file: a sweep may have taken it before it was locked. */
static gboolean
still_there (int fd, const char *path)
{
  struct stat open_file, named;
  return fstat (fd, &open_file) == 0 && stat (path, &named) == 0 && open_file.st_ino == named.st_ino
         && open_file.st_dev == named.st_dev;
}

static char *
sentence_of_errno (const char *path, int number)
{
  return g_strdup_printf ("%s: %s", path, g_strerror (number));
}

/* A new owner file, locked. */
static gboolean
take_name (PhRecovery *self, char **why)
{
  if (g_mkdir_with_parents (self->folder, 0700) != 0)
    {
      *why = sentence_of_errno (self->folder, errno);
      return FALSE;
    }
  for (int attempt = 0; attempt < 8; attempt++)
    {
      g_autofree char *name = g_uuid_string_random ();
      g_autofree char *base = g_build_filename (self->folder, name, NULL);
      g_autofree char *path = with_suffix (base, OWNER_SUFFIX);
      int fd = open (path, O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
      if (fd < 0 && errno == EEXIST)
        continue; /* two forks of one process draw the same names */
      if (fd < 0)
        {
          *why = sentence_of_errno (path, errno);
          return FALSE;
        }
      /* Without locks on this file system the process number has to do. */
      gboolean locked = flock (fd, LOCK_EX | LOCK_NB) == 0 || errno != EWOULDBLOCK;
      if (locked && still_there (fd, path))
        {
          self->lock = fd;
          self->base = g_steal_pointer (&base);
          return TRUE;
        }
      close (fd);
    }
  *why = sentence_of_errno (self->folder, EAGAIN);
  return FALSE;
}

/* In place, since the lock hangs on this very file; nobody reads it before the rig is there. */
static gboolean
write_owner (PhRecovery *self, const PhOrigin *origin, char **why)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autofree char *stamp = ph_file_stamp_to_text (&origin->stamp);
  g_key_file_set_integer (keys, GROUP, "pid", getpid ());
  if (origin->uri != NULL)
    g_key_file_set_string (keys, GROUP, "uri", origin->uri);
  if (origin->own_name != NULL)
    g_key_file_set_string (keys, GROUP, "own-name", origin->own_name);
  g_key_file_set_string (keys, GROUP, "stamp", stamp);

  gsize size = 0, done = 0;
  g_autofree char *text = g_key_file_to_data (keys, &size, NULL);
  ssize_t n = ftruncate (self->lock, 0);
  while (n >= 0 && done < size)
    {
      n = pwrite (self->lock, text + done, size - done, (off_t)done);
      if (n < 0 && errno == EINTR)
        n = 0;
      else if (n > 0)
        done += (gsize)n;
    }
  if (n >= 0 && fsync (self->lock) == 0)
    return TRUE;
  *why = sentence_of_errno (self->base, errno);
  return FALSE;
}

static gboolean
save_beside (const PhRig *rig, const char *base, const char *suffix, char **why)
{
  g_autofree char *path = with_suffix (base, suffix);
  char *reason = NULL;
  if (ph_rig_save (rig, path, &reason) == PH_OK)
    return TRUE;
  *why = g_strdup (reason);
  free (reason);
  return FALSE;
}

gboolean
ph_recovery_keep (PhRecovery *self, const PhRig *rig, const PhRig *reference,
                  const PhOrigin *origin, char **why)
{
  gboolean fresh = self->base == NULL;
  if (fresh && !take_name (self, why))
    return FALSE;
  gboolean ok = (!fresh || write_owner (self, origin, why))
                && (reference == NULL || save_beside (reference, self->base, REFERENCE_SUFFIX, why))
                && save_beside (rig, self->base, RIG_SUFFIX, why);
  if (ok && reference == NULL)
    {
      g_autofree char *path = with_suffix (self->base, REFERENCE_SUFFIX);
      g_unlink (path);
    }
  if (!ok && fresh)
    ph_recovery_drop (self); /* half a set helps nobody: try anew at the next gesture */
  return ok;
}

void
ph_recovery_drop (PhRecovery *self)
{
  if (self->base != NULL)
    remove_set (self->base);
  let_go (self);
}

/* Whether the set was left behind; one without a rig is removed on the way. */
static gboolean
is_left_behind (PhRecovery *self, const char *base)
{
  if (self->base != NULL && strcmp (self->base, base) == 0)
    return FALSE;
  g_autofree char *rig = with_suffix (base, RIG_SUFFIX);
  int lock = lock_left_behind (base);
  if (lock < 0)
    return FALSE;
  gboolean has_rig = g_file_test (rig, G_FILE_TEST_IS_REGULAR);
  if (!has_rig)
    remove_set (base);
  close (lock);
  return has_rig;
}

static gint64
time_of (const char *path)
{
  PhFileStamp stamp = ph_file_stamp_of (path);
  return stamp.seconds * 1000000 + stamp.nanoseconds / 1000;
}

static gint
newest_first (gconstpointer a, gconstpointer b)
{
  gint64 time_a = time_of (*(const char *const *)a), time_b = time_of (*(const char *const *)b);
  return time_a < time_b ? 1 : time_a > time_b ? -1 : 0;
}

/* The bases of every set in the folder. */
static GHashTable *
list_bases (PhRecovery *self)
{
  GHashTable *bases = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GDir) dir = g_dir_open (self->folder, 0, NULL);
  const char *name;
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      const char *suffix = g_str_has_suffix (name, RIG_SUFFIX)     ? RIG_SUFFIX
                           : g_str_has_suffix (name, OWNER_SUFFIX) ? OWNER_SUFFIX
                                                                   : NULL;
      if (suffix == NULL)
        continue;
      g_autofree char *bare = g_strndup (name, strlen (name) - strlen (suffix));
      if (g_uuid_string_is_valid (bare)) /* whatever else lies there is not ours */
        g_hash_table_add (bases, g_build_filename (self->folder, bare, NULL));
    }
  return bases;
}

char **
ph_recovery_find (PhRecovery *self)
{
  g_autoptr (GHashTable) bases = list_bases (self);
  GPtrArray *paths = g_ptr_array_new ();
  GHashTableIter iter;
  gpointer base;
  g_hash_table_iter_init (&iter, bases);
  while (g_hash_table_iter_next (&iter, &base, NULL))
    if (is_left_behind (self, base))
      g_ptr_array_add (paths, with_suffix (base, RIG_SUFFIX));
  g_ptr_array_sort (paths, newest_first);
  g_ptr_array_add (paths, NULL);
  return (char **)g_ptr_array_free (paths, FALSE);
}

void
ph_recovery_read_origin (const char *path, PhOrigin *origin)
{
  g_autofree char *base = base_of_rig (path);
  g_autoptr (GKeyFile) keys = read_owner (base);
  g_autofree char *stamp = g_key_file_get_string (keys, GROUP, "stamp", NULL);
  *origin = (PhOrigin){ .uri = g_key_file_get_string (keys, GROUP, "uri", NULL),
                        .own_name = g_key_file_get_string (keys, GROUP, "own-name", NULL),
                        .stamp = ph_file_stamp_from_text (stamp) };
}

char *
ph_recovery_reference_path (const char *path)
{
  g_autofree char *base = base_of_rig (path);
  return with_suffix (base, REFERENCE_SUFFIX);
}

gboolean
ph_recovery_adopt (PhRecovery *self, const char *path, PhOrigin *origin)
{
  g_autofree char *base = base_of_rig (path);
  g_autofree char *owner = with_suffix (base, OWNER_SUFFIX);
  int lock = lock_left_behind (base);
  if (lock < 0)
    return FALSE;
  if (!still_there (lock, owner) || !g_file_test (path, G_FILE_TEST_IS_REGULAR))
    {
      close (lock);
      return FALSE;
    }
  ph_recovery_drop (self);
  ph_recovery_read_origin (path, origin);
  self->lock = lock;
  self->base = g_steal_pointer (&base);
  char *why = NULL;
  if (!write_owner (self, origin, &why)) /* only the process number is lost with it */
    g_free (why);
  return TRUE;
}

void
ph_recovery_discard (PhRecovery *self, const char *path)
{
  g_autofree char *base = base_of_rig (path);
  if (self->base != NULL && strcmp (self->base, base) == 0)
    {
      ph_recovery_drop (self);
      return;
    }
  int lock = lock_left_behind (base);
  if (lock < 0)
    return; /* another document has it now */
  remove_set (base);
  close (lock);
}
