"""Classification trees as printed keys, and what keydrift must make of them.

A tree of scikit-learn (Pedregosa et al. 2011, JMLR 12: 2825-2830) or rpart (Breiman et al. 1984,
Classification and Regression Trees; Debian's r-cran-rpart) is an identification key: every inner
node a couplet, every leaf a taxon.  `Tree` holds one as rows (node, feature, test, child or class);
`printed` writes it as the printed text of an edition, in the words of `Words`.
"""

import csv
import dataclasses
import decimal
import itertools

STATES = ["ruddy", "tawny", "sallow", "dusky", "ashen", "livid", "glaucous", "swarthy"]


def read_table(path):
    with open(path, newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def write_table(path, header, rows):
    with open(path, "w", newline="", encoding="utf-8") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(header)
        writer.writerows(rows)


@dataclasses.dataclass
class Lead:
    """`test` is ("levels", {…}) or one of ("lt" "le" "gt" "ge", decimal)."""

    feature: str
    test: tuple
    child: int | None  # a node, or None
    name: str | None  # the class, where it ends


@dataclasses.dataclass
class Tree:
    couplets: dict  # node -> [Lead, …], in the order of printing

    def limits(self, feature):
        return {
            lead.test[1]
            for leads in self.couplets.values()
            for lead in leads
            if lead.feature == feature and lead.test[0] != "levels"
        }

    def features(self):
        return {lead.feature for leads in self.couplets.values() for lead in leads}


def holds(test, value):
    kind, wanted = test
    if kind == "levels":
        return value in wanted
    number = decimal.Decimal(value)
    return {
        "lt": number < wanted,
        "le": number <= wanted,
        "gt": number > wanted,
        "ge": number >= wanted,
    }[kind]


class Words:
    """The words of one data set: features and levels by the words that leads use."""

    def __init__(self, records):
        self.features = [name for name in records[0] if name != "class"]
        self.subject, self.kind, self.levels = {}, {}, {}
        for name in self.features:
            words = "".join(c.lower() if c.isalpha() else " " for c in name).split()
            words = [word for word in words if word not in ("mm", "g")]
            subject = " ".join(words)
            while subject in self.subject.values():  # names that differ in case only
                subject += " again"
            self.subject[name] = subject
            values = sorted({record[name] for record in records if record[name] != ""})
            self.kind[name] = "categorical"
            if name in ("legs",):
                self.kind[name] = "count"
            elif all(is_number(value) for value in values) and len(values) > len(STATES):
                self.kind[name] = "measurement"
            self.levels[name] = values
        self.classes = sorted({record["class"] for record in records})

    def state(self, feature, level):
        return level if level.isalpha() else STATES[self.levels[feature].index(level)]

    def identifier(self, feature):
        return self.subject[feature].replace(" ", "-")

    def taxon(self, name):
        letters = "".join(c for c in name.lower() if c.isalpha())
        return f"Classis {letters}oides"  # a bare "van" would be an author's particle

    def value(self, feature, level):
        """As an archive's column holds it."""
        if level == "" or self.kind[feature] == "categorical":
            return "" if level == "" else self.state(feature, level)
        return level + (" mm" if self.kind[feature] == "measurement" else "")

    def lexicon(self, path):
        header = ["character", "label", "structure", "property", "subjects", "kind", "unit"]
        rows = []
        for name in self.features:
            kind = self.kind[name]
            subject = self.subject[name]
            unit = {"measurement": "mm", "count": "1"}.get(kind, "")
            row = [self.identifier(name), subject, subject, "", subject, kind, unit]
            if kind != "categorical":
                rows.append(row + ["", ""])
                continue
            for level in self.levels[name]:
                state = self.state(name, level)
                rows.append(row + [state, state])
                row = [""] * len(row)
        write_table(path, header + ["state", "phrases"], rows)


def is_number(text):
    try:
        decimal.Decimal(text)
    except decimal.InvalidOperation:
        return False
    return True


def plain(number):
    text = format(number, "f")
    return text.rstrip("0").rstrip(".") if "." in text else text


def statement(words, lead, turn):
    """The lead's test in words; `turn` goes through the ways in which authors say a limit."""
    subject = words.subject[lead.feature].capitalize()
    kind, wanted = lead.test
    if kind == "levels":
        order = words.levels[lead.feature]
        states = [words.state(lead.feature, level) for level in order if level in wanted]
        listed = ", ".join(states[:-1]) + (" or " if len(states) > 1 else "") + states[-1]
        return f"{subject} {listed}"
    if words.kind[lead.feature] == "count":
        # A count is whole: fewer than 3.5 is 3 or fewer.
        least = wanted.to_integral_value(decimal.ROUND_CEILING)
        if kind in ("le", "gt"):
            least = wanted.to_integral_value(decimal.ROUND_FLOOR) + 1
        if kind in ("lt", "le"):
            ways = [f"fewer than {least}", f"at most {least - 1}", f"{least - 1} or fewer"]
        else:
            ways = [f"at least {least}", f"{least} or more", f"more than {least - 1}"]
        return f"{subject} {ways[turn % 3]}"
    unit, shown = ("mm", wanted)
    if turn % 4 == 2:
        unit, shown = "cm", wanted / 10
    elif turn % 4 == 3:
        unit, shown = "µm", wanted * 1000
    limit = f"{plain(shown)} {unit}"
    ways = {
        "lt": [f"less than {limit}", f"under {limit}", f"below {limit}", f"< {limit}"],
        "le": [f"at most {limit}", f"{limit} or less", f"up to {limit}", f"≤ {limit}"],
        "gt": [f"more than {limit}", f"over {limit}", f"exceeding {limit}", f"> {limit}"],
        "ge": [f"at least {limit}", f"{limit} or more", f"not less than {limit}", f"≥ {limit}"],
    }[kind]
    return f"{subject} {ways[turn // 4 % 4]}"


def printed(tree, words, title, path):
    """Writes the tree as a parallel key with dot leaders."""
    number = {node: i + 1 for i, node in enumerate(tree.couplets)}
    lines = [f"Title: {title}", f"Edition: {title.rsplit(' ', 1)[-1]}", ""]
    turn = 0
    for node, leads in tree.couplets.items():
        for i, lead in enumerate(leads):
            label = f"{number[node]}." if i == 0 else "–"
            end = words.taxon(lead.name) if lead.child is None else str(number[lead.child])
            text = f"{label:<5}{statement(words, lead, turn)} "
            lines.append(text + "." * max(3, 92 - len(text) - len(end)) + " " + end)
            turn += 1 if i == len(leads) - 1 else 0
        lines.append("")
    with open(path, "w", encoding="utf-8") as file:
        file.write("\n".join(lines))


def rpart_tree(path, unseen=True):
    """`unseen`: with the third leads, for levels that training never saw at a node."""
    rows = read_table(path)
    couplets = {}
    for row in rows:
        if not unseen and int(row["child"]) == 0:
            continue
        test = (row["kind"], set(row["value"].split("|")))
        if row["kind"] != "levels":
            test = (row["kind"], decimal.Decimal(row["value"]))
        ends = row["class"] != ""
        lead = Lead(row["feature"], test, None if ends else int(row["child"]),
                    row["class"] if ends else None)
        couplets.setdefault(int(row["node"]), []).append(lead)
    return Tree(in_order(couplets, 1))


def sklearn_tree(model, features, levels):
    """`levels`: feature -> the two levels coded 0 and 1, where it is categorical."""
    inner = model.tree_
    couplets = {}
    for node in range(inner.node_count):
        if inner.children_left[node] < 0:
            continue
        feature = features[inner.feature[node]]
        leads = []
        for child, kind in ((inner.children_left[node], "le"), (inner.children_right[node], "gt")):
            ends = inner.children_left[child] < 0
            name = model.classes_[inner.value[child][0].argmax()] if ends else None
            test = (kind, decimal.Decimal(inner.threshold[node]))
            if feature in levels:
                test = ("levels", {levels[feature][0 if kind == "le" else 1]})
            leads.append(Lead(feature, test, None if ends else int(child), name))
        couplets[node] = leads
    return Tree(in_order(couplets, 0))


def in_order(couplets, root):
    ordered, waiting = {}, [root]
    while waiting:
        node = waiting.pop()
        ordered[node] = couplets[node]
        waiting += [lead.child for lead in reversed(couplets[node]) if lead.child is not None]
    return ordered


def representatives(words, trees, feature):
    """One value for each part into which the limits of the trees cut a feature."""
    if words.kind[feature] == "categorical":
        return words.levels[feature]
    if words.kind[feature] == "count":
        return words.levels[feature]
    limits = sorted(set().union(*(tree.limits(feature) for tree in trees)))
    if not limits:
        return [words.levels[feature][0]]
    middles = [(a + b) / 2 for a, b in itertools.pairwise(limits)]
    return [plain(x) for x in [limits[0] - 1, *middles, limits[-1] + 1]]


def with_holes(words, trees, records, share, most, chance):
    """Records with values taken away at random, and all completions of each that the trees tell apart;
    those with more than `most` of them are left out."""
    holed_records, ways = [], []
    for record in records:
        holed = {f: "" if chance.random() < share else v for f, v in record.items()}
        holed["class"] = record["class"]
        one = completions(words, trees, holed, most)
        if one is not None:
            holed_records.append(holed)
            ways.append(one)
    return holed_records, ways


def completions(words, trees, record, most):
    """Every completion of the record in the features that the trees ask; None when over `most`."""
    asked = sorted(set().union(*(tree.features() for tree in trees)))
    choices = [
        [record[feature]] if record[feature] != "" else representatives(words, trees, feature)
        for feature in asked
    ]
    total = 1
    for choice in choices:
        total *= len(choice)
        if total > most:
            return None
    return [dict(record, **dict(zip(asked, one))) for one in itertools.product(*choices)]
