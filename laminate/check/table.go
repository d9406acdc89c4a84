package check

import (
	"fmt"

	"stripwright/laminate"
)

// table holds that the cuts across a roll are clear of every piece, and that
// no stretch between them is longer than the cutting table.
func table(l *laid) *finding {
	f := &finding{rule: RuleTable, opening: doNotCut, note: "no cutting table is stated"}
	longest := 0.0
	for i, r := range l.plan.Rolls {
		f.counted += len(r.CrossCuts)
		judgeCuts(f, l, i)
		from := 0.0
		for _, c := range append(append([]float64{}, r.CrossCuts...), r.UsedLengthMM) {
			if c-from > longest {
				longest = c - from
				f.worst = &laminate.Worst{ValueMM: longest, At: [2]float64{from, 0}}
			}
			judgeStretch(f, l, r, from, c)
			from = c
		}
	}
	if l.plan.Rules.TableMM != nil {
		f.note = fmt.Sprintf("longest stretch on the table %s", mm(longest))
	}
	return f
}

func judgeStretch(f *finding, l *laid, r laminate.PlanRoll, from, to float64) {
	t := l.plan.Rules.TableMM
	if t == nil || *t <= 0 || to-from <= *t+tolerance {
		return
	}
	w := laminate.Worst{ValueMM: to - from, At: [2]float64{from, 0}}
	f.add(to-from-*t, w, "%s: the stretch from %s to %s is longer than the table of %s", rollName(r), mm(from), mm(to), mm(*t))
}

// judgeCuts: cuts rise, lie on the cloth and run through no piece.
func judgeCuts(f *finding, l *laid, i int) {
	r := l.plan.Rolls[i]
	last := 0.0
	for _, c := range r.CrossCuts {
		if c <= last || c >= r.UsedLengthMM+tolerance {
			f.add(1, laminate.Worst{ValueMM: c, At: [2]float64{c, 0}}, "%s: the cross cut at %s is out of order or off the cloth", rollName(r), mm(c))
			return
		}
		last = c
	}
	for k, p := range r.Pieces {
		b := p.Shape.Bounds()
		for j := firstAbove(r.CrossCuts, b.Min[0]+tolerance); j < len(r.CrossCuts) && r.CrossCuts[j] < b.Max[0]-tolerance; j++ {
			w := l.pieceWorst(i, k)
			w.ValueMM, w.At = r.CrossCuts[j], [2]float64{r.CrossCuts[j], b.Min[1]}
			f.add(100, w, "%s: the cross cut at %s runs through %s", rollName(r), mm(r.CrossCuts[j]), p.ID)
		}
	}
}

// firstAbove gives the first of rising values that is above v.
func firstAbove(rising []float64, v float64) int {
	lo, hi := 0, len(rising)
	for lo < hi {
		if m := (lo + hi) / 2; rising[m] > v {
			hi = m
		} else {
			lo = m + 1
		}
	}
	return lo
}
