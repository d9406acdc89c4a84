package roll

// lane is one stretch of roll being filled: pieces of full width in a chain
// from u = 0, narrow pieces in the gaps of the chain and behind it. Lengths
// are µm and carry half a cutting gap at every side of a piece.
type lane struct {
	width    int64
	capacity int64 // greatest u of any piece
	chain    []laid
	ends     []int64 // greatest u of the chain up to each piece
	starts   []int64 // least u of the chain from each piece on
	gaps     []space // one for each joint of the chain that may hold something, then the tail
	end      int64   // greatest u in use
	memory   *Memory
}

// laid is a piece with its place: the lower left corner of its box.
type laid struct {
	piece int32
	way   int8
	form  *form
	u, v  int64
}

func newLane(width, capacity int64, m *Memory) *lane {
	return &lane{width: width, capacity: capacity, memory: m}
}

// append lays a full-width piece behind the chain; false when it would cross
// the end.
func (l *lane) append(piece int32, way int8, f *form) bool {
	if n := len(l.chain); n > 0 {
		a := &l.chain[n-1]
		if least := a.u + int64(behindAtLeast(a.form, f)); least-1+f.length > l.capacity {
			return false
		}
	}
	u := l.follow(f)
	if u+f.length > l.capacity {
		return false
	}
	l.chain = append(l.chain, laid{piece, way, f, u, 0})
	l.end = max(l.end, u+f.length)
	l.ends = append(l.ends, l.end)
	return true
}

// follow gives the least u at which a full-width piece is clear of the chain.
// Going back along the chain it may stop where nothing reaches u any more.
func (l *lane) follow(f *form) int64 {
	u := int64(0)
	for k := len(l.chain) - 1; k >= 0 && l.ends[k] > u; k-- {
		a := &l.chain[k]
		u = max(u, a.u+l.memory.behind(a.form, f))
	}
	return u
}

// clearAt gives the least u at height v in a space that is clear of walls and
// held pieces; false when there is none up to limit.
func (l *lane) clearAt(s *space, f *form, v, limit int64) (int64, bool) {
	u := s.from
	limit = min(limit, s.to-f.length)
	for moved := true; moved; {
		moved = l.pass(s.walls, f, &u, v, limit)
		moved = l.pass(s.held[max(0, len(s.held)-reach):], f, &u, v, limit) || moved
		for _, g := range s.near {
			moved = l.pass(l.gaps[g].held, f, &u, v, limit) || moved
		}
		if u > limit {
			return 0, false
		}
	}
	return u, true
}

// pass moves u past the pieces that a form would overlap at (u, v); beyond the
// limit it gives up.
func (l *lane) pass(pieces []laid, f *form, u *int64, v, limit int64) bool {
	moved := false
	l.memory.work += int64(1 + len(pieces)/2)
	for i := range pieces {
		if *u > limit {
			break
		}
		if past, meets := pieces[i].blocks(l.memory, f, *u, v); meets {
			*u, moved = past, true
		}
	}
	return moved
}

// blocks says whether a laid piece overlaps a form at (u, v), and the next
// place along the roll where the columns that overlap are past each other.
func (a *laid) blocks(m *Memory, f *form, u, v int64) (past int64, meets bool) {
	if u >= a.u+a.form.length || u+f.length <= a.u || v >= a.v+a.form.height || v+f.height <= a.v {
		return 0, false
	}
	if a.form.upright && f.upright {
		return a.u + a.form.length, true
	}
	for i := range a.form.columns {
		for k := range f.columns {
			p, q := &a.form.columns[i], &f.columns[k]
			if u+q.l >= a.u+p.r || u+q.r <= a.u+p.l || v+q.v0 >= a.v+p.v1 || v+q.v1 <= a.v+p.v0 {
				continue
			}
			if s, ok := m.forbidden(p, q, v-a.v); ok && a.u+s.from < u && u < a.u+s.to {
				past, meets = max(past, a.u+s.to), true
			}
		}
	}
	return past, meets
}
