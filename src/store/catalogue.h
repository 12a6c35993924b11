/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The catalogue of generic, unbranded parts in data/catalogue.json: what Add offers.
 */
#pragma once

#include "base/status.h"
#include "model/issue.h"
#include "model/part.h"

typedef struct
{
  char *search; /* other words that the trade has for it; null: none */
  char *group;  /* English: "Front bars", "Back bars", "Weights", …; screens pass it to gettext */
  PhPart part;  /* name, numbers, source catalogue; no id and no place */
} PhCatalogueItem;

typedef struct
{
  PhCatalogueItem *items;
  size_t n;
} PhCatalogue;

PhStatus ph_catalogue_parse (const char *bytes, size_t size, PhCatalogue *catalogue,
                             PhIssues *issues);
PhStatus ph_catalogue_load (const char *path, PhCatalogue *catalogue, PhIssues *issues);
void ph_catalogue_clear (PhCatalogue *catalogue);
