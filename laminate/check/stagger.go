package check

import (
	"fmt"
	"math"
	"sort"

	"stripwright/laminate"
)

// Two joints up to parallel degrees apart in direction are held to the stagger;
// up to nearly degrees they are remarked on.
const (
	parallel = 5.0
	nearly   = 15.0
)

// stagger holds that joints of two plies run at least the stagger apart
// wherever fewer plies lie between them than asked: of the stagger and the
// plies between of both fabrics, the larger holds.
func stagger(l *laid) *finding {
	f := &finding{rule: RuleStagger, opening: doNotCut}
	s := &staggering{laid: l, fences: fences{}, least: math.Inf(1), f: f}
	s.bundles = bundles(l, s.fences)
	s.full = fullBelow(l)
	s.all()
	s.tell()
	return f
}

// staggering holds the state of the stagger rule.
type staggering struct {
	*laid
	fences  fences
	bundles [][]bundle
	full    []int // full plies below each ply
	f       *finding
	least   float64 // least stagger found so far, of pairs that matter
	remarks []string
	odd     int
	pairs   []pairFault
	crossed crossings
}

// pairFault is the worst place of one pair of plies, and how many there are.
type pairFault struct {
	i, j   int
	value  float64
	needed float64
	at     [2]float64
	places int
}

// fullBelow counts the plies below each that cover the whole part.
func fullBelow(l *laid) []int {
	out := make([]int, len(l.plies)+1)
	for i := range l.plies {
		out[i+1] = out[i]
		if l.plies[i].full {
			out[i+1]++
		}
	}
	return out
}

// all compares every two plies that have too few full plies between them.
func (s *staggering) all() {
	most := s.most()
	for i := range s.plies {
		s.f.counted += len(s.plies[i].seams)
		for j := i + 1; j < len(s.plies); j++ {
			need, between := s.rule(i, j)
			if s.full[j]-s.full[i+1] >= most {
				break
			}
			if need > 0 && s.full[j]-s.full[i+1] < between {
				s.compare(i, j, need, between)
			}
		}
	}
}

// rule gives the stagger and the plies between in force for two plies.
func (s *staggering) rule(i, j int) (mm float64, between int) {
	a, b := s.fabrics[s.plies[i].Fabric], s.fabrics[s.plies[j].Fabric]
	return math.Max(a.StaggerMM, b.StaggerMM), max(a.PliesBetween, b.PliesBetween)
}

// most is the most plies between that any fabric asks for.
func (s *staggering) most() int {
	n := 0
	for _, f := range s.plan.Fabrics {
		n = max(n, f.PliesBetween)
	}
	return n
}

// widest is the largest stagger that any fabric asks for.
func (s *staggering) widest() float64 {
	v := 0.0
	for _, f := range s.plan.Fabrics {
		v = math.Max(v, f.StaggerMM)
	}
	return v
}

func (s *staggering) compare(i, j int, need float64, between int) {
	pf := pairFault{i: i, j: j, value: math.Inf(1), needed: need}
	for _, a := range s.bundles[i] {
		for _, b := range s.bundles[j] {
			off := a.angle.Between(b.angle)
			switch {
			case off <= parallel:
				s.sideBySide(a, b, &pf, between, false)
			case off <= nearly:
				s.sideBySide(a, b, &pf, between, true)
			}
			if off > parallel {
				s.crossed.count(a, b)
			}
		}
	}
	if pf.places > 0 {
		s.pairs = append(s.pairs, pf)
	}
}

// sideBySide looks along both bundles, each sorted by level, and measures every
// two runs that may be nearer than the stagger or than the least found so far.
func (s *staggering) sideBySide(a, b bundle, pf *pairFault, between int, remark bool) {
	lines := b.seenFrom(a)
	tall := 0.0
	for _, e := range lines {
		tall = math.Max(tall, e.top()-e.bottom())
	}
	from := 0
	for _, r := range a.runs {
		reach := math.Max(pf.needed, s.least)
		if remark {
			reach = pf.needed
		}
		for from < len(lines) && lines[from].bottom() < r.y-reach-tall {
			from++
		}
		for k := from; k < len(lines) && lines[k].bottom() <= r.y+reach; k++ {
			s.measure(a, r, lines[k], pf, between, remark)
		}
	}
}

func (s *staggering) measure(a bundle, r run, e slanted, pf *pairFault, between int, remark bool) {
	d, over, ok := beside(r, e)
	if !ok || d >= math.Max(pf.needed, s.least) {
		return
	}
	middle := float64((over.x0 + over.x1) / 2)
	for _, bare := range s.bare(a, over, r.y, e.at(middle), pf.i, pf.j, between) {
		part := run{bare.x0, bare.x1, r.y}
		d, over, ok := beside(part, e)
		if !ok {
			continue
		}
		x := float64((over.x0 + over.x1) / 2)
		at := tidy(a.frame.Inverse().Apply(point{x, (r.y + e.at(x)) / 2}))
		if remark {
			s.remark(*pf, d, at)
		} else {
			s.found(pf, d, at)
		}
	}
}

func (s *staggering) found(pf *pairFault, d float64, at [2]float64) {
	if d < s.least {
		s.least = d
		s.f.worst = &laminate.Worst{ValueMM: d, Plies: []int{s.plies[pf.i].Ply, s.plies[pf.j].Ply}, At: at}
	}
	if d >= pf.needed-tolerance {
		return
	}
	pf.places++
	if d < pf.value {
		pf.value, pf.at = d, at
	}
}

func (s *staggering) remark(pf pairFault, d float64, at [2]float64) {
	if d >= pf.needed-tolerance {
		return
	}
	if s.odd++; s.odd <= 2 {
		s.remarks = append(s.remarks, fmt.Sprintf("look at plies %d and %d: joints of nearly one direction come within %s of each other, %s",
			s.plies[pf.i].Ply, s.plies[pf.j].Ply, mm(d), where(at)))
	}
}

// tell puts what was found into words.
func (s *staggering) tell() {
	sort.SliceStable(s.pairs, func(i, j int) bool {
		return s.pairs[i].needed-s.pairs[i].value > s.pairs[j].needed-s.pairs[j].value
	})
	for _, p := range s.pairs {
		a, b := s.plies[p.i].Ply, s.plies[p.j].Ply
		w := laminate.Worst{ValueMM: p.value, Plies: []int{a, b}, At: p.at}
		s.f.add(p.needed-p.value, w, "plies %d and %d, joints %s apart, %s needed, %s%s",
			a, b, mm(p.value), num(p.needed), where(p.at), furtherPlaces(p.places))
	}
	s.f.note = "no two joints with too few plies between run side by side"
	if w := s.f.worst; w != nil {
		s.f.note = fmt.Sprintf("least stagger %s, plies %d and %d, %s", mm(w.ValueMM), w.Plies[0], w.Plies[1], where(w.At))
	}
	s.f.remark = s.crossed.String()
	if p, ok := piled(s.laid, s.bundles, s.widest(), s.most()+1); ok {
		s.f.remark = join(s.f.remark, p.String())
	}
	for _, r := range s.remarks {
		s.f.remark = join(s.f.remark, r)
	}
	if n := s.odd - len(s.remarks); n > 0 {
		s.f.remark += fmt.Sprintf(" (and %d more)", n)
	}
}

func furtherPlaces(n int) string {
	if n <= 1 {
		return ""
	}
	return fmt.Sprintf(" and %d more places", n-1)
}
