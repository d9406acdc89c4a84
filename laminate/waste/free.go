package waste

import (
	"cmp"
	"slices"

	"github.com/paulmach/orb"
)

// sweep goes up over the borders of a stretch and keeps those at its height in
// a list from the first cut to the last.
type sweep struct {
	first, last *border
	out         []free
}

// free gives all free cloth of a stretch, from its lower edge to its upper.
func (s *stretch) free() []free {
	w := &sweep{
		first: &border{lo: orb.Point{s.from, 0}, hi: orb.Point{s.from, s.width}, piece: -1},
		last:  &border{lo: orb.Point{s.to, 0}, hi: orb.Point{s.to, s.width}, piece: -1, opens: true},
	}
	w.first.next, w.last.prev = w.last, w.first
	rising := s.bordersOf()
	ending := slices.Clone(rising)
	slices.SortStableFunc(ending, func(a, b *border) int { return cmp.Compare(a.hi[1], b.hi[1]) })
	for b, e := 0, 0; e < len(ending); {
		v := ending[e].hi[1]
		if b < len(rising) {
			v = min(v, rising[b].lo[1])
		}
		b0, e0 := b, e
		for b < len(rising) && rising[b].lo[1] == v {
			b++
		}
		for e < len(ending) && ending[e].hi[1] == v {
			e++
		}
		w.level(v, ending[e0:e], rising[b0:b])
	}
	w.close(w.first, s.width)
	return w.out
}

// joint is where a border of a piece ends and the next may begin.
type joint struct {
	at    orb.Point
	piece int
	opens bool
}

// level ends some borders at a height and begins others. One that runs on from
// where another ends takes its place; the rest are sorted into the list.
func (w *sweep) level(v float64, ending, rising []*border) {
	runsOn := make(map[joint]*border, len(rising))
	for _, r := range rising {
		runsOn[joint{r.lo, r.piece, r.opens}] = r
	}
	for _, e := range ending {
		key := joint{e.hi, e.piece, e.opens}
		if r := runsOn[key]; r != nil {
			delete(runsOn, key)
			w.replace(e, r, v)
		} else {
			w.remove(e, v)
		}
	}
	fresh := make([]*border, 0, len(rising))
	for _, r := range rising {
		if r.prev != nil && w.misplaced(r, v) {
			w.remove(r, v)
		}
		if r.prev == nil {
			fresh = append(fresh, r)
		}
	}
	w.insert(v, fresh)
	if len(fresh) > 0 || len(ending) > len(rising) {
		w.deepen(v)
	}
}

func (w *sweep) replace(e, r *border, v float64) {
	w.close(e.prev, v)
	w.close(e, v)
	r.prev, r.next, r.since, r.deep = e.prev, e.next, v, e.deep
	r.prev.next, r.next.prev = r, r
}

func (w *sweep) remove(e *border, v float64) {
	w.close(e.prev, v)
	w.close(e, v)
	e.prev.next, e.next.prev = e.next, e.prev
	e.prev, e.next = nil, nil
}

// misplaced says whether a border that took another's place now stands on the
// wrong side of a neighbour: the other ran along it.
func (w *sweep) misplaced(r *border, v float64) bool {
	return r.prev != w.first && compare(r.prev, r, v) > 0 || r.next != w.last && compare(r, r.next, v) > 0
}

// insert sorts new borders into the list.
func (w *sweep) insert(v float64, fresh []*border) {
	slices.SortStableFunc(fresh, func(a, b *border) int { return compare(a, b, v) })
	at := w.first.next
	for _, f := range fresh {
		for at != w.last && compare(at, f, v) <= 0 {
			at = at.next
		}
		w.close(at.prev, v)
		f.prev, f.next, f.since, f.deep = at.prev, at, v, at.prev.deep
		f.prev.next, f.next.prev = f, f
	}
}

// compare tells which border lies further along the roll over the height that
// both share from v up: what was rounded at one point, or one that they have in
// common, does not decide. Where one piece ends as another begins, it comes first.
func compare(a, b *border, v float64) int {
	top := min(a.hi[1], b.hi[1])
	apart := a.at(v) - b.at(v) + a.at(top) - b.at(top)
	if apart == 0 && a.opens != b.opens {
		if a.opens {
			return 1
		}
		return -1
	}
	return cmp.Compare(apart, 0)
}

// deepen counts anew how many pieces lie behind each border. Where pieces
// touch, their borders may stand in the list the wrong way round by what was
// rounded: there are then two, or less than none, over next to nothing.
func (w *sweep) deepen(v float64) {
	deep := 0
	for b := w.first; b != w.last; b = b.next {
		switch {
		case b == w.first:
		case b.opens:
			deep++
		default:
			deep--
		}
		if deep != b.deep {
			w.close(b, v)
			b.deep = deep
		}
	}
}

// close notes what has been free behind a border since it was last closed: once
// where there is no piece, less than none where there are two, so that all
// adds up.
func (w *sweep) close(b *border, v float64) {
	if n := b.next; v > b.since && b.deep != 1 && b != w.last {
		w.out = append(w.out, free{v0: b.since, v1: v, l0: b.at(b.since), l1: b.at(v), r0: n.at(b.since), r1: n.at(v),
			left: b.piece, right: n.piece, times: float64(1 - b.deep)})
	}
	b.since = v
}
