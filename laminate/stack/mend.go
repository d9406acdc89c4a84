package stack

import (
	"slices"
	"sort"

	"stripwright/geometry"
)

// Limits of the search for cures, in plies.
const (
	mostMended   = 200 // beyond it nothing is searched
	mostCombined = 40  // beyond it one thing is changed at a time
)

// Cure is one way to make a stack better, found by trying and judged by Judge.
type Cure struct {
	Words string
	Plies []Ply // the stack then
	After Judgement
	Cost  int // plies touched; more where cloth has to be bought
}

// Mending is what a search for cures found.
type Mending struct {
	Cures    []Cure   // same cloth, the least change first; each makes the stack a mirror
	Hand     *Cure    // with the cloth of the other hand; nil where the same cloth does
	Closer   *Cure    // no mirror, but couples less; nil where there is a cure or nothing gained
	Tried    []string // what was searched, in words
	Untried  []string // what was too much to search, in words
	Doubled  *Cure    // the stack laid once more in reverse order; nil where there is a cure
	Balances []Cure   // each makes the stack balanced, and leaves a mirror one
}

// Mend searches for what makes a stack symmetric and balanced: plies laid on
// the other face or turned by a quarter in the plane, another order, one more
// ply of the cloth offered at the angles of the schedule, and the cloth of the
// other hand. A quarter turn counts for cloth of two or more directions only: a
// unidirectional ply at another angle is another schedule.
func Mend(plies []Ply, offered []Cloth) Mending {
	return mend(&mending{plies: plies, offered: offered})
}

// MendPatch does the same for the stack at a patch, with its patch plies alone:
// what covers the whole part stays as it lies, and one more ply is a patch too.
func MendPatch(plies []Ply, offered []Cloth) Mending {
	return mend(&mending{plies: plies, offered: offered, patches: true})
}

func mend(m *mending) Mending {
	plies := m.plies
	m.ids, m.now = names{}, Judge(plies)
	for _, p := range plies {
		m.laid = append(m.laid, m.ids.of(p))
		if p.Core == nil && !slices.Contains(m.angles, p.Angle) {
			m.angles = append(m.angles, p.Angle)
		}
	}
	switch {
	case len(plies) > mostMended:
		m.out.Untried = append(m.out.Untried, counted(len(plies), "ply", "plies")+" are more than the search takes on")
		return m.out
	case len(m.angles) == 0:
		return m.out
	}
	if !m.now.Mirror {
		m.symmetric()
	}
	if !m.now.Balanced {
		m.balanced()
	}
	return m.out
}

// mending is a search under way.
type mending struct {
	plies   []Ply
	offered []Cloth
	patches bool // only patch plies may be changed
	angles  []geometry.Angle
	ids     names
	laid    [][]int // layers of each ply as it lies
	now     Judgement
	out     Mending
}

// symmetric looks for cures of a stack that is no mirror.
func (m *mending) symmetric() {
	m.lay()
	m.reorder()
	m.oneMore()
	if len(m.out.Cures) == 0 {
		m.turnedAndShuffled()
	}
	sort.SliceStable(m.out.Cures, func(i, j int) bool { return m.out.Cures[i].Cost < m.out.Cures[j].Cost })
	if len(m.out.Cures) == 0 {
		m.oneAngle()
	}
	if len(m.out.Cures) == 0 {
		m.otherHand()
		m.doubled()
		m.closer()
	}
}

// turnedToo ends what was tried together with turns.
const turnedToo = ", with every face of the others and every quarter turn that keeps their directions"

func (m *mending) tried(words string)   { m.out.Tried = append(m.out.Tried, words) }
func (m *mending) untried(words string) { m.out.Untried = append(m.out.Untried, words) }

// take keeps a cure after judging it: what is no mirror is none.
func (m *mending) take(words string, plies []Ply, cost int) bool {
	c := Cure{Words: words, Plies: plies, After: Judge(plies), Cost: cost}
	if !c.After.Mirror {
		return false
	}
	m.out.Cures = append(m.out.Cures, c)
	return true
}

// choices lists the variants of all plies.
func (m *mending) choices(by means) [][]variant {
	out := make([][]variant, len(m.plies))
	for i, p := range m.plies {
		if m.stays(i) {
			by := means{}
			out[i] = by.variants(p, m.ids)
			continue
		}
		out[i] = by.variants(p, m.ids)
	}
	return out
}

// stays says whether a ply must lie as it does.
func (m *mending) stays(i int) bool { return m.patches && !m.plies[i].Patch }

// lay turns plies over and by quarters, in their order.
func (m *mending) lay() {
	ways := []means{{faces: true}, {faces: true, quarters: true}, {faces: true, quarters: true, any: true}}
	best := never
	for _, by := range ways {
		if by.any && best < never {
			break // a change of directions only where nothing else helps
		}
		chosen, cost, ok := folded(m.choices(by))
		if !ok || cost >= best {
			continue
		}
		best = cost
		plies := pliesOf(chosen)
		m.take(turns(m.plies, plies), plies, cost)
	}
	m.tried("in this order: every face of every ply, every quarter turn of cloth of two or more directions")
}

func pliesOf(chosen []variant) []Ply {
	out := make([]Ply, len(chosen))
	for i, v := range chosen {
		out[i] = v.ply
	}
	return out
}

// oneAngle lays one ply at another angle of the schedule, others turned over or
// by quarters. It is another schedule, so balance must not be lost.
func (m *mending) oneAngle() {
	chosen, cost, ok := folded(m.choices(means{faces: true, quarters: true, angles: m.angles}))
	m.tried("one ply at another angle of the schedule" + turnedToo)
	if !ok || cost >= 2*costOfAngle {
		return
	}
	plies := pliesOf(chosen)
	if m.now.Balanced && !Judge(plies).Balanced {
		return
	}
	m.take(turns(m.plies, plies), plies, cost)
}

// otherHand lets plies be cut from the cloth of the other hand; where that is
// not enough, with one more ply.
func (m *mending) otherHand() {
	choices := m.choices(means{faces: true, quarters: true, hand: true})
	m.tried("the opposite-hand cloth for any ply" + turnedToo)
	var c Cure
	if chosen, cost, ok := folded(choices); ok {
		plies := pliesOf(chosen)
		c = Cure{Words: turns(m.plies, plies), Plies: plies, Cost: cost}
	} else if len(m.plies) <= mostCombined {
		m.tried("the same with one more ply")
		both := slices.Clone(m.offered)
		for _, c := range m.offered {
			both = append(both, c.otherHand())
		}
		if c, ok = m.addedTo(choices, m.extraOf(both, m.angles)); !ok {
			return
		}
	} else {
		m.untried("the opposite-hand cloth with one more ply")
		return
	}
	if c.After = Judge(c.Plies); c.After.Mirror {
		m.out.Hand = &c
	}
}

// doubled lays the whole stack once more on itself in reverse order, as it lies
// or each ply on its other face.
func (m *mending) doubled() {
	for _, over := range []bool{false, true} {
		plies := slices.Clone(m.plies)
		for i := len(m.plies) - 1; i >= 0; i-- {
			p := m.plies[i]
			if p.Number = 0; p.Core == nil && over {
				p.Down = !p.Down
			}
			plies = append(plies, p)
		}
		words := "lay all plies once more on top, in reverse order"
		if over {
			words += ", each on its other face"
		}
		if c := (Cure{Words: words, Plies: plies, After: Judge(plies), Cost: costOfPly * len(m.plies)}); c.After.Mirror {
			m.out.Doubled = &c
			return
		}
	}
}

// closer turns one run of neighbouring plies over, the run that leaves the least
// coupling.
func (m *mending) closer() {
	if len(m.plies) > mostCombined {
		m.untried("which faces would couple least")
		return
	}
	best, least := []Ply(nil), 0.9*m.now.Coupling
	for from := len(m.plies) - 1; from >= 0; from-- {
		plies := slices.Clone(m.plies)
		for to := from; to < len(plies); to++ {
			if plies[to].Core != nil || m.stays(to) {
				continue
			}
			plies[to].Down = !plies[to].Down
			if _, c := moments(Layers(plies)); c < least-Still {
				best, least = slices.Clone(plies), c
			}
		}
	}
	if best != nil {
		best = keepNeeded(m.plies, best)
		m.out.Closer = &Cure{Words: turns(m.plies, best), Plies: best, After: Judge(best)}
	}
}

// keepNeeded takes back turns that change no layer.
func keepNeeded(was, now []Ply) []Ply {
	n := names{}
	for i := range now {
		if slices.Equal(n.of(was[i]), n.of(now[i])) {
			now[i] = was[i]
		}
	}
	return now
}
