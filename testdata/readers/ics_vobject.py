"""Reads iCalendar files with Debian's python3-vobject and prints what each has.

usage: ics_vobject.py FILE...
"""

import sys

import vobject

import events


def main(path):
    with open(path, encoding="utf-8", newline="") as f:
        calendars = list(vobject.readComponents(f.read()))
    if len(calendars) != 1:
        events.fail(f"{len(calendars)} calendars in one file")
    calendars[0].validate(raiseException=True)
    found = []
    for event in calendars[0].contents.get("vevent", []):
        found.append(
            events.Event(
                uid=event.uid.value,
                start=event.dtstart.value,
                end=event.dtend.value,
                summary=event.summary.value,
                description=event.description.value if "description" in event.contents else "",
                status=event.status.value,
                sequence=int(event.sequence.value),
                stamped="dtstamp" in event.contents,
            )
        )
    print(events.summary(path, found))


if __name__ == "__main__":
    for path in sys.argv[1:]:
        main(path)
