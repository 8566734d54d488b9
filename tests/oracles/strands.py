"""Where rpart's own trees have no branch, keydrift must find no lead.

Trees of open_data.py on the Soybean set, the new edition printed without third leads: at nodes whose
training never met some level of a feature, that level has no lead. One new edition was grown on all
complete records, so that only gaps can strand; the other on few of them.  The library says for
itself at which node a record stops (its routine behind predict; surrogate splits are off).

  complete   stranded, at the couplet of that node, exactly where the library stops; else its class;
  with gaps  an outcome may strand exactly if some completion that the recorded name allows stops,
             and the possible names are the answers to the completions that do not.
"""

import csv
import json
import os
import random
import subprocess

import trees
from asking import told_by

MOST = 4096  # completions of one record


class Case:
    """`models`: which of the library's trees are the old and the new edition."""

    def __init__(self, keydrift, folder, words, name, models):
        self.keydrift, self.folder, self.words, self.name = keydrift, folder, words, name
        self.models = dict(zip(("old", "new"), models))
        self.made = {
            edition: trees.rpart_tree(f"{folder}/{name}-rpart-{model}.csv", edition == "old")
            for edition, model in self.models.items()
        }
        self.number = {node: i + 1 for i, node in enumerate(self.made["new"].couplets)}
        words.lexicon(f"{folder}/strands-lexicon.csv")
        for edition, tree in self.made.items():
            trees.printed(tree, words, f"{name}, {edition}", f"{folder}/strands-{edition}.txt")

    def answers(self, rows):
        """The library's: old class, new class and the number of the couplet where it stops."""
        asked, answered = f"{self.folder}/strands-asked.csv", f"{self.folder}/strands-answered.csv"
        words = self.words
        filled = [
            [r[f] if r[f] != "" else words.levels[f][0] for f in words.features] for r in rows
        ]
        trees.write_table(asked, words.features, filled)
        script = os.path.join(os.path.dirname(os.path.abspath(__file__)), "predict_rpart.R")
        models = f"{self.folder}/{self.name}-rpart.rds"
        subprocess.run(["Rscript", script, models, asked, answered], check=True)
        old, new = self.models.values()
        stops = [row[f"{new}_stops"] for row in trees.read_table(answered)]
        return [
            (row[old], row[new], self.number[int(stop)] if stop else 0)
            for row, stop in zip(trees.read_table(answered), stops)
        ]

    def rekeyed(self, records, names, what):
        """(row of the specimens file, may it strand) for each record."""
        words = self.words
        header = ["catalogNumber", "scientificName", *map(words.identifier, words.features)]
        rows = [
            [f"R{i:05}", words.taxon(name), *(words.value(f, r[f]) for f in words.features)]
            for i, (r, name) in enumerate(zip(records, names))
        ]
        stem = f"{self.folder}/strands-{what}"
        trees.write_table(f"{stem}.csv", header, rows)
        told_by(self.keydrift, "redetermine", f"{self.folder}/strands-old.txt",
                f"{self.folder}/strands-new.txt", f"{stem}.csv", "--lexicon",
                f"{self.folder}/strands-lexicon.csv", "--all-are-vouchers", "--specimens",
                f"{stem}-out.csv", "--json", f"{stem}.json")
        with open(f"{stem}-out.csv", newline="", encoding="utf-8-sig") as file:
            found = list(csv.DictReader(file))
        with open(f"{stem}.json", encoding="utf-8") as file:
            result = json.load(file)
        # Every sheet is a voucher, so that every one is listed with its verdict.
        strands = {
            one["specimen"]["catalogNumber"]: result["verdicts"][one["verdict"]]["mayStrand"]
            for one in result["expectations"]
        }
        return [(row, strands[row["catalogNumber"]]) for row in found]

    def complete(self, records):
        """(agreeing, asked, what disagrees, how many stop)"""
        records = [r for r in records if all(r[f] != "" for f in self.words.features)]
        given = self.answers(records)
        wrong = []
        found = self.rekeyed(records, [old for old, _, _ in given], "complete")
        for i, ((old, new, stop), (row, strands)) in enumerate(zip(given, found)):
            wanted = ("stands" if old == new else "changes", self.words.taxon(new), False)
            got = (row["outcome"], row["newScientificName"], strands)
            if stop:
                wanted = ("stranded", "", str(stop), True)
                got = (row["outcome"], row["newScientificName"], row["newCouplet"], strands)
            if got != wanted:
                wrong.append(f"strands R{i:05}: {wanted} wanted, {got} given")
        return len(records) - len(wrong), len(records), wrong, sum(1 for g in given if g[2])

    def with_gaps(self, records, share, seed):
        chance = random.Random(seed)
        gapped, ways = trees.with_holes(self.words, list(self.made.values()), records, share, MOST,
                                        chance)
        given = self.answers([one for ones in ways for one in ones])
        names, possible, at = [], [], 0
        for ones in ways:
            these = given[at:at + len(ones)]
            at += len(ones)
            name = chance.choice(sorted({old for old, _, _ in these}))
            names.append(name)
            possible.append({None if stop else new for old, new, stop in these if old == name})
        wrong = []
        for i, (name, ends, (row, strands)) in enumerate(
                zip(names, possible, self.rekeyed(gapped, names, "gaps"))):
            new = ends - {None}
            outcome = ("stranded" if not new else "stands" if new == {name}
                       else "open" if name in new else "changes")
            wanted = (outcome, sorted(self.words.taxon(one) for one in new), None in ends)
            taxa = row["newScientificName"]
            got = (row["outcome"], sorted(taxa.split(" | ")) if taxa else [], strands)
            if got != wanted:
                wrong.append(f"strands, gaps R{i:05}: {wanted} wanted, {got} given")
        stops = sum(1 for ends in possible if None in ends)
        return len(gapped) - len(wrong), len(gapped), wrong, stops


def run(keydrift, folder):
    """Yields (what, agreeing, asked, disagreements)."""
    here = os.path.dirname(os.path.abspath(__file__))
    subprocess.run(["Rscript", os.path.join(here, "open_data.R"), folder], check=True)
    records = trees.read_table(f"{folder}/soybean.csv")
    for models in (("old", "new"), ("old", "few")):
        case = Case(keydrift, folder, trees.Words(records), "soybean", models)
        size = "+".join(str(len(tree.couplets)) for tree in case.made.values())
        for what, (agreeing, asked, wrong, stops) in (
                ("complete", case.complete(records)),
                ("with gaps", case.with_gaps(records, 0.15, 5))):
            title = f"soybean, unseen levels without leads, {size}: {what}"
            if stops == 0 and (what == "with gaps" or models == ("old", "few")):
                wrong = wrong + [f"{title}: nothing strands, so nothing was asked"]
            yield title, agreeing, asked, wrong
