package nest

import (
	"cmp"
	"math/rand/v2"

	"stripwright/nest/roll"
)

// table lays states for search.Climb: the pieces stay in the order of the state
// kept last, those of a changed ply take the places of those before them.
type table struct {
	m       *model
	kept    tabled
	next    tabled
	best    tabled
	changed []bool
}

// tabled is a state as it lies on a table.
type tabled struct {
	phases []int64
	groups []tabledGroup
}

// tabledGroup is how the pieces of a group lie.
type tabledGroup struct {
	task   *roll.Task
	from   []int32 // first piece of each ply of the group, and the end
	recipe roll.Recipe
	roll.Weight
}

// newTable begins with a layout.
func newTable(m *model, a *placed) *table {
	t := &table{m: m}
	t.kept = tabled{phases: append([]int64(nil), a.phases...), groups: make([]tabledGroup, len(m.groups))}
	for g := range m.groups {
		k := &t.kept.groups[g]
		k.task, k.from = m.taskOf(g, a.phases)
		k.recipe.Set(a.layouts[g].Recipe)
	}
	return t
}

// reachShare is what a micrometre counts by which the narrow pieces reach less
// far on average: of layouts of equal cost, one that is nearer to a lower cost
// is kept.
const reachShare = 0.005

// pieceShare is what a piece counts as a share of the cost: at equal cost,
// fewer pieces are better.
const pieceShare = 2e-6

// weigh lays a group of the next state; false when that makes the state dearer
// than most.
func (t *table) weigh(g int, most float64) bool {
	for o := range t.next.groups {
		if o != g {
			most -= t.next.groups[o].worth()
		}
	}
	k := &t.next.groups[g]
	w, ok := roll.Weigh(k.task, &k.recipe, most)
	k.Weight = w
	return ok && k.worth() <= most
}

// worth is what a climb goes by: the cost, and a little for what does not show
// in it yet.
func (k *tabledGroup) worth() float64 {
	return k.Cost + float64(k.Cost*pieceShare*float64(len(k.task.Pieces))) + float64(reachShare*k.Reach)
}

func (s *tabled) worth() float64 {
	sum := 0.0
	for g := range s.groups {
		sum += s.groups[g].worth()
	}
	return sum
}

func (s *tabled) cost() float64 {
	sum := 0.0
	for g := range s.groups {
		sum += s.groups[g].Cost
	}
	return sum
}

// compare ranks states: by cost, then by pieces, then by how far they reach.
func (s *tabled) compare(o *tabled) int {
	var cost, pieces, reach [2]float64
	for i, x := range [2]*tabled{s, o} {
		for g := range x.groups {
			k := &x.groups[g]
			cost[i], pieces[i], reach[i] = cost[i]+k.Cost, pieces[i]+float64(len(k.task.Pieces)), reach[i]+k.Reach
		}
	}
	return cmp.Or(cmp.Compare(cost[0], cost[1]), cmp.Compare(pieces[0], pieces[1]), cmp.Compare(reach[0], reach[1]))
}

// Lay is search.Table's.
func (t *table) Lay(phases []int64, most float64, rng *rand.Rand) (float64, bool) {
	t.next.set(&t.kept)
	copy(t.next.phases, phases)
	for g := range t.next.groups {
		if !t.relay(g, phases, most, rng) {
			return 0, false
		}
	}
	return t.next.worth(), true
}

// relay lays a group anew.
func (t *table) relay(g int, phases []int64, most float64, rng *rand.Rand) bool {
	n := &t.next.groups[g]
	plies := t.m.groups[g].plies
	same := n.Cost > 0
	for _, i := range plies {
		same = same && phases[i] == t.kept.phases[i]
	}
	if same {
		return true
	}
	old := n.from
	n.task, n.from = t.m.taskOf(g, phases)
	t.changed = append(t.changed[:0], make([]bool, len(n.task.Pieces))...)
	for k, i := range plies {
		if phases[i] != t.kept.phases[i] {
			for p := n.from[k]; p < n.from[k+1]; p++ {
				t.changed[p] = true
			}
		}
	}
	n.recipe.Renumber(renumbered(old, n.from))
	n.recipe.Complete(n.task, t.changed, rng)
	return t.weigh(g, most)
}

// Vary is search.Table's.
func (t *table) Vary(most, slack float64, rng *rand.Rand) (float64, bool) {
	t.next.set(&t.kept)
	g := rng.IntN(len(t.next.groups))
	n := &t.next.groups[g]
	n.recipe.Vary(n.task, slack, rng)
	if !t.weigh(g, most) {
		return 0, false
	}
	return t.next.worth(), true
}

// resume goes back to the best state, where there is one.
func (t *table) resume() {
	if t.best.groups != nil {
		t.kept.set(&t.best)
	}
}

// Work is search.Table's.
func (t *table) Work() int64 { return t.m.memory.Work() }

// Keep is search.Table's; the best of what is kept is remembered.
func (t *table) Keep() {
	t.kept, t.next = t.next, t.kept
	if t.best.groups == nil || t.kept.compare(&t.best) < 0 {
		t.best.set(&t.kept)
	}
}

// set makes a state a copy of another, in its own room.
func (s *tabled) set(o *tabled) {
	s.phases = append(s.phases[:0], o.phases...)
	if s.groups == nil {
		s.groups = make([]tabledGroup, len(o.groups))
	}
	for g := range o.groups {
		to, from := &s.groups[g], &o.groups[g]
		to.task, to.from, to.Weight = from.task, from.from, from.Weight
		to.recipe.Set(&from.recipe)
	}
}

// follow lays the pieces of all plies as on a table, from the model's own
// outlines, and then improves that; nil when the stock does not hold them.
func (m *model) follow(s *tabled, e roll.Effort, seed uint64) *placed {
	out := &placed{phases: s.phases}
	for g := range m.groups {
		task, from := m.taskOf(g, s.phases)
		l, err := roll.Refine(task, s.groups[g].fitting(task, from), e, seed)
		if err != nil {
			return nil
		}
		out.layouts = append(out.layouts, l)
		out.pieces = append(out.pieces, m.refs(g, from))
		out.cost += l.Cost
		out.count += len(task.Pieces)
	}
	return out
}

// fitting gives the recipe of a group for the pieces of a task at the same
// phases: cut from the outlines themselves they may be a few more or less.
func (k *tabledGroup) fitting(task *roll.Task, from []int32) *roll.Recipe {
	r := k.recipe.Copy()
	r.Renumber(renumbered(k.from, from))
	r.Complete(task, make([]bool, len(task.Pieces)), rand.New(rand.NewPCG(1, 1)))
	return r
}

// renumbered tells where the pieces of each ply begin anew: a piece keeps its
// place among those of its ply, and is struck out when it has none.
func renumbered(old, from []int32) []int32 {
	to := make([]int32, old[len(old)-1])
	for k := range len(old) - 1 {
		for p := old[k]; p < old[k+1]; p++ {
			if to[p] = p - old[k] + from[k]; to[p] >= from[k+1] {
				to[p] = -1
			}
		}
	}
	return to
}
