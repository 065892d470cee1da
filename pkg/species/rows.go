package species

// Row is one value of a profile as text.
type Row struct {
	Section string // such as "development: tadpole"; empty for a value of the species as a whole
	Key     string // the key in a keeper's file
	Value   string // with its unit; three numbers are in the order of [Days] or [Percentiles]
	Source  string
}

// Rows lists every known value of p, except its names, in reading order.
func (p *Profile) Rows() []Row {
	var rows []Row
	p.each(func(section string, fields []field) {
		for _, f := range fields {
			if source := *f.value.source(); source != "" {
				rows = append(rows, Row{section, f.key, f.value.show(), source})
			}
		}
	})
	for _, c := range p.Cautions {
		rows = append(rows, Row{"", "cautions", c.Value, c.Source})
	}
	return rows
}
