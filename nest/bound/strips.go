package bound

import "slices"

// mostTight bounds the plies that exclude each other's joints from the whole
// width, and strides the steps of the proof.
const (
	mostTight = 6
	strides   = 400000
)

// stripsBound proves that plies of one rectangle cannot fill whole strips. Where
// as many plies must be kept apart as the width has room for, the phase of one
// settles those of the others but for their order: a, a+d, a+2d and so on, with
// the stagger d. So one number, a whole number of µm below d, is left to try; by
// ranges, because the edge strips' widths change evenly with it. Strips of one
// length lie in rows: each contains one of the places that are whole multiples of
// the length, so that the strips over each place are a row that fits side by
// side.
func stripsBound(f *fabric, at int64) Bound {
	best := f.area()
	best.Kind = Strips
	p, ok := f.newTight()
	if !ok {
		return best
	}
	rows := (p.across*int64(len(f.Plies)) + f.Width - 1) / f.Width
	for more := (rows + 1) * p.long; at <= 0 || more <= at; more += p.long {
		p.slack = rows*f.Width - p.across*int64(len(f.Plies))
		if !p.impossible() {
			break
		}
		rows++
		best.Length = more
		best.Waste = float64(float64(more)*float64(f.Width)) - best.Area
	}
	return best
}

// tight is plies of one rectangle whose phases are settled but for one number.
type tight struct {
	long, across   int64
	width, stagger int64
	slots          []int // of each ply: its phase is a + slot × stagger, in some order
	count          []int // plies of each slot
	slack          int64 // width that rows may leave free together
	left           int   // steps
}

// newTight says whether the plies of a task are such plies.
func (f *fabric) newTight() (*tight, bool) {
	s := f.shapes[0]
	if f.Phases != nil || len(f.shapes) != 1 || s.outline != f.Plies[0].Base.Blank || !oblong(s.outline.Rings) || len(f.Plies) < 2 || len(f.Plies[1].Near) == 0 {
		return nil, false
	}
	p := &tight{long: s.outline.MaxX - s.outline.MinX, across: s.outline.Across(), width: f.Width, stagger: f.Plies[1].Near[0].Stagger, left: strides}
	p.slots = make([]int, len(f.Plies))
	n := p.width / p.stagger
	if p.width%p.stagger != 0 || n < 2 || n > mostTight || !oblong(s.net.Rings) || s.net.Across() < p.width+p.stagger || s.net.MaxX-s.net.MinX <= beside {
		return nil, false
	}
	p.count = make([]int, n)
	for i := range f.Plies {
		if !f.settle(p, i) {
			return nil, false
		}
		p.count[p.slots[i]]++
	}
	return p, true
}

// settle finds the only slot that is left for a ply. The first plies take one
// after another. Ply i is settled by plies near it, and near each other, that
// hold all slots but one.
func (f *fabric) settle(p *tight, i int) bool {
	taken := make([]bool, len(p.count))
	var near []int
	for _, n := range f.Plies[i].Near {
		if n.Stagger != p.stagger {
			return false
		}
		if s := p.slots[n.Ply]; !taken[s] {
			taken[s] = true
			near = append(near, n.Ply)
		}
	}
	for _, a := range near { // kept apart from each other too
		for _, b := range near {
			if b < a && !slices.ContainsFunc(f.Plies[a].Near, func(n Near) bool { return n.Ply == b }) {
				return false
			}
		}
	}
	if len(near) != min(i, len(p.count)-1) {
		return false
	}
	p.slots[i] = slices.Index(taken, false)
	return true
}

// impossible says whether the plies cannot be laid in rows with the slack,
// whatever the phases.
func (p *tight) impossible() bool {
	for _, count := range orders(p.count) {
		for _, c := range cellsOf(p.breaks(), p.stagger) {
			if !p.fails(count, c) {
				return false
			}
		}
	}
	return true
}

// breaks are the numbers at which an edge strip appears or goes.
func (p *tight) breaks() []int64 {
	var out []int64
	for k := range int64(len(p.count)) {
		out = append(out, -k*p.stagger, p.across-k*p.stagger)
	}
	return out
}

// edgeStrip is the width of an edge strip over a range of the number, at its
// ends, and how many there are.
type edgeStrip struct {
	at  [2]int64
	not int // still to be laid
}

// fails says whether no number of a range lets the plies be laid.
func (p *tight) fails(count []int, c cell) bool {
	strips := p.edgeStrips(count, c)
	for i := range strips {
		if !p.fills(strips, i) {
			return true
		}
	}
	if p.left < 0 {
		return false
	}
	if c.from == c.to {
		return !p.rows(strips, p.slack)
	}
	mid := c.from + (c.to-c.from)/2
	return p.fails(count, cell{c.from, mid}) && p.fails(count, cell{mid + 1, c.to})
}

// edgeStrips gives the strips narrower than the roll, widest first.
func (p *tight) edgeStrips(count []int, c cell) []edgeStrip {
	var out []edgeStrip
	for k, n := range count {
		var low, high edgeStrip
		low.not, high.not = n, n
		for e, a := range []int64{c.from, c.to} {
			phase := modulo(a+int64(k)*p.stagger, p.width)
			low.at[e], high.at[e] = phase, modulo(p.across-phase, p.width)
		}
		for _, s := range []edgeStrip{low, high} {
			if n > 0 && s.at != [2]int64{} {
				out = append(out, s)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b edgeStrip) int { return int(b.at[0] + b.at[1] - a.at[0] - a.at[1]) })
	return out
}

// fills says whether some row with strip i may be as full as the slack asks.
func (p *tight) fills(strips []edgeStrip, i int) bool {
	strips[i].not--
	ok := p.fill(strips, 0, strips[i].at)
	strips[i].not++
	return ok
}

// fill adds strips from k on to a row. Over the range a row's width changes
// evenly, so that its ends tell all that it can be.
func (p *tight) fill(strips []edgeStrip, k int, row [2]int64) bool {
	if p.left--; p.left < 0 {
		return true
	}
	if min(row[0], row[1]) > p.width {
		return false
	}
	if max(row[0], row[1]) >= p.width-p.slack {
		return true
	}
	for ; k < len(strips); k++ {
		for n := strips[k].not; n > 0; n-- {
			with := [2]int64{row[0] + int64(n)*strips[k].at[0], row[1] + int64(n)*strips[k].at[1]}
			if p.fill(strips, k+1, with) {
				return true
			}
		}
	}
	return false
}

// rows says whether strips of known width can be laid in rows that leave no more
// than so much free together.
func (p *tight) rows(strips []edgeStrip, slack int64) bool {
	first := slices.IndexFunc(strips, func(s edgeStrip) bool { return s.not > 0 })
	if first < 0 {
		return true
	}
	strips[first].not--
	ok := p.row(strips, first, strips[first].at[0], slack)
	strips[first].not++
	return ok
}

// row fills a row with strips from k on, then the others.
func (p *tight) row(strips []edgeStrip, k int, wide, slack int64) bool {
	if p.left--; p.left < 0 {
		return true
	}
	if free := p.width - wide; free <= slack && p.rows(strips, slack-free) {
		return true
	}
	for ; k < len(strips); k++ {
		if strips[k].not == 0 || wide+strips[k].at[0] > p.width {
			continue
		}
		strips[k].not--
		ok := p.row(strips, k, wide+strips[k].at[0], slack)
		strips[k].not++
		if ok {
			return true
		}
	}
	return false
}

// orders lists the different orders of some numbers.
func orders(list []int) [][]int {
	if len(list) <= 1 {
		return [][]int{slices.Clone(list)}
	}
	var out [][]int
	for i, n := range list {
		if slices.Contains(list[:i], n) {
			continue
		}
		for _, rest := range orders(slices.Delete(slices.Clone(list), i, i+1)) {
			out = append(out, append([]int{n}, rest...))
		}
	}
	return out
}
