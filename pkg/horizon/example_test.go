package horizon_test

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/horizon"
)

// What becomes of two couples that are related to nobody, if nobody joins them?
func ExampleKeeping_Ahead() {
	line := horizon.Line{Male: []bool{true, false, true, false}, Age: []int{2, 2, 2, 2}}
	for i := range 4 {
		row := make([]float64, 4)
		row[i] = 0.5
		line.Kinship = append(line.Kinship, row)
	}
	wish, err := horizon.Wish{Years: 10, Runs: 200, Seed: 1}.Complete()
	if err != nil {
		fmt.Println(err)
		return
	}
	prospect := horizon.Keeping{Line: line, Matures: 1, Ceiling: 0.125}.Ahead(wish)
	for _, way := range prospect.Ways {
		last := way.Years[10]
		fmt.Printf("%s: gene diversity %.2f of %.2f\n", way.Way, last.GeneDiversity.Mean, way.Years[0].GeneDiversity.Mean)
	}
	// Output:
	// plan: gene diversity 0.81 of 0.88
	// equal families: gene diversity 0.81 of 0.88
	// random: gene diversity 0.78 of 0.88
}
