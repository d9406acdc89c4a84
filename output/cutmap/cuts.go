package cutmap

import (
	"math"
	"sort"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/sheet"
)

// sharedMM is how near two cuts lie when they are one: coordinates are rounded
// to 0.001 mm, so edges of touching pieces at an oblique angle lie up to 0.002
// mm apart.
const sharedMM = 0.005

// Cuts gives the cuts of pieces, each metre once: piece by piece in the order
// given, inner cuts of a piece before its outline. A cut that runs round a
// whole piece is one closed line; where a neighbour has made part of it, what
// is left are open lines that end on the neighbour's.
func Cuts(pieces []laminate.Piece) []sheet.Line {
	var rings []orb.Ring
	for _, p := range pieces {
		rings = append(rings, p.Shape.Holes...)
		rings = append(rings, p.Shape.Outer)
	}
	n := newVertices(rings)
	made := make(map[[2]int32]bool, len(n.at))
	var lines []sheet.Line
	for i := range rings {
		lines = append(lines, n.open(n.round(i), made)...)
	}
	return lines
}

// vertices are those of all rings, those within sharedMM of each other made
// one, ordered along the roll for looking up.
type vertices struct {
	at    []orb.Point // from left to right
	ringy [][]int32   // rings as vertex numbers
}

func newVertices(rings []orb.Ring) *vertices {
	n := &vertices{}
	var all []orb.Point
	for _, r := range rings {
		all = append(all, r...)
	}
	number := n.merge(all)
	next := 0
	for _, r := range rings {
		ids := make([]int32, 0, len(r))
		for range r {
			if id := number[next]; len(ids) == 0 || ids[len(ids)-1] != id {
				ids = append(ids, id)
			}
			next++
		}
		for len(ids) > 1 && ids[0] == ids[len(ids)-1] {
			ids = ids[:len(ids)-1]
		}
		n.ringy = append(n.ringy, ids)
	}
	return n
}

// merge numbers points, those near each other alike, from left to right.
func (n *vertices) merge(all []orb.Point) []int32 {
	order := make([]int32, len(all))
	for i := range order {
		order[i] = int32(i)
	}
	sort.Slice(order, func(a, b int) bool {
		p, q := all[order[a]], all[order[b]]
		if p[0] != q[0] {
			return p[0] < q[0]
		}
		if p[1] != q[1] {
			return p[1] < q[1]
		}
		return order[a] < order[b]
	})
	number := make([]int32, len(all))
	for _, i := range order {
		number[i] = n.near(all[i])
	}
	return number
}

// near finds a vertex at a point, or makes it. Points come from left to right, so
// vertices are in order along the roll.
func (n *vertices) near(p orb.Point) int32 {
	for j := len(n.at) - 1; j >= 0 && p[0]-n.at[j][0] <= sharedMM; j-- {
		if math.Abs(p[1]-n.at[j][1]) <= sharedMM {
			return int32(j)
		}
	}
	n.at = append(n.at, p)
	return int32(len(n.at) - 1)
}

// round gives a ring with every vertex that lies on it, as vertex numbers.
func (n *vertices) round(ring int) []int32 {
	ids := n.ringy[ring]
	var out []int32
	for i, id := range ids {
		out = append(out, id)
		out = append(out, n.between(id, ids[(i+1)%len(ids)])...)
	}
	return out
}

// between lists the vertices that lie on the edge from a to b, in its direction.
func (n *vertices) between(a, b int32) []int32 {
	p, q := n.at[a], n.at[b]
	d := sheet.Towards(p, q)
	long := math.Hypot(q[0]-p[0], q[1]-p[1])
	low, high := math.Min(p[0], q[0])-sharedMM, math.Max(p[0], q[0])+sharedMM
	bottom, top := math.Min(p[1], q[1])-sharedMM, math.Max(p[1], q[1])+sharedMM
	var on []int32
	for j := sort.Search(len(n.at), func(i int) bool { return n.at[i][0] >= low }); j < len(n.at) && n.at[j][0] <= high; j++ {
		c := n.at[j]
		if c[1] < bottom || c[1] > top || int32(j) == a || int32(j) == b {
			continue
		}
		along, off := n.along(p, d, c)
		if off <= sharedMM && along > 0 && along < long {
			on = append(on, int32(j))
		}
	}
	sort.SliceStable(on, func(i, j int) bool {
		s, _ := n.along(p, d, n.at[on[i]])
		t, _ := n.along(p, d, n.at[on[j]])
		return s < t
	})
	return on
}

// along gives how far c lies along the line from p in direction d, and off it.
func (n *vertices) along(p, d, c orb.Point) (along, off float64) {
	x, y := c[0]-p[0], c[1]-p[1]
	return float64(x*d[0]) + float64(y*d[1]), math.Abs(float64(d[0]*y) - float64(d[1]*x))
}

// open gives what is left to cut of a ring, and marks it as made.
func (n *vertices) open(ids []int32, made map[[2]int32]bool) []sheet.Line {
	fresh := make([]bool, len(ids))
	start, count := 0, 0
	for i := range ids {
		key := edgeKey(ids[i], ids[(i+1)%len(ids)])
		if fresh[i] = !made[key] && key[0] != key[1]; fresh[i] {
			made[key] = true
			count++
		} else {
			start = i
		}
	}
	if count == len(ids) && count > 2 {
		return []sheet.Line{{Points: n.points(ids), Closed: true}}
	}
	return n.chains(ids, fresh, start)
}

// chains joins fresh edges that follow each other, beginning after an edge that
// is not.
func (n *vertices) chains(ids []int32, fresh []bool, start int) []sheet.Line {
	var lines []sheet.Line
	var chain []int32
	for k := 1; k <= len(ids); k++ {
		i := (start + k) % len(ids)
		if fresh[i] {
			if chain == nil {
				chain = []int32{ids[i]}
			}
			chain = append(chain, ids[(i+1)%len(ids)])
			continue
		}
		if chain != nil {
			lines = append(lines, sheet.Line{Points: n.points(chain)})
			chain = nil
		}
	}
	if chain != nil {
		lines = append(lines, sheet.Line{Points: n.points(chain)})
	}
	return lines
}

func (n *vertices) points(ids []int32) []orb.Point {
	points := make([]orb.Point, len(ids))
	for i, id := range ids {
		points[i] = n.at[id]
	}
	return points
}

func edgeKey(a, b int32) [2]int32 {
	if a > b {
		a, b = b, a
	}
	return [2]int32{a, b}
}
