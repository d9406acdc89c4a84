package bound

import "math"

// mostSteps bounds the dual feasible functions that are tried, mostWeighed the
// chords that all of them together weigh: an outline of very many vertices has
// tens of thousands.
const (
	mostSteps   = 100
	mostWeighed = 1_000_000
)

// worth is the least gain in µm that a better bound has.
const worth = 10

// run is chords along the roll whose length changes evenly from From to To over
// a height.
type run struct{ from, to, height float64 }

// chordBound takes every level of the roll as a bin of the roll's length, which
// holds whole chords, each with the cutting gap behind it, the last one's beyond
// the roll. u(x) = x where (m+1)x is whole, else ⌊(m+1)x⌋/m, is dual feasible:
// where the chords of all plies, weighed by it, do not fit into the roll's width,
// the length is too short. With m = 0 it is u(x) = x, which says more than the
// area where there is a gap. Rolls that end are taken as one without gaps: none
// lies between the last piece of one and the first of the next.
func chordBound(f *fabric, at int64) Bound {
	gap := f.Gap
	if len(f.Rolls) > 0 {
		gap = 0
	}
	runs := f.runs(gap)
	best := f.area()
	best.Kind = Chord
	if gap > 0 {
		best.Length = max(best.Length, f.spaced(runs, gap))
	}
	best.Length += gap
	most := min(mostSteps, max(5, mostWeighed/max(1, len(runs))))
	for m := 1; m <= most; m++ {
		lo, hi := best.Length, 2*best.Length // hi is not shown to be too short
		if at > 0 {
			hi = min(hi, at+gap)
		}
		lo += worth
		if lo >= hi || !f.tooShort(runs, lo, m) {
			continue
		}
		for hi-lo > 1 { // lo is too short
			if mid := lo + (hi-lo)/2; f.tooShort(runs, mid, m) {
				lo = mid
			} else {
				hi = mid
			}
		}
		best.Length, best.Steps = lo+1, m
	}
	best.Length -= gap
	return best
}

// spaced gives the length that all chords take end to end, with gaps, over the
// whole width of the roll.
func (f *fabric) spaced(runs []run, gap int64) int64 {
	sum := 0.0
	for _, r := range runs {
		sum += float64(r.height * max(0, float64((r.from+r.to)/2)-offOf(r)))
	}
	return max(0, int64(math.Ceil(sum/float64(f.Width)*(1-1e-12)))-gap)
}

// offOf gives by how much snapping may have made a chord longer: not at all where
// it keeps one length of whole µm.
func offOf(r run) float64 {
	if r.even() {
		return 0
	}
	return offGrid
}

// even says whether the chords have one length of whole µm.
func (r run) even() bool { return r.from == r.to && r.from == math.Trunc(r.from) }

// runs gives the chords of all plies, equal blanks together, with the cutting gap
// behind them. Where a level crosses a blank more than once no gap is counted: two
// chords of one piece may be nearer to each other.
func (f *fabric) runs(cutting int64) []run {
	var out []run
	for k, s := range f.shapes {
		n := float64(f.count[k])
		for i, c := range s.slabs {
			gap := 0.0
			if (i == 0 || s.slabs[i-1].Y1 <= c.Y0) && (i+1 == len(s.slabs) || s.slabs[i+1].Y0 >= c.Y1) {
				gap = float64(cutting)
			}
			out = append(out, run{c.R0 - c.L0 + gap, c.R1 - c.L1 + gap, float64(n * float64(c.Y1-c.Y0))})
		}
	}
	return out
}

// tooShort says whether the function of m steps shows a length to be too short.
func (f *fabric) tooShort(runs []run, length int64, m int) bool {
	sum := 0.0
	for _, r := range runs {
		sum += weigh(r, length, m)
	}
	return sum > float64(f.Width)*(1+1e-9)
}

// weigh integrates the function of m steps over a run. Chords whose length is
// not a whole number of µm, or changes, count a little shorter: snapping may have
// made them longer.
func weigh(r run, length int64, m int) float64 {
	if r.even() {
		return float64(r.height * stepped(int64(r.from), length, int64(m)))
	}
	n := float64(m+1) / float64(length)
	a := max(0, float64(n*(min(r.from, r.to)-offGrid)))
	b := max(0, float64(n*(max(r.from, r.to)-offGrid)))
	if b-a < 1e-9 {
		return float64(r.height * (math.Floor(a) / float64(m)))
	}
	return float64(r.height*((steps(b)-steps(a))/(b-a))) / float64(m)
}

// stepped is the function of m steps at a chord of a length.
func stepped(chord, length, m int64) float64 {
	whole, rest := (m+1)*chord/length, (m+1)*chord%length
	if rest == 0 {
		return float64(whole) / float64(m+1)
	}
	return float64(whole) / float64(m)
}

// steps integrates ⌊t⌋ from 0 to z.
func steps(z float64) float64 {
	n := math.Floor(z)
	return float64(n*(n-1)/2) + float64(n*(z-n))
}
