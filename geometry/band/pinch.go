package band

import (
	"slices"
)

// splitPinches cuts a ring in two wherever it comes back to a vertex.
func splitPinches(r Ring) []Ring {
	seen := make(map[Point]int, len(r))
	var out []Ring
	path := make(Ring, 0, len(r))
	for _, p := range r {
		if k, again := seen[p]; again && k < len(path) && path[k] == p {
			loop := slices.Clone(path[k:])
			for _, q := range loop[1:] {
				delete(seen, q)
			}
			path = path[:k+1]
			out = append(out, loop)
			continue
		}
		seen[p] = len(path)
		path = append(path, p)
	}
	return append(out, path)
}

// touchesItself says whether a ring comes back to a vertex on the joints of its
// band. Elsewhere a ring has the vertices of the outline.
func (c *Cutter) touchesItself(r Ring, b int) bool {
	var met []Point
	for _, p := range r {
		below, above := b > 0 && p.Y == c.joints[b-1], b < len(c.joints) && p.Y == c.joints[b]
		if !below && !above {
			continue
		}
		if slices.Contains(met, p) {
			return true
		}
		met = append(met, p)
	}
	return false
}

// pinched says whether any vertex of the rings occurs twice.
func pinched(rings []Ring) bool {
	seen := make(map[Point]bool)
	for _, r := range rings {
		for _, p := range r {
			if seen[p] {
				return true
			}
			seen[p] = true
		}
	}
	return false
}
