package departure

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Group is young of one species, ready to leave and promised to nobody,
// that are as little related to each other as can be.
type Group struct {
	Species string   `json:"species"`
	Members []Member `json:"members"`
	// MeanKinship is that of all pairs of members, each with itself too.
	MeanKinship float64 `json:"mean_kinship"`
	Closest     float64 `json:"closest"`         // greatest kinship of two members
	Expected    bool    `json:"expected"`        // means over possible parents
	Proven      bool    `json:"proven"`          // no group is less related
	Short       int     `json:"short,omitempty"` // members that are missing, for no more are ready
}

// Member is an animal, or some young of one clutch.
type Member struct {
	ID    string `json:"id"`
	Name  string `json:"name,omitempty"`
	Count int    `json:"count"`
}

// mostGroup is the largest group that is looked for.
const mostGroup = 50

// buyerGroups finds a group for each species of which some are ready.
func (r *Register) buyerGroups(young []Young, w Wish) []Group {
	out := []Group{}
	for _, p := range r.Collection.Species {
		var ready []Young
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

func (r *Register) buyerGroup(species string, ready []Young, w Wish) Group {
	y := r.withYoung(ready, w.Group)
	k := min(w.Group, len(y.candidates))
	best := pairing.Select(y.pedigree, nil, y.candidates, k, pairing.Effort{Nodes: w.Nodes})
	out := Group{Species: species, Members: []Member{}, MeanKinship: best.MeanKinship, Proven: best.Proven, Short: w.Group - k}
	at := make(map[string]int)
	for i, m := range best.Members {
		out.Expected = out.Expected || y.pedigree.Uncertain(m)
		for _, n := range best.Members[:i] {
			out.Closest = max(out.Closest, y.pedigree.Kinship(m, n))
		}
		d := y.of[m]
		if _, there := at[d.ID]; !there {
			at[d.ID] = len(out.Members)
			out.Members = append(out.Members, Member{ID: d.ID, Name: d.Name})
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
	of         map[int]Young
}

// withYoung adds up to most young of each clutch.
func (r *Register) withYoung(ready []Young, most int) expectedYoung {
	y := expectedYoung{of: make(map[int]Young)}
	add := func(i int, d Young) {
		y.candidates = append(y.candidates, i)
		y.of[i] = d
	}
	var broods []kin.Brood
	var whose []Young
	for _, d := range ready {
		if !d.Clutch {
			add(r.Ancestry.MustNumber(d.ID), d)
			continue
		}
		c, _ := r.Collection.Clutch(d.ID)
		broods = append(broods, kin.Brood{Clutch: c, Young: d.free(most)})
		whose = append(whose, slices.Repeat([]Young{d}, d.free(most))...)
	}
	y.pedigree = r.Ancestry.WithYoung(broods...)
	for n, d := range whose {
		add(r.Ancestry.Pedigree.Len()+n, d)
	}
	return y
}
