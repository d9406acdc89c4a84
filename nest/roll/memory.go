package roll

// Memory keeps what was worked out about pairs of columns and forms. Searches
// lay the same shapes again and again at the same heights; a Memory that is
// handed from task to task spares them the work. It belongs to one goroutine
// and does not change any result. The zero value is ready.
type Memory struct {
	pairs map[pairKey]stretch
	forms map[formKey]int64
}

// pairKey is two columns and how much higher the second one's form lies.
type pairKey struct {
	a, b *column
	dv   int64
}

// formKey is two full-width forms that follow each other.
type formKey struct{ a, b *form }

// stretch is an open stretch of u; empty when to is not above from.
type stretch struct{ from, to int64 }

// mostKept bounds a Memory; it is emptied when full.
const mostKept = 400_000

// forbidden is the function of that name, remembered where it costs something.
func (m *Memory) forbidden(a, b *column, dv int64) (stretch, bool) {
	const cheap = 6 // cells: fewer are worked out faster than looked up
	if len(a.cells)+len(b.cells) <= cheap {
		lo, hi, ok := forbidden(a, b, dv)
		return stretch{lo, hi}, ok
	}
	key := pairKey{a, b, dv}
	s, known := m.pairs[key]
	if !known {
		if lo, hi, ok := forbidden(a, b, dv); ok {
			s = stretch{lo, hi}
		}
		if m.pairs == nil || len(m.pairs) >= mostKept {
			m.pairs = make(map[pairKey]stretch)
		}
		m.pairs[key] = s
	}
	return s, s.to > s.from
}

// widestBetween gives the longest stretch, over all heights, from the right
// edge of a to the left edge of b when both start at the same u, in µm; it may
// be negative.
func (m *Memory) widestBetween(a, b *form) int64 {
	key := formKey{a, b}
	w, known := m.forms[key]
	if !known {
		w = widest(a, b)
		if m.forms == nil || len(m.forms) >= mostKept {
			m.forms = make(map[formKey]int64)
		}
		m.forms[key] = w
	}
	return w
}

// behind gives the least position along the roll, relative to a, from which b
// is clear of all of a, both at the same height; ok is false when they share
// no height.
func (m *Memory) behind(a, b *form) (u int64, ok bool) {
	if a.upright && b.upright {
		return a.length, true
	}
	for i := range a.columns {
		for k := range b.columns {
			if s, meet := m.forbidden(&a.columns[i], &b.columns[k], 0); meet && (!ok || s.to > u) {
				u, ok = s.to, true
			}
		}
	}
	return u, ok
}
