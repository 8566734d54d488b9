"""Trees trained by scikit-learn and rpart on open data, keyed by keydrift.

For every data set and library two trees are grown, an "old" and a "new" edition, and printed as
keys.  Then, for every record of the set:

  complete   the class that keydrift gives in the new edition is the library's, and the outcomes
             add up to the library's own table of old class by new class;
  with gaps  values are taken away at random (and stay away where the data have gaps): the names
             that keydrift holds possible are exactly the library's answers to all completions
             that the recorded name allows.

The library answers for itself (predict), not our reading of its tree.
"""

import collections
import csv
import os
import random
import subprocess

from sklearn.tree import DecisionTreeClassifier

import trees
from asking import told_by

MOST = 4096  # completions of one record


def grown_by_sklearn(records, words):
    """Two trees, and a function that answers complete records; None where a feature has more than
    two levels (this library's trees know numbers only)."""
    levels = {f: words.levels[f] for f in words.features if words.kind[f] == "categorical"}
    if any(len(known) > 2 for known in levels.values()):
        return None

    def coded(rows):
        return [
            [levels[f].index(r[f]) if f in levels else float(r[f]) for f in words.features]
            for r in rows
        ]

    complete = [r for r in records if all(r[f] != "" for f in words.features)]
    grown = {}
    for edition, rows, depth in (("old", complete[::2], 3), ("new", complete, 9)):
        model = DecisionTreeClassifier(max_depth=depth, random_state=7)
        grown[edition] = model.fit(coded(rows), [r["class"] for r in rows])

    def answers(rows):
        filled = [
            dict(r, **{f: words.levels[f][0] for f in words.features if r[f] == ""}) for r in rows
        ]
        return {edition: list(model.predict(coded(filled))) for edition, model in grown.items()}

    made = {
        edition: trees.sklearn_tree(model, words.features, levels)
        for edition, model in grown.items()
    }
    return made, answers


def grown_by_rpart(folder, name, words):
    here = os.path.dirname(os.path.abspath(__file__))
    made = {
        edition: trees.rpart_tree(f"{folder}/{name}-rpart-{edition}.csv")
        for edition in ("old", "new")
    }

    def answers(rows):
        asked, answered = f"{folder}/{name}-asked.csv", f"{folder}/{name}-answered.csv"
        filled = [
            [r[f] if r[f] != "" else words.levels[f][0] for f in words.features] for r in rows
        ]
        trees.write_table(asked, words.features, filled)
        script = os.path.join(here, "predict_rpart.R")
        models = f"{folder}/{name}-rpart.rds"
        subprocess.run(["Rscript", script, models, asked, answered], check=True)
        given = trees.read_table(answered)
        return {edition: [row[edition] for row in given] for edition in ("old", "new")}

    return made, answers


class Case:
    """One data set under one library."""

    def __init__(self, keydrift, folder, name, library, words, made, answers):
        self.keydrift, self.folder, self.words, self.made = keydrift, folder, words, made
        self.stem = f"{folder}/{name}-{library}"
        self.answers = answers
        words.lexicon(f"{self.stem}-lexicon.csv")
        for edition, tree in made.items():
            trees.printed(tree, words, f"{name} by {library}, {edition}",
                          f"{self.stem}-{edition}.txt")

    def rekeyed(self, records, names, what):
        words = self.words
        header = ["catalogNumber", "scientificName", *map(words.identifier, words.features)]
        rows = [
            [f"R{i:05}", words.taxon(name), *(words.value(f, r[f]) for f in words.features)]
            for i, (r, name) in enumerate(zip(records, names))
        ]
        sheets, out = f"{self.stem}-{what}.csv", f"{self.stem}-{what}-outcomes.csv"
        trees.write_table(sheets, header, rows)
        told = told_by(self.keydrift, "redetermine", f"{self.stem}-old.txt",
                       f"{self.stem}-new.txt", sheets, "--lexicon", f"{self.stem}-lexicon.csv",
                       "--specimens", out)
        with open(f"{self.stem}-{what}.log", "w", encoding="utf-8") as log:
            log.write(told)
        with open(out, newline="", encoding="utf-8-sig") as file:
            return list(csv.DictReader(file))

    def complete(self, records):
        """(agreeing, asked, what disagrees)"""
        asked = self.words.features
        records = [r for r in records if all(r[f] != "" for f in asked)]
        given = self.answers(records)
        found = self.rekeyed(records, given["old"], "complete")
        wrong = []
        table = collections.Counter()
        for i, (old, new, row) in enumerate(zip(given["old"], given["new"], found)):
            wanted = "stands" if old == new else "changes"
            table[wanted] += 1
            if (row["outcome"], row["newScientificName"]) != (wanted, self.words.taxon(new)):
                wrong.append(f"{self.stem} R{i:05}: {wanted} {self.words.taxon(new)} wanted, "
                             f"{row['outcome']} {row['newScientificName']} given")
        totals = collections.Counter(row["outcome"] for row in found)
        if totals != table and not wrong:
            wrong.append(f"{self.stem}: outcomes {dict(totals)}, {dict(table)} wanted")
        return len(records) - len(wrong), len(records), wrong

    def with_gaps(self, records, share, seed):
        chance = random.Random(seed)
        gapped, ways = trees.with_holes(self.words, list(self.made.values()), records, share, MOST,
                                        chance)
        given = self.answers([one for ones in ways for one in ones])
        names, possible, at = [], [], 0
        for ones in ways:
            pairs = list(zip(given["old"][at:at + len(ones)], given["new"][at:at + len(ones)]))
            at += len(ones)
            name = chance.choice(sorted({old for old, _ in pairs}))
            names.append(name)
            possible.append({new for old, new in pairs if old == name})
        found = self.rekeyed(gapped, names, "gaps")
        wrong = []
        for i, (name, wanted, row) in enumerate(zip(names, possible, found)):
            outcome = "stands" if wanted == {name} else "open" if name in wanted else "changes"
            wanted = {self.words.taxon(one) for one in wanted}
            got = set(row["newScientificName"].split(" | "))
            if got != wanted or row["outcome"] != outcome:
                wrong.append(f"{self.stem} gaps R{i:05}: {outcome} {sorted(wanted)} wanted, "
                             f"{row['outcome']} {sorted(got)} given")
        return len(gapped) - len(wrong), len(gapped), wrong


def run(keydrift, folder):
    """Yields (what, agreeing, asked, disagreements)."""
    here = os.path.dirname(os.path.abspath(__file__))
    subprocess.run(["Rscript", os.path.join(here, "open_data.R"), folder], check=True)
    for name, share in (("zoo", 0.4), ("soybean", 0.15), ("penguins", 0.5), ("vehicle", 0.1)):
        records = trees.read_table(f"{folder}/{name}.csv")
        words = trees.Words(records)
        for library in ("scikit-learn", "rpart"):
            grown = (grown_by_sklearn(records, words) if library == "scikit-learn"
                     else grown_by_rpart(folder, name, words))
            if grown is None:
                continue
            case = Case(keydrift, folder, name, library, words, *grown)
            size = "+".join(str(len(tree.couplets)) for tree in grown[0].values())
            title = f"{name}, {library}, {size} couplets"
            yield (f"{title}: complete", *case.complete(records))
            yield (f"{title}: with gaps", *case.with_gaps(records, share, 11))
