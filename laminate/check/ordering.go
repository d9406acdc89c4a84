package check

import (
	"math"

	"stripwright/geometry"
	"stripwright/laminate"
)

// order holds the lengths to buy and the weight of each ply against the rolls
// and the blanks.
func order(l *laid) *finding {
	f := &finding{rule: RuleOrder, opening: doNotOrder, note: "lengths and weights are true to the rolls and plies"}
	judgeLengths(f, l)
	judgeQuantities(f, l)
	return f
}

type clothKey struct {
	fabric string
	width  geometry.Micrometre
}

// judgeLengths: one entry for each fabric and width in use, its used length the
// sum of the rolls', and no less to buy than rolls without a stated length take
// with spare.
func judgeLengths(f *finding, l *laid) {
	used, endless := map[clothKey]float64{}, map[clothKey]float64{}
	var keys []clothKey
	for _, r := range l.plan.Rolls {
		k := clothKey{r.Fabric, geometry.Micrometres(r.WidthMM)}
		if _, ok := used[k]; !ok {
			keys = append(keys, k)
		}
		used[k] += r.UsedLengthMM
		if r.StockLengthMM == nil {
			endless[k] += r.UsedLengthMM
		}
	}
	listed := map[clothKey]bool{}
	for _, e := range l.plan.Lengths {
		f.counted++
		k := clothKey{e.Fabric, geometry.Micrometres(e.WidthMM)}
		w := laminate.Worst{ValueMM: e.UsedMM}
		if listed[k] {
			f.add(1e6, w, "%s of %q is listed twice", mm(e.WidthMM), e.Fabric)
		}
		listed[k] = true
		if off := math.Abs(e.UsedMM - used[k]); off > cent+float64(tolerance*float64(len(l.plan.Rolls))) {
			f.add(off, w, "%s of %q: %s said to be used, the rolls add up to %s", mm(e.WidthMM), e.Fabric, mm(e.UsedMM), mm(used[k]))
		}
		least := float64(endless[k] * (1 + l.plan.Rules.SparePercent/100))
		if e.ToBuyMM < least-cent || e.ToBuyMM < 0 {
			f.add(least-e.ToBuyMM, w, "%s of %q: %s to buy, %s needed with spare", mm(e.WidthMM), e.Fabric, mm(e.ToBuyMM), mm(least))
		}
	}
	for _, k := range keys {
		if !listed[k] {
			f.add(used[k], laminate.Worst{ValueMM: used[k]}, "%s of %q is used and not listed", mm(k.width.MM()), k.fabric)
		}
	}
}

// judgeQuantities: each ply's area and dry weight, once.
func judgeQuantities(f *finding, l *laid) {
	byPly := map[int]laminate.PlyQuantity{}
	for _, q := range l.plan.Quantities {
		byPly[q.Ply] = q
	}
	if n := len(l.plan.Quantities); n != len(l.plies) {
		f.add(1, laminate.Worst{}, "weights are listed for %d plies of %d", n, len(l.plies))
	}
	for _, y := range l.plies {
		f.counted++
		q, ok := byPly[y.Ply]
		w := laminate.Worst{Plies: []int{y.Ply}}
		area := y.Blank.Area()
		grams := float64(area / 1e6 * l.fabrics[y.Fabric].WeightGSM)
		switch {
		case !ok:
			f.add(3, w, "ply %d: no weight is listed", y.Ply)
		case math.Abs(q.AreaMM2-area) > cent+float64(1e-8*area):
			f.add(2, w, "ply %d: the blank is said to be %.1f mm² and is %.1f mm²", y.Ply, q.AreaMM2, area)
		case math.Abs(q.DryG-grams) > cent+float64(1e-6*grams):
			f.add(2, w, "ply %d: said to weigh %s g dry, its area makes it %s g", y.Ply, num(q.DryG), num(grams))
		}
	}
}
