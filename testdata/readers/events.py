"""What must hold of the events of a calendar, whichever library read them."""

import collections
import datetime
import hashlib
import json
import os
import sys

Event = collections.namedtuple("Event", "uid start end summary description status sequence stamped")


def fail(message):
    sys.exit(f"{os.path.basename(sys.argv[0])}: {message}")


def is_date(value):
    return isinstance(value, datetime.date) and not isinstance(value, datetime.datetime)


def check_lines(raw):
    """RFC 5545, section 3.1: lines end with CR LF and have at most 75 octets."""
    if not raw.endswith(b"\r\n"):
        fail("the last line does not end with CR LF")
    for number, line in enumerate(raw[:-2].split(b"\r\n"), 1):
        if b"\r" in line or b"\n" in line:
            fail(f"line {number}: a bare CR or LF")
        if len(line) > 75:
            fail(f"line {number}: {len(line)} octets")
        try:
            line.decode("utf-8")
        except UnicodeDecodeError as e:
            fail(f"line {number}: {e}")


def summary(path, events):
    """Checks the events and gives one line that readers can be compared by."""
    if not events:
        fail("no event")
    seen = set()
    for e in events:
        if not e.uid or e.uid in seen:
            fail(f"the uid {e.uid!r} stands twice or is empty")
        seen.add(e.uid)
        if not e.stamped:
            fail(f"{e.uid}: no DTSTAMP")
        if not is_date(e.start) or not is_date(e.end):
            fail(f"{e.uid}: {e.start} to {e.end} are not dates")
        if e.end <= e.start:
            fail(f"{e.uid}: ends on {e.end}, before or with its beginning {e.start}")
        if not e.summary.strip():
            fail(f"{e.uid}: no summary")
    told = [[e.uid, str(e.start), str(e.end), e.summary, e.description, e.status, e.sequence] for e in sorted(events)]
    content = "\n".join(json.dumps(e, ensure_ascii=False, separators=(",", ":")) for e in told)
    digest = hashlib.sha256(content.encode()).hexdigest()[:16]
    first, last = min(e.start for e in events), max(e.end for e in events)
    return f"{os.path.basename(path)}: {len(events)} events, {first} to {last}, content {digest}"
