package parentage

import (
	"slices"
	"sync"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// table looks at the rows together and gives what was read, or all that is wrong.
func (r *reader) table() (*Table, error) {
	var checks sync.WaitGroup // they only read what records reads, too
	checks.Go(r.checkAlike)
	checks.Go(r.checkRoles)
	records, lines := r.records()
	checks.Wait()
	problems, more := first(r.badText, r.errs, r.roleErrs)
	if len(problems) > 0 {
		warnings, _ := first(r.doubts, r.alike)
		return nil, &Error{Problems: problems, More: more, Warnings: warnings}
	}
	r.noteFounders()
	warnings, moreWarnings := first(r.doubts, r.alike, r.founders)
	return &Table{Records: records, Rows: len(lines), Warnings: warnings, MoreWarnings: moreWarnings, lines: lines}, nil
}

// records gives the animals, and after them the parents without a row.
func (r *reader) records() (records []pedigree.Record, lines []int32) {
	text := r.names.strings()
	records = make([]pedigree.Record, len(r.animals), r.names.len())
	lines = make([]int32, len(r.animals))
	sire, dam := parent{nobody, ""}, parent{nobody, ""}
	for i, a := range r.animals {
		sire.turn(a.sire, text)
		dam.turn(a.dam, text)
		records[i], lines[i] = pedigree.Record{ID: text(a.id), Sire: sire.id, Dam: dam.id}, a.line
	}
	for number, row := range r.rows {
		if row == 0 {
			records = append(records, pedigree.Record{ID: text(uint32(number))})
		}
	}
	return records, lines
}

// parent is a parent in the row before, who often is one in the next.
type parent struct {
	number uint32
	id     string
}

func (p *parent) turn(number uint32, text func(uint32) string) {
	if number == p.number {
		return
	}
	p.number, p.id = number, ""
	if number != nobody {
		p.id = text(number)
	}
}

// noteFounders notes the parents without a row, all in one.
func (r *reader) noteFounders() {
	one := slices.Index(r.rows, 0)
	if one < 0 {
		return
	}
	number := uint32(one)
	child := slices.IndexFunc(r.animals, func(a animal) bool { return a.sire == number || a.dam == number })
	const cure = "look whether they are spelt right, or add a row for each"
	if n := r.names.len() - len(r.animals); n > 1 {
		r.founders.addLine(r.animals[child].line, cure, "%d parents have no row of their own and count as founders; %s is the first", n, quoted(r.names.id(number)))
	} else {
		r.founders.addLine(r.animals[child].line, "look whether it is spelt right, or add a row", "1 parent has no row of its own and counts as a founder: %s", quoted(r.names.id(number)))
	}
}
