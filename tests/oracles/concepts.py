"""RCC-5, the five relations of taxon concepts, against sets of specimens.

keydrift uses them in two places: rows of a concept map that cannot hold together (the relations of a
taxon to two taxa that the other edition sets apart, which is composition with "disjoint"), and the
outcome of a specimen by how its old name relates to where it keys out.  Both are asked of all cases in
small universes; the sets, not keydrift, say which relation holds.

The composition table is the published one (Bennett, Spatial reasoning with propositional logics, KR
1994; Randell, Cui & Cohn, KR 1992, for RCC; the table from memory); that all non-empty subsets of six
elements give the same is the first row.
"""

import csv
import itertools

import trees
from asking import told_by

SIGNS = ["==", "<", ">", "><", "|"]
TABLE = {  # A r B and B s C: what A ? C may be
    "==": {"==": "==", "<": "<", ">": ">", "><": "><", "|": "|"},
    "<": {"==": "<", "<": "<", ">": "== < > >< |", "><": "< >< |", "|": "|"},
    ">": {"==": ">", "<": "== < > ><", ">": ">", "><": "> ><", "|": "> >< |"},
    "><": {"==": "><", "<": "< ><", ">": "> >< |", "><": "== < > >< |", "|": "> >< |"},
    "|": {"==": "|", "<": "< >< |", ">": "|", "><": "< >< |", "|": "== < > >< |"},
}
STATES = ["ruddy", "tawny", "sallow", "dusky"]


def relation(a, b):
    """Of two sets of elements as bits."""
    if a == b:
        return "=="
    if a & b == 0:
        return "|"
    if a & b == a:
        return "<"
    return ">" if a & b == b else "><"


def composition():
    found = {r: {s: set() for s in SIGNS} for r in SIGNS}
    sets = range(1, 64)
    for a, b in itertools.product(sets, sets):
        r = relation(a, b)
        for c in sets:
            found[r][relation(b, c)].add(relation(a, c))
    wrong = [f"{r} with {s}: {sorted(found[r][s])} by sets, {TABLE[r][s]} in the table"
             for r, s in itertools.product(SIGNS, SIGNS) if found[r][s] != set(TABLE[r][s].split())]
    yield "RCC-5: composition by sets of six, published table", 25 - len(wrong), 25, wrong


def key(path, edition, ends):
    """Couplet by couplet one set of states is taken off."""
    lines = [f"Edition: {edition}", ""]
    for i, (states, name) in enumerate(ends[:-1]):
        rest = [state for other, _ in ends[i + 1:] for state in other]
        end = str(i + 2) if i + 2 < len(ends) else ends[-1][1]
        lines += [f"{i + 1}.  Leaves {' or '.join(states)} .......... {name}",
                  f"–  Leaves {' or '.join(rest)} .......... {end}", ""]
    with open(path, "w", encoding="utf-8") as file:
        file.write("\n".join(lines))


def lexicon(path):
    header = "character,label,structure,property,subjects,kind,unit,state,phrases".split(",")
    rows = [["leaves", "leaves", "leaf", "colour", "leaves", "categorical", "", STATES[0],
             STATES[0]]]
    rows += [[""] * 7 + [state, state] for state in STATES[1:]]
    trees.write_table(path, header, rows)


def possible_together(r, s):
    """Is there a set that is r to one and s to the other of two disjoint ones?"""
    sets = range(1, 64)
    return any(relation(a, b) == r and relation(a, c) == s
               for a in sets for b in sets for c in sets if b & c == 0)


def maps(keydrift, folder):
    """Two rows of a map, each of the four relations that share something."""
    one = [(STATES[:2], "Aus bus"), (STATES[2:], "Aus cus")]
    two = [(STATES[:2], "Dus bus"), (STATES[2:], "Dus cus")]
    key(f"{folder}/concepts-one.txt", "1998", one)
    key(f"{folder}/concepts-two.txt", "2024", two)
    wrong, asked = [], 0
    for split in (True, False):
        for r, s in itertools.product(SIGNS[:4], SIGNS[:4]):
            rows = [["Aus bus", r, "Dus bus"], ["Aus bus", s, "Dus cus"]]
            if not split:
                # The same seen from the other side.
                turned = {"<": ">", ">": "<"}
                rows = [["Aus bus", turned.get(r, r), "Dus bus"],
                        ["Aus cus", turned.get(s, s), "Dus bus"]]
            trees.write_table(f"{folder}/concepts-map.csv", ["old", "relation", "new"],
                              rows)
            told = told_by(keydrift, "collate", f"{folder}/concepts-one.txt",
                           f"{folder}/concepts-two.txt", "--concepts", f"{folder}/concepts-map.csv",
                           "--json", f"{folder}/concepts.json")
            with open(f"{folder}/concepts.json", encoding="utf-8") as file:
                refused = "concept-contradiction" in file.read() + told
            asked += 1
            if refused == possible_together(r, s):
                wrong.append(f"{rows}: by sets {'possible' if refused else 'impossible'}")
    yield "RCC-5: concept maps whose rows cannot hold together", asked - len(wrong), asked, wrong


def partitions(items):
    if not items:
        yield []
        return
    first, rest = items[0], items[1:]
    for parts in partitions(rest):
        yield [[first], *parts]
        for i, part in enumerate(parts):
            yield [*parts[:i], [first, *part], *parts[i + 1:]]


def outcome_of(old, ends):
    """What becomes of a specimen of `old` that may end at these new taxa; taxa are (bits, name)."""
    kinds = set()
    for new in ends:
        if relation(old[0], new[0]) in ("==", "<"):
            kinds.add("stands" if old[1] == new[1] else "renamed")
        else:
            kinds.add("part")
    if kinds != {"part"}:
        return kinds.pop() if len(kinds) == 1 else "open"
    if len(ends) > 1:
        return "narrowed"
    return "stands" if ends[0][1] == old[1] else "changes"


def outcomes(keydrift, folder, universe):
    """Every division of the states among old taxa under every division among new ones."""
    def taxa_of(parts):
        # A taxon is called by its first state, so that some names stay and some do not.
        return [(sum(1 << STATES.index(s) for s in part), f"Aus {part[0]}us", part)
                for part in parts]

    lexicon(f"{folder}/concepts-lexicon.csv")
    divisions = [taxa_of(parts) for parts in partitions(STATES[:universe]) if len(parts) > 1]
    wrong, asked = [], 0
    for old, new in itertools.product(divisions, divisions):
        for edition, taxa in (("old", old), ("new", new)):
            key(f"{folder}/concepts-{edition}.txt", edition, [(part, name) for _, name, part in taxa])
        rows = [[o[1], relation(o[0], n[0]), n[1]] for o in old for n in new]
        trees.write_table(f"{folder}/concepts-map.csv", ["old", "relation", "new"], rows)
        sheets, wanted = [], []
        for o in old:
            ends = [n for n in new if o[0] & n[0]]
            sheets.append([o[1], ""])
            wanted.append((outcome_of(o, ends), {n[1] for n in ends}))
            for state in o[2]:
                end = [n for n in new if state in n[2]]
                sheets.append([o[1], state])
                wanted.append((outcome_of(o, end), {end[0][1]}))
        path, out = f"{folder}/concepts-sheets.csv", f"{folder}/concepts-out.csv"
        trees.write_table(path, ["catalogNumber", "scientificName", "leaves"],
                          [[str(i), *sheet] for i, sheet in enumerate(sheets)])
        told_by(keydrift, "redetermine", f"{folder}/concepts-old.txt", f"{folder}/concepts-new.txt",
                path, "--lexicon", f"{folder}/concepts-lexicon.csv", "--concepts",
                f"{folder}/concepts-map.csv", "--specimens", out)
        with open(out, newline="", encoding="utf-8-sig") as file:
            given = [(row["outcome"], set(row["newScientificName"].split(" | ")))
                     for row in csv.DictReader(file)]
        asked += len(sheets)
        wrong += [f"{[o[2] for o in old]} under {[n[2] for n in new]}, {sheet}: {w} wanted, {g} given"
                  for sheet, w, g in zip(sheets, wanted, given) if w != g]
    yield "RCC-5: outcomes by how the sets relate", asked - len(wrong), asked, wrong


def run(keydrift, folder):
    """Yields (what, agreeing, asked, disagreements)."""
    yield from composition()
    yield from maps(keydrift, folder)
    yield from outcomes(keydrift, folder, 4)
