package nest

import (
	"fmt"

	"stripwright/geometry"
)

// squeeze is what is known of plies that cannot be kept apart. Lengths are µm;
// asked and need hold the laying tolerance.
type squeeze struct {
	plies     []int // indices
	numbers   []int
	between   int
	asked     geometry.Micrometre
	need      geometry.Micrometre // if all of them shared one comb
	width     geometry.Micrometre
	widths    string              // of all of them, in words
	across    geometry.Micrometre // net part, across the roll
	blank     geometry.Micrometre // blank, across the roll
	tolerance geometry.Micrometre // laying tolerance, twice
	largest   geometry.Micrometre // largest stagger that is possible
	oneComb   bool                // same angle and width
	exhausted bool                // every arrangement was tried
}

// tooTight refuses a stagger: the plies that cannot be kept apart, what they
// would need, and the largest stagger that is possible.
func (p *planner) tooTight(m *model, exhausted bool) *Refusal {
	web := m.problem.Web
	run := web.Tightest()
	first := web.Plies[run[0]].Class
	q := squeeze{plies: run, widths: widths(m, run), width: geometry.Micrometre(first.Width),
		across: geometry.Micrometre(first.Across()), blank: geometry.Micrometre(first.Blank.Across()),
		tolerance: 2 * geometry.Micrometres(p.job.Rules.LayingToleranceMM), oneComb: web.OneComb(run), exhausted: exhausted}
	for _, i := range run {
		q.numbers = append(q.numbers, web.Plies[i].Number)
		q.between = max(q.between, web.Plies[i].Between)
		q.asked = max(q.asked, geometry.Micrometre(web.Plies[i].Stagger))
	}
	q.need = geometry.Micrometre(len(run)) * q.asked
	q.largest = max(0, geometry.Micrometre(web.Largest())-q.tolerance)
	return &Refusal{Rule: RuleStagger, Plies: q.numbers, LargestStaggerMM: q.largest.MM(), Text: q.text(), Cures: p.tightCures(q)}
}

// broad says whether the plies share one comb on a part two widths across: the
// closed form roll width over plies then holds.
func (q *squeeze) broad() bool { return q.oneComb && q.across >= 2*q.width }

func (q *squeeze) text() string {
	var s string
	switch {
	case q.broad() && q.need > q.width:
		s = fmt.Sprintf("plies %s (%d parallel, %d plies between asked) need %d × %s = %s mm; the roll is %s mm",
			numbers(q.numbers), len(q.plies), q.between, len(q.plies), mm(q.asked), mm(q.need), mm(q.width))
	case q.oneComb && !q.broad():
		s = fmt.Sprintf("plies %s cannot all be kept %s mm apart on a part %s mm across with rolls of %s mm",
			numbers(q.numbers), mm(q.asked), mm(q.across), mm(q.width))
	default:
		s = fmt.Sprintf("plies %s cannot all be kept %s mm apart on rolls of %s mm", numbers(q.numbers), mm(q.asked), q.widths)
	}
	s += fmt.Sprintf(": largest possible stagger %s mm", mm(q.largest))
	if q.hemmedIn() {
		s += "; the regions to keep clear and the narrowest strip leave no more room"
	}
	if q.tolerance > 0 {
		s += fmt.Sprintf(" (with the laying tolerance of %s mm on both sides)", mm(q.tolerance/2))
	}
	if !q.exhausted && !q.closed() {
		s += "; not every arrangement was tried"
	}
	return s
}

// closed says whether the largest stagger found is that of the closed form, to
// two micrometres.
func (q *squeeze) closed() bool {
	off := q.largest - (q.width/geometry.Micrometre(len(q.plies)) - q.tolerance)
	return q.broad() && -2 <= off && off <= 2
}

// hemmedIn says whether less is possible than the closed form allows, because
// some phases are barred.
func (q *squeeze) hemmedIn() bool {
	return q.broad() && q.largest < q.width/geometry.Micrometre(len(q.plies))-q.tolerance-2
}

func (p *planner) tightCures(q squeeze) []string {
	cures := []string{fmt.Sprintf("a stagger of %s mm", mm(q.largest))}
	if q.oneComb && !q.broad() {
		cures = append(cures, fmt.Sprintf("a roll of %s mm or wider, which needs no joint", mm(q.blank)))
	}
	if q.broad() && q.need > q.width {
		cures = append(cures, fmt.Sprintf("a roll of %s mm or wider", mm(q.need)))
		if k := int(q.width / q.asked); k >= 1 {
			if b := p.betweenFor(q.plies, k); b >= 0 {
				cures = append(cures, fmt.Sprintf("%d plies between", b))
			}
		}
	}
	if q.hemmedIn() {
		cures = append(cures, "smaller keep-clear regions, or a smaller narrowest strip")
	}
	return append(cures, "plies of other directions between them")
}

// betweenFor gives the most plies between at which no more than k of the plies
// must be kept apart, -1 for none.
func (p *planner) betweenFor(run []int, k int) int {
	for b := len(p.job.Plies); b >= 0; b-- {
		most := 0
		for i := range p.job.Plies {
			n := 0
			for j := i; j < len(p.job.Plies) && j <= i+b; j++ {
				if p.job.Plies[j].Angle() == p.job.Plies[run[0]].Angle() {
					n++
				}
			}
			most = max(most, n)
		}
		if most <= k {
			return b
		}
	}
	return -1
}
