package pedigree

import (
	"fmt"
	"strings"
)

// words names a relationship by the steps up to the ancestors that are shared.
func words(upA, upB int, full bool, ways int) string {
	near := min(upA, upB)
	var name string
	switch {
	case upA == 0 && upB == 0:
		return "the same animal"
	case near == 0:
		name = pairOfRoles(upA, upB, directRoles(upA+upB))
	case near == 1 && upA == upB:
		return sibling(full) + " siblings"
	case near == 1:
		name = pairOfRoles(upA, upB, collateralRoles(max(upA, upB)-1, full))
	default:
		return cousins(near-1, upA+upB-2*near, full, ways)
	}
	return name + times(ways)
}

// pairOfRoles puts the role of A first.
func pairOfRoles(upA, upB int, roles [2]string) string {
	if upA > upB {
		roles[0], roles[1] = roles[1], roles[0]
	}
	return roles[0] + " and " + roles[1]
}

// directRoles names an ancestor and a descendant some steps apart.
func directRoles(steps int) [2]string {
	switch {
	case steps == 1:
		return [2]string{"parent", "young"}
	case steps <= 4:
		great := strings.Repeat("great-", steps-2)
		return [2]string{great + "grandparent", great + "grandchild"}
	}
	return [2]string{
		fmt.Sprintf("ancestor %d generations up", steps),
		fmt.Sprintf("descendant %d generations down", steps),
	}
}

// collateralRoles names a sibling of an ancestor and that ancestor's descendant,
// so many steps below him.
func collateralRoles(steps int, full bool) [2]string {
	half := ""
	if !full {
		half = "half "
	}
	if steps > 4 {
		return [2]string{
			fmt.Sprintf("%s sibling of an ancestor %d generations up", sibling(full), steps),
			"that ancestor's descendant",
		}
	}
	great := strings.Repeat("great-", steps-1)
	return [2]string{
		fmt.Sprintf("%s%suncle or %saunt", half, great, great),
		fmt.Sprintf("%s%snephew or %sniece", half, great, great),
	}
}

func sibling(full bool) string {
	if full {
		return "full"
	}
	return "half"
}

// cousins names descendants of two siblings.
func cousins(degree, removed int, full bool, ways int) string {
	name := ordinal(degree) + " cousins"
	if !full {
		name = "half " + name
	}
	switch removed {
	case 0:
	case 1:
		name += " once removed"
	case 2:
		name += " twice removed"
	default:
		name += fmt.Sprintf(" %d times removed", removed)
	}
	if full && removed == 0 && ways == 2 {
		return "double " + name
	}
	return name + times(ways)
}

func ordinal(n int) string {
	names := []string{"first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"}
	if n <= len(names) {
		return names[n-1]
	}
	suffix := "th"
	if n%100 < 11 || n%100 > 13 {
		switch n % 10 {
		case 1:
			suffix = "st"
		case 2:
			suffix = "nd"
		case 3:
			suffix = "rd"
		}
	}
	return fmt.Sprint(n) + suffix
}

func times(ways int) string {
	switch ways {
	case 1:
		return ""
	case 2:
		return " twice over"
	}
	return fmt.Sprintf(" %d times over", ways)
}

// relationshipsNamed is how many relationships Words names.
const relationshipsNamed = 4

// throughNamed is how many shared ancestors Words names when there are many.
const throughNamed = 10

// Words says in one line how A and B are related, the closest relationship first:
// "half siblings through Bram, and also second cousins". Roles that differ are
// given in the order of A and B. name gives what an animal is called by its
// number; [Pedigree.ID] will do.
//
// The closest is the one of which a single way brings the most without inbreeding:
// parent and young or full siblings, then half siblings, grandparent or uncle, and
// so on; of equally close ones that with the larger share of the kinship. Only for
// the first the shared ancestors are named, where the words do not say who they
// are; of more than eleven the first ten and how many more. "possibly" stands before what rests on a parent that is one of several.
// After four relationships the rest is "more distant ways".
func (e Explanation) Words(name func(animal int) string) string {
	var parts []string
	for n, r := range e.Relationships {
		if n == relationshipsNamed {
			parts = append(parts, "related in more distant ways")
			break
		}
		parts = append(parts, r.text(n == 0, name))
	}
	if len(e.Relationships) <= relationshipsNamed && e.Unnamed > 1e-12 {
		parts = append(parts, "related in more distant ways")
	}
	if len(e.Sources) > 0 {
		var ids []string
		for _, s := range e.Sources {
			ids = append(ids, s.ID)
		}
		parts = append(parts, "from one source ("+list(ids, "and")+")")
	}
	switch len(parts) {
	case 0:
		return "not known to be related"
	case 1:
		return parts[0]
	}
	return parts[0] + ", and also " + list(parts[1:], "and")
}

// text gives the words with what is only possible.
func (r Relationship) text(through bool, name func(animal int) string) string {
	text := r.Words
	if r.Possible {
		text = "possibly " + text
	}
	if through && r.UpA > 0 && r.UpB > 0 && !strings.HasPrefix(r.Words, "full siblings") {
		var names []string
		for i, animal := range r.Through {
			if i == throughNamed && len(r.Through) > throughNamed+1 {
				names = append(names, fmt.Sprintf("%d more", len(r.Through)-i))
				break
			}
			names = append(names, name(animal))
		}
		text += " through " + list(names, r.joint())
	}
	if r.MaybeFull {
		text += ", possibly full"
		if r.UpA == 1 && r.UpB == 1 {
			text += " siblings"
		}
	}
	return text
}

func (r Relationship) joint() string {
	if r.Either {
		return "or"
	}
	return "and"
}

// list joins words: "a, b and c".
func list(words []string, last string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	end := len(words) - 1
	return strings.Join(words[:end], ", ") + " " + last + " " + words[end]
}
