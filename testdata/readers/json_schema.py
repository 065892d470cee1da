"""Reads a JSON file strictly and looks for the number of its schema.

usage: json_schema.py FILE
"""

import json
import os
import sys


def refuse(name):
    raise ValueError(f"{name} is not JSON")


def unique(pairs):
    keys = [key for key, _ in pairs]
    if len(keys) != len(set(keys)):
        raise ValueError(f"a key stands twice among {keys}")
    return dict(pairs)


def main(path):
    with open(path, encoding="utf-8") as f:
        data = json.load(f, parse_constant=refuse, object_pairs_hook=unique)
    if not isinstance(data, dict) or data.get("schema") != 1:
        sys.exit(f"{os.path.basename(path)}: no \"schema\": 1 at the top")
    print(f"{os.path.basename(path)}: schema 1, keys {', '.join(data)}")


if __name__ == "__main__":
    main(*sys.argv[1:])
