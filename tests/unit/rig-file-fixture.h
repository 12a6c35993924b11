/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One good rig file with a part of every kind, for tests that break or change it.
 */
#pragma once

#include "store/rig-file.h"

#include "check.h"

static const char good_rig[] =
    "{\"format\": \"plumbhold-rig\", \"version\": 1,\n"
    " \"archer\": {\"stature_mm\": 1700, \"hand\": {\"roll_bias_nm\": 0, \"bubble_tests\": [\n"
    "  {\"mass_g\": 3000, \"com_mm\": [70, 0, -50], \"draw_length_mm\": 660, \"nock_height_mm\": "
    "42,"
    " \"bubble_deg\": 1, \"sd_deg\": 0.3}]}},\n"
    " \"bow\": {\"kind\": \"compound\", \"mass_g\": 1950, \"com_mm\": [-18, -3, 12],"
    " \"gyration_mm\": [290, 295, 60], \"brace_height_mm\": 178,\n"
    "  \"mounts\": [{\"id\": \"front\", \"at_mm\": [62, 0, -72], \"axis\": [1, 0, 0]},\n"
    "   {\"id\": \"rear\", \"at_mm\": [-28, 0, -150], \"axis\": [-1, 0, 0]}]},\n"
    " \"parts\": [\n"
    "  {\"id\": \"sight\", \"kind\": \"accessory\", \"on\": \"bow\", \"mass_g\": 310,"
    " \"at_mm\": [150, -38, 95], \"size_mm\": [260, 30, 60]},\n"
    "  {\"id\": \"rod\", \"kind\": \"bar\", \"on\": \"bow:front\", \"length_mm\": 762, "
    "\"outer_mm\": 18,"
    " \"inner_mm\": 16, \"mass_g\": 165, \"tip_fitting_g\": 25},\n"
    "  {\"id\": \"disc\", \"kind\": \"weights\", \"on\": \"rod\", \"count\": 8, \"each_g\": 28.35,"
    " \"diameter_mm\": 25.4, \"each_mm\": 7.2},\n"
    "  {\"id\": \"block\", \"kind\": \"bracket\", \"on\": \"bow:rear\", \"mass_g\": 85,"
    " \"com_mm\": [12, 4, 0], \"size_mm\": [30, 40, 20], \"sockets\":"
    " [{\"id\": \"a\", \"at_mm\": [20, 14, 0], \"axis\": [1, 0, 0]}]},\n"
    "  {\"id\": \"tail\", \"kind\": \"damper\", \"on\": \"block:a\", \"mass_g\": 30, "
    "\"length_mm\": 28,"
    " \"diameter_mm\": 26}]}\n";

/* Parses; what status, rig and issues must have in common is checked on the way. */
static inline PhRig *
parse_rig (const char *text, PhIssues *issues)
{
  PhRig *rig = NULL;
  PhStatus status = ph_rig_parse (text, strlen (text), &rig, issues);
  CHECK ((status == PH_OK) == (rig != NULL));
  CHECK ((status == PH_OK) == (ph_issues_errors (issues) == 0));
  return rig;
}

/* Parses what must be good. */
static inline PhRig *
parse_good_rig (const char *text)
{
  PhIssues issues = { 0 };
  PhRig *rig = parse_rig (text, &issues);
  for (size_t i = 0; i < issues.n && !rig; i++)
    CHECK (false, "%s: %s", issues.items[i].key ? issues.items[i].key : "", issues.items[i].text);
  ph_issues_clear (&issues);
  return rig;
}
