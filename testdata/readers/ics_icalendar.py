"""Reads iCalendar files with Debian's python3-icalendar and prints what each has.

usage: ics_icalendar.py FILE...
"""

import sys

import icalendar

import events


def main(path):
    with open(path, "rb") as f:
        raw = f.read()
    events.check_lines(raw)
    calendar = icalendar.Calendar.from_ical(raw)
    found = []
    for component in calendar.walk():
        if component.errors:
            events.fail(f"{component.name}: {component.errors}")
        if component.name != "VEVENT":
            continue
        start, end = component["DTSTART"].dt, component["DTEND"].dt
        found.append(
            events.Event(
                uid=str(component["UID"]),
                start=start,
                end=end,
                summary=str(component["SUMMARY"]),
                description=str(component.get("DESCRIPTION", "")),
                status=str(component["STATUS"]),
                sequence=int(component["SEQUENCE"]),
                stamped="DTSTAMP" in component,
            )
        )
    print(events.summary(path, found))


if __name__ == "__main__":
    for path in sys.argv[1:]:
        main(path)
