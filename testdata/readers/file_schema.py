"""Holds YAML files against the JSON Schema of the collection file.

usage: file_schema.py SCHEMA FILE...

Prints each file with what is wrong with it, or that nothing is.
"""

import json
import os
import re
import sys

import jsonschema
import yaml


class Loader(yaml.SafeLoader):
    """YAML 1.2, as editors read it: a date stays the text that it is, and so does on."""


Loader.yaml_implicit_resolvers = {
    first: [(tag, form) for tag, form in resolvers if not tag.endswith((":timestamp", ":bool"))]
    for first, resolvers in yaml.SafeLoader.yaml_implicit_resolvers.items()
}
Loader.add_implicit_resolver("tag:yaml.org,2002:bool", re.compile("^(true|false)$"), "tf")


def main(schema, *files):
    with open(schema, encoding="utf-8") as f:
        schema = json.load(f)
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    for path in files:
        with open(path, encoding="utf-8") as f:
            data = json.loads(json.dumps(yaml.load(f, Loader)))
        wrong = sorted("/".join(map(str, e.absolute_path)) for e in validator.iter_errors(data))
        print(f"{os.path.basename(path)}: {', '.join(wrong) or 'as the schema says'}")


if __name__ == "__main__":
    main(*sys.argv[1:])
