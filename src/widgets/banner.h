/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A strip across the top of the window for what the person should know and may answer: a file that
 * could not be opened, a rig found after a crash. One clear sentence, details to unfold, buttons.
 * A screen reader hears it as an alert. Nothing is waiting for it: work goes on below.
 */
#pragma once

#include <gtk/gtk.h>

#include "model/issue.h"

G_BEGIN_DECLS

#define PH_TYPE_BANNER (ph_banner_get_type ())
G_DECLARE_FINAL_TYPE (PhBanner, ph_banner, PH, BANNER, GtkWidget)

typedef enum
{
  PH_BANNER_QUESTION, /* there is something to choose; nothing is wrong */
  PH_BANNER_ERROR     /* something did not work */
} PhBannerTone;

typedef void (*PhBannerAnswer) (PhBanner *self, gpointer data);

/** Hidden until it says something. (transfer floating) */
GtkWidget *ph_banner_new (void);

/** Shows `text` (one sentence, plain) in place of whatever stood there, with every line of
 * `issues` (may be null) to unfold. Any answers of before are gone. */
void ph_banner_say (PhBanner *self, PhBannerTone tone, const char *text, const PhIssues *issues);

/** A button that closes the banner and then calls `answer`. `data` must outlive the banner's
 * text. */
void ph_banner_add_answer (PhBanner *self, const char *label, PhBannerAnswer answer, gpointer data);

void ph_banner_close (PhBanner *self);
gboolean ph_banner_get_open (PhBanner *self);

G_END_DECLS
