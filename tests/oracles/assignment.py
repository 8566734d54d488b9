"""The best one-to-one assignment, against scipy's linear_sum_assignment (Crouse 2016, IEEE
Transactions on Aerospace and Electronic Systems 52: 1679-1696, as scipy's documentation cites it).

Random sparse graphs of offers, of which many are worth the same or nearly so: the aligner's choice
must be worth what scipy finds.  The program tests/oracles/heaviest.cpp asks the aligner.

Run by itself it answers what heaviest.cpp is asked, in the same form: the benchmark of the alignment
asks it about the graphs of its histories.  Exit status 77 where scipy is not installed.
"""

import os
import random
import subprocess
import sys

try:
    import numpy
    from scipy.optimize import linear_sum_assignment
except ImportError:
    if __name__ == "__main__":
        sys.exit(77)
    raise


def graph(chance):
    rows, columns = chance.randint(1, 30), chance.randint(1, 30)
    share, most = chance.choice([0.1, 0.3, 0.8]), chance.choice([3, 20, 10**9])
    return rows, columns, [
        (row, column, chance.randint(1, most))
        for row in range(rows)
        for column in range(columns)
        if chance.random() < share
    ]


def best(rows, columns, offers):
    worth = numpy.zeros((rows, columns), dtype=numpy.int64)  # no offer: left single
    for row, column, gain in offers:
        worth[row, column] = gain
    return int(worth[linear_sum_assignment(worth, maximize=True)].sum())


def run(keydrift, folder):
    """Yields (what, agreeing, asked, disagreements)."""
    chance = random.Random(1955)
    graphs = [graph(chance) for _ in range(300)]
    asked = "".join(
        f"{rows} {columns} {len(offers)}\n"
        + "".join(f"{row} {column} {gain}\n" for row, column, gain in offers)
        for rows, columns, offers in graphs
    )
    with open(f"{folder}/assignment-asked.txt", "w", encoding="utf-8") as file:
        file.write(asked)
    program = os.path.join(os.path.dirname(keydrift), "tests", "oracles", "heaviest")
    ran = subprocess.run([program], input=asked, capture_output=True, text=True, check=True)
    given = ran.stdout.split()
    wrong = [
        f"graph {i}: {best(*one)} wanted, {got} given"
        for i, (one, got) in enumerate(zip(graphs, given))
        if got != str(best(*one))
    ]
    if len(given) != len(graphs):
        wrong.append(f"{len(graphs)} graphs, {len(given)} answers")
    yield "300 graphs: worth of the best assignment", len(graphs) - len(wrong), len(graphs), wrong


def answer(numbers):
    """The worth for each graph of "rows columns offers" and so many "row column worth"."""
    while (rows := next(numbers, None)) is not None:
        columns, count = next(numbers), next(numbers)
        offers = [(next(numbers), next(numbers), next(numbers)) for _ in range(count)]
        print(best(rows, columns, offers))


if __name__ == "__main__":
    answer(int(word) for line in sys.stdin for word in line.split())
