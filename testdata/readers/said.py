"""Looks for names in pictures and pages: said.py ROOM.yaml FILE...

Each file has to be whole, and to say the beginning of every name that it shows as
text, not as a tag. A page may have no tag that runs or fetches something.
"""
import html.parser
import pathlib
import re
import sys
import xml.etree.ElementTree

import yaml

BEGINNING = 12  # long names are cut


class Page(html.parser.HTMLParser):
    def __init__(self):
        super().__init__()
        self.text, self.tags = [], set()

    def handle_starttag(self, tag, attributes):
        self.tags.add(tag)
        for name, _ in attributes:
            if name.startswith("on") or name in ("src", "href", "style"):
                self.tags.add(f"{tag} {name}=")

    def handle_data(self, data):
        self.text.append(data)


ALLOWED = set(
    "html head meta title style body header main section figure article h1 h2 h3 p ul ol li label input b span div table "
    "tr th td svg desc defs pattern lineargradient stop g rect line circle path text".split()
)


def marks(text):
    """Leaves out the marks that set names apart, and their direction."""
    return re.sub("[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]", "", text)


def main():
    room = yaml.safe_load(pathlib.Path(sys.argv[1]).read_text())
    names = [a["name"] for a in room["animals"]]
    failed = False
    for path in map(pathlib.Path, sys.argv[2:]):
        if path.suffix == ".svg":
            said = "\n".join(xml.etree.ElementTree.parse(path).getroot().itertext())
            strange = {e.tag for e in xml.etree.ElementTree.parse(path).iter() if e.tag.split("}")[-1] in ("script", "image", "foreignObject", "b", "i")}
        elif path.suffix == ".html":
            page = Page()
            page.feed(path.read_text())
            said, strange = "\n".join(page.text), page.tags - ALLOWED
        else:
            continue
        said = marks(said)
        missing = [n for n in names if marks(n)[:BEGINNING].strip() not in said]
        print(f"{path.name}: {len(names) - len(missing)} of {len(names)} names said as text")
        if missing or strange:
            print(f"{path.name}: not said {missing}, tags {strange}", file=sys.stderr)
            failed = True
    sys.exit(failed)


main()
