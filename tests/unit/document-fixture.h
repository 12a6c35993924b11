/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A document in a folder of its own: what the tests of the document floor start from. The rig is
 * the worked example of the rig file's own page, with trade names (an invented club).
 */
#pragma once

#include <glib/gstdio.h>

#include "check.h"
#include "document/document.h"

#define FIXTURE_RIG                                                                                \
  "{\"format\": \"plumbhold-rig\", \"version\": 1, \"name\": \"Harbour club indoor\","             \
  " \"archer\": {\"bow_hand\": \"left\", \"draw_length_mm\": 660, \"nock_height_mm\": 42,"         \
  "  \"holding_weight_n\": 62},"                                                                   \
  " \"bow\": {\"kind\": \"compound\", \"mass_g\": 1950, \"com_mm\": [-18, -3, 12],"                \
  "  \"gyration_mm\": [290, 295, 60], \"axle_to_axle_mm\": 940, \"brace_height_mm\": 178,"         \
  "  \"mounts\": [{\"id\": \"front\", \"at_mm\": [62, 0, -72], \"axis\": [1, 0, 0]},"              \
  "   {\"id\": \"rear\", \"at_mm\": [-28, 0, -150], \"axis\": [-1, 0, 0]}]},"                      \
  " \"parts\": ["                                                                                  \
  "  {\"id\": \"sight\", \"kind\": \"accessory\", \"name\": \"Sight\", \"on\": \"bow\","           \
  "   \"mass_g\": 310, \"at_mm\": [150, -38, 95], \"size_mm\": [260, 30, 60]},"                    \
  "  {\"id\": \"front-bar\", \"kind\": \"bar\", \"name\": \"Front bar\", \"on\": \"bow:front\","   \
  "   \"swing_deg\": 0, \"lift_deg\": -8, \"length_mm\": 762, \"outer_mm\": 18,"                   \
  "   \"inner_mm\": 16, \"mass_g\": 165, \"root_fitting_g\": 35, \"tip_fitting_g\": 25},"          \
  "  {\"id\": \"front-stack\", \"kind\": \"weights\", \"name\": \"Front weights\","                \
  "   \"on\": \"front-bar\", \"count\": 8, \"each_g\": 28.349523125, \"diameter_mm\": 25.4,"       \
  "   \"each_mm\": 7.2},"                                                                          \
  "  {\"id\": \"block\", \"kind\": \"bracket\", \"name\": \"Side mount\", \"on\": \"bow:rear\","   \
  "   \"mass_g\": 85, \"com_mm\": [12, 4, 0], \"size_mm\": [30, 40, 20],"                          \
  "   \"sockets\": [{\"id\": \"a\", \"at_mm\": [20, 14, 0], \"axis\": [1, 0, 0]},"                 \
  "    {\"id\": \"b\", \"at_mm\": [20, -14, 0], \"axis\": [1, 0, 0]}]},"                           \
  "  {\"id\": \"back-bar\", \"kind\": \"bar\", \"name\": \"Back bar\", \"on\": \"block:a\","       \
  "   \"swing_deg\": 20, \"lift_deg\": -12, \"length_mm\": 305, \"outer_mm\": 18,"                 \
  "   \"inner_mm\": 16, \"mass_g\": 95},"                                                          \
  "  {\"id\": \"back-stack\", \"kind\": \"weights\", \"name\": \"Back weights\","                  \
  "   \"on\": \"back-bar\", \"count\": 5, \"each_g\": 28.349523125, \"diameter_mm\": 25.4,"        \
  "   \"each_mm\": 7.2}]}"

typedef struct
{
  char *folder; /* everything of the test lies in it */
  char *state;  /* recovery files */
  char *path;   /* the rig */
  GFile *file;
  PhDocument *document;
} Fixture;

static inline char *
fixture_path (const Fixture *fixture, const char *name)
{
  return g_build_filename (fixture->folder, name, NULL);
}

static inline void
fixture_write (const char *path, const char *text)
{
  GError *error = NULL;
  if (!g_file_set_contents (path, text, -1, &error))
    g_error ("%s", error->message);
}

static inline char *
fixture_read (const char *path)
{
  char *text = NULL;
  g_file_get_contents (path, &text, NULL, NULL);
  return text;
}

/** A document that knows where to keep its recovery files, with its starter rig. */
static inline PhDocument *
fixture_document (const Fixture *fixture)
{
  PhDocument *document = ph_document_new ();
  ph_document_set_recovery_folder (document, fixture->state);
  return document;
}

static inline Fixture
fixture_new (void)
{
  Fixture fixture = { .folder = g_dir_make_tmp ("plumbhold-test-XXXXXX", NULL) };
  g_assert_nonnull (fixture.folder);
  fixture.state = fixture_path (&fixture, "state");
  fixture.path = fixture_path (&fixture, "harbour.rig.json");
  fixture.file = g_file_new_for_path (fixture.path);
  fixture_write (fixture.path, FIXTURE_RIG);
  fixture.document = fixture_document (&fixture);
  GError *error = NULL;
  if (!ph_document_load (fixture.document, fixture.file, &error))
    g_error ("%s", error->message);
  return fixture;
}

static inline void
fixture_remove_tree (const char *path)
{
  GDir *dir = g_dir_open (path, 0, NULL);
  const char *name;
  while (dir && (name = g_dir_read_name (dir)))
    {
      g_autofree char *child = g_build_filename (path, name, NULL);
      fixture_remove_tree (child);
    }
  g_clear_pointer (&dir, g_dir_close);
  g_remove (path);
}

static inline void
fixture_clear (Fixture *fixture)
{
  g_clear_object (&fixture->document);
  g_clear_object (&fixture->file);
  fixture_remove_tree (fixture->folder);
  g_free (fixture->folder);
  g_free (fixture->state);
  g_free (fixture->path);
}

/** How many files of that ending lie in the folder. */
static inline guint
fixture_count (const char *folder, const char *ending)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  guint n = 0;
  while (dir && (name = g_dir_read_name (dir)))
    n += g_str_has_suffix (name, ending);
  return n;
}

static inline const PhPart *
fixture_part (const Fixture *fixture, const char *id)
{
  const PhRig *rig = ph_document_get_rig (fixture->document);
  int i = ph_rig_find (rig, id);
  return i < 0 ? NULL : &rig->parts[i];
}

/** Sets a number that has to be taken. */
static inline void
fixture_set (const Fixture *fixture, const char *id, const char *key, double value)
{
  GError *error = NULL;
  CHECK (ph_document_set_number (fixture->document, id, key, 0, value, &error), "%s %s: %s", id,
         key, error ? error->message : "");
  g_clear_error (&error);
}
