package roll

import (
	"math"
)

const endless = math.MaxInt64 / 4

// filler lays pieces on lanes.
type filler struct {
	task   *Task
	lanes  []*lane
	source []source // roll of each lane
	least  int64    // shortest narrow piece
	spare  []*lane  // emptied, to be used again
	most   float64  // cost above which laying is given up, 0 for none
}

// source says from which copy of which stock a lane is.
type source struct{ roll, stock, copy int }

// grow opens the next lane; false when the stock is used up. Where the table
// is shorter than a roll, a roll is several lanes.
func (f *filler) grow() bool {
	n := len(f.lanes)
	count := 0
	rollNo := 0
	for s, st := range f.task.Stock {
		for c := range max(1, st.Copies) {
			caps := f.capacities(st, n-count+1)
			if n < count+len(caps) {
				f.lanes = append(f.lanes, f.empty(f.task.Width+f.task.Gap, caps[n-count]+f.task.Gap))
				f.source = append(f.source, source{rollNo, s, c})
				return true
			}
			count += len(caps)
			rollNo++
		}
	}
	return false
}

// empty gives an empty lane, in the room of an earlier one where there is one.
func (f *filler) empty(width, capacity int64) *lane {
	n := len(f.spare)
	if n == 0 {
		return newLane(width, capacity, f.task.Memory)
	}
	l := f.spare[n-1]
	f.spare = f.spare[:n-1]
	*l = lane{width: width, capacity: capacity, memory: f.task.Memory, chain: l.chain[:0], ends: l.ends[:0], starts: l.starts[:0], gaps: l.gaps[:0]}
	return l
}

// capacities lists the lanes of a roll, at most the number wanted where it is
// endless.
func (f *filler) capacities(st Stock, wanted int) []int64 {
	table := f.task.Table
	if table == 0 || st.Length > 0 && st.Length <= table {
		if st.Length == 0 {
			return []int64{endless}
		}
		return []int64{st.Length}
	}
	var out []int64
	for left := st.Length; len(out) < wanted && (st.Length == 0 || left > 0); left -= table {
		if st.Length == 0 || left > table {
			out = append(out, table-f.task.Gap) // the cut lies behind a gap
		} else {
			out = append(out, left)
		}
	}
	return out
}

// nextLane is a mark in a chain: the pieces behind it go to the next lane or
// later, so that room is left on this one; earlier only if there is no other.
var nextLane = link{piece: -1}

// chainUp lays full-width pieces in order, each on the first lane that takes
// it, and returns those that found none.
func (f *filler) chainUp(chain []link) []int {
	var left []int
	first := 0
	for _, l := range chain {
		if l == nextLane {
			first++
		} else if !f.chainOn(l, first) && (first == 0 || !f.chainOn(l, 0)) {
			left = append(left, int(l.piece))
		}
	}
	return left
}

// chainOn lays a full-width piece on the first lane from a given one on that
// takes it.
func (f *filler) chainOn(l link, from int) bool {
	form := &f.task.Pieces[l.piece].Shape.ways[l.way]
	for k := from; f.fits(form); k++ {
		for k >= len(f.lanes) {
			if !f.grow() {
				return false
			}
		}
		if f.lanes[k].append(l.piece, l.way, form) {
			return true
		}
	}
	return false
}

// fits says whether a form is no longer than the longest lane there could be.
func (f *filler) fits(p *form) bool {
	_, longest := f.task.Held()
	if f.task.Table > 0 {
		longest = min(longest, f.task.Table-f.task.Gap)
	}
	return p.length-f.task.Gap <= longest
}

// open prepares all lanes for narrow pieces.
func (f *filler) open() {
	for _, l := range f.lanes {
		l.open(f.least)
	}
}

// clear takes all narrow pieces out again.
func (f *filler) clear() {
	for _, l := range f.lanes {
		l.end = 0
		for i := max(0, len(l.chain)-4); i < len(l.chain); i++ {
			l.end = max(l.end, l.chain[i].u+l.chain[i].form.length)
		}
		for g := range l.gaps {
			sp := &l.gaps[g]
			sp.from, sp.held = sp.begin, sp.held[:0]
		}
	}
}

// tuck lays narrow pieces in order, each in the first space that takes it.
func (f *filler) tuck(order []int32) []int {
	var left []int
	for _, p := range order {
		if !f.tuckOne(p) {
			left = append(left, int(p))
		}
		if f.dear() {
			break
		}
	}
	return left
}

func (f *filler) tuckOne(p int32) bool {
	pc := &f.task.Pieces[p]
	if !f.fits(&pc.Shape.ways[0]) {
		return false
	}
	for k := 0; ; k++ {
		if k == len(f.lanes) {
			if !f.grow() {
				return false
			}
			f.lanes[k].open(f.least)
		}
		if at, ok := f.lanes[k].find(pc.Shape, pc.Ways); ok {
			f.lanes[k].put(p, pc.Shape, at)
			return true
		}
	}
}

// used sums the lengths of the lanes of each roll in use.
func (f *filler) used() []Used {
	var out []Used
	last := -1
	for k, l := range f.lanes {
		if l.end == 0 {
			continue
		}
		if f.source[k].roll != last {
			last = f.source[k].roll
			out = append(out, Used{Stock: f.source[k].stock, Copy: f.source[k].copy})
		} else {
			u := &out[len(out)-1]
			u.Length += f.task.Gap
			u.Cuts = append(u.Cuts, u.Length)
		}
		out[len(out)-1].Length += l.end - f.task.Gap
	}
	return out
}

// layout reads the places off the lanes: lanes of one roll follow each other.
func (f *filler) layout() *Layout {
	t := f.task
	out := &Layout{Places: make([]Place, len(t.Pieces)), Rolls: f.used()}
	out.Cost = t.cost(out.Rolls)
	rollAt, last, start := -1, -1, int64(0)
	for k, l := range f.lanes {
		if l.end == 0 {
			continue
		}
		out.lanes++
		if f.source[k].roll != last {
			last, start = f.source[k].roll, 0
			rollAt++
		}
		place := func(p laid) {
			out.Places[p.piece] = Place{Roll: rollAt, U: start + p.u, V: p.v, Way: p.way}
		}
		for _, p := range l.chain {
			place(p)
		}
		for g := range l.gaps {
			for _, p := range l.gaps[g].held {
				place(p)
			}
		}
		start += l.end
	}
	return out
}
