package roll

import (
	"cmp"
	"math"
	"slices"

	"stripwright/geometry/band"
)

// Ways says in which of its two ways a piece may lie on the roll.
type Ways uint8

// The ways of a piece.
const (
	AsCut  Ways = 1
	Turned Ways = 2
	Either Ways = 3
)

func (w Ways) has(way int8) bool { return w&(1<<way) != 0 }

// link is a full-width piece in a chain, in one of its ways.
type link struct {
	piece int32
	way   int8
}

// linkage holds what the chain search needs of the full-width pieces. Ends of
// piece i are 2i (ahead when as cut) and 2i+1 (back when as cut, as if turned).
type linkage struct {
	ways  []Ways
	ends  []*band.End
	kind  []int32     // ends that are equal share a kind
	cost  [][]float32 // by kind, nil for long chains
	kind0 []int32     // one end of each kind
	turn  bool        // every piece may be turned end for end
}

func newLinkage(shapes []*Shape, ways []Ways) *linkage {
	g := &linkage{ways: ways, ends: make([]*band.End, 0, 2*len(shapes)), turn: true}
	for _, w := range ways {
		g.turn = g.turn && w == Either
	}
	for _, s := range shapes {
		g.ends = append(g.ends, &s.ends.Ahead, &s.ends.Back)
	}
	g.classify()
	return g
}

// classify gives equal ends one kind, and tabulates meetings of kinds while
// they are few.
func (g *linkage) classify() {
	const tabulated = 900
	kinds := make(map[band.End]int32)
	g.kind = make([]int32, len(g.ends))
	for i := range g.ends {
		k, ok := kinds[*g.ends[i]]
		if !ok {
			k = int32(len(g.kind0))
			kinds[*g.ends[i]] = k
			g.kind0 = append(g.kind0, int32(i))
		}
		g.kind[i] = k
	}
	if len(g.kind0) > tabulated {
		return
	}
	g.cost = make([][]float32, len(g.kind0))
	for a := range g.cost {
		g.cost[a] = make([]float32, len(g.kind0))
		for b := 0; b <= a; b++ {
			m := g.ends[g.kind0[a]].Meet(g.ends[g.kind0[b]])
			g.cost[a][b], g.cost[b][a] = m, m
		}
	}
}

// between gives the length lost where end a meets end b.
func (g *linkage) between(a, b int32) float32 {
	if g.cost != nil {
		return g.cost[g.kind[a]][g.kind[b]]
	}
	return g.ends[a].Meet(g.ends[b])
}

// front and rear give the ends of a link that face ahead and back.
func (l link) front() int32 { return 2*l.piece + int32(l.way) }

func (l link) rear() int32 { return 2*l.piece + 1 - int32(l.way) }

// step gives the length lost between two links that follow each other.
func (g *linkage) step(a, b link) float32 { return g.between(a.front(), b.rear()) }

// paired builds a chain by slant: ends sorted by slant are matched with their
// neighbours, which makes rings of pieces; rings are merged where two matches
// of neighbouring slant can be exchanged, and the last ring is opened where it
// loses most. O(n log n).
func (g *linkage) paired() []link {
	n := len(g.ways)
	if n == 0 {
		return nil
	}
	mate := g.matchBySlant()
	r := newRings(mate, n)
	r.merge(g)
	return g.open(mate)
}

// matchBySlant matches every end with one of nearly its own slant. Where no
// piece may be turned, ends ahead are matched with ends that face back.
func (g *linkage) matchBySlant() []int32 {
	slants := make([]float32, len(g.ends))
	for i := range g.ends {
		slants[i] = g.ends[i].Slant
	}
	bySlant := func(list []int32) {
		slices.SortFunc(list, func(a, b int32) int {
			return cmp.Or(cmp.Compare(slants[a], slants[b]), cmp.Compare(g.kind[a], g.kind[b]), cmp.Compare(a, b))
		})
	}
	mate := make([]int32, len(g.ends))
	if g.turn {
		all := make([]int32, len(g.ends))
		for i := range all {
			all[i] = int32(i)
		}
		bySlant(all)
		for i := 0; i+1 < len(all); i += 2 {
			mate[all[i]], mate[all[i+1]] = all[i+1], all[i]
		}
		return mate
	}
	var ahead, back []int32
	for i, w := range g.ways {
		l := link{int32(i), w.only()}
		ahead, back = append(ahead, l.front()), append(back, l.rear())
	}
	bySlant(ahead)
	bySlant(back)
	for i := range ahead {
		mate[ahead[i]], mate[back[i]] = back[i], ahead[i]
	}
	return mate
}

// only gives the way of a piece that has but one, and as cut otherwise.
func (w Ways) only() int8 {
	if w == Turned {
		return 1
	}
	return 0
}

// open walks the ring of matches and opens it at its worst joint.
func (g *linkage) open(mate []int32) []link {
	n := len(g.ways)
	chain := make([]link, 0, n)
	at := link{0, g.ways[0].only()}
	for range n {
		chain = append(chain, at)
		rear := mate[at.front()]
		at = link{rear / 2, int8(1 - rear%2)}
	}
	worst, cut := math.Inf(-1), 0
	for i := range chain {
		a, b := chain[i], chain[(i+1)%n]
		save := float64(g.step(a, b)) - float64(g.ends[a.front()].Most()) - float64(g.ends[b.rear()].Most())
		if save > worst {
			worst, cut = save, i+1
		}
	}
	return append(slices.Clone(chain[cut%n:]), chain[:cut%n]...)
}
