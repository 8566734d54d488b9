"""The cluster distance of rooted trees by dendropy: the clusters that one of two trees has alone
(Robinson & Foulds 1981, Mathematical Biosciences 53: 131-147, for rooted trees).

Reads pairs of lines of Newick, writes the distance for each pair: the benchmark of the alignment asks
it about the keys of its histories.  Exit status 77 where dendropy is not installed.
"""

import sys

try:
    import dendropy
    from dendropy.calculate import treecompare
except ImportError:
    sys.exit(77)


def distance(was, now):
    names = dendropy.TaxonNamespace()
    trees = [
        dendropy.Tree.get(data=text, schema="newick", rooting="force-rooted", taxon_namespace=names)
        for text in (was, now)
    ]
    return treecompare.symmetric_difference(*trees)


lines = sys.stdin.read().split("\n")
for one, other in zip(lines[0::2], lines[1::2]):
    print(distance(one, other))
