package bound

import (
	"cmp"
	"math"
	"slices"
)

// option is a range of phases and the least that is wasted in it, µm².
type option struct {
	cell
	waste float64
}

// narrowed splits a cell into ranges that the stagger can tell apart.
func narrowed(c cell, width int64) []cell {
	return split(c, max(1, width/96))
}

// split divides a cell into ranges of so many phases.
func split(c cell, step int64) []cell {
	out := make([]cell, 0, (c.to-c.from)/step+1)
	for from := c.from; from <= c.to; from += step {
		out = append(out, cell{from, min(c.to, from+step-1)})
	}
	return out
}

// chooser finds the least waste of all plies together that the stagger leaves, for
// one list of ranges after another in the same room.
type chooser struct {
	*fabric
	options [][]option // of each shape, least waste first
	clashes map[clashKey]bool
	webs    map[webKey]*neighbours
	nodes   int
}

func (f *fabric) chooser() *chooser {
	return &chooser{fabric: f, options: make([][]option, len(f.shapes)), clashes: make(map[clashKey]bool), webs: make(map[webKey]*neighbours)}
}

type clashKey struct {
	webKey
	a, b cell
}

type webKey struct {
	shape   int
	stagger int64
}

// Bounds of the ranges of phase of a shape that are told apart.
const (
	mostOptions   = 400
	fewestOptions = 100
)

// coarse adds ranges, those that follow each other joined until they are few enough;
// a joined range wastes what the least of its parts does.
func coarse(out, list []option, most int) []option {
	each := (len(list) + most - 1) / most
	for i := 0; i < len(list); i += each {
		o := list[i]
		for _, p := range list[i:min(i+each, len(list))] {
			o.to, o.waste = p.to, min(o.waste, p.waste)
		}
		out = append(out, o)
	}
	return out
}

// leastWaste gives a waste that no choice of phases stays below. Plies that are
// not bound to each other, directly or through others, are looked at apart.
func (c *chooser) leastWaste(options [][]option) float64 {
	least, _ := c.leastOf(options)
	return least
}

// leastOf gives the least waste and ranges of phase of the plies that come to it,
// or near it where the search was cut short. It is then tried with wider ranges.
func (c *chooser) leastOf(options [][]option) (float64, []cell) {
	least, picks, whole := c.leastAmong(options, mostOptions)
	for most := mostOptions / 2; !whole && most >= fewestOptions; most /= 2 {
		var again float64
		var other []cell
		if again, other, whole = c.leastAmong(options, most); again > least {
			least, picks = again, other
		}
	}
	return least, picks
}

// leastAmong looks among so many ranges of each shape. Whole says that the search
// was not cut short.
func (c *chooser) leastAmong(options [][]option, most int) (least float64, picks []cell, whole bool) {
	for k, list := range options {
		c.options[k] = coarse(c.options[k][:0], list, most)
		slices.SortFunc(c.options[k], func(a, b option) int {
			return cmp.Or(cmp.Compare(a.waste, b.waste), cmp.Compare(a.from, b.from))
		})
	}
	c.nodes = max(1000, c.Nodes)
	picks = make([]cell, len(c.Plies))
	for _, plies := range c.bundles() {
		waste, taken := c.bundle(plies)
		least += waste
		for k, i := range plies {
			picks[i] = c.options[c.of[i]][taken[k]].cell
		}
	}
	return least, picks, c.nodes >= 0
}

// bundles groups the plies that are bound to each other.
func (f *fabric) bundles() [][]int {
	head := make([]int, len(f.Plies))
	for i := range head {
		head[i] = i
		for _, n := range f.Plies[i].Near {
			old, first := head[i], head[n.Ply]
			for k := 0; k <= i; k++ {
				if head[k] == old || head[k] == first {
					head[k] = min(old, first)
				}
			}
		}
	}
	var out [][]int
	at := make(map[int]int)
	for i, h := range head {
		if _, ok := at[h]; !ok {
			at[h] = len(out)
			out = append(out, nil)
		}
		out[at[h]] = append(out[at[h]], i)
	}
	return out
}

// bundle gives the least waste of plies that are bound to each other. The least
// of the last plies alone is found first, then of one more (Russian doll
// search; Verfaillie, Lemaître and Schiex, AAAI 1996).
func (c *chooser) bundle(plies []int) (float64, []int) {
	s := &dolls{chooser: c, plies: plies, rest: make([]float64, len(plies)+1), taken: make([]int, len(plies)), kept: make([]int, len(plies))}
	for k := len(plies) - 1; k >= 0; k-- {
		s.best = math.Inf(1)
		s.floor = s.rest[k+1] + c.options[c.of[plies[k]]][0].waste
		s.first, s.short = k, false
		s.take(k, 0)
		s.rest[k] = s.best
		if s.short || math.IsInf(s.best, 1) {
			s.rest[k] = s.floor
		}
	}
	return s.rest[0], s.kept
}

// dolls is the search over the plies of a bundle from first on.
type dolls struct {
	*chooser
	plies []int
	rest  []float64 // least waste of the plies from k on
	taken []int     // option of each ply
	kept  []int     // of the best so far
	first int
	best  float64
	floor float64 // nothing is less
	short bool    // the nodes were used up
}

// take tries the options of ply k, with sum wasted before it.
func (s *dolls) take(k int, sum float64) {
	if k == len(s.plies) {
		s.best = sum
		copy(s.kept[s.first:], s.taken[s.first:])
		return
	}
	const hair = 1 // µm²
	for o, opt := range s.options[s.of[s.plies[k]]] {
		if sum+opt.waste+s.rest[k+1] >= s.best-hair || s.best <= s.floor+hair || s.short {
			return
		}
		if s.nodes--; s.nodes < 0 {
			s.short = true
			return
		}
		if s.fits(k, o) {
			s.taken[k] = o
			s.take(k+1, sum+opt.waste)
		}
	}
}

// fits says whether option o of ply k may be clear of what is taken.
func (s *dolls) fits(k, o int) bool {
	i := s.plies[k]
	for _, n := range s.Plies[i].Near {
		j := slices.Index(s.plies, n.Ply)
		if j < s.first || s.of[i] != s.of[n.Ply] {
			continue // not taken yet, or never side by side for certain
		}
		if s.clash(s.of[i], o, s.taken[j], n.Stagger) {
			return false
		}
	}
	return true
}

// clash says whether two options of a shape exclude each other.
func (c *chooser) clash(shape, a, b int, stagger int64) bool {
	key := clashKey{webKey{shape, stagger}, c.options[shape][a].cell, c.options[shape][b].cell}
	if key.b.from < key.a.from {
		key.a, key.b = key.b, key.a
	}
	v, ok := c.clashes[key]
	if !ok {
		n := c.webs[key.webKey]
		if n == nil {
			n = newNeighbours(c.shapes[shape], c.Width, stagger)
			c.webs[key.webKey] = n
		}
		v = n.clash(key.a, key.b)
		c.clashes[key] = v
	}
	return v
}
