/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a search in Add finds, in the catalogue as it is shipped. The words of the trade: common
 * practice, no source.
 */
#include "widgets/search-words.h"

#include "check.h"
#include "store/catalogue.h"

static PhCatalogue catalogue;

/* Whether the search finds the first item of that name's beginning. */
static bool
finds (const char *search, const char *name)
{
  for (size_t i = 0; i < catalogue.n; i++)
    {
      const PhCatalogueItem *item = &catalogue.items[i];
      if (!g_str_has_prefix (item->part.name, name))
        continue;
      g_autofree char *text = g_strdup_printf ("%s, %s, %s", item->part.name, item->group,
                                               item->search ? item->search : "");
      return ph_search_matches (text, search);
    }
  CHECK (false, "no %s in the catalogue", name);
  return false;
}

static void
hyphens_spaces_and_case_make_no_difference (void)
{
  const char *const ways[] = { "v-bar",
                               "V bar",
                               "vbar",
                               "V-BARS",
                               "v\xe2\x80\x91"
                               "bar",
                               "v bracket",
                               "V-bracket" };
  for (size_t i = 0; i < G_N_ELEMENTS (ways); i++)
    CHECK (finds (ways[i], "V bracket, 28"), "%s", ways[i]);
  CHECK (finds ("", "V bracket, 28") && finds ("  ", "V bracket, 28"));
}

static void
the_trade_s_words_find_what_they_mean (void)
{
  static const struct
  {
    const char *search, *name;
  } pairs[] = {
    { "v-bar", "V bracket for an extender" },
    { "v bar", "Side rod 8 in" },
    { "side rod", "Side rod 8 in" },
    { "side rod", "V bracket for an extender" },
    { "side bar", "Side rod 8 in" },
    { "long rod", "Front bar 30 in" },
    { "longrod", "Front bar 30 in" },
    { "stabilizer", "Front bar 30 in" },
    { "stabiliser", "Back bar 12 in" },
    { "extender", "Extender 4 in" },
    { "counterweight", "Weight 1 oz" },
    { "counter weight", "Weight 1 oz" },
    { "quick disconnect", "Quick connect, straight" },
    { "scope", "Sight on an extension" },
    { "bar 30", "Front bar 30 in" },
  };
  for (size_t i = 0; i < G_N_ELEMENTS (pairs); i++)
    CHECK (finds (pairs[i].search, pairs[i].name), "%s: %s", pairs[i].search, pairs[i].name);
}

static void
other_things_are_not_found (void)
{
  CHECK (!finds ("v-bar", "Front bar 30 in") && !finds ("v-bar", "Weight 1 oz"));
  CHECK (!finds ("long rod", "Side rod 8 in") && !finds ("damper 30", "Front bar 30 in"));
  CHECK (!ph_search_matches ("side bar, vase", "barvase"), "no word runs over a comma");
}

int
main (int argc, char **argv)
{
  PhIssues issues = { 0 };
  CHECK (ph_catalogue_load (DATA_DIR "/catalogue.json", &catalogue, &issues) == PH_OK);
  check_start (argc, argv);
  CASE (hyphens_spaces_and_case_make_no_difference);
  CASE (the_trade_s_words_find_what_they_mean);
  CASE (other_things_are_not_found);
  ph_catalogue_clear (&catalogue);
  return check_end ();
}
