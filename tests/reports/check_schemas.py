"""Validates the JSON that the report tests wrote against the published schemas.

usage: check_schemas.py SCHEMA_FOLDER JSON_FOLDER
Exit status 77 (skipped) where no validator is installed.
"""
import json
import pathlib
import sys

try:
    import jsonschema
    import referencing
except ImportError:
    print("the python packages jsonschema and referencing are not installed")
    sys.exit(77)


def main(schemas: pathlib.Path, reports: pathlib.Path) -> int:
    known = {path.name.split(".")[0]: json.loads(path.read_text(encoding="utf-8"))
             for path in sorted(schemas.glob("*.schema.json"))}
    registry = referencing.Registry().with_resources(
        (schema["$id"], referencing.Resource.from_contents(schema)) for schema in known.values())
    for schema in known.values():
        jsonschema.Draft202012Validator.check_schema(schema)
    checked = set()
    faults = 0
    for path in sorted(reports.glob("*.json")):
        report = json.loads(path.read_text(encoding="utf-8"))
        name = report["report"]
        validator = jsonschema.Draft202012Validator(known[name], registry=registry)
        for error in validator.iter_errors(report):
            faults += 1
            print(f"{path.name}: {error.json_path}: {error.message[:300]}")
        checked.add(name)
    for name in sorted(set(known) - checked - {"parts"}):
        faults += 1
        print(f"no report was written for {name}.schema.json")
    return 1 if faults else 0


sys.exit(main(pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2])))
