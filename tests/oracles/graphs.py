"""Facts about keys as graphs, against networkx (Hagberg et al. 2008, Proc. SciPy 7: 11-15) and
dendropy (Sukumaran & Holder 2010, Bioinformatics 26: 1569-1571).

Random keys (even, combs, polytomous, reticulate, with circles and with couplets that nothing leads
to) are printed, proofread by keydrift, and compared with what the libraries say of the same graph.
"""

import json
import math
import os
import random
import re

import dendropy
import networkx
from dendropy.calculate import treemeasure

from asking import told_by

STATES = ["ruddy", "tawny", "sallow", "dusky"]


def letters(number):
    text = ""
    while True:
        text = "bcdfgklm"[number % 8] + "aeiou"[number // 8 % 5] + text
        number //= 40
        if number == 0:
            return text


def random_key(chance, shape, size):
    """couplet number -> destinations (numbers, or names); couplet 1 is the start."""
    taxa = 0
    numbers = iter(range(1, size + 1))
    couplets, waiting = {}, [None]
    while waiting:
        at = waiting.pop(chance.randrange(len(waiting)) if shape != "comb" else -1)
        number = next(numbers, None)
        if number is None:
            taxa += 1
            couplets[at[0]][at[1]] = f"Aus {letters(taxa)}us"
            continue
        if at is not None:
            couplets[at[0]][at[1]] = number
        leads = 2 if shape in ("even", "comb") else chance.choice([2, 2, 2, 3, 4])
        couplets[number] = [None] * leads
        if shape == "comb":
            for i in range(1, leads):
                taxa += 1
                couplets[number][i] = f"Aus {letters(taxa)}us"
            waiting.append((number, 0))
        else:
            waiting += [(number, i) for i in range(leads)]
    if shape in ("reticulate", "broken"):
        for number in sorted(couplets):
            for i in range(len(couplets[number])):
                if chance.random() < 0.15 and number < size:
                    couplets[number][i] = chance.randint(number + 1, size)
    if shape == "broken" and size > 1:
        for _ in range(3):
            number = chance.randint(2, size)
            couplets[number][chance.randrange(2)] = chance.randint(2, number)
    return couplets


def printed(couplets, path, words=None, vocabulary=None):
    """Writes the key.  `words`: couplet -> (the couplet whose words it has, which lead's words each
    lead has), its own where absent.  `vocabulary`: how many organs the key speaks of."""
    lines = ["Title: Key to the species of Aus", ""]
    for number in sorted(couplets):
        organ, order = words[number] if words else (number, range(len(couplets[number])))
        organ = organ % vocabulary if vocabulary else organ
        for i, end in enumerate(couplets[number]):
            label = f"{number}." if i == 0 else "–"
            text = f"{label:<6}Organ {letters(organ)} {STATES[order[i]]} "
            lines.append(f"{text}{'.' * max(3, 70 - len(text))} {end}")
        lines.append("")
    with open(path, "w", encoding="utf-8") as file:
        file.write("\n".join(lines))


def graph_of(couplets):
    graph = networkx.MultiDiGraph()
    for number, ends in couplets.items():
        graph.add_node(number)
        for end in ends:
            graph.add_edge(number, end)
    return graph


def unreachable(graph, lost):
    """Where lost parts begin, and how many couplets are lost in all: what the findings say.
    (A circle begins nowhere: it is told by its first couplet.)"""
    part = networkx.condensation(networkx.DiGraph(graph.subgraph(lost)))
    heads = sorted(min(part.nodes[one]["members"]) for one in part if part.in_degree(one) == 0)
    return heads, len(lost)


def expected(couplets):
    graph = graph_of(couplets)
    below = networkx.descendants(graph, 1) | {1}
    taxa = [node for node in below if isinstance(node, str)]
    facts = {
        "couplets": len(couplets),
        "leads": graph.number_of_edges(),
        "terminals": len(taxa),
        "terminalEnds": sum(isinstance(end, str) for _, end in graph.edges()),
        "polytomies": sum(graph.out_degree(number) > 2 for number in couplets),
        "reticulations": sum(max(0, graph.in_degree(number) - 1) for number in couplets),
        "unreachable": unreachable(graph, set(couplets) - below),
        "circles": sorted(
            sorted(part)
            for part in networkx.strongly_connected_components(graph)
            if len(part) > 1 or graph.has_edge(*list(part) * 2)
        ),
    }
    if facts["circles"] or not taxa:
        return facts
    ways = {
        taxon: [len(way) for way in networkx.all_simple_edge_paths(graph, 1, taxon)]
        for taxon in taxa
    }
    lengths = [length for some in ways.values() for length in some]
    facts["shortestRoute"] = min(lengths)
    facts["longestRoute"] = max(lengths)
    facts["meanRoute"] = sum(sum(some) / len(some) for some in ways.values()) / len(ways)
    power = math.floor(math.log2(len(taxa)))
    # The least mean of a dichotomous key to n equally frequent taxa: Huffman 1952 in closed form.
    facts["huffmanBound"] = power + 2 * (1 - 2**power / len(taxa)) if len(taxa) > 1 else 0
    sides = [
        len({end} & set(taxa) or networkx.descendants(graph, end) & set(taxa))
        for end in couplets[1]
    ]
    facts["rootShare"] = min(sides) / len(taxa)
    plain = facts["polytomies"] == 0 and facts["reticulations"] == 0 and not facts["unreachable"][0]
    if plain and len(taxa) > 3 and facts["terminalEnds"] == len(taxa):
        tree = dendropy.Tree.get(data=newick(couplets) + ";", schema="newick", rooting="force-rooted")
        facts["colless"] = treemeasure.colless_tree_imbalance(tree, normalize="max")
    return facts


def newick(couplets, number=1):
    """The tree below a couplet, inner nodes labelled by their couplets."""
    inner = [newick(couplets, end) if isinstance(end, int) else f"'{end}'"
             for end in couplets[number]]
    return "(" + ",".join(inner) + f"){number}"


def found(keydrift, path):
    report = path.replace(".txt", ".json")
    told_by(keydrift, "proof", path, "--json", report)
    with open(report, encoding="utf-8") as file:
        return json.load(file)


def below(message):
    told = re.search(r"(\d+|the) couplets? below", message)
    return 0 if told is None else 1 if told[1] == "the" else int(told[1])


def differences(path, wanted, report):
    got = dict(report.get("numbers") or {})
    with open(path, encoding="utf-8") as file:
        lines = file.read().split("\n")

    def couplet_at(line):
        return int(lines[line - 1].split(".")[0])

    lost = [f for f in report["findings"] if f["code"] == "unreachable-couplet"]
    got["unreachable"] = (
        sorted(couplet_at(f["line"]) for f in lost),
        len(lost) + sum(below(f["message"]) for f in lost),
    )
    got["circles"] = sum(f["code"] == "cycle" for f in report["findings"])
    told = dict(wanted, circles=len(wanted["circles"]))
    if wanted["circles"]:
        # What hangs on the length of ways is left out; what else there is to tell is told.
        kept = ("unreachable", "circles") + (("terminals",) if told["terminals"] else ())
        told = {name: told[name] for name in kept}
    return [
        f"{os.path.basename(path)}: {name} {value} wanted, {got.get(name)} given"
        for name, value in told.items()
        if not same(value, got.get(name))
    ]


def same(wanted, got):
    if isinstance(wanted, float) and isinstance(got, (int, float)):
        return math.isclose(wanted, got, rel_tol=1e-12, abs_tol=1e-12)
    return wanted == got


def run(keydrift, folder):
    """Yields (what, agreeing, asked, disagreements)."""
    chance = random.Random(5)
    for shape in ("even", "comb", "polytomous", "reticulate", "broken"):
        wrong, facts = [], 0
        for i in range(12):
            couplets = random_key(chance, shape, chance.choice([1, 2, 5, 14, 24]))
            path = f"{folder}/graph-{shape}-{i}.txt"
            printed(couplets, path)
            wanted = expected(couplets)
            facts += 2 + (wanted["terminals"] > 0) if wanted["circles"] else len(wanted)
            wrong += differences(path, wanted, found(keydrift, path))
        yield f"12 {shape} keys as graphs: facts", facts - len(wrong), facts, wrong
