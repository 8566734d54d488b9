#!/usr/bin/env python3
"""Rows a second of scikit-learn's compiled tree walk over the rows of the archive benchmark.

    tree_reference.py SHEETS [KEY LEAVES]

With KEY and LEAVES the tree is printed as a key, and for each row the terminal that the tree has for
it, one a line: what the keying kernel has to find as well."""

import csv
import sys
import time

import numpy
from sklearn.tree import DecisionTreeClassifier

STATES = ("bare", "hairy")


def letters(number):
    return chr(ord("a") + number // 26) + chr(ord("a") + number % 26)


def leaf_name(node):
    word = ""
    while True:
        node, rest = divmod(node, 20)
        word = "bcdfghjklmnpqrstvwxz"[rest] + "aeiou"[rest % 5] + word
        if node == 0:
            return f"Arbora {word}sis"


def print_key(tree, path):
    """Couplets in the order of the tree's inner nodes."""
    inner = [n for n in range(tree.node_count) if tree.children_left[n] >= 0]
    number = {node: i + 1 for i, node in enumerate(inner)}
    with open(path, "w", encoding="utf-8") as out:
        out.write("Title: A tree for the benchmark\nEdition: tree\n\n")
        for node in inner:
            for label, state, to in ((f"{number[node]}.", 0, tree.children_left[node]),
                                     ("–", 1, tree.children_right[node])):
                end = number[to] if to in number else leaf_name(to)
                out.write(f"{label}  Organ {letters(tree.feature[node])} {STATES[state]} "
                          f"........ {end}\n")


def main():
    with open(sys.argv[1], encoding="utf-8", newline="") as file:
        rows = csv.reader(file)
        next(rows)
        names, states = [], []
        for row in rows:
            names.append(row[1])
            states.append([cell == STATES[1] for cell in row[2:]])
    table = numpy.asarray(states, dtype=numpy.float32)
    tree = DecisionTreeClassifier(random_state=0).fit(table, names)
    seconds = []
    for _ in range(5):
        start = time.monotonic()
        leaves = tree.tree_.apply(table)
        seconds.append(time.monotonic() - start)
    print(f"scikit-learn tree walk: {len(leaves) / min(seconds) / 1e6:.1f} million rows/s "
          f"({tree.get_n_leaves()} leaves)")
    if len(sys.argv) > 3:
        print_key(tree.tree_, sys.argv[2])
        with open(sys.argv[3], "w", encoding="utf-8") as out:
            out.writelines(leaf_name(leaf) + "\n" for leaf in leaves)


if __name__ == "__main__":
    main()
