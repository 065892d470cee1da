package breedingplan

import "github.com/spawnwright/spawnwright/pkg/pairing"

// Reasons says in a line what speaks for each of some pairs, the male first: how close
// the two are, and how rare their genes. It is empty for a pair that is not a male and a
// female of one species. It panics when an animal is not in the pedigree.
func (s *Stock) Reasons(pairs ...[2]string) []string {
	lines := make(map[string]*line)
	out := make([]string, len(pairs))
	for i, p := range pairs {
		male, female := s.animal(s.number(p[0])), s.animal(s.number(p[1]))
		if male.Sex != pairing.Male || female.Sex != pairing.Female || male.Species != female.Species {
			continue
		}
		if lines[male.Species] == nil {
			lines[male.Species] = s.line(male.Species, Wish{})
		}
		kinship := s.Terms.Pedigree.Kinship(s.number(p[0]), s.number(p[1]))
		out[i] = lines[male.Species].reason(pairing.Pair{Male: p[0], Female: p[1], Verdict: pairing.Verdict{YoungInbreeding: kinship}})
	}
	return out
}
