#!/usr/bin/python3
# SPDX-FileCopyrightText: The Plumbhold authors
# SPDX-License-Identifier: GPL-3.0-or-later
"""The loader and data/rig.schema.json against each other. Thousands of files are made from good
ones by putting every kind of value in every place, one at a time. Whatever the schema refuses, the
loader must refuse; whatever the schema takes and the loader refuses must be one of the rules that
a schema cannot say (BEYOND). Usage: test_schema.py REWRITE DATA_FOLDER GOLDEN_FOLDER"""

import copy
import json
import os
import random
import re
import sys
from collections import Counter

import jsonschema

from common import case, main, path_of, run

REWRITE, DATA, GOLDEN = (os.path.abspath(a) for a in sys.argv[1:4])
MUTATIONS = int(os.environ.get("PH_MUTATIONS", 1300))
BATCH = 400

# What a schema cannot say, by the words of the loader's line.
BEYOND = {
    "places": r"on: (there is no |\".*\" already carries |a bracket has no far end|hangs on itself|nothing can hang"
              r"|only accessories sit|is part number)",
    "repeated id": r"id: (is used by two parts|\".*\" is used twice)",
    "inner below outer": r"inner_mm: is .*; it should be less than outer_mm",
    "bore below diameter": r"(bore_mm|diameter_mm): is .*; it should be (less|more) than (diameter_mm|bore_mm)",
    "fittings": r"(root|tip)_fitting_g: is .* at most mass_g|fitting_mm: is .* at most length_mm",
    "stack's mass": r"count: is .* for count times each_g",
    "along a bar": r"along_mm: (belongs to weights on a bar|is .* at most the bar's length)",
    "brace height": r"brace_height_mm: is .* less than the draw length",
    "limits in order": r"limits\.\w+: should have the lower number first",
    "length of an axis": r"axis: is too short",
    "finite": r"is -?(Infinity|NaN|1e999), not a finite number",
    "long key in an unknown value": r": has a key of over 1000 characters in it",
    "a rig that weighs nothing": r"mass_g: the whole rig weighs nothing",
}

VALUES = [None, True, False, "", "a", "x" * 64, "x" * 65, "x" * 1000, "x" * 1001, "bow", "bow:front",
          "a:b", "tab\t", "del\x7f", "é" * 64, "left", "compound", "weights", "accessory", "measured",
          0, -0.0, 1, 0.5, -1, -10, -10.5, 59.9, 60, -60, 30, -30.5, 180, 180.5, -181, 300, 301,
          400, 401, 1000, 1001, 3000, 3000.5, 20000, 20001, 300000, 300001, 1e-7, 8.0, float("inf"),
          [], {}, [1], [1, 2], [2, 1], [1, 2, 3], [0, 0, 0], [-1, 2, 3], [1, "2", 3], [1, 2, 3, 4],
          [1, 2, 3000.5], [1, 2, float("-inf")], [[1, 2, 3]], {"x": 1}, {"amount": 1}, 1.5e9]

with open(os.path.join(DATA, "rig.schema.json"), encoding="utf-8") as f:
    SCHEMA = json.load(f)
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA)


def load(path):
    with open(path, encoding="utf-8") as f:
        return json.load(f)


EVERY_KEY = load(os.path.join(GOLDEN, "versions", "every-key-1.rig.json"))


def places(value, path=()):
    """Every place in a tree, the containers too."""
    yield path
    items = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, inner in items:
        yield from places(inner, path + (key,))


def at(tree, path):
    for key in path:
        tree = tree[key]
    return tree


def mutations():
    """(what was done, file), the same every time: all deletions, then a draw of all the rest."""
    everywhere = [p for p in places(EVERY_KEY) if p]
    edits = [(p, "replace", v) for p in everywhere for v in VALUES]
    edits += [(p, "add", "unknown") for p in everywhere if isinstance(at(EVERY_KEY, p), dict)]
    edits += [(p, "add", "k" * 1001) for p in everywhere if isinstance(at(EVERY_KEY, p), dict)]
    edits += [(p, "double", None) for p in everywhere if isinstance(at(EVERY_KEY, p), list)]
    drawn = random.Random(2026).sample(edits, MUTATIONS - len(everywhere))
    for path, what, value in [(p, "delete", None) for p in everywhere] + drawn:
        tree = copy.deepcopy(EVERY_KEY)
        parent = at(tree, path[:-1])
        if what == "delete":
            del parent[path[-1]]
        elif what == "replace":
            parent[path[-1]] = value
        elif what == "add":
            parent[path[-1]][value] = 1
        else:
            parent[path[-1]] = parent[path[-1]] * 2
        yield f"{what} {'.'.join(map(str, path))} {value!r:.40}", tree


def verdicts(trees):
    """The loader's: a list of error lines for each file."""
    answers = []
    for start in range(0, len(trees), BATCH):
        names = []
        for i, tree in enumerate(trees[start:start + BATCH]):
            names.append(path_of(f"m{i}.rig.json"))
            with open(names[-1], "w", encoding="utf-8") as f:
                json.dump(tree, f)
        done = run(REWRITE, "--check", *names)
        lines = {name: [] for name in names}
        for line in done.stderr.decode().splitlines():
            name, text = line.split(": ", 1)
            lines[name].append(text)
        answers += [lines[name] for name in names]
    return answers


@case
def schema_is_a_schema():
    jsonschema.Draft202012Validator.check_schema(SCHEMA)


@case
def examples_pass_both():
    for name in sorted(os.listdir(DATA)):
        if name.endswith(".rig.json"):
            tree = load(os.path.join(DATA, name))
            assert not list(VALIDATOR.iter_errors(tree)), name
            assert verdicts([tree]) == [[]], name
    assert VALIDATOR.is_valid(EVERY_KEY) and verdicts([EVERY_KEY]) == [[]]


@case
def loader_and_schema_agree_on_thousands_of_files():
    made = list(mutations())
    wrong, counts = [], Counter()
    for (what, tree), lines in zip(made, verdicts([tree for _, tree in made])):
        schema_takes = VALIDATOR.is_valid(tree)
        if schema_takes and not lines:
            counts["both take"] += 1
        elif not schema_takes and lines:
            counts["both refuse"] += 1
        elif lines:
            rules = [rule for line in lines for rule, words in BEYOND.items() if re.search(words, line)]
            counts.update(set(rules))
            if len(rules) < len(lines):
                wrong.append(f"{what}: only the loader refuses: {lines[0]}")
        else:
            wrong.append(f"{what}: only the schema refuses: {next(VALIDATOR.iter_errors(tree)).message:.200}")
    for line in wrong[:20]:
        print("#", line)
    assert not wrong, f"{len(wrong)} of {len(made)} files"
    print("#", dict(counts))
    assert counts["both take"] > MUTATIONS / 8 and counts["both refuse"] > MUTATIONS / 2, counts


@case
def every_rule_that_a_schema_cannot_say_is_met():
    """So that BEYOND excuses nothing that does not exist."""
    def edit(*path, **values):
        tree = copy.deepcopy(EVERY_KEY)
        at(tree, path).update(values)
        return tree
    parts = {part["id"]: i for i, part in enumerate(EVERY_KEY["parts"])}

    def part(name, **values):
        return edit("parts", parts[name], **values)
    weightless = {**EVERY_KEY, "parts": [], "bow": {**EVERY_KEY["bow"], "mass_g": 0}}
    trees = {
        "places": part("end", on="nobody"), "repeated id": part("end", id="block"),
        "inner below outer": part("front-bar", inner_mm=18), "bore below diameter": part("ring", bore_mm=30),
        "fittings": part("front-bar", tip_fitting_g=131), "stack's mass": part("stack", count=1000),
        "along a bar": part("ring", along_mm=763), "brace height": edit("bow", brace_height_mm=660),
        "limits in order": part("stack", limits={"count": [3, 2]}),
        "length of an axis": edit("bow", "mounts", 0, axis=[0, 0, 0]),
        "finite": edit("bow", "sd", mass_g=float("inf")),
        "long key in an unknown value": edit(unknown=[{"k" * 1001: 1}]), "a rig that weighs nothing": weightless}
    assert set(trees) == set(BEYOND)
    for (rule, tree), lines in zip(trees.items(), verdicts(list(trees.values()))):
        assert VALIDATOR.is_valid(tree), rule
        assert lines and all(re.search(BEYOND[rule], line) for line in lines), (rule, lines)


main()
