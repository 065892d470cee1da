package main

import (
	"errors"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

// wishFlags are the flags of a pairing that is not in the file.
type wishFlags struct {
	dams, sires    []string
	start, readyBy string
	certainty      int
}

func (w *wishFlags) wish(certain bool) (_ frogroom.Wish, given bool, err error) {
	if certain && w.readyBy == "" {
		return frogroom.Wish{}, false, usagef("--certainty goes with --ready-by; in the file it is certainty_pct")
	}
	if len(w.dams) == 0 && len(w.sires) == 0 {
		if w.start != "" || w.readyBy != "" {
			return frogroom.Wish{}, false, usagef("--start and --ready-by go with --dam and --sire")
		}
		return frogroom.Wish{}, false, nil
	}
	out := frogroom.Wish{Dams: w.dams, Sires: w.sires, CertaintyPct: w.certainty}
	for _, f := range []struct {
		name, text string
		to         *civil.Date
	}{{"--start", w.start, &out.Start}, {"--ready-by", w.readyBy, &out.ReadyBy}} {
		if f.text == "" {
			continue
		}
		if *f.to, err = civil.Parse(f.text); err != nil {
			return out, true, usagef("%s: %w", f.name, err)
		}
	}
	return out, true, nil
}

// wishError says whether the command was wrong or the file.
func wishError(err error) error {
	var wish *frogroom.WishError
	if errors.As(err, &wish) {
		return usage(err)
	}
	return unknownID(err)
}
