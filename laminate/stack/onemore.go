package stack

import (
	"fmt"
	"slices"

	"stripwright/geometry"
)

// extra lists the plies that one more ply may be: the cloth offered, at the
// angles given, on either face where that makes a difference.
func (m *mending) extra(angles []geometry.Angle) []Ply { return m.extraOf(m.offered, angles) }

func (m *mending) extraOf(cloths []Cloth, angles []geometry.Angle) []Ply {
	var out []Ply
	var seen [][]int
	for _, c := range cloths {
		for _, a := range angles {
			for _, down := range []bool{false, true} {
				p := Ply{Cloth: c, Angle: a, Down: down}
				ids := m.ids.of(p)
				if slices.ContainsFunc(seen, func(s []int) bool { return slices.Equal(s, ids) }) {
					continue
				}
				seen, out = append(seen, ids), append(out, p)
			}
		}
	}
	return out
}

// oneMore adds one ply, the others as they lie; where that does not help and
// the stack is small, it turns others over too.
func (m *mending) oneMore() {
	extra := m.extra(m.angles)
	if p, at := m.added(extra); at >= 0 {
		m.take(m.addWords(p, at), slices.Insert(slices.Clone(m.plies), at, p), costOfPly)
	} else if len(m.plies) <= mostCombined && len(m.out.Cures) == 0 {
		m.addedAndTurned(extra)
		m.tried("one more ply of every cloth at every angle of the schedule, at every place" + turnedToo)
		return
	} else if len(m.plies) > mostCombined {
		m.untried("one more ply together with turns of others")
	}
	m.tried("one more ply of every cloth at every angle of the schedule, at every place")
}

// added finds a ply and a place for it, the uppermost first; at is -1 for none.
func (m *mending) added(extra []Ply) (p Ply, at int) {
	for at := len(m.plies); at >= 0; at-- {
		for _, p := range extra {
			if reads(sequence(slices.Insert(slices.Clone(m.laid), at, m.ids.of(p)))) {
				return p, at
			}
		}
	}
	return p, -1
}

// addedAndTurned adds one ply and turns others over.
func (m *mending) addedAndTurned(extra []Ply) {
	if c, ok := m.addedTo(m.choices(means{faces: true, quarters: true}), extra); ok {
		m.take(c.Words, c.Plies, c.Cost)
	}
}

// addedTo adds one ply to those that may lie in several ways, at the least cost,
// the uppermost of equals.
func (m *mending) addedTo(choices [][]variant, extra []Ply) (c Cure, ok bool) {
	best := never
	var chosen []variant
	var place int
	for at := len(m.plies); at >= 0; at-- {
		for _, p := range extra {
			with := slices.Insert(slices.Clone(choices), at, []variant{{p, m.ids.of(p), costOfPly}})
			if c, cost, ok := folded(with); ok && cost < best {
				best, chosen, place = cost, c, at
			}
		}
	}
	if best == never {
		return c, false
	}
	plies := pliesOf(chosen)
	was := slices.Insert(slices.Clone(m.plies), place, plies[place])
	words := m.addWords(plies[place], place)
	if t := turns(was, plies); t != "" {
		words += ", and " + t
	}
	return Cure{Words: words, Plies: plies, Cost: best}, true
}

// addWords says which ply to add where.
func (m *mending) addWords(p Ply, at int) string {
	return "add one ply of " + m.newPly(p) + " " + m.after(at)
}

// newPly names a ply that is added: its cloth, angle and, where it matters, its
// face.
func (m *mending) newPly(p Ply) string {
	name := p.Cloth.Name
	if p.Cloth.Hand {
		name = "the opposite-hand cloth of " + name
	}
	words := fmt.Sprintf("%s at %s", name, degrees(p.Angle.Degrees()))
	over := p
	if over.Down = !p.Down; !slices.Equal(m.ids.of(p), m.ids.of(over)) {
		words += ", " + face(p.Down) + ","
	}
	return words
}

// after names a place between plies.
func (m *mending) after(at int) string {
	if at == 0 {
		return "on the tool, before ply " + m.called(0)
	}
	return "after ply " + m.called(at-1)
}

func face(down bool) string {
	if down {
		return "face down"
	}
	return "face up"
}
