package pairing

import (
	"testing"
)

// TestRulesOfDescent is about where two come from: species, line, locality, and how related they are.
func TestRulesOfDescent(t *testing.T) {
	checkRules(t, []ruleCase{
		{
			"two species are never crossed", RuleSpecies, male(func(a *Animal) { a.Species = "hyla-cinerea" }), 0, Refuse,
			"hyla-cinerea, " + species, "Bram is of species hyla-cinerea, Greta is of species " + species + "; species are not crossed", "",
		},
		{
			"a species that is not known", RuleSpecies, male(func(a *Animal) { a.Species = "" }), 0, Unknown,
			species, "the species of Bram is not known", "",
		},
		{
			"two lines are mixed by choice only", RuleLine, female(func(a *Animal) { a.Line = "Limón 2019" }), 0, Warn,
			"Tarcoles 2021, Limón 2019", "Bram is of line Tarcoles 2021, Greta is of line Limón 2019", "",
		},
		{
			"a line that is not known", RuleLine, female(func(a *Animal) { a.Line = "" }), 0, Unknown,
			"Tarcoles 2021", "the line of Greta is not known", "",
		},
		{
			"two localities", RuleLocality, female(func(a *Animal) { a.Locality = "Limón" }), 0, Warn,
			"Tarcoles, Limón", "Bram is of locality Tarcoles, Greta is of locality Limón", "",
		},
		{
			"both localities not known", RuleLocality, func(_ Terms, m, f *Animal) { m.Locality, f.Locality = "", "" }, 0, Unknown,
			"", "the locality of Bram, Greta is not known", "",
		},

		{
			"a founder", RuleAncestry, func(t Terms, m, _ *Animal) { *m = animal(t, "Moss", Male) }, 0, Unknown,
			"0.0 generations known", "no parent of Moss is known, so it counts as unrelated to all but its own descendants", "",
		},
		{
			"a father that is one of two", RuleAncestry, func(t Terms, _, f *Animal) { *f = animal(t, "Wren", Female) }, 1, Unknown,
			"2.0 generations known", "a parent in the ancestry of Wren is one of several, so its kinship is an average over them", "",
		},

		{"father and daughter", RuleInbreeding, func(t Terms, m, f *Animal) {
			*m, *f = animal(t, "Quill", Male), animal(t, "Ottilie", Female)
		}, 0, Refuse, "0.25", "the young of Quill and Ottilie would be inbred to 0.25; refused from 0.125", ""},
		{
			"half sibs are just refused", RuleInbreeding, func(t Terms, _, f *Animal) { *f = animal(t, "Tilde", Female) }, 0, Refuse,
			"0.125", "the young of Bram and Tilde would be inbred to 0.125; refused from 0.125", "",
		},
		{"a grandfather twice over, perhaps", RuleInbreeding, func(t Terms, m, f *Animal) {
			*m, *f = animal(t, "Moss", Male), animal(t, "Wren", Female) // 1/8 through Greta, and with one half another 1/8
		}, 0, Refuse, "0.1875", "the young of Moss and Wren would be inbred to 0.1875; refused from 0.125", ""},
		{"a grandfather, if it was the other father", RuleInbreeding, func(t Terms, m, f *Animal) {
			*m, *f = animal(t, "Quill", Male), animal(t, "Wren", Female) // half of 1/8
		}, 0, Warn, "0.0625", "the young of Quill and Wren would be inbred to 0.0625; warned about from 0.0625", ""},
	})
}
