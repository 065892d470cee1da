package main

import (
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

// completer is what cobra asks for words to offer.
type completer = func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective)

// completeAnimals offers the ids of the animals in the room, each with its
// name, for up to most arguments; 0 is no limit.
func (a *app) completeAnimals(most int) completer {
	return a.completeIDs(most, func(room *frogroom.Room) []string {
		var ids []string
		for _, animal := range room.Collection.Animals {
			ids = append(ids, cobra.CompletionWithDesc(animal.ID, animal.Name))
		}
		return ids
	})
}

func (a *app) completeClutches(most int) completer {
	return a.completeIDs(most, func(room *frogroom.Room) []string {
		var ids []string
		for _, c := range room.Collection.Clutches {
			since := "laid " + c.Laid.String()
			if !c.Laid.Known() {
				since = "first seen " + room.Collection.Since(c.ID).String()
			}
			ids = append(ids, cobra.CompletionWithDesc(c.ID, since))
		}
		return ids
	})
}

func (a *app) completePairings() completer {
	return a.completeIDs(0, func(room *frogroom.Room) []string {
		var ids []string
		for _, p := range room.Collection.Pairings {
			ids = append(ids, p.ID)
		}
		return ids
	})
}

// completeSpecies offers the species of the file.
func (a *app) completeSpecies() completer {
	return a.completeIDs(0, func(room *frogroom.Room) []string {
		var ids []string
		for _, p := range room.Collection.Species {
			ids = append(ids, p.ID)
		}
		return ids
	})
}

// then offers words for the argument that comes after the first.
func then(first completer, words ...string) completer {
	return func(c *cobra.Command, args []string, typed string) ([]string, cobra.ShellCompDirective) {
		switch len(args) {
		case 0:
			return first(c, args, typed)
		case 1:
			return words, cobra.ShellCompDirectiveNoFileComp
		}
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
}

// completeIDs offers ids of the keeper's file that are not named yet, and
// nothing when it cannot be read.
func (a *app) completeIDs(most int, ids func(*frogroom.Room) []string) completer {
	return func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
		if most > 0 && len(args) >= most {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		room, _, err := a.silent().read()
		if err != nil || room == nil {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		offered := slices.DeleteFunc(ids(room), func(id string) bool {
			id, _, _ = strings.Cut(id, "\t")
			return slices.Contains(args, id)
		})
		slices.Sort(offered)
		return offered, cobra.ShellCompDirectiveNoFileComp
	}
}

// silent gives a copy of a that neither reads standard input nor complains.
func (a *app) silent() *app {
	s := *a
	s.stdin, s.stderr = eof{}, io.Discard
	return &s
}

// eof stands in for standard input, which completion must not wait for.
type eof struct{}

func (eof) Read([]byte) (int, error) { return 0, io.EOF }
