package frogroom_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

// BenchmarkRoom asks the usual questions of the working example, with its sixty
// animals, and of a room with thousands.
func BenchmarkRoom(b *testing.B) {
	working, err := os.ReadFile("../../examples/working/collection.yaml")
	if err != nil {
		b.Fatal(err)
	}
	for _, size := range []struct {
		name string
		text []byte
	}{
		{"60animals", working},
		{"5000animals", largeFile(5_000)},
		{"50000animals", largeFile(50_000)},
	} {
		on := day("2027-02-01")
		b.Run(size.name+"/Read", func(b *testing.B) {
			for b.Loop() {
				frogroom.Read("room.yaml", size.text)
			}
		})
		r, problems := frogroom.Read("room.yaml", size.text)
		if r == nil {
			b.Fatal(problems)
		}
		for _, question := range []struct {
			name string
			ask  func()
		}{
			{"Kin", func() { r.Kin(on) }},
			{"Season", func() { _, _ = r.Season(on) }},
			{"Clutches", func() { r.Clutches(on) }},
			{"Agenda", func() { r.Agenda(on, 14) }},
			{"Check", func() { r.Check(on) }},
			{"ReadAndAgenda", func() { // nothing is known of the day yet, as in a command
				fresh, _ := frogroom.Read("room.yaml", size.text)
				fresh.Agenda(on, 14)
			}},
		} {
			b.Run(size.name+"/"+question.name, func(b *testing.B) {
				for b.Loop() {
					question.ask()
				}
			})
		}
	}
}

// largeFile is a room that was begun with twenty frogs, and has clutches of ten
// young since: of a female and one of two males of the generation before. A
// hundred clutches run, and fifty pairings are planned.
func largeFile(animals int) []byte {
	const founders, young, generations = 20, 10, 20
	size := max(animals/generations, founders)
	var frogs, clutches, pairings strings.Builder
	for i := range animals {
		sex := [2]string{"male", "female"}[i%2]
		if i < founders {
			fmt.Fprintf(&frogs, "  - {id: A%d, species: hyla-cinerea, sex: %s, acquired: 2000-01-01}\n", i, sex)
			continue
		}
		c := (i - founders) / young
		fmt.Fprintf(&frogs, "  - {id: A%d, sex: %s, clutch: C%d}\n", i, sex, c)
		if i%young == 0 {
			from := max(i-size, 0) / founders * founders // its parents are among twenty frogs, a generation back
			laid := day("2001-01-01").Add(c * 9000 / (animals / young))
			fmt.Fprintf(&clutches, "  - {id: C%d, laid: %s, dam: A%d, sire: [A%d, A%d], ended: 2026-12-01}\n",
				c, laid, from+c%10*2+1, from+c*3%10*2, from+(c*3+1)%10*2)
		}
	}
	last := animals - 200
	for i := range 100 {
		fmt.Fprintf(&clutches, "  - {id: R%d, laid: 2026-12-%02d, dam: A%d, sire: A%d}\n", i, i%28+1, last+2*(i%50)+1, last+2*(i%50))
	}
	for i := range 50 {
		fmt.Fprintf(&pairings, "  - {id: P%d, dam: A%d, sire: A%d, ready_by: 2028-02-%02d}\n", i, last+101+2*(i%49), last+100+2*(i%49), i%28+1)
	}
	return []byte("animals:\n" + frogs.String() + "clutches:\n" + clutches.String() + "pairings:\n" + pairings.String())
}
