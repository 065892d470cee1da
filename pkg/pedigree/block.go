package pedigree

// Block gives the kinships of some animals to others: entry [r][c] is that of
// rows[r] and cols[c]. Values agree with [Pedigree.Kinship] to the rounding of
// the last digits. An animal may be in both lists, and more than once.
func (p *Pedigree) Block(rows, cols []int) [][]float64 {
	block := make([][]float64, len(rows))
	for r, i := range rows {
		all := p.KinshipTo(i)
		block[r] = make([]float64, len(cols))
		for c, j := range cols {
			p.node(j)
			block[r][c] = all[j]
		}
	}
	return block
}
