package species

// Row is one value of a profile as text.
type Row struct {
	Section string // such as "development: tadpole"; empty for a value of the species as a whole
	Key     string // the key in a keeper's file
	Value   string // with its unit
	Source  string
}

// Rows lists every known value of p in reading order.
func (p *Profile) Rows() []Row { return nil }
