"""Dates and intervals of ISO 8601 as Darwin Core's list of terms explains them.

The first nine are the examples that the list gives for eventDate (1900/1909 and 2007-11-13/15 as
transcribed from it, the others from memory), with the days that its comments say they cover; the rest
are forms of the same grammar. Which days keydrift reads is seen from outside: a work published on the last day may be
cited, one published on the day after may not; an edition published on the first day is presumed, one
published on the day after is not.
"""

import csv
import datetime

import trees
from asking import told_by

KEY = """Edition: {0}
Year: {0}

1.  Leaves flat ................ Aus bus
–   Leaves rolled ............ Aus cus
"""

# text, first day, last day
PERIODS = [
    ("1963-03-08T14:07-06:00", "1963-03-08", "1963-03-08"),  # 8 March 1963 at 2:07 pm, UTC-6
    ("2009-02-20T08:40Z", "2009-02-20", "2009-02-20"),
    ("2018-08-29T15:19", "2018-08-29", "2018-08-29"),  # local time
    ("1809-02-12", "1809-02-12", "1809-02-12"),
    ("1906-06", "1906-06-01", "1906-06-30"),  # some time in June 1906
    ("1971", "1971-01-01", "1971-12-31"),  # some time in the year 1971
    ("2007-03-01T13:00:00Z/2008-05-11T15:30:00Z", "2007-03-01", "2008-05-11"),
    ("1900/1909", "1900-01-01", "1909-12-31"),
    ("2007-11-13/15", "2007-11-13", "2007-11-15"),
    ("1996-02", "1996-02-01", "1996-02-29"),
    ("1900-02", "1900-02-01", "1900-02-28"),
    ("2007-11-13/2007-11-13", "2007-11-13", "2007-11-13"),
    ("2007-11/2008-02", "2007-11-01", "2008-02-29"),
    ("1999-12-31/2000-01-01", "1999-12-31", "2000-01-01"),
    ("2014/2016-02", "2014-01-01", "2016-02-29"),
]
NO_PERIODS = ["1963-13", "1999-02-29", "May 1906", "8.3.1963", "1909/1900", "s.d.", "06/1906"]


def day_after(day):
    return str(datetime.date.fromisoformat(day) + datetime.timedelta(days=1))


def asked(keydrift, folder, text, published, citing):
    """What the sheet dated `text` was determined with, where "Orm 1" was published on that day."""
    sheets, table, out = (f"{folder}/dates-{name}.csv" for name in ("sheets", "table", "out"))
    header = ["catalogNumber", "scientificName", "dateIdentified", "identificationReferences"]
    trees.write_table(sheets, header, [["1", "Aus bus", text, "Orm 1" if citing else ""]])
    trees.write_table(table, ["citation", "edition", "published"],
                      [["Orm 1", "first", published], ["Tal 2", "OLD", "1000-01-01"]])
    told_by(keydrift, "redetermine", f"{folder}/dates-old.txt", f"{folder}/dates-new.txt", sheets,
            "--citations", table, "--specimens", out)
    with open(out, newline="", encoding="utf-8-sig") as file:
        row = next(csv.DictReader(file))
    return row["determinedWith"], row["editionBasis"]


def run(keydrift, folder):
    """Yields (what, agreeing, asked, disagreements)."""
    for name, year in (("old", 1000), ("new", 9000)):
        with open(f"{folder}/dates-{name}.txt", "w", encoding="utf-8") as file:
            file.write(KEY.format(year))
    wrong = []
    for text, first, last in PERIODS:
        later = "1000" if day_after(first) > last else ""  # all of it before, or not settled
        questions = [
            (last, True, ("first", "cited")),
            (day_after(last), True, ("first", "citation and date contradict")),
            (first, False, ("first", "presumed by date")),
            (day_after(first), False, (later, "presumed by date" if later else "not known")),
        ]
        given = [asked(keydrift, folder, text, day, citing) for day, citing, _ in questions]
        wanted = [answer for _, _, answer in questions]
        if given != wanted:
            wrong.append(f"{text}: {wanted} wanted, {given} given")
    yield "ISO 8601: first and last days", len(PERIODS) - len(wrong), len(PERIODS), wrong
    wrong = []
    for text in NO_PERIODS:
        given = asked(keydrift, folder, text, "1500", False)
        if given != ("", "not known"):
            wrong.append(f"{text}: not known wanted, {given} given")
    yield "ISO 8601: what is no date", len(NO_PERIODS) - len(wrong), len(NO_PERIODS), wrong
