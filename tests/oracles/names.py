"""Names by the articles of the two Codes: is what stands on a label a name of the key?

names.csv has, article by article, a name as the key prints it, the same or another one as a label
writes it, and whether the Code holds them to be one name for certain ("same").  ICZN 4th ed. 1999 and
ICN (Shenzhen) 2018; the column "source" says what is from memory.  Every name is invented, and every
row gets a genus of its own, so that rows cannot meet.  A label of the same name stands under an
edition that says the same, as one terminal; any other name is in neither edition, or only its genus is
certain.
"""

import csv
import os

import trees
from asking import told_by


def own_genus(name, i):
    letters = chr(97 + i // 26) + chr(97 + i % 26)
    return name.replace("Aus ", f"Au{letters}nus ")


def run(keydrift, folder):
    """Yields (what, agreeing, asked, disagreements)."""
    here = os.path.dirname(os.path.abspath(__file__))
    rows = trees.read_table(f"{here}/names.csv")
    for edition in ("1998", "2024"):
        lines = [f"Edition: {edition}", ""]
        for i, row in enumerate(rows):
            end = str(i + 2) if i + 1 < len(rows) else "Zus zus"
            part = f"Part {chr(97 + i // 26)}{chr(97 + i % 26)}x"
            # Another species of the genus, so that a genus alone says less than a name.
            lines += [f"{i + 1}.  {part} ruddy .......... {own_genus(row['printed'], i)}",
                      f"–  {part} sallow .......... {own_genus('Aus zzus', i)}",
                      f"–  {part} tawny .......... {end}", ""]
        with open(f"{folder}/names-{edition}.txt", "w", encoding="utf-8") as file:
            file.write("\n".join(lines))
    sheets, out = f"{folder}/names-sheets.csv", f"{folder}/names-out.csv"
    trees.write_table(sheets, ["catalogNumber", "scientificName"],
                      [[str(i), own_genus(row["asked"], i)] for i, row in enumerate(rows)])
    told_by(keydrift, "redetermine", f"{folder}/names-1998.txt", f"{folder}/names-2024.txt", sheets,
            "--specimens", out)
    with open(out, newline="", encoding="utf-8-sig") as file:
        given = list(csv.DictReader(file))
    wrong = {"ICZN": [], "ICN": [], "print": []}
    asked = dict.fromkeys(wrong, 0)
    for row, got in zip(rows, given):
        code = row["article"].split()[0]
        code = code if code in wrong else "print"
        asked[code] += 1
        same = got["outcome"] == "stands" and " | " not in got["oldName"]
        if same != (row["same"] == "yes"):
            wrong[code].append(f"{row['article']}: \"{row['asked']}\" for \"{row['printed']}\": "
                               f"{got['outcome']}, {got['reason']}")
    for code, what in (("ICZN", "names by ICZN articles"), ("ICN", "names by ICN articles"),
                       ("print", "names, common practice")):
        yield what, asked[code] - len(wrong[code]), asked[code], wrong[code]
