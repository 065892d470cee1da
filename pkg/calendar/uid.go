package calendar

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
)

// UID gives the lasting identifier of the event key in the calendar with this
// ID: 32 hexadecimal digits and "@spawnwright". It knows neither dates nor
// titles, so an event that is moved or renamed keeps it (RFC 5545, section
// 3.8.4.7; RFC 7986, section 5.3, asks that it gives nothing away).
func UID(calendarID, key string) string {
	// The length keeps "a"+"bc" apart from "ab"+"c".
	sum := sha256.Sum256(fmt.Appendf(nil, "%d:%s:%s", len(calendarID), calendarID, key))
	return hex.EncodeToString(sum[:16]) + uidSuffix
}

const uidSuffix = "@spawnwright"

// uid gives the identifier of the calendar as a whole. No event has an empty key.
func (c Calendar) uid() string { return UID(c.ID, "") }

// uid gives the identifier of e in the calendar with this ID.
func (e Event) uid(calendarID string) string {
	if e.Key == "" {
		return e.UID
	}
	return UID(calendarID, e.Key)
}
