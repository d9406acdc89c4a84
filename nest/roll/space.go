package roll

import (
	"math"
	"slices"
)

// space is a stretch of a lane that narrow pieces may be laid into.
type space struct {
	from, to int64  // u that a piece may take
	begin    int64  // from, before anything was laid
	room     int64  // longest clear length at any height
	walls    []laid // chain pieces beside it
	held     []laid // narrow pieces laid in it
	near     []int  // other spaces of the lane that reach into it
}

// reach is how many of the last pieces of a space are kept as obstacles; the
// space begins behind the pieces before them.
const reach = 32

// beside is how many of the last pieces of a space a piece is tried against.
const beside = 14

// open prepares the gaps of the chain and the tail for narrow pieces. Gaps
// shorter than least hold nothing.
func (l *lane) open(least int64) {
	l.gaps = l.gaps[:0]
	l.starts = slices.Grow(l.starts[:0], len(l.chain))[:len(l.chain)]
	for k, least := len(l.chain)-1, int64(math.MaxInt64); k >= 0; k-- {
		least = min(least, l.chain[k].u)
		l.starts[k] = least
	}
	for k := 0; k <= len(l.chain); k++ {
		if s := l.spaceAt(k); s.room >= least {
			if n := len(l.gaps); n < cap(l.gaps) { // take over the room of an earlier space
				old := &l.gaps[:n+1][n]
				s.held, s.near = old.held[:0], old.near[:0]
			}
			l.gaps = append(l.gaps, s)
		}
	}
	for a := range l.gaps {
		for b := a + 1; b < len(l.gaps); b++ {
			if l.gaps[b].from < l.gaps[a].to {
				l.gaps[a].near, l.gaps[b].near = append(l.gaps[a].near, b), append(l.gaps[b].near, a)
			}
		}
	}
}

// spaceAt describes the space before chain piece k; k = len(chain) is the tail.
func (l *lane) spaceAt(k int) space {
	s := space{to: l.capacity, room: math.MaxInt64}
	if k > 0 {
		s.from, s.begin = l.chain[k-1].u, l.chain[k-1].u
	}
	if k < len(l.chain) {
		next := &l.chain[k]
		s.to = next.u + next.form.length
		if k == 0 {
			s.room = l.room(nil, next)
		} else {
			s.room = l.room(&l.chain[k-1], next)
		}
	}
	s.walls = l.beside(k, s.from, s.to)
	return s
}

// beside gives the chain pieces that reach into a stretch about the gap before
// piece k.
func (l *lane) beside(k int, from, to int64) []laid {
	lo, hi := k, k
	for lo > 0 && l.ends[lo-1] > from {
		lo--
	}
	for hi < len(l.chain) && l.starts[hi] < to {
		hi++
	}
	return l.chain[lo:hi]
}

// room gives the longest clear length between two chain pieces, or between the
// free end and the first piece, or in an opening of either.
func (l *lane) room(a, b *laid) int64 {
	if a == nil {
		most := b.form.inner
		for _, c := range b.form.outer.cells {
			most = max(most, b.u+int64(max(c.l0, c.l1))+1)
		}
		return most
	}
	return max(a.form.inner, b.form.inner, l.memory.widestBetween(a.form, b.form)+b.u-a.u)
}

// widest gives the longest stretch from the outermost right edge of a to the
// outermost left edge of b over all heights, rounded up.
func widest(a, b *column) int64 {
	most := math.Inf(-1)
	for i, j := 0, 0; i < len(a.cells) && j < len(b.cells); {
		p, q := &a.cells[i], &b.cells[j]
		if v0, v1 := max(p.v0, q.v0), min(p.v1, q.v1); v0 < v1 {
			for _, v := range [2]int64{v0, v1} {
				most = max(most, at(q.v0, q.v1, q.l0, q.l1, v)-at(p.v0, p.v1, p.r0, p.r1, v))
			}
		}
		if p.v1 < q.v1 {
			i++
		} else {
			j++
		}
	}
	return int64(math.Ceil(most))
}

// heights lists where a form's edges bend.
func heights(f *form) []int64 {
	var out []int64
	for k := range f.columns {
		for _, c := range f.columns[k].cells {
			out = append(out, c.v0, c.v1)
		}
	}
	return out
}

// spot is a place for a narrow piece.
type spot struct {
	gap  int
	way  int8
	u, v int64
}

// find gives the first space of the lane that takes the piece in one of the
// ways, and the place in it that ends earliest.
func (l *lane) find(s *Shape, ways Ways) (spot, bool) {
	for g := range l.gaps {
		sp := &l.gaps[g]
		best := spot{gap: -1}
		for way := int8(0); way < 2; way++ {
			if !ways.has(way) || way == 1 && best.gap >= 0 && s.ways[1].upright || int64(s.ways[way].longest) > sp.room {
				continue
			}
			u, v, ok := l.lowest(sp, &s.ways[way])
			if ok && (best.gap < 0 || u < best.u) {
				best = spot{g, way, u, v}
			}
		}
		if best.gap >= 0 {
			return best, true
		}
	}
	return spot{}, false
}

// put lays a narrow piece at a spot.
func (l *lane) put(piece int32, s *Shape, at spot) {
	sp := &l.gaps[at.gap]
	f := &s.ways[at.way]
	sp.held = append(sp.held, laid{piece, at.way, f, at.u, at.v})
	if n := len(sp.held); n > reach {
		old := sp.held[n-1-reach]
		sp.from = max(sp.from, old.u+old.form.length)
	}
	l.end = max(l.end, at.u+f.length)
}

// lowest gives the place in a space at which a piece starts earliest: at
// either edge of the roll, or against one of the pieces laid last.
func (l *lane) lowest(s *space, f *form) (u, v int64, ok bool) {
	u = math.MaxInt64
	var seen [4 * beside]int64
	tried := seen[:0]
	try := func(at int64) {
		if at < 0 || at+f.height > l.width || slices.Contains(tried, at) {
			return
		}
		tried = append(tried, at)
		if got, fits := l.clearAt(s, f, at, u); fits && (got < u || got == u && at < v) {
			u, v, ok = got, at, true
		}
	}
	try(0)
	try(l.width - f.height)
	for i := len(s.held) - 1; i >= max(0, len(s.held)-beside); i-- {
		tryBeside(&s.held[i], f, try)
	}
	for i := range s.walls {
		if len(s.walls[i].form.columns) > 1 {
			tryBeside(&s.walls[i], f, try)
		}
	}
	return u, v, ok
}

// tryBeside tries the heights above and below each column of a laid piece.
func tryBeside(h *laid, f *form, try func(int64)) {
	for k := range h.form.columns {
		try(h.v + h.form.columns[k].v1)
		try(h.v + h.form.columns[k].v0 - f.height)
	}
}
