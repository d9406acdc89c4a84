package roll

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
)

// Lay finds a layout of the task. It returns a *Shortage when the stock does
// not hold the pieces. Same task, effort and seed give the same layout.
func Lay(t *Task, e Effort, seed uint64) (*Layout, error) {
	rng := rand.New(rand.NewPCG(seed, 0x5717))
	if t.Memory == nil {
		fresh := *t
		fresh.Memory = &Memory{}
		t = &fresh
	}
	t.number()
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
		if !t.ends() || best != nil && (best.lanes == 1 || t.stopped()) {
			break
		}
	}
	if len(t.Pieces) <= mostMixed && len(full) > 0 && e.Trials > 0 && !t.stopped() {
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
	l := f.layout()
	l.Recipe = &Recipe{order: order, mixed: true}
	return l, nil
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
	l := f.layout()
	l.Recipe = &Recipe{chain: chain, order: order}
	return l, nil
}

// search tries orders of the narrow pieces: two exchanged, or one moved. An
// order is kept when it is no worse; the score is the cost, then how far all
// lanes are filled.
func (f *filler) search(order []int32, e Effort, rng *rand.Rand) []int32 {
	if len(order) < 2 {
		return order
	}
	const fewest = 30 // fewer trials than this change nothing worth their time
	each := f.task.labour(order)
	if e.Trials < fewest*each {
		return order
	}
	best := f.score(order)
	try := slices.Clone(order)
	for spent := each; spent < e.Trials && !f.task.stopped(); spent += each {
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

// labour weighs how dear it is to lay pieces in an order, in plain pieces: one
// with openings costs by the square of its columns.
func (t *Task) labour(order []int32) int {
	sum := 0
	for _, p := range order {
		n := len(t.Pieces[p].Shape.ways[0].columns)
		sum += n * n
	}
	return sum
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

// stopped says whether the search is to end.
func (t *Task) stopped() bool { return t.Stop != nil && t.Stop() }
