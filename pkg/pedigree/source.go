package pedigree

// FromSource gives a copy of the records in which every unknown parent comes from
// a source: the empty Sire and Dam of each are replaced with the id of a [Group]
// of kind [Source], which goes to [New] with the records. That is how founders
// and unknown parents are given a base kinship.
func FromSource(records []Record, source string) []Record {
	from := make([]Record, len(records))
	for i, r := range records {
		if r.Sire == "" {
			r.Sire = source
		}
		if r.Dam == "" {
			r.Dam = source
		}
		from[i] = r
	}
	return from
}
