"""Separated text as python's csv module writes and reads it (RFC 4180 and the dialects of
spreadsheets): whatever cells an archive has, they come out of keydrift as they went in, in order,
one row per sheet.  Only a line end or tab within a cell comes out as a blank, so that the output
has a line per sheet.
"""

import csv
import gzip
import io
import random
import re

from asking import told_by

KEY = """Title: Key to the species of Aus

1.  Leaves flat ................ Aus bus
–   Leaves rolled ............ Aus cus
"""

PIECES = ["A", "b", "7", "é", "ß", "Ω", "草", " ", ",", ";", "\t", '"', '""', "'", "\n", "\r\n", "/",
          "=", "(", ")", ".", "–"]


def cell(chance, awkward):
    pieces = PIECES if awkward else PIECES[:7]
    inner = "".join(chance.choice(pieces) for _ in range(chance.randint(0, 12)))
    return "H" + inner + str(chance.randint(0, 9))  # blanks at the ends would be trimmed


def made(chance, rows, dialect):
    out = io.StringIO()
    writer = csv.writer(out, **dialect)
    header = ["occurrenceRemarks", "catalogNumber", "storageLocation", "scientificName", "leaf"]
    writer.writerow(header)
    sheets = []
    for i in range(rows):
        number = f"{i}:" + cell(chance, True)
        name = chance.choice(["Aus bus", "Aus cus", "Dus eus"])
        row = [cell(chance, True), number, cell(chance, True), name, chance.choice(["", "x"])]
        writer.writerow(row)
        sheets.append((re.sub("\r\n|[\r\n\t]", " ", number), name))
    return out.getvalue(), sheets


# RFC 4180 (2005), section 2: the records that it gives as examples, rule by rule.
EXAMPLES = [
    ("1, each record on a line", "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", "bbb"),
    ("2, no line end behind the last", "aaa,bbb,ccc\r\nzzz,yyy,xxx", "bbb"),
    ("5, enclosed or not", '"aaa","bbb","ccc"\r\nzzz,yyy,xxx\r\n', "bbb"),
    ("6, a line end enclosed", '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx\r\n', "b bb"),
    ("7, a quotation mark doubled", '"aaa","b""bb","ccc"\r\nzzz,yyy,xxx\r\n', 'b"bb'),
]


def examples(keydrift, folder, key):
    wrong = []
    for rule, text, middle in EXAMPLES:
        path, out = f"{folder}/tables-rfc.csv", f"{folder}/tables-rfc-out.csv"
        with open(path, "w", encoding="utf-8", newline="") as file:
            # Rule 3: a header of as many fields.
            file.write("scientificName,catalogNumber,storageLocation\r\n" + text)
        told_by(keydrift, "redetermine", key, key, path, "--specimens", out)
        with open(out, newline="", encoding="utf-8-sig") as file:
            got = [(row["scientificName"], row["catalogNumber"], row["storageLocation"])
                   for row in csv.DictReader(file)]
        wanted = [("aaa", middle, "ccc"), ("zzz", "yyy", "xxx")]
        if got != wanted:
            wrong.append(f"rule {rule}: {wanted} wanted, {got} given")
    yield "tables, examples of RFC 4180: rules", len(EXAMPLES) - len(wrong), len(EXAMPLES), wrong


def run(keydrift, folder):
    """Yields (what, agreeing, asked, disagreements)."""
    chance = random.Random(4180)
    key = f"{folder}/tables-key.txt"
    with open(key, "w", encoding="utf-8") as file:
        file.write(KEY)
    yield from examples(keydrift, folder, key)
    forms = {
        "RFC 4180": ({"lineterminator": "\r\n"}, "utf-8"),
        "everything quoted": ({"quoting": csv.QUOTE_ALL, "lineterminator": "\n"}, "utf-8"),
        "semicolons, byte order mark": ({"delimiter": ";", "lineterminator": "\r\n"}, "utf-8-sig"),
        "tabs": ({"delimiter": "\t", "lineterminator": "\n"}, "utf-8"),
        "gzip": ({"lineterminator": "\n"}, "utf-8"),
    }
    for form, (dialect, encoding) in forms.items():
        text, sheets = made(chance, 400, dialect)
        stem = f"{folder}/tables-{form.split()[0].strip(',').lower()}"
        path, out = f"{stem}.csv", f"{stem}-out.csv"
        data = text.encode(encoding)
        if form == "gzip":
            path, data = path + ".gz", gzip.compress(data, mtime=0)
        with open(path, "wb") as file:
            file.write(data)
        told_by(keydrift, "redetermine", key, key, path, "--specimens", out)
        with open(out, newline="", encoding="utf-8-sig") as file:
            got = [(row["catalogNumber"], row["scientificName"]) for row in csv.DictReader(file)]
        wrong = [f"{path}: {a} wanted, {b} given" for a, b in zip(sheets, got) if a != b]
        if len(got) != len(sheets):
            wrong.append(f"{path}: {len(sheets)} rows wanted, {len(got)} given")
        yield f"tables, {form}: rows", len(sheets) - len(wrong), len(sheets), wrong
