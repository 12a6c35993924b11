/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The open rig, its results, its reference, its undo steps and its file. Everything a screen
 * shows is read from here and every edit goes through here; no widget holds a second copy.
 * Commands go down, notifications come up: "changed" after each recompute.
 */
#pragma once

#include <gio/gio.h>

#include "base/quantity.h"
#include "model/edit.h"
#include "model/report.h"
#include "model/starter.h"

G_BEGIN_DECLS

#define PH_TYPE_DOCUMENT (ph_document_get_type ())
G_DECLARE_FINAL_TYPE (PhDocument, ph_document, PH, DOCUMENT, GObject)

/** Errors of the world (PH_DOCUMENT_ERROR_FILE: cannot be read or written;
 * PH_DOCUMENT_ERROR_CHANGED: somebody else wrote the file since it was opened) and of a user's file
 * (PH_DOCUMENT_ERROR_RIG: the rig has errors; the message is the first of them, with how many more;
 * ph_document_get_issues has them all). */
#define PH_DOCUMENT_ERROR (ph_document_error_quark ())
GQuark ph_document_error_quark (void);
typedef enum
{
  PH_DOCUMENT_ERROR_FILE,
  PH_DOCUMENT_ERROR_RIG,
  PH_DOCUMENT_ERROR_REFUSED, /* an edit that would break the rig: the message says why */
  PH_DOCUMENT_ERROR_CHANGED  /* ask, then ph_document_save_anyway, or another file */
} PhDocumentError;

/* Properties (all notify):
 *   "title"          string  the rig's name
 *   "file"           GFile   where it is kept, or null
 *   "unsaved"        boolean differs from what is on disk
 *   "undo-label"     string  "back bar out 20° → 26°", null when there is nothing to undo
 *   "redo-label"     string
 *   "selected"       string  id of the selected part, "bow" for the bow, null for none
 *   "units"          int     PhUnits
 *   "reference-name" string  null when there is none
 *   "flipped"        boolean the reference is looked at in place of the open rig, while a key or
 *                            button is held; never without a reference
 *   "recovery-error" string  why unsaved work is not being kept beside, null while it is; set once,
 *                            at the first failure, and cleared by the next success
 * Signals:
 *   "changed" ()             the rig or the reference was recomputed: read it anew
 *   "structure-changed" ()   before "changed", when parts were added, removed, moved or switched
 *   "replaced" ()            another rig was opened: after both
 *   "removed" (string text)  something was removed; text names it: "Removed back bar and its
 *                            weights"
 */

/** A document holding the starter rig for a compound bow. (transfer full) */
PhDocument *ph_document_new (void);

/* Reading. All borrowed, valid until the next edit. */
const PhRig *ph_document_get_rig (PhDocument *self);
const PhReport *ph_document_get_report (PhDocument *self);
const PhCompiled *ph_document_get_compiled (PhDocument *self);
/** null when there is no reference. */
const PhRig *ph_document_get_reference_rig (PhDocument *self);
const PhReport *ph_document_get_reference_report (PhDocument *self);
const PhCompiled *ph_document_get_reference_compiled (PhDocument *self);
/** Notes of the open rig, or the errors of the last failed load. */
const PhIssues *ph_document_get_issues (PhDocument *self);
const char *ph_document_get_title (PhDocument *self);
GFile *ph_document_get_file (PhDocument *self);
gboolean ph_document_get_unsaved (PhDocument *self);
const char *ph_document_get_undo_label (PhDocument *self);
const char *ph_document_get_redo_label (PhDocument *self);

/* Selection. */
const char *ph_document_get_selected (PhDocument *self);
/** id of a part, "bow", or null. An id that is not in the rig clears the selection. */
void ph_document_select (PhDocument *self, const char *id);
/** Index of the selected part in the rig, −1 for the bow or none. */
int ph_document_get_selected_part (PhDocument *self);

PhUnits ph_document_get_units (PhDocument *self);
void ph_document_set_units (PhDocument *self, PhUnits units);

/* Gestures. Between begin and end every edit is live and together they are one undo step; an edit
 * outside a gesture is a gesture of its own. The label of the step is made by the document from
 * what changed ("back bar out 20° → 26°"). Gestures do not nest. */
void ph_document_begin_gesture (PhDocument *self);
/** Pushes the step (none where nothing changed) and writes the recovery file. */
void ph_document_end_gesture (PhDocument *self);
/** Puts back what stood before the gesture. */
void ph_document_cancel_gesture (PhDocument *self);
gboolean ph_document_in_gesture (PhDocument *self);

/* Edits. False: refused, error says why, nothing changed. Units are the file's. */
gboolean ph_document_set_number (PhDocument *self, const char *part_id, const char *key,
                                 int component, double value, GError **error);
gboolean ph_document_set_bow_number (PhDocument *self, const char *key, int component, double value,
                                     GError **error);
gboolean ph_document_set_archer_number (PhDocument *self, const char *key, double value,
                                        GError **error);
gboolean ph_document_set_part_name (PhDocument *self, const char *part_id, const char *name,
                                    GError **error);
gboolean ph_document_set_title (PhDocument *self, const char *title, GError **error);
gboolean ph_document_set_notes (PhDocument *self, const char *notes, GError **error);
gboolean ph_document_set_off (PhDocument *self, const char *part_id, gboolean off, GError **error);
/** Adds and selects; `on` as in the rig file. */
gboolean ph_document_add (PhDocument *self, const PhPart *part, const char *on, GError **error);
/** Puts a copy of `part` between part `below_id` and what that hangs on, and selects it; `below_id`
 * goes to its socket `socket`, null for its far end. */
gboolean ph_document_insert (PhDocument *self, const PhPart *part, const char *below_id,
                             const char *socket, GError **error);
/** Removes with all that hangs on it; selects its host; emits "removed". */
void ph_document_remove (PhDocument *self, const char *part_id);
gboolean ph_document_duplicate (PhDocument *self, const char *part_id, GError **error);
gboolean ph_document_rehang (PhDocument *self, const char *part_id, const char *on, GError **error);
/** The part and what hangs on it as clipboard text. (transfer full) */
char *ph_document_copy (PhDocument *self, const char *part_id);
/** Pastes on the first free place on `near_id` (part id, "bow" or null) or anywhere else. */
gboolean ph_document_paste (PhDocument *self, const char *text, const char *near_id,
                            GError **error);
void ph_document_mirror (PhDocument *self);
/** Any other change of what the rig file holds (bubble checks, answers, limits), as a gesture or
 * inside one. `edit` gets a copy of the rig; when it returns true the copy is checked
 * (ph_check_rig) and taken over, else `issues` has said why not. */
typedef bool (*PhDocumentEdit) (PhRig *rig, gpointer data, PhIssues *issues);
gboolean ph_document_edit (PhDocument *self, PhDocumentEdit edit, gpointer data, GError **error);

gboolean ph_document_undo (PhDocument *self);
gboolean ph_document_redo (PhDocument *self);

/* Files. A failed load leaves the open rig untouched. */
void ph_document_new_rig (PhDocument *self, const PhStarter *starter, const char *name);
gboolean ph_document_load (PhDocument *self, GFile *file, GError **error);
/** Loads as a copy with no file of its own: the demo. */
gboolean ph_document_load_copy (PhDocument *self, GFile *file, GError **error);
/** `file` null: the document's own. PH_DOCUMENT_ERROR_CHANGED where that is the document's own and
 * holds another rig than the one that was loaded from it or last saved to it. */
gboolean ph_document_save (PhDocument *self, GFile *file, GError **error);
/** The same without that question: for when the person said "overwrite". */
gboolean ph_document_save_anyway (PhDocument *self, GFile *file, GError **error);
/** Writes the rig without archer, checks and body data; the document stays as it is. */
gboolean ph_document_share (PhDocument *self, GFile *file, GError **error);

/* Reference: a rig to compare with. */
/** Takes the open rig as it stands. */
void ph_document_reference_take (PhDocument *self);
gboolean ph_document_reference_load (PhDocument *self, GFile *file, GError **error);
/** Swaps open rig and reference: one undo step. */
void ph_document_reference_swap (PhDocument *self);
void ph_document_reference_clear (PhDocument *self);
/** Whether the reference is shown for the moment. What is edited stays the open rig. */
gboolean ph_document_get_flipped (PhDocument *self);
/** Without a reference it stays false. */
void ph_document_set_flipped (PhDocument *self, gboolean flipped);
/** What is looked at: the open rig and what it is compared with, the other way round while flipped.
 * Part indices are those of `rig`. Borrowed, valid until the next edit or flip. */
typedef struct
{
  const PhRig *rig;
  const PhCompiled *compiled;
  const PhReport *report;
  const char *name;
} PhShown;
PhShown ph_document_get_shown (PhDocument *self);
/** All null where there is no reference. */
PhShown ph_document_get_compared (PhDocument *self);

/* Recovery: after each gesture an unsaved rig is also written to the user's state folder. */
/** The folder, "$XDG_STATE_HOME/plumbhold"; tests may set another before the first edit. */
void ph_document_set_recovery_folder (PhDocument *self, const char *path);
/** Paths of rigs left behind by a run that is not running any more; null-terminated, newest
 * first. (transfer full) */
char **ph_document_find_recovered (PhDocument *self);
/** What a recovered rig is called: its name, or that of the file it came from. (transfer full) */
char *ph_document_dup_recovered_title (PhDocument *self, const char *path);
/** Opens a recovered rig, as unsaved, under the file it came from; the recovery file goes on
 * serving as this document's own. */
gboolean ph_document_load_recovered (PhDocument *self, const char *path, GError **error);
/** Forgets a recovered rig for good: asked by the person. */
void ph_document_discard_recovered (PhDocument *self, const char *path);
/** At a clean end: drops this document's own recovery file. */
void ph_document_forget_recovery (PhDocument *self);

G_END_DECLS
