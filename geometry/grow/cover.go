package grow

// positive gives the edge of what a rim winds round more than zero times, base
// counted in: rings with the cover on their left, each simple.
func positive(r ring, base int) ([]ring, error) {
	m, err := mapOf(r, base)
	if err != nil {
		return nil, err
	}
	var out []ring
	used := make([]bool, len(m.ways))
	for i := range m.ways {
		if used[i] || !m.edgeOfCover(int32(i)) {
			continue
		}
		for _, q := range m.simple(m.follow(int32(i), used)) {
			if q = q.straightened(); len(q) >= 3 {
				out = append(out, q)
			}
		}
	}
	return out, nil
}

// follow walks along the edge of the cover until it is back, and gives the
// spots passed. Where several ways lead on, it keeps to the cover at hand: the
// first one clockwise from where it came from.
func (m *ringMap) follow(i int32, used []bool) []int32 {
	var walk []int32
	for !used[i] {
		used[i] = true
		walk = append(walk, m.ways[i].from)
		i = m.onward(i, used)
	}
	return walk
}

func (m *ringMap) onward(i int32, used []bool) int32 {
	f := m.fan[m.ways[i].to]
	k := 0
	for f[k] != i^1 {
		k++
	}
	for n := 1; n <= len(f); n++ {
		j := f[(k-n+len(f))%len(f)]
		if m.edgeOfCover(j) {
			return j
		}
	}
	return i
}

// simple parts a closed walk where it comes by a spot twice.
func (m *ringMap) simple(walk []int32) []ring {
	var out []ring
	place := map[int32]int{}
	var open []int32
	for _, s := range append(walk, walk[0]) {
		if k, ok := place[s]; ok {
			loop := make(ring, 0, len(open)-k)
			for _, t := range open[k:] {
				loop = append(loop, m.spots[t])
				delete(place, t)
			}
			out = append(out, loop)
			open = open[:k]
		}
		place[s] = len(open)
		open = append(open, s)
	}
	return out
}
