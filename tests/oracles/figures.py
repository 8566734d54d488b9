"""Published figures about keys and codes, against what `proof` reckons.

  couplets      a key of two leads each has one couplet fewer than ends; of any: the leads beyond the
                first of each couplet are one fewer than ends (counting edges of a tree)
  least, most   external path length of the most even key, n k + 2 (n - 2^k), k = floor(log2 n), and of
                the comb, n (n + 1) / 2 - 1: the extremes of the Sackin index (Fischer, Annals of
                Combinatorics 25, 2021; formulas from memory); Colless index of the comb,
                (n - 1)(n - 2) / 2 (from memory)
  Huffman       least mean under given frequencies: the example of table I in Huffman, Proc. IRE 40,
                1952 (13 messages, mean 3.42; from memory), and a code made here with a heap;
                Shannon's entropy below it
  Osborne       chance of a right answer, (1 - p)^D, of a taxon behind D couplets (Osborne, New
                Phytologist 62, 1963; the formula from memory), and the mean over a comb in closed form
Payne & Preece (J. R. Statist. Soc. A 143, 1980) print tables as well; no copy was at hand, so none of
their figures is here.
"""

import heapq
import json
import math
import random

from asking import told_by


def write_key(path, shape):
    """`shape`: nested tuples; an int is a taxon.  Returns the number of couplets and leads."""
    couplets, leads = [], 0
    waiting = [shape]
    numbers = {id(shape): 1}
    while waiting:
        node = waiting.pop(0)
        couplets.append(node)
        for child in node:
            if isinstance(child, tuple):
                numbers[id(child)] = len(numbers) + 1
                waiting.append(child)
    lines = []
    states = ["ruddy", "tawny", "sallow", "dusky", "ashen"]
    for node in couplets:
        number = numbers[id(node)]
        for i, child in enumerate(node):
            end = str(numbers[id(child)]) if isinstance(child, tuple) else taxon(child)
            label = f"{number}." if i == 0 else "–"
            lines.append(f"{label} Part {number}x {states[i]} .......... {end}")
            leads += 1
        lines.append("")
    with open(path, "w", encoding="utf-8") as file:
        file.write("\n".join(lines))
    return len(couplets), leads


def taxon(i):
    return f"Aus {chr(97 + i // 676 % 26)}{chr(97 + i // 26 % 26)}{chr(97 + i % 26)}us"


def even(first, size):
    if size == 1:
        return first
    half = size // 2
    return (even(first, half), even(first + half, size - half))


def comb(size):
    shape = (size - 2, size - 1)
    for i in reversed(range(size - 2)):
        shape = (i, shape)
    return shape


def grown(chance, size, widest):
    """A random key of that many ends."""
    parts = list(range(size))
    while len(parts) > 1:
        width = min(len(parts), chance.randint(2, widest))
        if len(parts) - width == 0 or len(parts) > width:
            taken = [parts.pop(chance.randrange(len(parts))) for _ in range(width)]
            parts.append(tuple(taken))
    return parts[0]


def proof(keydrift, folder, *options):
    told_by(keydrift, "proof", f"{folder}/figures-key.txt", *options, "--json",
            f"{folder}/figures.json")
    with open(f"{folder}/figures.json", encoding="utf-8") as file:
        return json.load(file)


def near(a, b):
    return math.isclose(a, b, rel_tol=1e-9, abs_tol=1e-12)


def couplets(keydrift, folder):
    chance = random.Random(1778)
    wrong, asked = [], 0
    for widest in (2, 5):
        for _ in range(12):
            size = chance.randint(2, 120)
            made, leads = write_key(f"{folder}/figures-key.txt", grown(chance, size, widest))
            told = proof(keydrift, folder)["numbers"]
            asked += 1
            counted = (told["couplets"], told["leads"], told["terminals"])
            beyond = told["leads"] - told["couplets"]
            if counted != (made, leads, size) or beyond != size - 1 or (
                    widest == 2 and told["couplets"] != size - 1):
                wrong.append(f"{size} taxa: {counted}, {(made, leads, size)} wanted")
    yield "couplets by taxa, of two leads and of more", asked - len(wrong), asked, wrong


def lengths(keydrift, folder):
    wrong, asked = [], 0
    for size in (2, 3, 4, 5, 6, 7, 8, 10, 16, 20, 32, 50, 100):
        k = size.bit_length() - 1
        for name, shape, total, deepest, colless in (
                ("even", even(0, size), size * k + 2 * (size - 2**k), (size - 1).bit_length(), None),
                ("comb", comb(size), size * (size + 1) // 2 - 1, size - 1, 1.0)):
            write_key(f"{folder}/figures-key.txt", shape)
            told = proof(keydrift, folder)["numbers"]
            asked += 1
            # Imbalance is told as a share of the comb's.
            even_one = colless is None or size < 4 or near(told["colless"], colless)
            if (not near(told["meanRoute"] * size, total) or told["longestRoute"] != deepest
                    or not even_one):
                wrong.append(f"{name}, {size} taxa: {told}")
    yield "route lengths of even keys and combs", asked - len(wrong), asked, wrong


def best_mean(weights):
    heap = list(weights)
    heapq.heapify(heap)
    total = 0.0
    while len(heap) > 1:
        both = heapq.heappop(heap) + heapq.heappop(heap)
        total += both
        heapq.heappush(heap, both)
    return total / sum(weights)


def huffman(keydrift, folder):
    chance = random.Random(1952)
    published = [20, 18, 10, 10, 10, 6, 6, 4, 4, 4, 4, 3, 1]
    cases = [(published, 3.42)]
    for _ in range(15):
        weights = [chance.choice([1, 2, 3, 10, 100]) for _ in range(chance.randint(2, 40))]
        cases.append((weights, best_mean(weights)))
    wrong = []
    for weights, mean in cases:
        write_key(f"{folder}/figures-key.txt", comb(len(weights)))
        with open(f"{folder}/figures.csv", "w", encoding="utf-8") as file:
            file.write("taxon,count\n")
            file.writelines(f"{taxon(i)},{weight}\n" for i, weight in enumerate(weights))
        told = proof(keydrift, folder, "--frequencies", f"{folder}/figures.csv")["frequencyNumbers"]
        share = [weight / sum(weights) for weight in weights]
        entropy = -sum(p * math.log2(p) for p in share)
        if not (near(told["huffmanBound"], mean) and near(told["entropyBound"], entropy)
                and near(best_mean(weights), mean)):
            wrong.append(f"{weights}: {told}, {mean} and {entropy} wanted")
    yield "Huffman's and Shannon's bounds, weighted", len(cases) - len(wrong), len(cases), wrong


def depths(shape, depth=0):
    if not isinstance(shape, tuple):
        return {shape: depth}
    return {name: d for child in shape for name, d in depths(child, depth + 1).items()}


def osborne(keydrift, folder):
    chance = random.Random(1963)
    wrong, asked = [], 0
    for percent in (1, 2, 5, 10, 21):
        right = 1 - percent / 100
        for shape in (even(0, 8), even(0, 32), comb(8), comb(16), grown(chance, 40, 2)):
            routes = depths(shape)
            size = len(routes)
            write_key(f"{folder}/figures-key.txt", shape)
            told = proof(keydrift, folder, "--error-rate", f"{percent}%")["expectedRight"]
            chances = {one["name"]: one["chance"] for one in told["taxa"]}
            mean = sum(right**d for d in routes.values()) / size
            if shape == comb(size):
                mean = ((right - right**size) / (1 - right) + right ** (size - 1)) / size
            asked += 1
            if not near(told["mean"], mean) or any(
                    not near(chances[taxon(i)], right**d) for i, d in routes.items()):
                wrong.append(f"{size} taxa, {percent} %: {told['mean']}, {mean} wanted")
    yield "chances of a right answer, (1 - p)^D", asked - len(wrong), asked, wrong


def run(keydrift, folder):
    """Yields (what, agreeing, asked, disagreements)."""
    for part in (couplets, lengths, huffman, osborne):
        yield from part(keydrift, folder)
