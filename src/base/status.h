/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every way a computation can end, as one list that makes both the codes and their texts, so
 * that the two cannot drift apart. A status never replaces a number: where it is not PH_OK the
 * outputs of the call are untouched unless its header says otherwise.
 */
#pragma once

/** ENTRY (code, what happened: a plain English sentence without a full stop). */
#define PH_STATUS_LIST(ENTRY)                                                                      \
  ENTRY (PH_OK, "no error")                                                                        \
  ENTRY (PH_ERR_TOPPLES, "this rig topples rather than settles")                                   \
  ENTRY (PH_ERR_NOT_DEFINED, "the bow lacks a number that this needs")                             \
  ENTRY (PH_ERR_NOT_POSITIVE, "the inertia or stiffness is not positive")                          \
  ENTRY (PH_ERR_NO_CONVERGENCE, "the search did not converge")                                     \
  ENTRY (PH_ERR_NO_MEMORY, "out of memory")                                                        \
  ENTRY (PH_ERR_GRAPHICS, "OpenGL cannot draw this")                                               \
  ENTRY (PH_ERR_READ, "the file cannot be read")                                                   \
  ENTRY (PH_ERR_TOO_LARGE, "the file is too large")                                                \
  ENTRY (PH_ERR_SYNTAX, "the file is not valid JSON")                                              \
  ENTRY (PH_ERR_INVALID, "the rig has errors")                                                     \
  ENTRY (PH_ERR_WRITE, "the file cannot be written")

typedef enum
{
#define PH_STATUS_ENUM(code, text) code,
  PH_STATUS_LIST (PH_STATUS_ENUM)
#undef PH_STATUS_ENUM
      PH_STATUS_COUNT
} PhStatus;

/** The English sentence of a status (not translated: callers with a screen pass it to gettext).
 * Never null; a status out of range is our own misuse and asserts. */
const char *ph_status_text (PhStatus status);
