package bound

import "slices"

// weighing weighs one profile after another by many arguments, in the same room.
type weighing struct {
	width float64
	cores []known // of a cluster
	sums  []float64
}

// of gives the least weight of a range of phases by each argument, µm along the
// roll. Plain area is not added up piece by piece, which would lose what a cut may
// move to either side of it: all of it counts, less the parts that do not.
func (w *weighing) of(p *profile, s *shape, args []walled) []float64 {
	w.sums = w.sums[:0]
	for i := range args {
		sum := 0.0
		if args[i].plain() {
			sum = (s.area - p.slivers) / w.width
		}
		w.sums = append(w.sums, sum)
	}
	for _, c := range p.clusters {
		w.take(c)
		for i := range args {
			w.sums[i] += args[i].ofCluster(w.cores, scale{w.width, s.off})
		}
	}
	return w.sums
}

// take begins with a cluster.
func (w *weighing) take(c cluster) {
	w.cores = w.cores[:0]
	for i := range c {
		w.cores = longer(w.cores)
		k := &w.cores[i]
		k.core, k.levels, k.finds = &c[i], k.levels[:0], k.finds[:0]
	}
}

// longer adds an element, the one that was there before if there was one, so that
// its room is used again.
func longer[T any](list []T) []T {
	if len(list) < cap(list) {
		return list[:len(list)+1]
	}
	var more T
	return append(list, more)
}

// known is a core with what arguments have found of it: many ask the same.
type known struct {
	*core
	levels []levelled
	finds  []finding
}

// levelled is where a core is longer across the roll than a height.
type levelled struct {
	above float64
	list  []stretch
}

// stretches gives where the core is longer than a height.
func (k *known) stretches(above float64) []stretch {
	for i := range k.levels {
		if k.levels[i].above == above {
			return k.levels[i].list
		}
	}
	k.levels = longer(k.levels)
	l := &k.levels[len(k.levels)-1]
	l.above, l.list = above, k.core.stretches(l.list[:0], above)
	return l.list
}

// manner is how the lines of a core that are not closed off weigh.
type manner struct {
	weight
	open int     // what counts of them
	thin float64 // of narrow walls
}

// What counts outside the closed places.
const (
	countAll = iota
	countNone
	countParts    // some parts
	countStraight // some parts, and beside them what runs straight along the piece
)

// finding is what a core was last found to weigh in a manner, with the stretches that
// were closed and those that counted.
type finding struct {
	manner
	closed, parts []stretch
	sum           float64
}

// same says whether that was asked for.
func (b *finding) same(closed, parts []stretch) bool {
	return slices.Equal(b.closed, closed) && slices.Equal(b.parts, parts)
}

// last gives what was last found in a manner, and whether anything was.
func (k *known) last(m manner) (last *finding, ok bool) {
	for i := range k.finds {
		if k.finds[i].manner == m {
			return &k.finds[i], true
		}
	}
	k.finds = longer(k.finds)
	last = &k.finds[len(k.finds)-1]
	last.manner = m
	return last, false
}
