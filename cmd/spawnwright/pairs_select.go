package main

import (
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/breedingplan"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

// selects reports whether animals are to be selected instead of paired.
func (f *pairsFlags) selects() bool { return f.keep != 0 || f.unrelated != 0 || f.exchange }

// oneThing refuses two questions at once.
func (f *pairsFlags) oneThing() error {
	asked := 0
	for _, wanted := range []bool{f.keep != 0, f.unrelated != 0, f.exchange, f.together != ""} {
		if wanted {
			asked++
		}
	}
	if len(f.outside) > 0 && !f.exchange {
		return usagef("--outside describes an animal for --exchange: give both")
	}
	if asked > 1 {
		return usagef("--together, --keep, --unrelated and --exchange are different questions: ask one at a time")
	}
	return nil
}

func (a *app) showSelected(room *frogroom.Room, on civil.Date, f *pairsFlags, wish breedingplan.Wish) error {
	if f.exchange {
		described, err := f.outsiders()
		if err != nil {
			return err
		}
		e, err := room.Exchange(on, wish, described...)
		if err != nil {
			return pairsError(err)
		}
		return a.showExchange(e)
	}
	title, count, question := "Young to keep for breeding", f.keep, room.Keep
	if f.unrelated != 0 {
		title, count, question = "Least related to each other", f.unrelated, room.Unrelated
	}
	s, err := question(on, count, wish)
	if err != nil {
		return pairsError(err)
	}
	a.warn(s.Warnings)
	rows := &table.Table{
		Title: title, Empty: "There is no animal to choose.",
		Columns: []table.Column{{Name: "species"}, {Name: "chosen"}, {Name: "id"}, {Name: "name"}, {Name: "sex"}, {Name: "mean kinship", Right: true}},
	}
	sums := &table.Table{Columns: []table.Column{{Name: "species"}, {Name: "gene diversity", Right: true}, {Name: "closest kinship", Right: true}, {Name: "proven"}, {Name: "promised, not offered", Right: true}}}
	held := &table.Table{Title: "Not ready", Columns: []table.Column{{Name: "species"}, {Name: "id"}, {Name: "name"}, {Name: "sex"}, {Name: "why", Width: 90}, {Name: "not before"}}}
	for _, one := range s.Species {
		add := func(chosen string, animals []breedingplan.Selected) {
			for _, x := range animals {
				rows.Add(one.Species, chosen, x.ID, x.Name, x.Sex.String(), coefficient(x.MeanKinship, false))
			}
		}
		add("yes", one.Chosen)
		add("no", one.Others)
		for _, x := range one.NotReady {
			rows.Add(one.Species, "not ready", x.ID, x.Name, x.Sex.String(), "")
			held.Add(one.Species, x.ID, x.Name, x.Sex.String(), strings.Join(x.Why, "; "), dateOrBlank(x.From))
		}
		proven := "the best there is"
		if !one.Proven {
			proven = fmt.Sprintf("no, at most %.2f %% from the best", 100*one.Gap)
		}
		if len(one.Chosen) == 0 {
			sums.Add(one.Species, "", "", "nobody is ready", fmt.Sprint(one.Promised))
			continue
		}
		sums.Add(one.Species, coefficient(one.GeneDiversity, false), coefficient(one.Closest, false), proven, fmt.Sprint(one.Promised))
	}
	if len(s.Species) == 0 {
		return a.show("selection", s, rows)
	}
	if f.unrelated == 0 {
		return a.show("selection", s, rows, sums)
	}
	return a.show("selection", s, rows, sums, held)
}

func (a *app) showExchange(e breedingplan.Exchanges) error {
	a.warn(e.Warnings)
	t := &table.Table{
		Title: "Animals from outside, and what they would do", Empty: "No animal is in the room.",
		Columns: []table.Column{
			{Name: "species"},
			{Name: "animal"},
			{Name: "what", Width: 60},
			{Name: "gene diversity now", Right: true},
			{Name: "with it", Right: true},
			{Name: "best mate"},
			{Name: "with two young of both", Right: true},
			{Name: "their inbreeding", Right: true},
		},
	}
	for _, s := range e.Species {
		for _, x := range s.Animals {
			who := strings.TrimSpace(x.ID + " " + x.Name)
			t.Add(s.Species, who, x.What, coefficient(s.GeneDiversity, false), coefficient(x.With, false),
				x.Mate, coefficient(x.WithYoung, false), coefficient(x.YoungInbreeding, false))
		}
	}
	return a.show("exchange", e, t)
}
