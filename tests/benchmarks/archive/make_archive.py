#!/usr/bin/env python3
"""Makes what the archive benchmark runs on: two editions of 250 terminals over 40 characters of two
states, a lexicon, and specimens with every character recorded.

    make_archive.py FOLDER             editions, lexicon, and sheets.csv (500,000 rows x 42 columns)
    make_archive.py FOLDER --rows N    another number of rows
    make_archive.py FOLDER --stream N  no sheets.csv: N rows to standard output, the same rows over
                                       and over under ever new numbers

Deterministic: a fixed seed, the standard library, no clock.
"""

import copy
import random
import sys
from pathlib import Path

SEED = 20240517
TERMINALS, CHARACTERS, ROWS = 250, 40, 500_000
BLOCK = 20_000  # rows of the stream before they come again
STATES = ("bare", "hairy")


def taxon_names(count):
    syllables = ["ba", "co", "du", "fe", "gi", "la", "mo", "nu", "re", "si", "ta", "vo"]
    names = [a + b + c + "us" for a in syllables for b in syllables for c in syllables]
    return [f"{names[i // 10].capitalize()} {names[(37 * i + 11) % len(names)]}"
            for i in range(count)]


class Key:
    """A random tree: inner nodes (character, left, right), leaves are taxa."""

    def __init__(self, taxa, rng):
        self.rng = rng
        self.couplets = []
        self.root = self.grow(list(taxa), list(range(CHARACTERS)))

    def grow(self, taxa, characters):
        if len(taxa) == 1:
            return taxa[0]
        at = len(self.couplets)
        self.couplets.append(None)
        character = self.rng.choice(characters)
        rest = [c for c in characters if c != character]
        cut = max(1, min(len(taxa) - 1, round(len(taxa) * self.rng.uniform(0.3, 0.7))))
        self.couplets[at] = (character, self.grow(taxa[:cut], rest), self.grow(taxa[cut:], rest))
        return at

    def text(self, edition):
        lines = [f"Title: A key for the benchmark\nEdition: {edition}\n"]
        for at, (character, left, right) in enumerate(self.couplets):
            for state, target, label in ((0, left, f"{at + 1}."), (1, right, "–")):
                end = target if isinstance(target, str) else str(target + 1)
                lines.append(f"{label}  Organ {letters(character)} {STATES[state]} ........ {end}")
        return "\n".join(lines) + "\n"

    def terminal(self, states):
        at = self.root
        while not isinstance(at, str):
            character, left, right = self.couplets[at]
            at = right if states[character] else left
        return at


def letters(number):
    return chr(ord("a") + number // 26) + chr(ord("a") + number % 26)


def rows(key, rng):
    """Everything of a row but its number."""
    while True:
        bits = rng.getrandbits(CHARACTERS)
        states = [bits >> c & 1 for c in range(CHARACTERS)]
        yield key.terminal(states) + "," + ",".join(STATES[s] for s in states) + "\n"


def main():
    folder = Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    rng = random.Random(SEED)
    taxa = taxon_names(TERMINALS)
    old = Key(taxa, rng)
    # The new edition asks for another character at three couplets in ten.
    new = copy.deepcopy(old)
    new.couplets = [(rng.randrange(CHARACTERS) if rng.random() < 0.3 else character, left, right)
                    for character, left, right in old.couplets]
    (folder / "edition-old.txt").write_text(old.text("old"), encoding="utf-8")
    (folder / "edition-new.txt").write_text(new.text("new"), encoding="utf-8")
    lexicon = ["character,label,structure,property,subjects,kind,unit,difficulty,applicable if,"
               "tolerance,state,phrases"]
    for c in range(CHARACTERS):
        name = letters(c)
        for s, state in enumerate(STATES):
            head = f"organ-{name},organ {name},organ {name},surface,organ {name},categorical,," \
                   "naked eye,,," if s == 0 else ",,,,,,,,,,"
            lexicon.append(f"{head}{state},{state}")
    (folder / "lexicon.csv").write_text("\n".join(lexicon) + "\n", encoding="utf-8")
    header = "catalogNumber,scientificName," + \
             ",".join(f"organ-{letters(c)}" for c in range(CHARACTERS)) + "\n"
    options = dict(zip(sys.argv[2::2], sys.argv[3::2]))
    made = rows(old, rng)
    if "--stream" in options:
        tails = [next(made) for _ in range(BLOCK)]
        out = sys.stdout
        out.write(header)
        total = int(options["--stream"])
        for first in range(0, total, BLOCK):
            out.write("".join(f"S{first + i:08}," + tail
                              for i, tail in enumerate(tails[:total - first])))
        return
    with open(folder / "sheets.csv", "w", encoding="utf-8") as out:
        out.write(header)
        for i in range(int(options.get("--rows", ROWS))):
            out.write(f"S{i:08}," + next(made))


if __name__ == "__main__":
    main()
