/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Saving and loading against a real folder: what POSIX may do to a file, and what must be left
 * when it does. Root is not kept out by modes, so that the checks of permissions are left to other
 * users there.
 */
#include "store/save-file.h"

#include <dirent.h>
#include <fcntl.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/un.h>
#include <unistd.h>

#include "base/text.h"
#include "check.h"
#include "store/read-file.h"

#define MOST 4096

static char folder[] = "/tmp/plumbhold-save-XXXXXX";

/* The path of a name in the folder: the same buffer each time, four in turn. */
static const char *
in (const char *name)
{
  static char paths[4][512];
  static int next;
  char *path = paths[next++ % 4];
  snprintf (path, sizeof paths[0], "%s/%s", folder, name);
  return path;
}

static void
write_plain (const char *name, const char *text)
{
  FILE *file = fopen (in (name), "w");
  fputs (text, file);
  fclose (file);
}

static void
check_holds (const char *name, const char *want)
{
  char *bytes = NULL, *why = NULL;
  size_t size = 0;
  PhStatus status = ph_read_file (in (name), MOST, &bytes, &size, &why);
  CHECK (status == PH_OK, "%s: %s", name, why ? why : "");
  if (status == PH_OK)
    CHECK_TEXT (bytes, want);
  free (bytes);
  free (why);
}

static size_t
files_in_folder (void)
{
  size_t n = 0;
  DIR *dir = opendir (folder);
  for (struct dirent *entry = readdir (dir); entry; entry = readdir (dir))
    n += strcmp (entry->d_name, ".") != 0 && strcmp (entry->d_name, "..") != 0;
  closedir (dir);
  return n;
}

static void
check_saves (const char *path, const char *text)
{
  char *why = NULL;
  PhStatus status = ph_save_file (path, text, strlen (text), &why);
  CHECK (status == PH_OK, "%s: %s", path, why ? why : "");
  free (why);
}

static void
check_refuses (const char *path, const char *text, const char *says)
{
  char *why = NULL;
  size_t before = files_in_folder ();
  CHECK (ph_save_file (path, text, strlen (text), &why) == PH_ERR_WRITE, "%s", path);
  CHECK (why && strstr (why, says), "«%s» lacks «%s»", why ? why : "", says);
  CHECK (files_in_folder () == before, "something was left beside it");
  free (why);
}

static mode_t
mode_of (const char *name)
{
  struct stat info;
  return stat (in (name), &info) == 0 ? info.st_mode & 07777 : 0;
}

static void
new_file_has_the_mode_that_the_umask_leaves (void)
{
  mode_t before = umask (027);
  check_saves (in ("new"), "one\n");
  umask (before);
  check_holds ("new", "one\n");
  CHECK (mode_of ("new") == 0640, "%o", (unsigned)mode_of ("new"));
  unlink (in ("new"));
}

static void
replaced_file_keeps_its_mode (void)
{
  write_plain ("kept", "old");
  chmod (in ("kept"), 0604);
  check_saves (in ("kept"), "new and longer");
  check_holds ("kept", "new and longer");
  CHECK (mode_of ("kept") == 0604, "%o", (unsigned)mode_of ("kept"));
  CHECK (files_in_folder () == 1);
  unlink (in ("kept"));
}

static void
links_are_followed_to_their_target (void)
{
  struct stat info;
  mkdir (in ("deep"), 0700);
  write_plain ("deep/target", "old");
  CHECK (symlink ("deep/target", in ("middle")) == 0);
  CHECK (symlink (in ("middle"), in ("link")) == 0);
  check_saves (in ("link"), "new");
  check_holds ("deep/target", "new");
  CHECK (lstat (in ("link"), &info) == 0 && S_ISLNK (info.st_mode));
  CHECK (lstat (in ("middle"), &info) == 0 && S_ISLNK (info.st_mode));
  CHECK (symlink ("deep/not-yet", in ("dangling")) == 0);
  check_saves (in ("dangling"), "made");
  check_holds ("deep/not-yet", "made");
  CHECK (symlink ("round-b", in ("round-a")) == 0 && symlink ("round-a", in ("round-b")) == 0);
  check_refuses (in ("round-a"), "x", "circle");
  for (const char *const *name =
           (const char *const[]){ "round-a", "round-b", "dangling", "link", "middle",
                                  "deep/not-yet", "deep/target", NULL };
       *name; name++)
    unlink (in (*name));
  rmdir (in ("deep"));
}

static void
what_is_no_file_is_not_replaced (void)
{
  mkdir (in ("sub"), 0700);
  check_refuses (in ("sub"), "x", "folder");
  check_refuses (in ("no/such/place"), "x", "no such folder");
  CHECK (mkfifo (in ("pipe"), 0600) == 0);
  check_refuses (in ("pipe"), "x", "pipe or device");
  check_refuses ("/dev/null", "x", "pipe or device");
  unlink (in ("pipe"));
  rmdir (in ("sub"));
  char name[300];
  memset (name, 'n', sizeof name - 1);
  name[sizeof name - 1] = '\0';
  check_refuses (in (name), "x", "too long");
}

static void
permission_is_needed (void)
{
  if (geteuid () == 0)
    return;
  write_plain ("locked", "old");
  chmod (in ("locked"), 0444);
  check_refuses (in ("locked"), "new", "only be read");
  check_holds ("locked", "old");
  chmod (in ("locked"), 0644);
  chmod (folder, 0500);
  check_refuses (in ("other"), "new", "no permission");
  check_refuses (in ("locked"), "new", "no permission");
  chmod (folder, 0700);
  check_holds ("locked", "old");
  unlink (in ("locked"));
}

static void
full_disk_leaves_the_old_file (void)
{
  struct rlimit before, small;
  write_plain ("full", "old");
  getrlimit (RLIMIT_FSIZE, &before);
  small = before;
  small.rlim_cur = 10;
  signal (SIGXFSZ, SIG_IGN);
  setrlimit (RLIMIT_FSIZE, &small);
  check_refuses (in ("full"), "more than ten bytes of text", "larger than is allowed");
  setrlimit (RLIMIT_FSIZE, &before);
  check_holds ("full", "old");
  unlink (in ("full"));
}

static void
check_unreadable (const char *path, PhStatus want, const char *says)
{
  char *bytes = NULL, *why = NULL;
  size_t size;
  PhStatus status = ph_read_file (path, MOST, &bytes, &size, &why);
  CHECK (status == want, "%s: %d", path, status);
  CHECK (why && strstr (why, says), "«%s» lacks «%s»", why ? why : "", says);
  free (bytes);
  free (why);
}

static void
what_is_no_file_is_not_read_and_never_waited_for (void)
{
  alarm (5); /* ends the program should a pipe be waited for */
  check_unreadable (in ("nothing"), PH_ERR_READ, "no such file");
  check_unreadable (folder, PH_ERR_READ, "folder");
  CHECK (mkfifo (in ("pipe"), 0600) == 0);
  check_unreadable (in ("pipe"), PH_ERR_READ, "pipe or device");
  unlink (in ("pipe"));
  check_unreadable ("/dev/zero", PH_ERR_READ, "pipe or device");
  int fd = socket (AF_UNIX, SOCK_STREAM, 0);
  struct sockaddr_un address = { .sun_family = AF_UNIX };
  snprintf (address.sun_path, sizeof address.sun_path, "%s/socket", folder);
  CHECK (bind (fd, (struct sockaddr *)&address, sizeof address) == 0);
  check_unreadable (in ("socket"), PH_ERR_READ, "socket");
  close (fd);
  unlink (in ("socket"));
  alarm (0);
  if (geteuid () == 0)
    return;
  write_plain ("secret", "x");
  chmod (in ("secret"), 0);
  check_unreadable (in ("secret"), PH_ERR_READ, "no permission");
  unlink (in ("secret"));
}

static void
file_of_the_greatest_size_is_read_and_one_byte_more_is_not (void)
{
  char *text = ph_alloc (MOST + 2);
  memset (text, 'a', MOST + 1);
  text[MOST] = '\0';
  write_plain ("large", text);
  check_holds ("large", text);
  text[MOST] = 'a';
  text[MOST + 1] = '\0';
  write_plain ("large", text);
  check_unreadable (in ("large"), PH_ERR_TOO_LARGE, "too large: 4097 bytes");
  /* A file that says it is empty (the kernel's own do) is read until it ends. */
  check_unreadable ("/proc/self/smaps", PH_ERR_TOO_LARGE, "too large");
  unlink (in ("large"));
  free (text);
}

static void
empty_file_and_nul_bytes_are_kept (void)
{
  char *bytes = NULL, *why = NULL;
  size_t size = 9;
  check_saves (in ("empty"), "");
  check_holds ("empty", "");
  CHECK (ph_save_file (in ("empty"), "a\0b", 3, &why) == PH_OK);
  CHECK (ph_read_file (in ("empty"), MOST, &bytes, &size, &why) == PH_OK);
  CHECK (size == 3 && memcmp (bytes, "a\0b", 4) == 0);
  free (bytes);
  unlink (in ("empty"));
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  if (!mkdtemp (folder))
    return EXIT_FAILURE;
  CASE (new_file_has_the_mode_that_the_umask_leaves);
  CASE (replaced_file_keeps_its_mode);
  CASE (links_are_followed_to_their_target);
  CASE (what_is_no_file_is_not_replaced);
  CASE (permission_is_needed);
  CASE (full_disk_leaves_the_old_file);
  CASE (what_is_no_file_is_not_read_and_never_waited_for);
  CASE (file_of_the_greatest_size_is_read_and_one_byte_more_is_not);
  CASE (empty_file_and_nul_bytes_are_kept);
  rmdir (folder);
  return check_end ();
}
