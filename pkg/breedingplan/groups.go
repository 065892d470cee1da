package breedingplan

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Groups is the best set of groups for the rain chambers: in each, some males and
// some females together.
type Groups struct {
	On              civil.Date    `json:"on"`
	Species         string        `json:"species"`
	Groups          []Group       `json:"groups"`
	GeneDiversity   float64       `json:"gene_diversity"`
	WithYoung       float64       `json:"gene_diversity_with_young"`
	YoungInbreeding float64       `json:"young_inbreeding"`
	Possible        int           `json:"groups_possible"` // in which each male may be paired with each female
	Proven          bool          `json:"proven"`
	Gap             float64       `json:"gap"`
	Limits          []string      `json:"limits"`
	Relaxed         []RelaxedRule `json:"relaxed,omitempty"`
	Living          int           `json:"living"`   // the line, as in [SpeciesPlan]
	Promised        int           `json:"promised"` // in the room, and not counted
	LeftOut         []LeftOut     `json:"left_out"` // all other animals in the room
	Warnings        []string      `json:"warnings,omitempty"`
}

// Group is the animals of one chamber.
type Group struct {
	Males      []string `json:"males"`
	Females    []string `json:"females"`
	Young      int      `json:"young"`      // to hold back
	Inbreeding float64  `json:"inbreeding"` // expected, each couple as likely as any other
	Highest    float64  `json:"highest"`    // of the most related couple
	Unknown    string   `json:"unknown"`    // what will not be known of the young
	Settle     string   `json:"settle"`     // what would settle it
	Findings   []string `json:"findings,omitempty"`
}

// mostGroups is how many groups are chosen from at most: each takes about 200 bytes and its
// part in every step of the search.
const mostGroups = 20_000

// Groups plans groups of so many males and females of one species, each for a
// chamber, by the expected kinship of their young: all young of a clutch have one of
// the males and one of the females as parents, and it is not known which. A
// group in which a rule refuses any couple is not taken. Goals do not count here;
// Pairings is the most groups, or else the number of rain chambers. The errors are those of [Stock.Plan].
func (s *Stock) Groups(w Wish, males, females int) (Groups, error) {
	w, err := s.whole(w)
	if err != nil {
		return Groups{}, err
	}
	if males < 1 || females < 1 || males > 10 || females > 10 {
		return Groups{}, &WishError{"a group has 1 to 10 males and 1 to 10 females"}
	}
	if w.Species == "" && len(s.Species) == 1 {
		w.Species = s.Species[0]
	}
	if w.Species == "" {
		return Groups{}, &WishError{"groups are planned for one species: name it"}
	}
	g := &grouping{line: s.line(w.Species, w), males: males, females: females}
	if err := g.line.judge(); err != nil {
		return Groups{}, err
	}
	if err := possible([]*line{g.line}, w); err != nil {
		return Groups{}, err
	}
	if err := g.combine(); err != nil {
		return Groups{}, err
	}
	return g.best()
}

// grouping is the groups that a line can make.
type grouping struct {
	line           *line
	males, females int // in a group
	groups         [][2][]string
}

// combine lists all groups of which each couple is allowed, in the order of the
// file.
func (g *grouping) combine() error {
	allowed := make(map[[2]string]bool)
	var males, females []string
	for _, o := range g.line.options {
		p := g.line.pairs[o]
		allowed[[2]string{p.Male, p.Female}] = true
		if !slices.Contains(males, p.Male) {
			males = append(males, p.Male)
		}
		if !slices.Contains(females, p.Female) {
			females = append(females, p.Female)
		}
	}
	byFile := func(a, b string) int { return g.line.stock.number(a) - g.line.stock.number(b) }
	slices.SortFunc(males, byFile)
	slices.SortFunc(females, byFile)
	tooMany := false
	subsets(females, g.females, func(dams []string) bool {
		fit := slices.DeleteFunc(slices.Clone(males), func(m string) bool {
			return slices.ContainsFunc(dams, func(d string) bool { return !allowed[[2]string{m, d}] })
		})
		subsets(fit, g.males, func(sires []string) bool {
			g.groups = append(g.groups, [2][]string{slices.Clone(sires), slices.Clone(dams)})
			tooMany = len(g.groups) > mostGroups
			return !tooMany
		})
		return !tooMany
	})
	switch {
	case tooMany:
		return &WishError{fmt.Sprintf("there are more than %d groups to choose from: leave animals out, or make the groups smaller", mostGroups)}
	case len(g.groups) == 0:
		return &NoPlanError{Species: g.line.species, Blocking: []string{fmt.Sprintf(
			"there are no %d males and %d females of which each may be paired with each", g.males, g.females)}}
	}
	return nil
}

// subsets gives all subsets of a size in lexical order, until take says no.
func subsets(from []string, size int, take func([]string) bool) {
	set := make([]string, 0, size)
	var next func(at int) bool
	next = func(at int) bool {
		if len(set) == size {
			return take(set)
		}
		for i := at; i <= len(from)-(size-len(set)); i++ {
			set = append(set, from[i])
			if !next(i + 1) {
				return false
			}
			set = set[:len(set)-1]
		}
		return true
	}
	next(0)
}

// best chooses as many groups as help, at least one.
func (g *grouping) best() (Groups, error) {
	l := g.line
	most, limits := g.most()
	var best pairing.Outcome
	found, proven := false, true
	for count := 1; count <= most; count++ {
		o := g.choice(count).Best(pairing.Effort{Nodes: max(1, l.wish.Nodes/10), Stop: l.wish.Stop})
		proven = proven && o.Proven
		if len(o.Plans) == 0 {
			if found {
				break // no more groups fit
			}
			continue
		}
		if !found || o.Plans[0].Score < best.Plans[0].Score-1e-12 {
			best, found = o, true
		}
	}
	if !found {
		c := g.choice(1)
		c.Limits[len(c.Limits)-1].AtMost = most
		e := &NoPlanError{Species: l.species}
		blocking, _ := c.Blocking()
		for _, at := range blocking {
			e.Blocking = append(e.Blocking, c.Limits[at].Name)
		}
		if len(e.Blocking) == 0 {
			e.Blocking = []string{"the wishes do not go together"}
		}
		return Groups{}, e
	}
	plan := best.Plans[0]
	out := Groups{
		On: l.stock.Terms.On, Species: l.species, Groups: []Group{}, Possible: len(g.groups),
		GeneDiversity: l.set.GeneDiversity(), WithYoung: 1 - plan.MeanKinship, YoungInbreeding: plan.YoungInbreeding,
		Proven: proven, Gap: best.Gap(), Limits: limits, Warnings: ancestryWarnings(l),
		Relaxed: l.stock.relaxed(l.wish), Living: len(l.pool), Promised: len(l.here) - len(l.pool),
	}
	used := make(map[string]bool)
	for _, pick := range plan.Picks {
		one := g.planned(pick)
		out.Groups = append(out.Groups, one)
		for _, id := range slices.Concat(one.Males, one.Females) {
			used[id] = true
		}
	}
	out.LeftOut = l.leftOut(used)
	return out, nil
}

// most gives the greatest number of groups, and what bounds the plan, in words.
func (g *grouping) most() (int, []string) {
	w := g.line.wish
	most := len(g.groups)
	var limits []string
	switch chambers := g.line.stock.RainChambers; {
	case w.Pairings > 0:
		most = w.Pairings
		limits = append(limits, fmt.Sprintf("at most %d groups, as asked", most))
	case chambers.Known:
		most = chambers.Value * max(1, w.Rounds)
		limits = append(limits, fmt.Sprintf("rain chambers: %d, each filled at most %s", chambers.Value, times(max(1, w.Rounds))))
	}
	if w.Apart {
		limits = append(limits, g.line.stock.apart())
	}
	return min(most, len(g.groups)), append(limits, "each animal is in one group at most",
		fmt.Sprintf("%d young held back for each group on average, 1 to %d from each", w.Young, w.mostYoung()))
}

func (g *grouping) choice(count int) pairing.Choice {
	l := g.line
	c := pairing.Choice{Pool: l.set, Young: count * l.wish.Young, Weight: l.weight(count * l.wish.Young)}
	in := make(map[string][]int)
	var ids []string
	all := make([]int, len(g.groups))
	for o, group := range g.groups {
		all[o] = o
		c.Options = append(c.Options, pairing.Option{
			Sires: l.stock.numbers(group[0]), Dams: l.stock.numbers(group[1]), Mix: pedigree.OneUnknown,
			MinYoung: 1, MaxYoung: l.wish.mostYoung(),
		})
		for _, id := range slices.Concat(group[0], group[1]) {
			if in[id] == nil {
				ids = append(ids, id)
			}
			in[id] = append(in[id], o)
		}
	}
	for _, id := range ids {
		c.Limits = append(c.Limits, pairing.Limit{Name: id + " is in one group at most", Options: in[id], AtMost: 1})
	}
	for _, want := range l.wish.Want {
		var both []int
		for _, o := range in[want[0]] {
			if slices.Contains(in[want[1]], o) {
				both = append(both, o)
			}
		}
		c.Limits = append(c.Limits, pairing.Limit{Name: want[0] + " × " + want[1] + " is wanted", Options: both, AtLeast: 1, AtMost: pairing.NoLimit})
	}
	c.Limits = append(c.Limits, pairing.Limit{Name: fmt.Sprintf("%d groups", count), Options: all, AtLeast: count, AtMost: count})
	return c
}

func (g *grouping) planned(pick pairing.Pick) Group {
	l, group := g.line, g.groups[pick.Option]
	verdict := pairing.Judge(l.stock.terms(l.wish), l.stock.breeders(group[0]...), l.stock.breeders(group[1]...))
	p := Group{Males: group[0], Females: group[1], Young: pick.Young, Inbreeding: verdict.YoungInbreeding}
	for _, m := range group[0] {
		for _, f := range group[1] {
			p.Highest = max(p.Highest, l.stock.Terms.Pedigree.Kinship(l.stock.number(m), l.stock.number(f)))
		}
	}
	for _, f := range verdict.Findings {
		if f.Severity >= pairing.Warn {
			p.Findings = append(p.Findings, thought(f))
		}
	}
	p.Unknown, p.Settle = unknownParents(group[0], group[1])
	return p
}

// unknownParents says what is not known of young from a group, and what would
// settle it (common practice, no source).
func unknownParents(males, females []string) (unknown, settle string) {
	sire := "which of " + joined(males) + " is the sire of a clutch"
	dam := "which of " + joined(females) + " laid it"
	switch {
	case len(males) == 1 && len(females) == 1:
		return "nothing", ""
	case len(females) == 1:
		return sire, "noting which male is on her back when she lays, or a genetic test of parentage"
	case len(males) == 1:
		return "which of " + joined(females) + " laid a clutch", "noting which female lays, or weighing the females before and after"
	}
	return sire + ", and " + dam, "noting which couple lays each clutch, or a genetic test of parentage"
}
