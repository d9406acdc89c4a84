package layup

import (
	"math"
	"sort"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/sheet"
)

// nearParallel is the sine of nearParallelDeg.
var nearParallel = math.Sin(nearParallelDeg * math.Pi / 180)

// between is what lies between two plies: how many plies over the whole part,
// the patches, and how many the rule asks for.
type between struct {
	need, whole int
	patches     []geometry.Region
}

// betweenOf looks at the plies between j and i; of their fabrics the larger rule
// holds.
func betweenOf(p laminate.Plan, rules map[string]int, j, i int) between {
	b := between{need: max(rules[p.Plies[i].Fabric], rules[p.Plies[j].Fabric])}
	for k := j + 1; k < i; k++ {
		if p.Plies[k].Outline == "" {
			b.whole++
		} else if !p.Plies[k].Blank.Empty() {
			b.patches = append(b.patches, p.Plies[k].Blank)
		}
	}
	return b
}

// counted says whether fewer plies than asked lie between two joints at places of
// them that face each other: a patch counts where it covers both.
func (b between) counted(on, other orb.Point) bool {
	n := b.whole
	for _, r := range b.patches {
		if n < b.need && r.Contains(on) && r.Contains(other) {
			n++
		}
	}
	return n < b.need
}

// beside is how two near-parallel joints lie to each other, seen along the first:
// the stretch that they share, and how far off the second is.
type beside struct {
	a         run
	low, high float64
	at, slope float64 // the second at low, and per mm
}

func (s beside) off(t float64) float64 { return s.at + float64(s.slope*(t-s.low)) }

func (s beside) on(t float64) orb.Point    { return sheet.Along(s.a.from, s.a.d, t) }
func (s beside) other(t float64) orb.Point { return sheet.Beside(s.a.from, s.a.d, t, s.off(t)) }

// besideOf gives no stretch for joints that are not near parallel or do not lie
// beside each other.
func besideOf(a, b run) (s beside, ok bool) {
	if math.Abs(cross(a.d, b.d)) > nearParallel {
		return s, false
	}
	p := minus(b.from, a.from)
	q := sheet.Along(p, b.d, b.long)
	tp, tq := dot(a.d, p), dot(a.d, q)
	sp, sq := cross(a.d, p), cross(a.d, q)
	if tp > tq {
		tp, tq, sp, sq = tq, tp, sq, sp
	}
	s = beside{a: a, low: math.Max(tp, 0), high: math.Min(tq, a.long)}
	if s.high-s.low <= onLineMM {
		return s, false
	}
	s.slope = (sq - sp) / (tq - tp)
	s.at = sp + float64(s.slope*(s.low-tp))
	return s, true
}

// apart gives the least distance of two near-parallel joints square to the first,
// of what lies beside each other with too few plies between, and the place
// midway.
func (b between) apart(first, second run) (mm float64, at orb.Point, ok bool) {
	if b.whole >= b.need {
		return 0, at, false
	}
	s, ok := besideOf(first, second)
	if !ok {
		return 0, at, false
	}
	mm = math.Inf(1)
	cuts := b.cuts(s, second)
	for i := 0; i+1 < len(cuts); i++ {
		low, high := cuts[i], cuts[i+1]
		middle := float64((low + high) / 2)
		if high-low <= onLineMM || !b.counted(s.on(middle), s.other(middle)) {
			continue
		}
		t, off := nearestApproach(low, high, s.off(low), s.off(high))
		if math.Abs(off) < mm {
			mm, at = math.Abs(off), sheet.Beside(s.a.from, s.a.d, t, off/2)
		}
	}
	return mm, at, !math.IsInf(mm, 1)
}

// cuts lists where along the shared stretch either joint enters or leaves a patch
// between, and both ends of it.
func (b between) cuts(s beside, second run) []float64 {
	out := []float64{s.low, s.high}
	if b.whole+len(b.patches) < b.need {
		return out // too few to matter anywhere
	}
	add := func(t float64) {
		if t > s.low && t < s.high {
			out = append(out, t)
		}
	}
	for _, r := range b.patches {
		for _, t := range entries(r, s.a) {
			add(t)
		}
		for _, t := range entries(r, second) {
			add(dot(s.a.d, minus(sheet.Along(second.from, second.d, t), s.a.from)))
		}
	}
	sort.Float64s(out)
	return out
}

// entries lists where along its line a joint crosses an outline.
func entries(r geometry.Region, j run) []float64 {
	var out []float64
	for _, ring := range r.Rings() {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			a, b := cross(j.d, minus(p, j.from)), cross(j.d, minus(q, j.from))
			if (a >= 0) != (b >= 0) {
				out = append(out, dot(j.d, minus(sheet.Between(p, q, a/(a-b)), j.from)))
			}
		}
	}
	return out
}

// nearestApproach gives where a straight line that lies sl off at low and sh
// off at high comes nearest to the axis: in the middle when it is parallel.
func nearestApproach(low, high, sl, sh float64) (t, s float64) {
	switch {
	case sl == sh:
		return (low + high) / 2, sl
	case (sl < 0) != (sh < 0):
		return low + float64((high-low)*sl/(sl-sh)), 0
	case math.Abs(sl) < math.Abs(sh):
		return low, sl
	}
	return high, sh
}
