"""SDD 1.1 as keydrift writes it, against the schema that its makers published.

The schema (TDWG; GPL) is no part of this project: its folder is named by KEYDRIFT_SDD_SCHEMA, or lies
beside the sources; without it, or without xmllint, nothing is asked.  Keys of every random shape and
the demo's editions must be valid; the same files with an element taken away must not.
"""

import os
import random
import re
import shutil
import subprocess

import figures
from asking import Missing, told_by


def schema():
    here = os.path.dirname(os.path.abspath(__file__))
    beside = os.path.join(here, "..", "..", "..", "shared", "standards", "sdd")
    path = os.path.join(os.environ.get("KEYDRIFT_SDD_SCHEMA", beside), "SDD.xsd")
    if not os.path.exists(path) or shutil.which("xmllint") is None:
        raise Missing("the schema of SDD, or xmllint")
    return path


def valid(path, files):
    """Which of the files are valid."""
    ran = subprocess.run(["xmllint", "--nonet", "--noout", "--schema", path, *files],
                         capture_output=True, text=True, check=False)
    return {line.rsplit(" validates", 1)[0] for line in ran.stderr.splitlines()
            if line.endswith(" validates")}


def run(keydrift, folder):
    """Yields (what, agreeing, asked, disagreements)."""
    path = schema()
    chance = random.Random(2007)
    here = os.path.dirname(os.path.abspath(__file__))
    demo = os.path.join(here, "..", "..", "fixtures", "velunaceae")
    keys = [os.path.join(demo, f"edition-{year}.txt") for year in (1974, 1998, 2024)]
    for i in range(12):
        keys.append(f"{folder}/schemas-{i}.txt")
        figures.write_key(keys[-1], figures.grown(chance, chance.randint(2, 60), 4))
    made, damaged = [], []
    for i, key in enumerate(keys):
        made.append(f"{folder}/schemas-{i}.xml")
        told_by(keydrift, "convert", key, "--to", "sdd", "-o", made[-1])
        with open(made[-1], encoding="utf-8") as file:
            text = file.read()
        damaged.append(f"{folder}/schemas-{i}-damaged.xml")
        with open(damaged[-1], "w", encoding="utf-8") as file:
            file.write(re.sub(r"<Representation>.*?</Representation>", "", text, count=1,
                              flags=re.DOTALL))
    sound = valid(path, made + damaged)
    wrong = [f"{one} is not valid" for one in made if one not in sound]
    yield "SDD: keys as written, by its schema", len(made) - len(wrong), len(made), wrong
    wrong = [f"{one} is valid, though an element is missing" for one in damaged if one in sound]
    yield "SDD: damage that the schema sees", len(damaged) - len(wrong), len(damaged), wrong
