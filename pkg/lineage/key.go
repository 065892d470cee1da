package lineage

// key is which marks a picture has used, so that it explains just these.
type key struct {
	founder, male, female, unsexed, young, gone, family, inbred, expected, possible bool
}

// lines gives the explanation, in lines of a readable width.
func (k key) lines() []string {
	var lines []string
	add := func(used bool, text string) {
		if !used {
			return
		}
		if n := len(lines); n > 0 && len(lines[n-1])+len(text) < 100 {
			lines[n-1] += "  |  " + text
			return
		}
		lines = append(lines, text)
	}
	add(k.founder, "double border: founder, no parent known")
	add(k.male, "thick border: male")
	add(k.female, "thin border: female")
	add(k.unsexed, "dotted border: sex unknown")
	add(k.young, "dashed border: young that the pair would have")
	add(k.gone, "grey: died or left")
	add(k.family, "three edges: young of one mating that have no young here")
	add(k.inbred, "F and a darker ground: inbreeding coefficient")
	add(k.expected, "expected: the mean over possible parents")
	add(k.possible, "dashed line: one of several possible parents")
	return lines
}
