package check

import (
	"cmp"
	"math"
	"slices"

	"github.com/paulmach/orb"
)

// The sweep looks at a set of outlines level by level. Between two levels that
// carry vertices, edges run straight through:
//
//	y1 ----\------/---|-----   in each such slab the edges are put in order, and
//	        \ A  /  B |        what lies between two of them is inside some
//	y0 ------\--/-----|-----   outlines and outside others
//
// What lies between two edges is judged only where it is thicker than the
// tolerance, measured square to the edge it clings to: rounding leaves long
// slivers along the edges, thinner than that. Edges that change places within
// a slab by more than the tolerance cross.

// kind says what is wrong with a place; zero is nothing.
type kind int

const (
	sound kind = iota
	gap
	overlap
	outside
	crossing
)

// trouble is a stretch of one kind of wrong, between owners a and b.
type trouble struct {
	kind
	a, b  int32
	value float64   // thickness in mm
	at    orb.Point // within it
}

type troubleKey struct {
	kind
	a, b int32
}

// stretch is trouble that goes on from slab to slab.
type stretch struct {
	from, to, thick float64
	at              orb.Point
}

// work is the most edges that one sweep looks at, slab by slab: an outline that
// needs more is beyond any cloth.
const work = 100_000_000

// sweeper holds the state of one sweep.
type sweeper struct {
	edges  []*edge // by lower end
	judge  func(inside []int32) (kind, int32, int32)
	active []*edge
	inside []int32
	in     []bool
	open   map[troubleKey]stretch
	found  []trouble
	looked int // edges and outlines looked at
	limit  int // of looked
}

// sweep goes over the edges of outlines 0 … owners-1 and calls judge with the
// outlines that each place is inside. It gives all trouble thicker than the
// tolerance, and false when the outlines are too intricate to be judged.
func sweep(edges []edge, owners int, judge func(inside []int32) (kind, int32, int32)) ([]trouble, bool) {
	s := &sweeper{
		judge: judge, limit: work, in: make([]bool, owners),
		open: map[troubleKey]stretch{}, edges: make([]*edge, len(edges)),
	}
	for i := range edges {
		s.edges[i] = &edges[i]
	}
	whole := s.run(levelsOf(edges))
	return s.found, whole
}

// run goes from level to level, and says whether it came to the last.
func (s *sweeper) run(levels []float64) bool {
	slices.SortFunc(s.edges, func(a, b *edge) int { return cmp.Compare(a.lo[1], b.lo[1]) })
	next := 0
	for k := 0; k+1 < len(levels); k++ {
		next = s.enter(next, levels[k])
		s.slab(levels[k], levels[k+1])
		if s.looked += len(s.active); s.looked > s.limit {
			return false
		}
	}
	s.close(math.Inf(1))
	slices.SortFunc(s.found, inOrder)
	return true
}

// inOrder puts the thickest trouble first; it leaves no two in doubt.
func inOrder(a, b trouble) int {
	return cmp.Or(cmp.Compare(b.value, a.value), cmp.Compare(a.kind, b.kind), cmp.Compare(a.a, b.a), cmp.Compare(a.b, b.b),
		cmp.Compare(a.at[1], b.at[1]), cmp.Compare(a.at[0], b.at[0]))
}

func levelsOf(edges []edge) []float64 {
	ys := make([]float64, 0, 2*len(edges))
	for i := range edges {
		ys = append(ys, edges[i].lo[1], edges[i].hi[1])
	}
	slices.Sort(ys)
	return slices.Compact(ys)
}

// enter drops the edges that end at level y and takes up those that start.
func (s *sweeper) enter(next int, y float64) int {
	n := 0
	for _, e := range s.active {
		if e.hi[1] > y {
			s.active[n] = e
			n++
		}
	}
	s.active = s.active[:n]
	for next < len(s.edges) && s.edges[next].lo[1] <= y {
		s.active = append(s.active, s.edges[next])
		next++
	}
	return next
}

// slab judges what lies between two levels.
func (s *sweeper) slab(y0, y1 float64) {
	ym := y0 + float64((y1-y0)/2)
	for _, e := range s.active {
		e.bot, e.mid, e.top = e.at(y0), e.at(ym), e.at(y1)
	}
	s.order()
	s.inside = s.inside[:0]
	for _, e := range s.active {
		s.in[e.owner] = false
	}
	s.close(y0)
	if len(s.active) == 0 {
		return
	}
	bot, top := s.active[0], s.active[0] // furthest so far along each level
	for i, e := range s.active {
		s.crossed(bot, e, bot.bot-e.bot, y0, y1)
		s.crossed(top, e, top.top-e.top, y0, y1)
		if e.bot > bot.bot {
			bot = e
		}
		if e.top > top.top {
			top = e
		}
		s.toggle(e.owner)
		if i+1 < len(s.active) {
			s.between(e, s.active[i+1], y0, y1)
		}
	}
}

// order sorts the active edges by x. From slab to slab they are nearly sorted,
// so few of them move; when many do, they are sorted afresh.
func (s *sweeper) order() {
	a := s.active
	left := 64 + 8*len(a)
	for i := 1; i < len(a); i++ {
		for k := i; k > 0 && before(a[k], a[k-1]) < 0; k-- {
			a[k], a[k-1] = a[k-1], a[k]
			if left--; left == 0 {
				slices.SortFunc(a, before)
				return
			}
		}
	}
}

func before(a, b *edge) int {
	switch {
	case a.mid < b.mid:
		return -1
	case a.mid > b.mid:
		return 1
	}
	return cmp.Or(cmp.Compare(a.bot, b.bot), cmp.Compare(a.owner, b.owner))
}

func (s *sweeper) toggle(owner int32) {
	s.in[owner] = !s.in[owner]
	if s.in[owner] {
		s.inside = append(s.inside, owner)
		return
	}
	s.looked += len(s.inside)
	for i, o := range s.inside {
		if o == owner {
			s.inside = append(s.inside[:i], s.inside[i+1:]...)
			return
		}
	}
}

// crossed records two edges that changed places by more than the tolerance.
func (s *sweeper) crossed(a, b *edge, by, y0, y1 float64) {
	if thick := by * math.Min(a.square, b.square); thick > tolerance {
		s.record(crossing, a.owner, b.owner, thick, orb.Point{b.mid, y0 + float64((y1-y0)/2)}, y0, y1)
	}
}

// between judges what lies between two neighbouring edges.
func (s *sweeper) between(l, r *edge, y0, y1 float64) {
	wide := math.Max(r.mid-l.mid, math.Max(r.bot-l.bot, r.top-l.top))
	thick := wide * math.Min(l.square, r.square)
	if thick <= tolerance {
		return
	}
	s.looked += len(s.inside)
	if k, a, b := s.judge(s.inside); k != sound {
		s.record(k, a, b, thick, orb.Point{(l.mid + r.mid) / 2, y0 + float64((y1-y0)/2)}, y0, y1)
	}
}

func (s *sweeper) record(k kind, a, b int32, thick float64, at orb.Point, y0, y1 float64) {
	if a > b {
		a, b = b, a
	}
	key := troubleKey{k, a, b}
	st, ok := s.open[key]
	if !ok {
		st = stretch{from: y0}
	}
	if thick > st.thick {
		st.thick, st.at = thick, at
	}
	st.to = y1
	s.open[key] = st
}

// close ends every stretch that did not reach level y. A gap is as thick as
// the lesser of its extents along and across the levels.
func (s *sweeper) close(y float64) {
	for key, st := range s.open {
		if st.to >= y {
			continue
		}
		delete(s.open, key)
		v := st.thick
		if key.kind != crossing {
			v = math.Min(v, st.to-st.from)
		}
		if v > tolerance {
			s.found = append(s.found, trouble{key.kind, key.a, key.b, v, st.at})
		}
	}
}
