"""The published list of Darwin Core terms: none of them is taken for a recorded character.

The key has a couplet about every term, as if it were a part of a plant ("Feedback url ruddy"), and the
archive a column for it, by its local name, with a prefix, or by its full IRI.  Without a lexicon,
columns whose words are those of the key are tied to it and told; a term must not be.  Columns that
are no terms must: so the question can be answered wrongly.
"""

import json
import os
import re

import trees
from asking import told_by

OTHERS = ["leafForm", "stipuleColour", "basalSheath"]


def words(name):
    return re.sub(r"(?<=[a-z])(?=[A-Z])", " ", name).lower()


def write_key(path, year, names):
    """A comb: each couplet takes off one species."""
    lines = [f"Edition: {year}", f"Year: {year}", ""]
    for i, name in enumerate(names):
        subject = words(name).capitalize()
        species = f"Aus {chr(97 + i // 26)}{chr(97 + i % 26)}us"
        end = str(i + 2) if i + 1 < len(names) else "Bus bus"
        lines += [f"{i + 1}.  {subject} ruddy .......... {species}",
                  f"–  {subject} tawny .......... {end}", ""]
    with open(path, "w", encoding="utf-8") as file:
        file.write("\n".join(lines))


def terms():
    here = os.path.dirname(os.path.abspath(__file__))
    with open(f"{here}/darwin_core_terms.txt", encoding="utf-8") as file:
        return [line.strip() for line in file if line.startswith("http")]


def characters(keydrift, folder, columns):
    """The columns that keydrift takes for characters."""
    sheets, out = f"{folder}/terms-sheets.csv", f"{folder}/terms-out.json"
    trees.write_table(sheets, ["scientificName", *columns],
                      [["Bus bus", *("tawny" for _ in columns)]])
    told_by(keydrift, "redetermine", f"{folder}/terms-old.txt", f"{folder}/terms-new.txt", sheets,
            "--json", out)
    with open(out, encoding="utf-8") as file:
        return {tie["column"] for tie in json.load(file).get("ties", [])}


def run(keydrift, folder):
    """Yields (what, agreeing, asked, disagreements)."""
    names = [iri.rsplit("/", 1)[1] for iri in terms()]
    for name, year in (("old", 1998), ("new", 2024)):
        write_key(f"{folder}/terms-{name}.txt", year, names + OTHERS)
    prefixes = {"http://rs.tdwg.org/dwc/terms/": "dwc:", "http://purl.org/dc/terms/": "dcterms:",
                "http://purl.org/dc/elements/1.1/": "dc:"}
    forms = {"local name": [], "prefix": [], "full IRI": []}
    for iri in terms():
        space, name = iri.rsplit("/", 1)
        if name == "scientificName":
            continue
        forms["local name"].append(name)
        forms["prefix"].append(prefixes[space + "/"] + name)
        forms["full IRI"].append(iri)
    for form, columns in forms.items():
        taken = characters(keydrift, folder, columns + OTHERS)
        wrong = [f"{column}: a term, and taken for a character" for column in columns
                 if column in taken]
        wrong += [f"{column}: no term, and not taken for a character" for column in OTHERS
                  if column not in taken]
        size = len(columns) + len(OTHERS)
        yield f"Darwin Core terms by {form}", size - len(wrong), size, wrong
