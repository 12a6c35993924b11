/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The texts of the one list.
 */
#include "physics/refused.h"

#include <assert.h>

const char *
ph_refused_text (PhRefused refused)
{
  static const char *const texts[] = {
#define PH_REFUSED_TEXT(code, text) text,
    PH_REFUSED_LIST (PH_REFUSED_TEXT)
#undef PH_REFUSED_TEXT
  };
  assert ((unsigned)refused < PH_REFUSED_COUNT);
  return texts[refused];
}
