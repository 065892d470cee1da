// Reads iCalendar files with ical.js and prints what each has, in the words of
// events.py.
//
// usage: read.mjs FILE...
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { basename } from "node:path";

import ICAL from "ical.js";

function fail(file, message) {
	console.error(`read.mjs: ${file}: ${message}`);
	process.exit(1);
}

function day(file, uid, time) {
	if (!time || !time.isDate) {
		fail(file, `${uid}: ${time} is not a date`);
	}
	return time.toString();
}

function read(file) {
	const calendar = new ICAL.Component(ICAL.parse(readFileSync(file, "utf8")));
	const events = calendar.getAllSubcomponents("vevent").map((component) => {
		const event = new ICAL.Event(component);
		if (!component.hasProperty("dtstamp") || !event.uid) {
			fail(file, "an event without UID or DTSTAMP");
		}
		return [
			event.uid,
			day(file, event.uid, event.startDate),
			day(file, event.uid, event.endDate),
			event.summary,
			event.description ?? "",
			component.getFirstPropertyValue("status"),
			event.sequence,
		];
	});
	events.sort((a, b) => (a[0] < b[0] ? -1 : 1));
	const content = events.map((event) => JSON.stringify(event)).join("\n");
	const digest = createHash("sha256").update(content, "utf8").digest("hex").slice(0, 16);
	const first = events.map((event) => event[1]).sort()[0];
	const last = events.map((event) => event[2]).sort().at(-1);
	return `${basename(file)}: ${events.length} events, ${first} to ${last}, content ${digest}`;
}

for (const file of process.argv.slice(2)) {
	console.log(read(file));
}
