package nest

import (
	"math"
	"slices"

	"stripwright/nest/search"
)

const (
	heat  = 0.0012 // of the first round of a climb, as a share of the cost
	cools = 0.4    // heat of a round to that of the round before

	fewestLays = 10  // less is not worth beginning
	pieceWork  = 125 // to lay a plain piece, in the units of a climb
)

// climb improves the best layouts by laying variations of them. It goes in
// rounds: the better half goes on to the next, for twice as long, unless nothing can
// be better; the first round may still find fewer pieces. The best two are then laid
// from the outlines themselves.
func (p *planner) climb(c choice, first []*placed) []*placed {
	n := min(len(first), p.polished(first[0].count))
	work, hot := p.firstRound(n), heat
	if work < fewestLays*pieceWork*int64(p.labour(c, first[0])) {
		return nil
	}
	doubt := p.doubt(c, first)
	tables := make([]*table, n)
	inParallel(p.workers, len(tables), func(k int) {
		m := newModel(p.job, p.cloths, p.bases, c)
		m.sketch, m.stop = true, p.stopped
		tables[k] = newTable(m, first[k])
	})
	for round := range p.budget.rounds {
		if round > 0 {
			tables = tables[:betterHalf(len(tables))]
		}
		inParallel(p.workers, len(tables), func(k int) {
			seed := uint64(p.seed)*1000 + uint64(100*round+k)
			t := tables[k]
			search.Climb(p.ctx, t.m.problem, slices.Clone(t.kept.phases), work, hot, doubt, seed, t)
			t.resume()
		})
		slices.SortStableFunc(tables, func(a, b *table) int { return a.kept.compare(&b.kept) })
		p.tell(tables[0].kept.cost())
		if tables[0].kept.cost() <= p.bound {
			break
		}
		work, hot = 2*work, hot*cools
	}
	return p.followAll(c, tables[:min(len(tables), 2)])
}

// betterHalf is how many of some tables go on to the next round.
func betterHalf(tables int) int { return max(min(2, tables), tables/2) }

// firstRound shares out the work over the choices of width, and then over the
// tables and rounds of one: it gives what each table may do in the first round.
func (p *planner) firstRound(tables int) int64 {
	parts, each := 0, 1
	for range p.budget.rounds {
		parts += tables * each
		tables, each = betterHalf(tables), 2*each
	}
	return p.budget.climb / (p.choices * int64(p.burden*max(1, parts)))
}

// followAll lays what lies on tables from the outlines themselves; what the
// stock does not hold is left out.
func (p *planner) followAll(c choice, tables []*table) []*placed {
	out := make([]*placed, len(tables))
	inParallel(p.workers, len(tables), func(k int) {
		m := newModel(p.job, p.cloths, p.bases, c)
		m.stop = p.stopped
		out[k] = m.follow(&tables[k].kept, p.budget.careful, uint64(p.seed))
	})
	return slices.DeleteFunc(out, func(a *placed) bool { return a == nil })
}

// labour weighs how dear it is to lay all pieces once, in plain pieces.
func (p *planner) labour(c choice, a *placed) int {
	m := newModel(p.job, p.cloths, p.bases, c)
	m.sketch = true
	sum, columns := 0, 0
	for g := range m.groups {
		t, _ := m.taskOf(g, a.phases)
		sum, columns = sum+t.Labour(), columns+t.Columns()
	}
	if p.burden > 1 { // ragged edges: each column is held against each
		sum = sum * columns / a.count * columns / a.count
	}
	return sum
}

// Bounds of what an estimate is held to be off by, as a share of it.
const (
	leastDoubt = 0.003
	mostDoubt  = 0.08
)

// doubt tells from some layouts how much the estimate may be off.
func (p *planner) doubt(c choice, first []*placed) float64 {
	m := newModel(p.job, p.cloths, p.bases, c)
	least, most := math.Inf(1), 0.0
	for _, a := range first {
		r := a.cost / m.problem.Estimate(a.phases)
		least, most = min(least, r), max(most, r)
	}
	return max(leastDoubt, min(most/least-1, mostDoubt))
}
