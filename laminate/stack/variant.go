package stack

import (
	"slices"
	"strconv"

	"stripwright/geometry"
)

// means is what may be done to a ply where it lies.
type means struct {
	faces    bool             // turned over
	quarters bool             // turned by 90° in its plane, where that keeps its directions
	any      bool             // turned by 90° where it has two or more directions
	angles   []geometry.Angle // laid at one of these instead
	hand     bool             // taken from the cloth of the other hand
}

// variant is a ply as it may lie: ids are its layers from the tool up, cost
// counts what is done to it.
type variant struct {
	ply  Ply
	ids  []int
	cost int
}

// names gives each identity of a layer a number.
type names map[string]int

func (n names) of(p Ply) []int {
	var out []int
	for _, l := range p.layers() {
		id := l.identity()
		if _, known := n[id]; !known {
			n[id] = len(n)
		}
		out = append(out, n[id])
	}
	return out
}

// Costs of what is done to a ply, and to a stack: the number of plies touched,
// and more for cloth that has to be bought.
const (
	costOfTurn     = 1
	costOfExchange = 2
	costOfPly      = 3
	costOfHand     = 4
	costOfAngle    = 1000 // more than all else, so that a sum tells how often
)

// variants lists the ways a ply may lie that differ in its layers, as it is
// first, then by rising cost.
func (m means) variants(p Ply, n names) []variant {
	out := []variant{{p, n.of(p), 0}}
	if p.Core != nil {
		return out
	}
	add := func(q Ply, cost int) {
		ids := n.of(q)
		if !slices.ContainsFunc(out, func(v variant) bool { return slices.Equal(v.ids, ids) }) {
			out = append(out, variant{q, ids, cost})
		}
	}
	turned := func(q Ply, cost int) {
		add(q, cost)
		if over := q; m.faces {
			over.Down = !over.Down
			add(over, cost+costOfTurn)
		}
	}
	quarter := p
	quarter.Angle = geometry.NewAngle(p.Angle.Degrees() + 90)
	turned(p, 0)
	if m.quarters && (m.any && len(p.Cloth.Lies) > 1 || sameDirections(p, quarter)) {
		turned(quarter, costOfTurn)
	}
	for _, a := range m.angles {
		other := p
		other.Angle = a
		turned(other, costOfAngle)
	}
	if m.hand {
		other := p
		other.Cloth = p.Cloth.otherHand()
		turned(other, costOfHand)
	}
	slices.SortStableFunc(out, func(a, b variant) int { return a.cost - b.cost })
	return out
}

// sameDirections says whether two plies have as much fibre in each direction.
func sameDirections(p, q Ply) bool {
	a, _ := shares(p.layers())
	b, _ := shares(q.layers())
	return slices.EqualFunc(a, b, func(s, t Share) bool {
		return same(s.Angle, t.Angle) && whole(s.GSM, 1e3) == whole(t.GSM, 1e3)
	})
}

// sequence flattens layers of plies as they lie.
func sequence(plies [][]int) []int { return slices.Concat(plies...) }

// reads says whether a sequence is the same from both ends.
func reads(ids []int) bool {
	for i, j := 0, len(ids)-1; i < j; i, j = i+1, j-1 {
		if ids[i] != ids[j] {
			return false
		}
	}
	return true
}

// key prints a sequence for a map.
func key(ids []int) string {
	var b []byte
	for _, id := range ids {
		b = strconv.AppendInt(b, int64(id), 10)
		b = append(b, ' ')
	}
	return string(b)
}
