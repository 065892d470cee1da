package rearing

import (
	"math"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/kin"
)

// A Tended clutch is what is told of it, but for Young, and what that was taken
// from.
type Tended struct {
	Clutch
	Outlook development.Outlook
	Since   civil.Date // it was laid, or first seen
	Doubts  []Doubt    // about the windows
	NotSafe []Doubt    // water and air

	known developing
}

// Told gives all that is told of clutches. The kinship of their parents can take
// longer than all the rest, and a check or a plan does not ask for it.
func (r *Rearing) Told(clutches ...Tended) []Clutch {
	var parents []string
	for _, k := range clutches {
		parents = append(append(parents, k.Sires...), k.Dams...)
	}
	above := r.Ancestry.Above(parents)
	out := []Clutch{}
	for _, k := range clutches {
		k.Young = kin.YoungOf(above, k.Sires, k.Dams)
		out = append(out, k.Clutch)
	}
	return out
}

// Tended gives the clutches that run on a day, in the order of the file. They do not wait
// for each other: each processor takes the next.
func (r *Rearing) Tended(on civil.Date) []Tended {
	var run []*collection.Clutch
	for i := range r.Collection.Clutches {
		if c := &r.Collection.Clutches[i]; r.Running(c, on) {
			run = append(run, c)
		}
	}
	out := make([]Tended, len(run))
	var next atomic.Int64
	var all sync.WaitGroup
	for range min(len(run), runtime.GOMAXPROCS(0)) {
		all.Go(func() {
			for i := next.Add(1) - 1; i < int64(len(run)); i = next.Add(1) - 1 {
				out[i] = r.clutch(run[i], on)
			}
		})
	}
	all.Wait()
	return out
}

func (r *Rearing) clutch(c *collection.Clutch, on civil.Date) Tended {
	known, since := r.developing(c, on), r.Collection.Since(c.ID)
	out := Tended{
		Clutch: Clutch{
			ID: c.ID, Species: c.Species, Laid: c.Laid,
			Dams: copied(c.Dams), Sires: copied(c.Sires),
			Place:  r.Collection.PlaceOf(c.ID, on),
			SeenOn: since,
			Living: r.Counted(c.ID, on),
			Stages: []Stage{},
		},
		Outlook: r.outlook(c, known, on),
		known:   known,
		Since:   since,
	}
	if !c.Laid.Known() {
		out.LaidBetween = out.Outlook.Laid
	}
	now, whole := development.Laid, development.Laid
	for _, l := range known.Looks {
		out.SeenOn = max(out.SeenOn, l.On)
		if l.Kind != development.NotYet {
			now = max(now, l.Stage)
		}
		if l.Kind == development.Reached || l.Kind == development.By {
			whole = max(whole, l.Stage)
		}
	}
	out.Now = now.String()
	out.Stall = math.Round(out.Outlook.Stall*1e4) / 1e4
	for _, e := range out.Outlook.All() {
		if e.Window.Known() {
			ahead := !e.Recorded && e.Stage > whole
			some := ahead && e.Stage <= now
			out.Stages = append(out.Stages, Stage{
				Stage: e.Stage.String(), Window: e.Window, Recorded: e.Recorded, Some: some,
				Passed:  !e.Recorded && !ahead,
				Overdue: ahead && !some && !lasting(e.Stage) && e.Window.Late < on && !out.Died(),
				RestsOn: RestingOn(e.Basis),
			})
		}
	}
	out.Doubts = known.doubts(c, out.Outlook.Warnings)
	out.NotSafe = r.unsafe(c, whole < development.OutOfWater, on)
	for _, d := range slices.Concat(out.Doubts, out.NotSafe) {
		out.Warnings = append(out.Warnings, r.located(d))
	}
	return out
}
