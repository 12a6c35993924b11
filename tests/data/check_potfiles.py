#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Whether every text a person reads is offered for translation: po/POTFILES names each source with
a call of gettext and each .ui file with a translatable text, each file once, sorted, and none that
is gone. Usage: check_potfiles.py SOURCE_ROOT."""

import os
import re
import sys

MARKED_C = re.compile(r"\b(?:_|N_|C_|NC_|ngettext|dngettext) ?\(")
MARKED_UI = re.compile(r'translatable="yes"')
COMMENT = re.compile(r"/\*.*?\*/|//[^\n]*", re.DOTALL)


def marked(path):
    with open(path, encoding="utf-8") as f:
        text = f.read()
    if path.endswith(".ui"):
        return bool(MARKED_UI.search(text))
    return bool(MARKED_C.search(COMMENT.sub("", text)))


def sources(root):
    for folder, suffix in (("src", ".c"), ("ui", ".ui")):
        for where, _, names in os.walk(os.path.join(root, folder)):
            for name in names:
                if name.endswith(suffix):
                    yield os.path.join(where, name)


def main():
    root = sys.argv[1]
    with open(os.path.join(root, "po", "POTFILES"), encoding="utf-8") as f:
        listed = [line.strip() for line in f if line.strip() and not line.startswith("#")]
    wanted = sorted(os.path.relpath(p, root) for p in sources(root) if marked(p))
    cases = {
        "every_marked_text_is_offered": [f"not listed: {p}" for p in wanted if p not in listed],
        "every_listed_file_is_there": [f"gone: {p}" for p in listed
                                       if not os.path.exists(os.path.join(root, p))],
        "the_list_is_sorted_and_names_a_file_once":
            [] if listed == sorted(set(listed)) else ["sort po/POTFILES"],
        # A walk that found nothing would pass everything.
        "there_are_texts_at_all": [] if len(wanted) > 20 else [f"only {len(wanted)} found"],
    }
    for name, wrong in cases.items():
        for line in wrong:
            print(f"# {line}")
        print(f"{'FAILED' if wrong else 'ok'} {name}")
    return any(cases.values())


if __name__ == "__main__":
    sys.exit(main())
