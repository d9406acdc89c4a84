package bound

import "stripwright/geometry/band"

// beside is the length of joint, in µm, that no plan has within the stagger:
// planning allows half a millimetre, the check one.
const beside = 1100

// neighbours says which ranges of phase two plies of one comb cannot both take:
// those in which, whatever the phases, some pair of joints runs side by side
// closer than the stagger.
type neighbours struct {
	net     []band.Slab
	width   int64
	stagger int64
	first   int64 // lowest height of the net part
	last    int64
}

func newNeighbours(s *shape, width, stagger int64) *neighbours {
	return &neighbours{net: slabsOf(s.net), width: width, stagger: stagger, first: s.net.MinY, last: s.net.MaxY}
}

// clash says whether no two phases of the ranges are clear of each other.
func (n *neighbours) clash(a, b cell) bool {
	for _, turn := range []int64{-n.width, 0, n.width} {
		if n.certain(a, cell{b.from + turn, b.to + turn}) {
			return true
		}
	}
	return false
}

// certain says whether joints of the ranges are always nearer than the stagger
// and side by side somewhere in the net part.
func (n *neighbours) certain(a, b cell) bool {
	from, to := min(a.from, b.from), max(a.to, b.to)
	if max(a.to-b.from, b.to-a.from) >= n.stagger {
		return false
	}
	y := n.first - modulo(n.first-from, n.width)
	for ; y < n.last; y += n.width {
		if y > n.first && solid(n.net, y-1, y+to-from+1) > beside {
			return true
		}
	}
	return false
}

// solid gives the longest stretch of x that is inside all the slabs from one
// height to another.
func solid(slabs []band.Slab, from, to int64) float64 {
	if len(slabs) == 0 || slabs[0].Y0 > from || slabs[len(slabs)-1].Y1 < to {
		return 0
	}
	part := clip(nil, slabs, from, to)
	if len(part) == 0 || part[len(part)-1].Y1 < to {
		return 0
	}
	var held []stretch
	for i := 0; i < len(part); {
		j := i
		var level []stretch
		for ; j < len(part) && part[j].Y0 == part[i].Y0; j++ {
			if s := (stretch{max(part[j].L0, part[j].L1), min(part[j].R0, part[j].R1)}); s.to > s.from {
				level = append(level, s)
			}
		}
		if i == 0 {
			held = level
		} else {
			held = common(nil, held, level)
		}
		i = j
	}
	longest := 0.0
	for _, s := range held {
		longest = max(longest, s.to-s.from)
	}
	return longest
}

// stretch is a part of a line along the roll.
type stretch struct{ from, to float64 }

// meets says whether a stretch and one of a list overlap.
func (s stretch) meets(list []stretch) bool {
	for _, t := range list {
		if max(s.from, t.from) < min(s.to, t.to) {
			return true
		}
	}
	return false
}

// common adds the stretches that lie in both of two rising lists.
func common(out, a, b []stretch) []stretch {
	for i, j := 0, 0; i < len(a) && j < len(b); {
		if s := (stretch{max(a[i].from, b[j].from), min(a[i].to, b[j].to)}); s.to > s.from {
			out = append(out, s)
		}
		if a[i].to < b[j].to {
			i++
		} else {
			j++
		}
	}
	return out
}
