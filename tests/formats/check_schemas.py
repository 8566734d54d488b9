"""Validates golden JSON files against the schemas of the formats, and sees that damage is noticed.

usage: check_schemas.py SCHEMA_FOLDER GOLDEN_FOLDER
Exit status 77 (skipped) where no validator is installed.
"""
import copy
import json
import pathlib
import sys

try:
    import jsonschema
except ImportError:
    print("the python package jsonschema is not installed")
    sys.exit(77)

GOLDEN = {"key": "key_json/full.json", "lexicon": "lexicon/full.json"}


def places(value, path=()):
    """Every object in a document with the way to it."""
    if isinstance(value, dict):
        yield path, value
        for name, member in value.items():
            yield from places(member, path + (name,))
    elif isinstance(value, list):
        for index, item in enumerate(value):
            yield from places(item, path + (index,))


def main(schemas: pathlib.Path, golden: pathlib.Path) -> int:
    faults = 0
    for name, file in GOLDEN.items():
        schema = json.loads((schemas / f"{name}.schema.json").read_text(encoding="utf-8"))
        jsonschema.Draft202012Validator.check_schema(schema)
        validator = jsonschema.Draft202012Validator(schema)
        document = json.loads((golden / file).read_text(encoding="utf-8"))
        for error in validator.iter_errors(document):
            faults += 1
            print(f"{file}: {error.json_path}: {error.message[:300]}")
        for path, _ in list(places(document)):
            damaged = copy.deepcopy(document)
            at = damaged
            for step in path:
                at = at[step]
            at["unknown field"] = 1
            if validator.is_valid(damaged):
                faults += 1
                print(f"{name}.schema.json lets an unknown field pass in {path}")
    return 1 if faults else 0


sys.exit(main(pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2])))
