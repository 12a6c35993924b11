/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The texts of the status codes, made from the same list as the codes.
 */
#include "base/status.h"

#include <assert.h>

const char *
ph_status_text (PhStatus status)
{
  static const char *const texts[] = {
#define PH_STATUS_STRING(code, text) text,
    PH_STATUS_LIST (PH_STATUS_STRING)
#undef PH_STATUS_STRING
  };
  assert (status >= 0 && status < PH_STATUS_COUNT);
  return texts[status];
}
