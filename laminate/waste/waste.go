package waste

import (
	"slices"

	"stripwright/geometry"
	"stripwright/laminate"
)

// Kind is where cloth is lost.
type Kind int

// Kinds of loss, in the order they are told.
const (
	Ends Kind = iota
	Beside
	Openings
	Cuts
	Gaps
	BadEdges
	Earlier
	Trimmed
	kinds
)

// Kinds lists all kinds of loss.
func Kinds() []Kind { return []Kind{Ends, Beside, Openings, Cuts, Gaps, BadEdges, Earlier, Trimmed} }

// Cloth is the cloth of one fabric and roll width.
type Cloth struct {
	Fabric  string
	WidthMM float64        // of the roll, with its bad edges
	TotalMM float64        // roll length that counts: what is used, and by the last cut what is left before it
	LaidMM2 float64        // in the strips
	Lost    [kinds]float64 // mm²
}

// Percent gives the share of the whole cloth that an area is.
func (c *Cloth) Percent(area float64) float64 {
	if c.TotalMM == 0 {
		return 0
	}
	return 100 * area / float64(c.TotalMM*c.WidthMM)
}

// LengthMM gives the length of roll, at its full width, that has an area.
func (c *Cloth) LengthMM(area float64) float64 { return area / c.WidthMM }

// Of tells where the cloth of a plan goes: by fabric in the order of the rolls,
// by width. The shares of a cloth add up to all of it.
func Of(p laminate.Plan) []Cloth {
	var out []Cloth
	strips := stripAreas(p)
	for _, r := range p.Rolls {
		k := slices.IndexFunc(out, func(c Cloth) bool {
			return c.Fabric == r.Fabric && geometry.Micrometres(c.WidthMM) == geometry.Micrometres(r.WidthMM)
		})
		if k < 0 {
			k = len(out)
			out = append(out, Cloth{Fabric: r.Fabric, WidthMM: r.WidthMM})
		}
		out[k].take(r, p.Rules.CuttingGapMM)
		if p.Rules.Ends == laminate.StraightEnds {
			out[k].trim(r, strips)
		}
	}
	for _, c := range p.Cost {
		if c.Measure == laminate.ByLastCut {
			earlier(out, p.Rolls, c)
		}
	}
	return out
}

// take adds a roll.
func (c *Cloth) take(r laminate.PlanRoll, gap float64) {
	c.TotalMM += r.UsedLengthMM
	c.Lost[BadEdges] += float64((r.WidthMM - r.UsableWidthMM) * r.UsedLengthMM)
	for i := range r.Pieces {
		c.LaidMM2 += r.Pieces[i].Shape.Area()
	}
	for _, s := range stretches(r) {
		full := s.full()
		for _, f := range s.free() {
			k, area := f.kind(full), float64(f.times*f.area())
			if k != Openings && k != Cuts && gap > 0 && f.times == 1 {
				within := f.within(gap)
				c.Lost[Gaps] += within
				area -= within
			}
			c.Lost[k] += area
		}
	}
}

// stripAreas gives the area of every strip as it lies, mm², where pieces are more
// than that.
func stripAreas(p laminate.Plan) map[string]float64 {
	out := map[string]float64{}
	if p.Rules.Ends != laminate.StraightEnds {
		return out
	}
	for _, y := range p.Plies {
		for _, s := range y.Strips {
			out[s.ID] = s.Shape.Area()
		}
	}
	return out
}

// trim tells what is trimmed on the tool from what stays in the plies.
func (c *Cloth) trim(r laminate.PlanRoll, strips map[string]float64) {
	for i := range r.Pieces {
		off := r.Pieces[i].Shape.Area() - strips[r.Pieces[i].ID]
		c.LaidMM2 -= off
		c.Lost[Trimmed] += off
	}
}

// earlier adds, where the place of the last cut counts, what is left on the
// rolls before the last one, and rolls before it that hold no piece: the first
// width of the fabric bears what the rolls listed do not explain.
func earlier(out []Cloth, rolls []laminate.PlanRoll, cost laminate.Cost) {
	rest := cost.Used
	first := -1
	for k := range out {
		if out[k].Fabric != cost.Fabric {
			continue
		}
		if first < 0 {
			first = k
		}
		left := 0.0
		last := -1.0
		for _, r := range rolls {
			if r.Fabric != out[k].Fabric || r.WidthMM != out[k].WidthMM {
				continue
			}
			if last > 0 {
				left += last
			}
			if last = -1; r.StockLengthMM != nil {
				last = *r.StockLengthMM - r.UsedLengthMM
			}
		}
		out[k].add(left)
		rest -= out[k].TotalMM
	}
	if first >= 0 && geometry.Micrometres(rest) > 0 {
		out[first].add(rest)
	}
}

// add counts a length of whole roll as lost on earlier rolls.
func (c *Cloth) add(length float64) {
	c.TotalMM += length
	c.Lost[Earlier] += float64(length * c.WidthMM)
}

// kind says what a free stretch is lost to; full tells which pieces take the
// whole width.
func (f *free) kind(full []bool) Kind {
	switch {
	case f.left < 0 || f.right < 0:
		return Cuts
	case f.left == f.right:
		return Openings
	case full[f.left] && full[f.right]:
		return Ends
	}
	return Beside
}
