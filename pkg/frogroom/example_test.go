package frogroom_test

import (
	"fmt"
	"log"
	"time"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

// small is a collection of an invented species: two founders, two of their
// young, a clutch and a pairing.
const small = `
species:
  - id: example-frog
    name: Rana exempli
    cycle: {conditioning: {days: [20, 28, 42]}, rain: {days: [3, 5, 10]}, rest: {days: [30, 40, 60]}}
    breeding: {eggs_after_nights: [2, 2, 2], clutch_eggs: [40, 50, 60]}
    development:
      egg: {days: [6, 6, 6], at_c: 25, survival: 1}
      hatchling: {days: [3, 3, 3], at_c: 25, survival: 1}
      tadpole: {days: [50, 50, 50], at_c: 25, survival: 0.8}
      metamorph: {days: [5, 5, 5], at_c: 25, survival: 1}
      grow_out: {days: [60, 60, 60], at_c: 25, survival: 0.9}
targets:
  - {name: autumn show, on: 2027-09-18, species: example-frog, froglets: 30}
animals:
  - {id: F1, name: Otto, species: example-frog, sex: male}
  - {id: F2, name: Wilma, species: example-frog, sex: female}
  - {id: F3, name: Klara, species: example-frog, sex: female, sire: F1, dam: F2}
  - {id: F4, name: Lorenz, species: example-frog, sex: male, sire: F1, dam: F2}
clutches:
  - {id: C-27-01, laid: 2027-01-25, dam: F2, sire: F1, place: tub 5}
pairings:
  - {id: P-27-01, dam: F3, sire: F1, target: autumn show}
`

// How related are two animals, and through whom?
func Example() {
	room, problems := frogroom.Read("collection.yaml", []byte(small))
	if room == nil {
		log.Fatal(problems.Err())
	}
	pair, err := room.Ancestry.Pair("F3", "F4")
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("their young would be inbred to %.3f, through %s and %s\n", pair.Kinship, pair.Shared[0].Name, pair.Shared[1].Name)
	// Output: their young would be inbred to 0.250, through Otto and Wilma
}

// A file with mistakes gives all of them, each with its place and a cure.
func ExampleRead() {
	_, problems := frogroom.Read("collection.yaml", []byte(`animals:
  - {id: Bram, species: hyla-cinerea, sex: male}
  - {id: Mina, species: hyla-cinera, sire: Bran}
`))
	for _, p := range problems {
		fmt.Println(p)
	}
	// Output:
	// collection.yaml:3:25: species "hyla-cinera" is not known; did you mean "hyla-cinerea"?
	// collection.yaml:3:44: sire "Bran" is not in the file; did you mean "Bram"?
}

// When does a pairing have to begin so that young are ready for a show?
func ExampleRoom_Season() {
	room, _ := frogroom.Read("collection.yaml", []byte(small))
	plan, err := room.Season(civil.Of(2027, time.February, 1))
	if err != nil {
		log.Fatal(err)
	}
	for _, p := range plan.Pairings {
		for _, phase := range p.Phases {
			fmt.Println(phase.Name, phase.Span)
		}
		fmt.Println("refused:", p.Refused, p.Findings)
	}
	// Output:
	// conditioning 2027-04-17..2027-05-14
	// rain 2027-05-15..2027-05-19
	// rest 2027-05-20..2027-06-28
	// refused: true [the young of F1 and F3 would be inbred to 0.25; refused from 0.125]
}

// When do the clutches reach what is ahead of them?
func ExampleRoom_Clutches() {
	room, _ := frogroom.Read("collection.yaml", []byte(small))
	for _, k := range room.Clutches(civil.Of(2027, time.January, 30)) {
		for _, s := range k.Stages {
			fmt.Println(k.ID, s.Stage, s.Window)
		}
	}
	// Output:
	// C-27-01 hatched 2027-01-31
	// C-27-01 feeding 2027-02-03
	// C-27-01 hind-legs 2027-02-08 / 2027-02-12 / 2027-02-17
	// C-27-01 toes 2027-03-03 / 2027-03-10 / 2027-03-18
	// C-27-01 front-legs 2027-03-25
	// C-27-01 out-of-water 2027-03-30
	// C-27-01 eating 2027-04-02 / 2027-04-04 / 2027-04-06
	// C-27-01 sale-ready 2027-05-29
}

// What is due in the next days?
func ExampleRoom_Agenda() {
	room, _ := frogroom.Read("collection.yaml", []byte(small))
	agenda := room.Agenda(civil.Of(2027, time.February, 2), 7)
	for _, o := range agenda.Overdue {
		fmt.Println(o.Text)
	}
	for _, w := range agenda.Watch {
		fmt.Println(w.Clutch, w.Stage, "likely", w.Window.Likely)
	}
	// Output:
	// C-27-01 (tub 5): hatched expected by 2027-01-31, nothing recorded since 2027-01-25 (laid), 8 days
	// C-27-01 feeding likely 2027-02-03
	// C-27-01 hind-legs likely 2027-02-12
}

// What is wrong with a file that can be read?
func ExampleRoom_Check() {
	room, _ := frogroom.Read("collection.yaml", []byte(small))
	for _, d := range room.Check(civil.Of(2027, time.January, 30))[:2] {
		fmt.Println(d)
	}
	// Output:
	// collection.yaml:14:12: warning: target "autumn show" wants 30 froglets, and its pairings usually bring about 0, not counting P-27-01 (in trouble, as said elsewhere); a usual clutch brings about 36; plan more of them
	// collection.yaml:23:10: warning: pairing P-27-01 should not be made: the young of F1 and F3 would be inbred to 0.25; refused from 0.125
}

// A pairing that is only thought of needs no place in the file.
func ExampleRoom_SeasonOf() {
	room, _ := frogroom.Read("collection.yaml", []byte(small))
	plan, err := room.SeasonOf(civil.Of(2027, time.February, 1), frogroom.Wish{
		Dams: []string{"F2"}, Sires: []string{"F1"}, Start: civil.Of(2027, time.March, 1),
	})
	if err != nil {
		log.Fatal(err)
	}
	stages := plan.Pairings[0].Stages
	fmt.Println(stages[len(stages)-1].Stage, stages[len(stages)-1].Window)
	// Output: sale-ready 2027-08-02
}
