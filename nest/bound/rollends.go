package bound

import (
	"math"
	"slices"
)

// mostUnits bounds the table of lengths that chords add up to.
const mostUnits = 1 << 21

// rollEnds is for chords of a few whole lengths. Whatever lies on a level of a roll
// is a sum of such chords with their gaps, so a roll of length L is filled to K(L)
// at the most, the greatest such sum that it holds: the end of each roll before the
// last, and of the last up to its last cut, stays empty beyond that. Where the rolls
// up to a cut hold less than all chords together, it lies too near.
func rollEnds(f *fabric, at int64) Bound {
	best := f.area()
	best.Kind = RollEnds
	runs := f.runs(f.Gap)
	unit := unitOf(runs)
	if unit == 0 {
		return best
	}
	need := 0.0 // of the width, in units along the roll
	for _, r := range runs {
		need += float64(r.height * (r.from / float64(unit)))
	}
	need *= (1 - 1e-12) / float64(f.Width)
	before := int64(0)
	for _, l := range f.ends(at) {
		fills := fillsOf(runs, unit, l+f.Gap)
		if fills == nil {
			return best
		}
		most := fills[len(fills)-1]
		if float64(most) < need {
			need -= float64(most)
			before += l
			continue
		}
		for _, k := range fills {
			if float64(k) >= need {
				best.Length = max(best.Length, before+k*unit-f.Gap)
				return best
			}
		}
	}
	return best
}

// ends lists the lengths of the rolls in the order in which they are used; one that
// is as long as needed has what suffices for certain.
func (f *fabric) ends(at int64) []int64 {
	plenty := at
	if plenty <= 0 {
		plenty = 2 * f.area().Length
	}
	if len(f.Rolls) == 0 {
		return []int64{plenty}
	}
	out := slices.Clone(f.Rolls)
	for k, l := range out {
		if l == 0 {
			out[k] = plenty
		}
	}
	return out
}

// unitOf gives the greatest length that all chords are whole multiples of; 0 where
// one is not of whole µm.
func unitOf(runs []run) int64 {
	unit := int64(0)
	for _, r := range runs {
		if !r.even() {
			return 0
		}
		for a := int64(r.from); a != 0; {
			unit, a = a, unit%a
		}
	}
	return unit
}

// fillsOf lists the sums of chords up to a length, rising, in units; nil where the
// table would be too long.
func fillsOf(runs []run, unit, length int64) []int64 {
	n := length / unit
	if n > mostUnits || n < 0 || float64(n)*float64(len(runs)) > 8*mostUnits {
		return nil
	}
	reached := make([]bool, n+1)
	reached[0] = true
	var out []int64
	for k := range n + 1 {
		if !reached[k] {
			continue
		}
		out = append(out, k)
		for _, r := range runs {
			if next := k + int64(math.Round(r.from))/unit; next <= n {
				reached[next] = true
			}
		}
	}
	return out
}
