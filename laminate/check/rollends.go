package check

import (
	"math"
	"slices"

	"stripwright/geometry"
	"stripwright/laminate"
)

// rollEnds shows that a cut a hair nearer than the bound is too near: what lies on a
// level of a roll is a sum of chords with their gaps, so that a roll is filled to
// the greatest such sum below its length at the most, and the rolls up to the cut
// hold less than all chords together.
func (m *costing) rollEnds() {
	lengths, need, even := m.lengthsAlong()
	if !even {
		m.fault(1, "the bound by roll ends is for blanks with few lengths along the roll, and these have many")
		return
	}
	holds := 0.0
	for _, l := range m.before(m.c.Proof.LengthMM - 0.002) {
		holds += fullest(lengths, geometry.Micrometres(l+m.gap)).MM()
	}
	width := m.widest()
	if width > 0 && float64(holds*width) > need+cent {
		m.fault(float64(holds*width)-need, "by roll ends a cut at %s is not too near: %.1f mm² lie before it, the chords have %.1f mm²",
			mm(m.c.Proof.LengthMM), float64(holds*width), need)
	}
}

// lengthsAlong gives the different chords, with their gaps, of the fabric's plies
// and what they cover in mm²; even is false where one changes from level to level.
func (m *costing) lengthsAlong() (lengths []geometry.Micrometre, covered float64, even bool) {
	for _, y := range m.plies {
		for _, c := range chordsOf(y.Blank, y.AngleDeg, m.gap) {
			if math.Abs(c.from-c.to) > 1e-6 {
				return nil, 0, false
			}
			covered += float64(c.from * c.high)
			lengths = append(lengths, geometry.Micrometres(c.from))
		}
	}
	slices.Sort(lengths)
	return slices.Compact(lengths), covered, true
}

// before gives what there is of each roll before a cut: of rolls laid end to end,
// counted back from the last one's free end; else of one roll.
func (m *costing) before(cut float64) []float64 {
	if m.c.Measure != laminate.ByLastCut || len(m.rolls) == 0 {
		return []float64{cut}
	}
	last := len(m.rolls) - 1
	start := m.c.Used - m.rolls[last].UsedLengthMM
	out := []float64{cut - start}
	for r := last - 1; r >= 0; r-- {
		long := m.rolls[r].UsedLengthMM
		if m.rolls[r].StockLengthMM != nil {
			long = *m.rolls[r].StockLengthMM
		}
		start -= long
		out = append(out, min(long, cut-start))
	}
	return slices.DeleteFunc(out, func(l float64) bool { return l <= 0 })
}

// mostSums bounds the sums of lengths that are looked at.
const mostSums = 1 << 22

// fullest gives the greatest sum of lengths, each as often as one likes, that is not
// above most; most itself where there are too many sums to look at.
func fullest(lengths []geometry.Micrometre, most geometry.Micrometre) geometry.Micrometre {
	unit := geometry.Micrometre(0)
	for _, l := range lengths {
		for unit, l = l, unit; l > 0; {
			unit, l = l, unit%l
		}
	}
	if unit <= 0 || most/unit > mostSums {
		return most
	}
	sum := make([]bool, most/unit+1)
	best := 0
	for k := range sum {
		for _, l := range lengths {
			n := int(l / unit)
			sum[k] = sum[k] || k == n || k > n && sum[k-n]
		}
		if sum[k] {
			best = k
		}
	}
	return geometry.Micrometre(best) * unit
}
