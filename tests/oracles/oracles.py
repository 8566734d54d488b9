"""Holds keydrift to what its makers did not write, and prints the table.

Usage: /usr/bin/python3 oracles.py KEYDRIFT-BINARY WORK-FOLDER [ORACLE...]

An oracle is a module beside this file whose run(keydrift, folder) yields rows (what, how many
agree, of how many, the disagreements in words).  Exit status 1 when anything disagrees; all of it
is listed in WORK-FOLDER/disagreements.txt.  77 when a library is missing.
"""

import importlib
import os
import shutil
import sys

from asking import Missing

ORACLES = ["open_data", "strands", "graphs", "alignment", "assignment", "concepts", "figures",
           "names", "tables", "dates", "terms", "schemas"]


def main():
    keydrift, folder = os.path.abspath(sys.argv[1]), sys.argv[2]
    os.makedirs(folder, exist_ok=True)
    if shutil.which("Rscript") is None:
        print("skipped: Rscript is missing; sh tests/oracles/run.sh installs it")
        return 77
    wrong = []
    for name in sys.argv[3:] or ORACLES:
        try:
            oracle = importlib.import_module(name)
        except ModuleNotFoundError as missing:
            print(f"skipped: {missing}; sh tests/oracles/run.sh installs what is missing")
            return 77
        try:
            for what, agreeing, asked, disagreements in oracle.run(keydrift, folder):
                print(f"{what:<62} {agreeing:>7,} of {asked:>7,}", flush=True)
                if asked == 0:
                    disagreements = [f"{what}: nothing was compared"]
                for line in disagreements[:5]:
                    print(f"    {line}")
                wrong += disagreements
        except Missing as missing:
            print(f"skipped: {name} wants {missing}")
            if len(sys.argv) == 4:
                return 77
    with open(os.path.join(folder, "disagreements.txt"), "w", encoding="utf-8") as file:
        file.writelines(line + "\n" for line in wrong)
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
