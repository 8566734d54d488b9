"""The worth of the best assignment by scipy's linear_sum_assignment.

Reads "graph ROWS COLUMNS" and lines "ROW COLUMN WORTH"; writes the worth for each graph.  Exit
status 77 where scipy is not installed.
"""
import sys

try:
    import numpy
    from scipy.optimize import linear_sum_assignment
except ImportError:
    sys.exit(77)


def worth(matrix):
    rows, columns = linear_sum_assignment(matrix, maximize=True)
    return int(matrix[rows, columns].sum())


matrix = None
for line in sys.stdin:
    words = line.split()
    if words[0] == "graph":
        if matrix is not None:
            print(worth(matrix))
        matrix = numpy.zeros((int(words[1]), int(words[2])), dtype=numpy.int64)
    else:
        matrix[int(words[0]), int(words[1])] = int(words[2])
if matrix is not None:
    print(worth(matrix))
