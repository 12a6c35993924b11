/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Unsaved rigs kept beside, in the user's state folder, one set of files a running document:
 * NAME.rig.json (the rig), NAME.reference (the rig it is compared with, where there is one) and
 * NAME.owner (where it came from). The owner file is locked for as long as its document lives; the
 * kernel drops that lock however the program ends, so a set whose lock can be had was left behind.
 * Where the file system has no locks the process number in it decides. A set is written in full
 * before it can be found: the owner file first, then the rig by rename.
 */
#pragma once

#include "document/file-stamp.h"
#include "store/rig-file.h"

G_BEGIN_DECLS

typedef struct PhRecovery PhRecovery;

/** Where a rig came from. */
typedef struct
{
  char *uri;         /* the file it is kept in; null: none yet */
  char *own_name;    /* stands in for a rig's absent name; may be null */
  PhFileStamp stamp; /* of that file when it was read or written last */
} PhOrigin;
void ph_origin_clear (PhOrigin *origin);

/** Nothing is written before the first ph_recovery_keep. */
PhRecovery *ph_recovery_new (const char *folder);
/** Lets go of the lock but leaves the files: after this they count as left behind. */
void ph_recovery_free (PhRecovery *self);

/** Writes `rig` (and `reference`, where not null). False: `*why` is a new sentence. The files
 * written before are then still there. */
gboolean ph_recovery_keep (PhRecovery *self, const PhRig *rig, const PhRig *reference,
                           const PhOrigin *origin, char **why);
/** Removes this document's set: all is saved, or the person said so. */
void ph_recovery_drop (PhRecovery *self);

/** Paths of rigs whose document is not running any more, newest first; null-terminated. Sweeps
 * away owner files without a rig. (transfer full) */
char **ph_recovery_find (PhRecovery *self);
/** Makes a set that was left behind this document's own; its former one is removed. False, with
 * nothing changed, where another document has it now. */
gboolean ph_recovery_adopt (PhRecovery *self, const char *path, PhOrigin *origin);
/** Removes a set that was left behind. */
void ph_recovery_discard (PhRecovery *self, const char *path);

/** Where the rig at `path` came from; cleared fields where that is not known. */
void ph_recovery_read_origin (const char *path, PhOrigin *origin);
/** Path of the reference kept with the rig at `path`. (transfer full) */
char *ph_recovery_reference_path (const char *path);

G_END_DECLS
