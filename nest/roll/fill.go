package roll

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
)

// Stock is a kind of roll: Copies equal rolls of Length µm, 0 for as long as
// needed. Rolls are used in the order given.
type Stock struct {
	Length int64
	Copies int
	Price  float64 // for a µm of roll
}

// Piece is what is to be laid: its shape and the ways it may lie.
type Piece struct {
	Shape *Shape
	Ways  Ways
}

// Measure says what is to be least.
type Measure int

// What a layout costs: the roll length used, its price, or the place of the
// last cut when the rolls are laid end to end in the order given.
const (
	Length Measure = iota
	Price
	LastCut
)

// Task is all pieces of one fabric and usable width, and the rolls for them.
// Lengths are µm.
type Task struct {
	Width   int64 // usable
	Gap     int64 // cutting gap between pieces
	Table   int64 // longest stretch between clear cross-cuts, 0 for any
	Stock   []Stock
	Measure Measure
	Pieces  []Piece
	Memory  *Memory // may be nil
}

// Place is where a piece lies: its roll (numbered over all copies), the lower
// left corner of its box without the gap, and the way it lies.
type Place struct {
	Roll int
	U, V int64
	Way  int8
}

// Layout is a full answer to a Task.
type Layout struct {
	Places []Place
	Rolls  []Used
	Cost   float64
	Order  int // which order of full-width pieces it came from, 1 first
	lanes  int // stretches of roll in use
}

// Used is a roll that is cut: which kind of stock, which copy (0 first), how far
// it is used, and the clear cross-cuts within that length.
type Used struct {
	Stock, Copy int
	Length      int64
	Cuts        []int64
}

// Shortage is the error of a Task whose stock does not hold its pieces.
type Shortage struct {
	Unplaced []int // pieces, by number
	Longest  int64 // length of the longest of them, µm
	Missing  int64 // roll length that they would take at least, µm
}

func (s *Shortage) Error() string {
	return fmt.Sprintf("%d pieces find no room on the rolls", len(s.Unplaced))
}

// Effort bounds the work: moves of the chain search and trials of the order of
// the narrow pieces, counted in pieces laid.
type Effort struct {
	ChainMoves int
	Trials     int
	Order      int // 0: the orders of full-width pieces that may pay; n: only the n-th
}

const endless = math.MaxInt64 / 4

// filler lays pieces on lanes.
type filler struct {
	task   *Task
	lanes  []*lane
	source []source // roll of each lane
	least  int64    // shortest narrow piece
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
				f.lanes = append(f.lanes, newLane(f.task.Width+f.task.Gap, caps[n-count]+f.task.Gap, f.task.Memory))
				f.source = append(f.source, source{rollNo, s, c})
				return true
			}
			count += len(caps)
			rollNo++
		}
	}
	return false
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

// chainUp lays full-width pieces in order, each on the first lane that takes
// it, and returns those that found none.
func (f *filler) chainUp(chain []link) []int {
	var left []int
	for _, l := range chain {
		form := &f.task.Pieces[l.piece].Shape.ways[l.way]
		placed := false
		for k := 0; !placed && f.fits(form); k++ {
			if k == len(f.lanes) && !f.grow() {
				break
			}
			placed = f.lanes[k].append(l.piece, l.way, form)
		}
		if !placed {
			left = append(left, int(l.piece))
		}
	}
	return left
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

// cost weighs the rolls used by the task's measure.
func (t *Task) cost(used []Used) float64 {
	sum := 0.0
	switch t.Measure {
	case Length:
		for _, u := range used {
			sum += float64(u.Length)
		}
	case Price:
		for _, u := range used {
			sum += float64(float64(u.Length) * t.Stock[u.Stock].Price)
		}
	case LastCut:
		if len(used) == 0 {
			return 0
		}
		last := used[len(used)-1]
		for s, st := range t.Stock[:last.Stock+1] {
			n := st.Copies
			if s == last.Stock {
				n = last.Copy
			}
			sum += float64(float64(st.Length) * float64(n))
		}
		sum += float64(last.Length)
	}
	return sum
}

// Lay finds a layout of the task. It returns a *Shortage when the stock does
// not hold the pieces. Same task, effort and seed give the same layout.
func Lay(t *Task, e Effort, seed uint64) (*Layout, error) {
	rng := rand.New(rand.NewPCG(seed, 0x5717))
	if t.Memory == nil {
		fresh := *t
		fresh.Memory = &Memory{}
		t = &fresh
	}
	full, narrow := t.split()
	var best *Layout
	var short *Shortage
	for k, order := range orders {
		if e.Order > 0 && e.Order != k+1 {
			continue
		}
		chain := order(t, full, e)
		l, err := layWith(t, chain, narrow, e, rng)
		if err != nil {
			if short == nil || len(err.Unplaced) < len(short.Unplaced) {
				short = err
			}
		} else if best == nil || l.Cost < best.Cost {
			best = l
			best.Order = k + 1
		}
		if !t.ends() || best != nil && best.lanes == 1 {
			break
		}
	}
	if len(t.Pieces) <= mostMixed && len(full) > 0 {
		chain := shortest(t, full, e)
		if l, err := layMixed(t, chain, narrow, e, rng); err == nil && (best == nil || l.Cost < best.Cost) {
			l.Order = 1
			best = l
		}
	}
	if best == nil {
		return nil, short
	}
	return best, nil
}

// mostMixed is the number of pieces up to which full-width pieces are also
// tried among the narrow ones, in any order.
const mostMixed = 20

// layMixed lays all pieces in one order, full-width ones like narrow ones, and
// searches over it: a gap between strips may then be kept for a narrow piece.
func layMixed(t *Task, chain []link, narrow []int32, e Effort, rng *rand.Rand) (*Layout, *Shortage) {
	all := make([]int32, 0, len(t.Pieces))
	for _, l := range chain {
		all = append(all, l.piece)
	}
	f := &filler{task: t}
	e.Trials *= 4 // so few pieces cost little
	order := f.search(append(all, t.long(narrow)...), e, rng)
	f.clear()
	if left := f.tuck(order); len(left) > 0 {
		return nil, t.shortage(left)
	}
	return f.layout(), nil
}

// split parts the pieces that take the whole width from the narrower ones.
func (t *Task) split() (full, narrow []int32) {
	for i := range t.Pieces {
		if t.Pieces[i].Shape.Height() >= t.Width+t.Gap {
			full = append(full, int32(i))
		} else {
			narrow = append(narrow, int32(i))
		}
	}
	return full, narrow
}

// long orders narrow pieces by falling length, then height.
func (t *Task) long(narrow []int32) []int32 {
	out := slices.Clone(narrow)
	slices.SortStableFunc(out, func(a, b int32) int {
		p, q := t.Pieces[a].Shape, t.Pieces[b].Shape
		return cmp.Or(cmp.Compare(q.Length(), p.Length()), cmp.Compare(q.Height(), p.Height()))
	})
	return out
}

// layWith lays a chain and searches over the order of the narrow pieces.
func layWith(t *Task, chain []link, narrow []int32, e Effort, rng *rand.Rand) (*Layout, *Shortage) {
	f := &filler{task: t, least: math.MaxInt64}
	for _, p := range narrow {
		f.least = min(f.least, int64(t.Pieces[p].Shape.ways[0].longest))
	}
	if left := f.chainUp(chain); len(left) > 0 {
		return nil, t.shortage(left)
	}
	f.open()
	order := f.search(t.long(narrow), e, rng)
	f.clear()
	if left := f.tuck(order); len(left) > 0 {
		return nil, t.shortage(left)
	}
	return f.layout(), nil
}

// search tries orders of the narrow pieces: two exchanged, or one moved. An
// order is kept when it is no worse; the score is the cost, then how far all
// lanes are filled.
func (f *filler) search(order []int32, e Effort, rng *rand.Rand) []int32 {
	if len(order) < 2 {
		return order
	}
	const fewest = 30 // fewer trials than this change nothing worth their time
	if e.Trials < fewest*len(order) {
		return order
	}
	best := f.score(order)
	try := slices.Clone(order)
	for spent := len(order); spent < e.Trials; spent += len(order) {
		copy(try, order)
		i, j := rng.IntN(len(try)), rng.IntN(len(try))
		if rng.IntN(2) == 0 {
			try[i], try[j] = try[j], try[i]
		} else {
			p := try[i]
			try = slices.Insert(slices.Delete(try, i, i+1), j, p)
		}
		if s := f.score(try); s.compare(best) <= 0 {
			best = s
			order, try = try, order
		}
	}
	return order
}

// score ranks an order: pieces left over, cost, sum of the ends of all pieces.
type score struct {
	left int
	cost float64
	ends float64
}

func (s score) compare(o score) int {
	return cmp.Or(cmp.Compare(s.left, o.left), cmp.Compare(s.cost, o.cost), cmp.Compare(s.ends, o.ends))
}

func (f *filler) score(order []int32) score {
	f.clear()
	left := f.tuck(order)
	s := score{left: len(left), cost: f.task.cost(f.used())}
	for _, l := range f.lanes {
		for g := range l.gaps {
			for i := range l.gaps[g].held {
				h := &l.gaps[g].held[i]
				s.ends += float64(float64(h.u+h.form.length) * float64(h.form.height))
			}
		}
	}
	return s
}

func (t *Task) shortage(left []int) *Shortage {
	s := &Shortage{Unplaced: left}
	area := 0.0
	for _, p := range left {
		s.Longest = max(s.Longest, t.Pieces[p].Shape.Length()-t.Gap)
		area += t.Pieces[p].Shape.Area
	}
	s.Missing = max(s.Longest, int64(math.Ceil(area/float64(t.Width))))
	return s
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
