package roll

import "math"

// Memory keeps what was worked out about pairs of columns. Searches lay the
// same shapes again and again at the same heights; a Memory that is handed from
// task to task spares them the work. It belongs to one goroutine, as do the
// shapes that are laid with it, and changes no result. The zero value is ready.
type Memory struct {
	columns  uint32 // numbered so far
	numbered uint32 // forms
	keys     []pairKey
	values   []stretch
	used     int
	pairs    []pair
	paired   int
	room     filler // lanes to weigh recipes on
	work     int64
}

// What is done on a Memory is counted in units of about one cell held against
// another. The other weights are shares of processor time, measured once.
const (
	workShape = 200 // to read a piece
	workCell  = 80  // and each of its cells
	workLink  = 11  // to weigh a place in a chain
	workMiss  = 10  // to keep something new
)

// Work is how much has been done with the memory, in units of about one cell held
// against another: it grows with the time that takes, and is the same on every run.
func (m *Memory) Work() int64 { return m.work }

// pairKey is two columns by number and how much higher the second one's form
// lies. Numbers begin at 1, so that no key is zero.
type pairKey struct {
	a, b uint32
	dv   int64
}

// formKey is two full-width forms that follow each other.
type formKey struct{ a, b uint32 }

// stretch is an open stretch of u; empty when to is not above from.
type stretch struct{ from, to int64 }

// A table of pairs begins with fewestKept places and doubles when half full; at
// mostKept it is emptied instead.
const (
	fewestKept = 1 << 11
	mostKept   = 1 << 16
)

// number makes the shapes of a task known to its memory.
func (t *Task) number() {
	for i := range t.Pieces {
		if s := t.Pieces[i].Shape; s.ways[0].columns[0].number == 0 {
			t.Memory.number(s)
		}
	}
}

// number gives the forms and columns of a shape numbers of their own, once.
func (m *Memory) number(s *Shape) {
	for w := range s.ways {
		m.numbered++
		s.ways[w].number = m.numbered
		for k := range s.ways[w].columns {
			if c := &s.ways[w].columns[k]; c.number == 0 {
				m.columns++
				c.number = m.columns
			}
		}
	}
}

// forbidden is the function of that name, remembered where it costs something.
func (m *Memory) forbidden(a, b *column, dv int64) (stretch, bool) {
	const cheap = 10 // cells: fewer are worked out faster than looked up
	cells := int64(len(a.cells) + len(b.cells))
	m.work++
	if cells <= cheap {
		m.work += cells / 3
		lo, hi, ok := forbidden(a, b, dv)
		return stretch{lo, hi}, ok
	}
	if 2*m.used >= len(m.keys) {
		m.enlarge()
	}
	key := pairKey{a.number, b.number, dv}
	at := m.place(key)
	if m.keys[at] != key {
		m.work += cells + workMiss
		s := stretch{}
		if lo, hi, ok := forbidden(a, b, dv); ok {
			s = stretch{lo, hi}
		}
		m.keys[at], m.values[at] = key, s
		m.used++
	}
	s := m.values[at]
	return s, s.to > s.from
}

// place gives where a key lies in the table, or the empty place where it may
// be put (open addressing).
func (m *Memory) place(k pairKey) int {
	h := uint64(k.a)*0x9e3779b97f4a7c15 ^ uint64(k.b)*0xc2b2ae3d27d4eb4f ^ uint64(k.dv)*0x165667b19e3779f9
	h ^= h >> 29
	h *= 0xbf58476d1ce4e5b9
	mask := len(m.keys) - 1
	at := int(h>>33) & mask
	for m.keys[at] != k && m.keys[at] != (pairKey{}) {
		at = (at + 1) & mask
	}
	return at
}

func (m *Memory) enlarge() {
	m.used = 0
	if len(m.keys) == mostKept {
		clear(m.keys)
		return
	}
	keys, values := m.keys, m.values
	size := max(fewestKept, 2*len(keys))
	m.keys, m.values = make([]pairKey, size), make([]stretch, size)
	for i, k := range keys {
		if k != (pairKey{}) {
			at := m.place(k)
			m.keys[at], m.values[at] = k, values[i]
			m.used++
		}
	}
}

// pair is what is known of two full-width forms that follow each other.
type pair struct {
	key    formKey
	widest int64 // longest stretch from a to b when both start at the same u
	behind int64 // least u of b, relative to a, that is clear of a
}

// pair gives what is known of two forms, worked out when asked for first.
func (m *Memory) pair(a, b *form) *pair {
	if 2*m.paired >= len(m.pairs) {
		m.morePairs()
	}
	key := formKey{a.number, b.number}
	p := m.pairAt(key)
	if p.key != key {
		*p = pair{key, widest(&a.outer, &b.outer), m.clearOf(a, b)}
		m.paired++
	}
	return p
}

// pairAt gives the place of a key in the table, or the empty one for it.
func (m *Memory) pairAt(k formKey) *pair {
	h := uint64(k.a)*0x9e3779b97f4a7c15 ^ uint64(k.b)*0xc2b2ae3d27d4eb4f
	h ^= h >> 29
	h *= 0xbf58476d1ce4e5b9
	mask := len(m.pairs) - 1
	at := int(h>>33) & mask
	for m.pairs[at].key != k && m.pairs[at].key != (formKey{}) {
		at = (at + 1) & mask
	}
	return &m.pairs[at]
}

func (m *Memory) morePairs() {
	m.paired = 0
	if len(m.pairs) == mostKept {
		clear(m.pairs)
		return
	}
	old := m.pairs
	m.pairs = make([]pair, max(fewestKept, 2*len(old)))
	for i := range old {
		if old[i].key != (formKey{}) {
			*m.pairAt(old[i].key) = old[i]
			m.paired++
		}
	}
}

// widestBetween gives the longest stretch, over all heights, from the right
// edge of a to the left edge of b when both start at the same u, in µm; it may
// be negative.
func (m *Memory) widestBetween(a, b *form) int64 {
	if a.upright && b.upright {
		return -a.length
	}
	return m.pair(a, b).widest
}

// behind gives the least position along the roll, relative to a, from which b
// is clear of all of a, both full-width forms.
func (m *Memory) behind(a, b *form) int64 {
	if a.upright && b.upright {
		return a.length
	}
	return m.pair(a, b).behind
}

// clearOf works out behind.
func (m *Memory) clearOf(a, b *form) int64 {
	u := int64(math.MinInt64 / 4)
	for i := range a.columns {
		for k := range b.columns {
			if s, meet := m.forbidden(&a.columns[i], &b.columns[k], 0); meet {
				u = max(u, s.to)
			}
		}
	}
	return u
}
