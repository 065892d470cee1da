// Embed shows how another keeper's tool uses the library: it opens a
// collection, asks how related two animals are, and prints what is due this
// week. Run it with
//
//	go run ./examples/embed examples/working/collection.yaml
package main

import (
	"fmt"
	"log"
	"os"
	"time"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

func main() {
	log.SetFlags(0)
	path := "examples/working/collection.yaml"
	if len(os.Args) > 1 {
		path = os.Args[1]
	}
	room, problems, err := frogroom.Open(path)
	if err != nil {
		log.Fatal(err)
	}
	if err := problems.Err(); err != nil {
		log.Fatal(err)
	}

	// Any date will do; a real tool would take today's.
	on := civil.Of(2027, time.February, 1)

	// How related are two animals, and through whom?
	pair, err := room.Ancestry.Pair("AC-14", "AC-21")
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("young of %s and %s would have an inbreeding coefficient of %.4f\n", pair.A, pair.B, pair.Kinship)
	for _, s := range pair.Shared {
		fmt.Printf("  %.4f of it through %s %s\n", s.Share, s.ID, s.Name)
	}

	// What is due this week?
	agenda := room.Agenda(on, 7)
	for _, t := range agenda.Tasks {
		fmt.Printf("%s: %s\n", t.On, t.What)
	}
	for _, w := range agenda.Watch {
		fmt.Printf("%s: %s, likely %s\n", w.Clutch, w.Stage, w.Window.Likely)
	}
}
