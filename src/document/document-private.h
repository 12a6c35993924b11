/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the files that make up PhDocument share: its fields and the steps between an edit and the
 * moment everybody is told. Not for other folders.
 */
#pragma once

#include "document/document.h"
#include "document/file-stamp.h"
#include "document/recovery.h"

/** Undo keeps this many steps: at 256 parts a step is under 0.3 MB. */
#define PH_DOCUMENT_STEPS_MOST 200

/** A whole copy of the rig with what belongs to it. Undo and redo exchange it with what stands. */
typedef struct
{
  PhRig *rig;
  bool with_reference; /* the step changed the reference too (a swap) */
  PhRig *reference;
  bool beyond_numbers; /* while it is open: more was edited than numbers */
  char *label;
  char *selected_before, *selected_after;
} PhStep;

/** A rig with all that is computed from it. */
typedef struct
{
  PhRig *rig; /* null: none */
  PhCompiled *compiled;
  PhReport *report;
} PhComputed;

struct _PhDocument
{
  GObject parent_instance;

  PhComputed open;
  PhComputed reference;
  PhComputed preview; /* the open rig with an answer in it that is only looked at */

  PhIssues errors; /* of the last failed load */

  GFile *file;       /* owned; null: never saved */
  char *own_name;    /* owned; stands in for a rig's absent name */
  PhFileStamp stamp; /* of `file` when it was read or written last */
  PhRig *saved;      /* owned; what the disk has; null: nothing, so everything is unsaved */

  char *selected; /* owned */
  PhUnits units;

  GPtrArray *undo, *redo; /* of PhStep, the next one last */
  PhStep *gesture;        /* owned; what stood before the open gesture; null: none is open */

  PhRecovery *recovery; /* owned */

  /* Owned: what was last notified, so that only true changes are. */
  char *title, *undo_label, *redo_label, *reference_name, *recovery_error;
  gboolean unsaved;
  gboolean flipped;
};

enum
{
  PROP_0,
  PROP_TITLE,
  PROP_FILE,
  PROP_UNSAVED,
  PROP_UNDO_LABEL,
  PROP_REDO_LABEL,
  PROP_SELECTED,
  PROP_UNITS,
  PROP_REFERENCE_NAME,
  PROP_FLIPPED,
  PROP_RECOVERY_ERROR,
  N_PROPS
};

/** What an edit touched: how much has to be computed and told. */
typedef enum
{
  PH_TOUCHED_TEXT,     /* nothing that is computed with */
  PH_TOUCHED_NUMBERS,  /* anything but the tree */
  PH_TOUCHED_STRUCTURE /* parts came, went, moved or were switched */
} PhTouched;

/* document.c */
void ph_document_notify (PhDocument *self, int prop);
void ph_document_tell (PhDocument *self, PhTouched touched);
void ph_document_tell_replaced (PhDocument *self);
void ph_document_tell_removed (PhDocument *self, const char *text);
void ph_document_set_recovery_error (PhDocument *self, const char *text);
/** Compiles and reports anew; takes over `rig` (null: none). */
void ph_computed_take (PhComputed *computed, PhRig *rig);
/** The report alone, after the compiled rig was updated. */
void ph_computed_report (PhComputed *computed);
/** Brings "title", "unsaved", the labels and "reference-name" up to date. */
void ph_document_refresh (PhDocument *self);
/** Sets the selection where `id` is there, else clears it. */
void ph_document_select_if_there (PhDocument *self, const char *id);

/* document-undo.c */
void ph_step_free (gpointer step);
void ph_document_forget_steps (PhDocument *self);
/** Puts `step` (taken over) on the undo stack; redo is over. */
void ph_document_push_step (PhDocument *self, PhStep *step);

/* document-file.c */
/** Reads a rig of this machine's disk; on failure keeps the errors for ph_document_get_issues. */
gboolean ph_document_read (PhDocument *self, const char *path, PhRig **rig, GError **error);
/** Another rig: takes over `rig` and `saved` (null: nothing on disk); steps are forgotten. Tells
 * nobody and leaves the recovery files to the caller. */
void ph_document_replace (PhDocument *self, PhRig *rig, GFile *file, const char *own_name,
                          PhRig *saved);

/* document-recovery.c */
/** After a gesture: writes the recovery file, or drops it where everything is saved. */
void ph_document_keep_safe (PhDocument *self);
