/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is wrong with a user's number or file, or worth a note: where, which key, and what would
 * be right. Sentences are plain English made here; screens pass them on as they are, since they
 * carry ids and numbers.
 */
#pragma once

#include <stdbool.h>
#include <stddef.h>

typedef enum
{
  PH_WHERE_FILE,
  PH_WHERE_BOW,
  PH_WHERE_ARCHER,
  PH_WHERE_PART
} PhWhere;

struct PhField;

typedef struct
{
  PhWhere where;
  char *part;   /* PH_WHERE_PART: its id, or "#N" (from 1) without one; else null */
  char *key;    /* the key, "limits.swing_deg" for one inside; null: none */
  char *text;   /* what is wrong and what would be right */
  bool is_note; /* the rig loads all the same */
  /* A number that is out of its own field's range, for sentences in other words; else null. */
  const struct PhField *field; /* model/fields.h */
  int component;               /* 0–2 of a vector, else 0 */
  double value;
} PhIssue;

typedef struct
{
  PhIssue *items;
  size_t n;
} PhIssues;

/** Adds an issue; part and key are copied, cut at 80 characters. A key inside a list names its
 * item, counted from 0: "sockets[1].axis", "hand.bubble_tests[0].sd_deg". Null issues: nobody asks.
 */
void ph_issues_add (PhIssues *issues, PhWhere where, const char *part, const char *key,
                    bool is_note, const char *format, ...) __attribute__ ((format (printf, 6, 7)));
/** Says of the issue added last which number it is about. */
void ph_issues_name_number (PhIssues *issues, const struct PhField *field, int component,
                            double value);
void ph_issues_clear (PhIssues *issues);
/** Moves every issue to the end of `to` (null: drops them) and leaves `from` empty. */
void ph_issues_move (PhIssues *from, PhIssues *to);
/** Issue i alone, taken out of the list: free with ph_issue_free. */
PhIssue *ph_issue_take (PhIssues *issues, size_t i);
void ph_issue_free (PhIssue *issue);
/** How many are errors (not notes). */
size_t ph_issues_errors (const PhIssues *issues);
/** "part ID: KEY: text", "bow: KEY: text", "archer: KEY: text", "KEY: text" or "text": at most
 * 900 characters. New string. */
char *ph_issue_line (const PhIssue *issue);

#define PH_ISSUE_LABEL_SIZE 24

/** What an issue calls a part: its id, or "#N" from 1 where it has none. Borrowed from either. */
const char *ph_issue_part_label (const char *id, size_t index, char buffer[PH_ISSUE_LABEL_SIZE]);
