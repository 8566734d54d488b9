"""Pairs couplets by their printed lines with python's difflib: the reference row.

Reads cases from standard input: a line "case", then a line "o N TEXT" or "n N TEXT" for each printed
line of couplet N of the old or the new edition.  Writes "case" and a line "OLD NEW" for each pair.

Lines that are equal are matched, and lines of blocks of like length that replace each other one by
one.  A couplet is paired with the one that most of its lines were matched with, each couplet once.
"""
import collections
import difflib
import sys


def pairs(old, new):
    votes = collections.Counter()
    matcher = difflib.SequenceMatcher(None, [t for _, t in old], [t for _, t in new], autojunk=False)
    for tag, a, b, c, d in matcher.get_opcodes():
        if tag == "equal" or (tag == "replace" and b - a == d - c):
            weight = 100 if tag == "equal" else 1
            for i, j in zip(range(a, b), range(c, d)):
                votes[old[i][0], new[j][0]] += weight
    used_old, used_new, result = set(), set(), []
    for (was, now), _ in sorted(votes.items(), key=lambda item: (-item[1], item[0])):
        if was not in used_old and now not in used_new:
            used_old.add(was)
            used_new.add(now)
            result.append((was, now))
    return result


def main():
    old, new, begun = [], [], False

    def finish():
        if begun:
            print("case")
            for was, now in pairs(old, new):
                print(was, now)

    for line in sys.stdin:
        kind, _, rest = line.rstrip("\n").partition(" ")
        if kind == "case":
            finish()
            old, new, begun = [], [], True
        else:
            number, _, text = rest.partition(" ")
            (old if kind == "o" else new).append((int(number), text))
    finish()


main()
