package frogroom

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// BuyerGroup is young of one species, ready to leave and promised to nobody,
// that are as little related to each other as can be.
type BuyerGroup struct {
	Species string        `json:"species"`
	Members []GroupMember `json:"members"`
	// MeanKinship is that of all pairs of members, each with itself too.
	MeanKinship float64 `json:"mean_kinship"`
	Closest     float64 `json:"closest"`         // greatest kinship of two members
	Expected    bool    `json:"expected"`        // means over possible parents
	Proven      bool    `json:"proven"`          // no group is less related
	Short       int     `json:"short,omitempty"` // members that are missing, for no more are ready
}

// GroupMember is an animal, or some young of one clutch.
type GroupMember struct {
	ID    string `json:"id"`
	Name  string `json:"name,omitempty"`
	Count int    `json:"count"`
}

// mostGroup is the largest group that is looked for.
const mostGroup = 50

// buyerGroups finds a group for each species of which some are ready.
func (r *Room) buyerGroups(young []Departure, w ReadyWish) []BuyerGroup {
	out := []BuyerGroup{}
	for _, p := range r.Collection.Species {
		var ready []Departure
		for _, d := range young {
			if d.Species == p.ID && d.Ready && d.free(w.Group) > 0 {
				ready = append(ready, d)
			}
		}
		if len(ready) > 0 {
			out = append(out, r.buyerGroup(p.ID, ready, w))
		}
	}
	return out
}

func (r *Room) buyerGroup(species string, ready []Departure, w ReadyWish) BuyerGroup {
	y := r.withYoung(ready, w.Group)
	k := min(w.Group, len(y.candidates))
	best := pairing.Select(y.pedigree, nil, y.candidates, k, pairing.Effort{Nodes: w.Nodes})
	out := BuyerGroup{Species: species, Members: []GroupMember{}, MeanKinship: best.MeanKinship, Proven: best.Proven, Short: w.Group - k}
	at := make(map[string]int)
	for i, m := range best.Members {
		out.Expected = out.Expected || y.pedigree.Uncertain(m)
		for _, n := range best.Members[:i] {
			out.Closest = max(out.Closest, y.pedigree.Kinship(m, n))
		}
		d := y.of[m]
		if _, there := at[d.ID]; !there {
			at[d.ID] = len(out.Members)
			out.Members = append(out.Members, GroupMember{ID: d.ID, Name: d.Name})
		}
		out.Members[at[d.ID]].Count++
	}
	return out
}

// expectedYoung is the pedigree with the young of clutches that are not animals
// of their own yet.
type expectedYoung struct {
	pedigree   *pedigree.Pedigree
	candidates []int
	of         map[int]Departure
}

// withYoung adds up to most young of each clutch. No id has a comma, so that
// their names are free.
func (r *Room) withYoung(ready []Departure, most int) expectedYoung {
	y := expectedYoung{pedigree: r.Ancestry.Pedigree, of: make(map[int]Departure)}
	sets := parentSets{made: r.groupsMade()}
	var records []pedigree.Record
	var whose []Departure
	for _, d := range ready {
		if !d.Clutch {
			i := r.number(d.ID)
			y.candidates = append(y.candidates, i)
			y.of[i] = d
			continue
		}
		c, _ := r.Collection.Clutch(d.ID)
		sire, dam := sets.parent(c.ID+", sire", c.Sires, c.SireMix), sets.parent(c.ID+", dam", c.Dams, c.DamMix)
		for n := range d.free(most) {
			records = append(records, pedigree.Record{ID: fmt.Sprintf("%s, young %d", c.ID, n+1), Sire: sire, Dam: dam})
			whose = append(whose, d)
		}
	}
	grown, err := y.pedigree.Grow(records, sets.list...)
	if err != nil {
		panic("frogroom: young of clutches that were read do not fit into the pedigree: " + err.Error())
	}
	for n, d := range whose {
		i := y.pedigree.Len() + n
		y.candidates = append(y.candidates, i)
		y.of[i] = d
	}
	y.pedigree = grown
	return y
}

// groupsMade has the names of the sets of possible parents that the pedigree has.
func (r *Room) groupsMade() map[string]bool {
	made := make(map[string]bool)
	for i := range r.Collection.Animals {
		a := &r.Collection.Animals[i]
		if len(a.Sires) > 1 {
			made[setOf(a)+", sire"] = true
		}
		if len(a.Dams) > 1 {
			made[setOf(a)+", dam"] = true
		}
	}
	return made
}

// setOf gives what the sets of possible parents of an animal are named for.
func setOf(a *collection.Animal) string {
	if a.Clutch != "" {
		return a.Clutch
	}
	return a.ID
}
