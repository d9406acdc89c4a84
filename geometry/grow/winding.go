package grow

import (
	"cmp"
	"slices"
)

// way is one direction of an edge of the map, from one spot to another; way
// i^1 is the same edge the other way.
type way struct{ from, to int32 }

// ringMap is the map that a bent rim draws: its spots, its ways in pairs, how
// often more the rim runs along a way than against it, and the winding number
// on the left of each way.
type ringMap struct {
	spots []spot
	ways  []way
	net   []int
	left  []int
	fan   [][]int32 // per spot: the ways that leave it, counter-clockwise from straight down
}

// mapOf bends a rim and counts the windings; base is the winding number far
// away from it.
func mapOf(r ring, base int) (*ringMap, error) {
	edges, err := bent(r)
	if err != nil {
		return nil, err
	}
	m := &ringMap{}
	m.draw(edges)
	m.sortFans()
	m.wind(base)
	return m, nil
}

func (m *ringMap) draw(edges []edge) {
	number := make(map[spot]int32, len(edges))
	name := func(p spot) int32 {
		k, ok := number[p]
		if !ok {
			k = int32(len(m.spots))
			number[p] = k
			m.spots = append(m.spots, p)
		}
		return k
	}
	known := make(map[way]int32, len(edges))
	for _, e := range edges {
		w := way{name(e.a), name(e.b)}
		k, ok := known[w]
		if !ok {
			k = int32(len(m.ways))
			back := way{w.to, w.from}
			known[w], known[back] = k, k+1
			m.ways = append(m.ways, w, back)
			m.net = append(m.net, 0, 0)
		}
		m.net[k]++
		m.net[k^1]--
	}
	m.left = make([]int, len(m.ways))
}

func (m *ringMap) sortFans() {
	m.fan = make([][]int32, len(m.spots))
	for i, w := range m.ways {
		m.fan[w.from] = append(m.fan[w.from], int32(i))
	}
	for _, f := range m.fan {
		slices.SortFunc(f, func(i, j int32) int {
			if h := cmp.Compare(m.half(i), m.half(j)); h != 0 {
				return h
			}
			return -cmp.Compare(turn(m.spots[m.ways[i].from], m.spots[m.ways[i].to], m.spots[m.ways[j].to]), 0)
		})
	}
}

// half is 0 for directions from straight down, counter-clockwise, to before
// straight up, 1 for the others.
func (m *ringMap) half(i int32) int {
	a, b := m.spots[m.ways[i].from], m.spots[m.ways[i].to]
	if b.x > a.x || b.x == a.x && b.y < a.y {
		return 0
	}
	return 1
}

// wind counts windings from the leftmost, lowest spot on: the rim is one
// closed walk, so all ways hang together.
func (m *ringMap) wind(base int) {
	if len(m.spots) == 0 {
		return
	}
	start := int32(0)
	for i, p := range m.spots {
		if q := m.spots[start]; p.x < q.x || p.x == q.x && p.y < q.y {
			start = int32(i)
		}
	}
	seen := make([]bool, len(m.spots))
	seen[start] = true
	f := m.fan[start]
	// What lies to the left of the last way of the leftmost spot lies outside.
	m.windFan(start, len(f)-1, base)
	stack := []int32{start}
	for len(stack) > 0 {
		at := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		for _, i := range m.fan[at] {
			to := m.ways[i].to
			if seen[to] {
				continue
			}
			seen[to] = true
			m.windFan(to, slices.Index(m.fan[to], i^1), m.left[i]-m.net[i])
			stack = append(stack, to)
		}
	}
}

// windFan goes once round a spot, given the winding number on the left of the
// k-th way that leaves it.
func (m *ringMap) windFan(at int32, k, winding int) {
	f := m.fan[at]
	for n := range f {
		if n > 0 {
			winding += m.net[f[(k+n)%len(f)]]
		}
		m.left[f[(k+n)%len(f)]] = winding
	}
}

// edgeOfCover says whether a way has cover on its left and none on its right.
func (m *ringMap) edgeOfCover(i int32) bool {
	return m.left[i] > 0 && m.left[i]-m.net[i] <= 0
}
