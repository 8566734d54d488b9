"""The cluster distance of rooted trees by dendropy: clusters that one of two trees has alone.

Reads pairs of lines of Newick; writes the distance for each pair.  Exit status 77 where dendropy is
not installed.
"""
import sys

try:
    import dendropy
    from dendropy.calculate import treecompare
except ImportError:
    sys.exit(77)

lines = sys.stdin.read().split("\n")
for was, now in zip(lines[0::2], lines[1::2]):
    names = dendropy.TaxonNamespace()
    trees = [
        dendropy.Tree.get(data=text, schema="newick", rooting="force-rooted", taxon_namespace=names)
        for text in (was, now)
    ]
    print(treecompare.symmetric_difference(*trees))
