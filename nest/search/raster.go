package search

import "stripwright/nest/layout"

// leastRaster is the finest raster worth keeping to, in µm.
const leastRaster = 5 * millimetre

// rasterOf gives the step, in µm, that the width of a group's rolls and all
// distances between edges of its blanks are whole multiples of, divided by parts;
// 0 when that is too fine to be of use. On such a raster off-cuts fill each
// other's strips exactly.
func (p *Problem) rasterOf(g int, parts int64) int64 {
	step := int64(0)
	for i := range p.Group {
		if p.Group[i] != g {
			continue
		}
		c := p.Web.Plies[i].Class
		step = gcd(step, c.Width+p.Gap)
		for _, e := range c.Edges {
			step = gcd(step, e.At-c.Edges[0].At)
		}
	}
	if step%parts != 0 || step/parts < leastRaster {
		return 0
	}
	return step / parts
}

// rastered says whether every group has a raster.
func (p *Problem) rastered() bool {
	for g := range p.Weight {
		if p.rasterOf(g, 1) == 0 {
			return false
		}
	}
	return true
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return max(a, -a)
}

// onRaster brings changes to the nearest phases on the rasters, where there are
// any.
func (w *walker) onRaster(changes []change) []change {
	for k := range changes {
		c := &changes[k]
		if step := w.raster[w.Group[c.ply]]; step > 0 {
			c.phase = nearest(w.class(c.ply), c.phase, step)
		}
	}
	return changes
}

func nearest(c *layout.Class, phase, step int64) int64 {
	off := phase - c.Edges[0].At
	whole := off / step
	switch rest := off % step; {
	case 2*rest >= step:
		whole++
	case 2*rest < -step:
		whole--
	}
	return c.Phase(c.Edges[0].At + whole*step)
}
