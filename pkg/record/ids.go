package record

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

var numbered = regexp.MustCompile(`^(.*?)([0-9]+)$`)

// nextIDs gives count ids that no record has yet, of the text before and
// a number of so many digits: one more than the highest among those that begin so.
func (b *Book) nextIDs(before string, width, count int) []string {
	highest := 0
	for _, id := range b.ids() {
		rest, ok := strings.CutPrefix(id, before)
		if n, err := strconv.Atoi(rest); ok && err == nil && n >= 0 && len(rest) <= 18 {
			highest = max(highest, n)
		}
	}
	ids := make([]string, count)
	for i := range ids {
		ids[i] = fmt.Sprintf("%s%0*d", before, width, highest+1+i)
	}
	return ids
}

// nextClutch gives the next free id for a clutch of a species that was laid on a
// day: like that of the last clutch of that species in the file, or of any. A
// year in it, that of the day on which that clutch was laid, moves on.
func (b *Book) nextClutch(species string, laid civil.Date) string {
	like, year := "", laid
	for _, same := range [...]bool{false, true} {
		for i := range b.Collection.Clutches {
			if k := &b.Collection.Clutches[i]; numbered.MatchString(k.ID) && (!same || k.Species == species) {
				like, year = k.ID, k.Laid
			}
		}
	}
	y, _, _ := laid.YMD()
	if like == "" {
		return b.nextIDs(fmt.Sprintf("C-%02d-", y%100), 2, 1)[0]
	}
	m := numbered.FindStringSubmatch(like)
	return b.nextIDs(moveYear(m[1], year, y), len(m[2]), 1)[0]
}

// moveYear puts year in the place of that of was, when the text ends with it.
func moveYear(before string, was civil.Date, year int) string {
	if !was.Known() {
		return before
	}
	old, _, _ := was.YMD()
	trimmed := strings.TrimRight(before, "-_./ ")
	sign := before[len(trimmed):]
	if sign == "" {
		return before
	}
	for _, form := range [...]struct {
		digits int
		text   func(int) string
	}{{4, strconv.Itoa}, {2, func(y int) string { return fmt.Sprintf("%02d", y%100) }}} {
		head, ok := strings.CutSuffix(trimmed, form.text(old))
		if ok && (head == "" || head[len(head)-1] < '0' || head[len(head)-1] > '9') {
			return head + form.text(year) + sign
		}
	}
	return before
}

// nextAnimals gives the next free ids for animals of a species, like that of the
// last one in the file, or of any.
func (b *Book) nextAnimals(species string, count int) []string {
	like := ""
	for _, same := range [...]bool{false, true} {
		for i := range b.Collection.Animals {
			if a := &b.Collection.Animals[i]; numbered.MatchString(a.ID) && (!same || a.Species == species) {
				like = a.ID
			}
		}
	}
	if like == "" {
		return b.nextIDs("A-", 2, count)
	}
	m := numbered.FindStringSubmatch(like)
	return b.nextIDs(m[1], len(m[2]), count)
}

// ids gives all ids of the file: animals, clutches, pairings.
func (b *Book) ids() []string {
	c := b.Collection
	ids := make([]string, 0, len(c.Animals)+len(c.Clutches)+len(c.Pairings))
	for i := range c.Animals {
		ids = append(ids, c.Animals[i].ID)
	}
	for i := range c.Clutches {
		ids = append(ids, c.Clutches[i].ID)
	}
	for i := range c.Pairings {
		ids = append(ids, c.Pairings[i].ID)
	}
	return ids
}

// free refuses an id that a record has.
func (b *Book) free(id string) error {
	_, animal := b.Collection.Animal(id)
	_, clutch := b.Collection.Clutch(id)
	_, pairing := b.Collection.Pairing(id)
	if animal || clutch || pairing {
		return refuse("take another id", "id %q is taken", id)
	}
	return nil
}

// unknown refuses an id that is not one of the candidates.
func unknown(what, id string, candidates []string, otherwise string) error {
	cure := strictyaml.DidYouMean(id, candidates)
	if cure == "" {
		cure = otherwise
	}
	return refuse(cure, "there is no %s %q in the file", what, id)
}
