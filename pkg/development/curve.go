package development

// A curve is a blend written down at close points, for when it is asked often.
type curve struct {
	low   float64
	nodes []normalNode
}

const curveSteps = 16 // to a standard deviation of the book; the error is below 1e-7

// curve writes b down from low to high.
func (b blend) curve(low, high float64) curve {
	c := curve{low, make([]normalNode, int((high-low)*curveSteps)+2)}
	for i := range c.nodes {
		z := low + float64(i)/curveSteps
		for _, n := range b {
			p, density := normalBoth((z - n.mean) / n.sd)
			c.nodes[i].p += n.weight * p
			c.nodes[i].slope += n.weight * density / (n.sd * curveSteps)
		}
	}
	return c
}

func (c curve) cdf(z float64) float64 {
	at := (z - c.low) * curveSteps
	switch {
	case !(at > 0):
		return 0
	case at >= float64(len(c.nodes)-1):
		return 1
	}
	i := int(at)
	return between(c.nodes[i], c.nodes[i+1], at-float64(i))
}
