"""Which couplet answers to which, against networkx and dendropy.

same key    a random key printed twice, the second time with other numbers, another order of
            couplets and of leads: the pairs are those of the labelled-graph isomorphism
            (networkx, VF2: Cordella et al. 2004, IEEE TPAMI 26: 1367-1372), and no taxon changes.
moved parts a random key of which parts were cut off and put elsewhere: couplets that part the same
            taxa in the same way in both (by dendropy's encoded bipartitions) are pairs.
"""

import json
import random

import dendropy
import networkx
from networkx.algorithms import isomorphism

import graphs
from asking import told_by


def renumbered(chance, couplets):
    """The same key, other numbers and another order of leads."""
    old = [number for number in couplets if number != 1]
    new = old[:]
    chance.shuffle(new)
    number = {1: 1, **dict(zip(old, new))}
    made, words = {}, {}
    for one in sorted(couplets, key=number.get):
        order = list(range(len(couplets[one])))
        chance.shuffle(order)
        made[number[one]] = [number.get(couplets[one][i], couplets[one][i]) for i in order]
        words[number[one]] = (one, order)
    return made, words


def collated(keydrift, old, new):
    """The pairs of couplets by their labels, and the whole report."""
    report = new.replace(".txt", ".json")
    told_by(keydrift, "collate", old, new, "--json", report)
    with open(report, encoding="utf-8") as file:
        told = json.load(file)
    pairs = {
        int(pair["old"]["label"]): int(pair["new"]["label"])
        for pair in told["alignment"]["pairs"]
    }
    return pairs, told


def isomorphic(old, new):
    def simple(couplets):
        graph = networkx.DiGraph(graphs.graph_of(couplets))
        for node in graph:
            graph.nodes[node]["name"] = node if isinstance(node, str) else ""
        return graph

    matcher = isomorphism.DiGraphMatcher(
        simple(old), simple(new), lambda a, b: a["name"] == b["name"]
    )
    if not matcher.is_isomorphic():
        raise RuntimeError("the made keys are not the same key")
    return {a: b for a, b in matcher.mapping.items() if isinstance(a, int)}


def same_key(keydrift, folder, shape, i, chance):
    couplets = graphs.random_key(chance, shape, chance.choice([3, 9, 20, 40]))
    again, words = renumbered(chance, couplets)
    stem = f"{folder}/same-{shape}-{i}"
    vocabulary = chance.choice([1, 3, 1000])
    graphs.printed(couplets, f"{stem}-old.txt", None, vocabulary)
    graphs.printed(again, f"{stem}-new.txt", words, vocabulary)
    pairs, told = collated(keydrift, f"{stem}-old.txt", f"{stem}-new.txt")
    wrong = [
        f"{stem}: couplet {old} is {new} in the new edition, {pairs.get(old)} given"
        for old, new in isomorphic(couplets, again).items()
        if pairs.get(old) != new
    ]
    if told["changesMeaning"]:
        wrong.append(f"{stem}: said to change the meaning")
    return wrong, len(couplets) + 1


def moved(chance, couplets):
    """Parts cut off and put elsewhere, `None` when the key is too small for it."""
    made = {number: list(ends) for number, ends in couplets.items()}
    for _ in range(3):
        cut = chance.choice(sorted(made))
        above = [(n, i) for n, ends in made.items() for i, end in enumerate(ends) if end == cut]
        if cut == 1 or not above:
            continue
        graph = graphs.graph_of(made)
        # The couplet keeps one of its leads' ends; another end of the key is put into its place.
        below = networkx.descendants(graph, cut) | {cut}
        places = [(n, i) for n, ends in made.items() for i in range(len(ends))
                  if n not in below and (n, i) not in above]
        if len(made[cut]) != 2 or not places:
            continue
        n, i = chance.choice(places)
        kept = chance.randrange(2)
        made[above[0][0]][above[0][1]] = made[cut][kept]
        made[cut][kept] = made[n][i]
        made[n][i] = cut
    return made


def partings(couplets, namespace):
    """couplet -> how it parts the taxa, by dendropy's leaf sets."""
    tree = dendropy.Tree.get(data=graphs.newick(couplets) + ";", schema="newick", rooting="force-rooted",
                             taxon_namespace=namespace, suppress_internal_node_taxa=True)
    tree.encode_bipartitions()
    return {
        int(node.label): frozenset(one.bipartition.leafset_bitmask for one in node.child_nodes())
        for node in tree.postorder_internal_node_iter()
    }


def moved_parts(keydrift, folder, i, chance):
    couplets = graphs.random_key(chance, "even", chance.choice([8, 15, 30]))
    stem = f"{folder}/moved-{i}"
    changed, words = renumbered(chance, moved(chance, couplets))
    vocabulary = chance.choice([1, 3, 1000])
    graphs.printed(couplets, f"{stem}-old.txt", None, vocabulary)
    graphs.printed(changed, f"{stem}-new.txt", words, vocabulary)
    pairs, _ = collated(keydrift, f"{stem}-old.txt", f"{stem}-new.txt")
    namespace = dendropy.TaxonNamespace()
    before = partings(couplets, namespace)
    after = {parting: number for number, parting in partings(changed, namespace).items()}
    wrong, asked = [], 0
    for number, parting in before.items():
        if parting in after:
            asked += 1
            if pairs.get(number) != after[parting]:
                wrong.append(f"{stem}: couplet {number} parts the taxa as {after[parting]} of the "
                             f"new edition does, {pairs.get(number)} given")
    return wrong, asked


def run(keydrift, folder):
    """Yields (what, agreeing, asked, disagreements)."""
    chance = random.Random(3)
    for shape in ("even", "comb", "polytomous"):
        wrong, asked = [], 0
        for i in range(8):
            found, of = same_key(keydrift, folder, shape, i, chance)
            wrong += found
            asked += of
        yield f"8 {shape} keys renumbered: pairs", asked - len(wrong), asked, wrong
    wrong, asked = [], 0
    for i in range(16):
        found, of = moved_parts(keydrift, folder, i, chance)
        wrong += found
        asked += of
    yield "16 keys with moved parts: pairs that part alike", asked - len(wrong), asked, wrong
