"""Judges the printed JSON Schema by jsonschema, an independent library for Python.

Usage: putback schema | python check_schema.py (`./dev reference` does it in an environment of its own).
The schema must be one of draft 2020-12, every good sample must fit it, and each bad sample must be refused
by whom its name says: `both-…` by schema and reader, `reader-…` by the reader alone.
"""

import json
import pathlib
import sys

from jsonschema import Draft202012Validator

REPOSITORY = pathlib.Path(__file__).resolve().parents[2]
GOOD = ["public/demo", "tests/suite/accepted", "tests/suite/maps", "tests/suite/format/valid"]


def samples(folder):
    return sorted((REPOSITORY / folder).glob("*.putback.json"))


def fits(validator, path):
    """Whether the schema has nothing against a file; what is no JSON never fits, and no schema says so."""
    try:
        return validator.is_valid(json.loads(path.read_bytes().decode("utf-8")))
    except ValueError:
        return None


def main():
    schema = json.load(sys.stdin)
    Draft202012Validator.check_schema(schema)
    validator = Draft202012Validator(schema)
    wrong = []
    good = [path for folder in GOOD for path in samples(folder)]
    bad = samples("tests/suite/format/invalid")
    for path in good:
        for fault in validator.iter_errors(json.loads(path.read_text(encoding="utf-8"))):
            wrong.append(f"{path.name}: {fault.json_path}: {fault.message}")
    for path in bad:
        expected = [False] if path.name.startswith("both-") else [True, None]
        if fits(validator, path) not in expected:
            wrong.append(f"{path.name}: the schema judges it otherwise than its name says")
    if not good or not bad:
        wrong.append("there are no samples to judge")
    for line in wrong:
        print(line, file=sys.stderr)
    print(f"{len(good)} good and {len(bad)} bad samples, {len(wrong)} judged otherwise")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
