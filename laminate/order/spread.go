package order

import (
	"cmp"
	"math"
	"slices"

	"github.com/paulmach/orb"

	"stripwright/geometry"
)

// interval is a stretch along one axis.
type interval struct{ from, to float64 }

// shadow gives the stretches of the first axis over which rings lie between two
// heights of the second, merged and in order: an even number of rings about a
// point is outside. What only touches a height is not counted.
//
//	  .--.    hi - - - - - - -
//	 /    \        ____
//	|      |   ___/    |        shadow: |-------|  |--|
//	 \____/   lo - - - - - - -
func shadow(rings []orb.Ring, lo, hi float64) []interval {
	var edges [][2]orb.Point
	levels := []float64{lo, hi}
	for _, ring := range rings {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			if p[1] > q[1] {
				p, q = q, p
			}
			if p[1] == q[1] || q[1] <= lo || p[1] >= hi {
				continue
			}
			edges = append(edges, [2]orb.Point{p, q})
			levels = append(levels, max(p[1], lo), min(q[1], hi))
		}
	}
	slices.Sort(levels)
	levels = slices.Compact(levels)
	slices.SortStableFunc(edges, func(a, b [2]orb.Point) int { return cmp.Compare(a[0][1], b[0][1]) })
	var found []interval
	var active [][2]orb.Point
	next := 0
	for k := 0; k+1 < len(levels); k++ {
		for ; next < len(edges) && edges[next][0][1] <= levels[k]; next++ {
			active = append(active, edges[next])
		}
		active = slices.DeleteFunc(active, func(e [2]orb.Point) bool { return e[1][1] <= levels[k] })
		found = append(found, slab(active, levels[k], levels[k+1])...)
	}
	return merged(found)
}

// slab gives the stretches between two heights that all edges cross.
func slab(crossing [][2]orb.Point, lo, hi float64) []interval {
	mid := (lo + hi) / 2
	slices.SortStableFunc(crossing, func(a, b [2]orb.Point) int { return cmp.Compare(across(a, mid), across(b, mid)) })
	var out []interval
	for i := 0; i+1 < len(crossing); i += 2 {
		l, r := crossing[i], crossing[i+1]
		out = append(out, interval{min(across(l, lo), across(l, hi)), max(across(r, lo), across(r, hi))})
	}
	return out
}

// across gives where an edge crosses a height.
func across(e [2]orb.Point, y float64) float64 {
	t := (y - e[0][1]) / (e[1][1] - e[0][1])
	return e[0][0] + float64(t*(e[1][0]-e[0][0]))
}

// merged joins stretches that overlap or touch.
func merged(all []interval) []interval {
	slices.SortFunc(all, func(a, b interval) int { return cmp.Compare(a.from, b.from) })
	var out []interval
	for _, s := range all {
		if n := len(out); n > 0 && s.from <= out[n-1].to {
			out[n-1].to = max(out[n-1].to, s.to)
			continue
		}
		out = append(out, s)
	}
	return out
}

// turned swaps the axes of rings.
func turned(rings []orb.Ring) []orb.Ring {
	out := make([]orb.Ring, len(rings))
	for i, r := range rings {
		out[i] = make(orb.Ring, len(r))
		for k, p := range r {
			out[i][k] = orb.Point{p[1], p[0]}
		}
	}
	return out
}

// mostRows is how many rows are laid out: more come of no job.
const mostRows = 10000

// rows parts the height of rings into rows of a width, the first at the lowest
// point. Whole micrometres decide how many; none where they are out of reason.
func rows(rings []orb.Ring, width float64) (from float64, count int) {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, r := range rings {
		for _, p := range r {
			lo, hi = min(lo, p[1]), max(hi, p[1])
		}
	}
	high, w := geometry.Micrometres(hi-lo), geometry.Micrometres(width)
	if !(hi > lo) || w <= 0 || high <= 0 || high/w > mostRows {
		return 0, 0
	}
	return lo, int((high + w - 1) / w)
}

// lanes gives the length of roll that covers rings with lanes of a width along
// the first axis, and how many they are. Each lane reaches from the first to the
// last of what it covers.
func lanes(rings []orb.Ring, width float64) (long float64, count int) {
	from, count := rows(rings, width)
	for i := range count {
		lo := from + float64(float64(i)*width)
		if s := shadow(rings, lo, lo+width); len(s) > 0 {
			long += s[len(s)-1].to - s[0].from
		}
	}
	return long, count
}

// sheets counts the sheets of a size that cover rings in straight rows along the
// first axis: each row begins where what it covers begins, and begins anew after
// a gap.
func sheets(rings []orb.Ring, along, width float64) (count int) {
	from, n := rows(rings, width)
	for i := range n {
		lo := from + float64(float64(i)*width)
		end := math.Inf(-1)
		for _, s := range shadow(rings, lo, lo+width) {
			s.from = max(s.from, end)
			if left := geometry.Micrometres(s.to - s.from); left > 0 {
				a := geometry.Micrometres(along)
				k := int((left + a - 1) / a)
				count += k
				end = s.from + float64(float64(k)*along)
			}
		}
	}
	return count
}
