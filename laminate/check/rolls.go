package check

import (
	"math"

	"stripwright/geometry"
	"stripwright/laminate"
)

// rolls holds what is cut against what is on the roll: pieces within the usable
// width and the stock length, none over another, the cutting gap between them,
// the used length true, the order of cutting without a break, no roll used
// twice.
func rolls(l *laid) *finding {
	f := &finding{rule: RuleRolls, opening: doNotCut, note: "pieces lie on their rolls, clear of each other"}
	seen := map[rollKey]laminate.PlanRoll{}
	for i, r := range l.plan.Rolls {
		f.counted += len(r.Pieces)
		judgeRollHead(f, l, seen, r)
		judgeOrder(f, l, i)
		used := 0.0
		for k := range r.Pieces {
			used = math.Max(used, judgePlace(f, l, i, k))
		}
		if off := math.Abs(used - r.UsedLengthMM); off > tolerance {
			w := laminate.Worst{ValueMM: used, At: [2]float64{used, 0}}
			f.add(off, w, "%s: the last cut is at %s, not at the %s it says", rollName(r), mm(used), mm(r.UsedLengthMM))
		}
		if judgeOverlap(f, l, i) {
			judgeCuttingGap(f, l, i)
		}
	}
	return f
}

type rollKey struct {
	fabric, roll string
	copy         int
}

// judgeRollHead holds the figures of a roll, and that copies are of one kind
// and each listed once.
func judgeRollHead(f *finding, l *laid, seen map[rollKey]laminate.PlanRoll, r laminate.PlanRoll) {
	w := laminate.Worst{}
	if _, ok := l.fabrics[r.Fabric]; !ok {
		f.add(1e6, w, "%s is of fabric %q, which the plan does not list", rollName(r), r.Fabric)
	}
	if len(r.Pieces) == 0 {
		f.add(1, w, "%s has no pieces", rollName(r))
	}
	if r.UsableWidthMM > r.WidthMM+tolerance || r.UsableWidthMM <= 0 {
		w := laminate.Worst{ValueMM: r.UsableWidthMM}
		f.add(r.UsableWidthMM-r.WidthMM, w, "%s is %s wide and cannot have %s usable", rollName(r), mm(r.WidthMM), mm(r.UsableWidthMM))
	}
	key := rollKey{r.Fabric, r.Roll, r.Copy}
	if _, ok := seen[key]; ok || r.Copy < 1 {
		f.add(1e6, w, "%s of %q is listed twice, or is no copy of a roll", rollName(r), r.Fabric)
	}
	seen[key] = r
	kind := rollKey{r.Fabric, r.Roll, 0}
	if k, ok := seen[kind]; !ok {
		seen[kind] = r
	} else if !sameKind(k, r) {
		f.add(10, w, "%s differs in width or length from copy %d of the same roll", rollName(r), k.Copy)
	}
}

func sameKind(a, b laminate.PlanRoll) bool {
	if (a.StockLengthMM == nil) != (b.StockLengthMM == nil) {
		return false
	}
	if a.StockLengthMM != nil && math.Abs(*a.StockLengthMM-*b.StockLengthMM) > tolerance {
		return false
	}
	return math.Abs(a.WidthMM-b.WidthMM) <= tolerance && math.Abs(a.UsableWidthMM-b.UsableWidthMM) <= tolerance
}

// judgeOrder: the order of cutting runs 1, 2, … without a break.
func judgeOrder(f *finding, l *laid, i int) {
	r := l.plan.Rolls[i]
	seen := make([]bool, len(r.Pieces)+1)
	for k, c := range r.Pieces {
		if c.CutOrder < 1 || c.CutOrder > len(r.Pieces) || seen[c.CutOrder] {
			f.add(0.5, l.pieceWorst(i, k), "%s: %s is cut as no. %d, which is taken or not among 1 to %d", rollName(r), c.ID, c.CutOrder, len(r.Pieces))
			return
		}
		seen[c.CutOrder] = true
	}
}

// judgePlace holds a piece against the edges and the end of its roll, and gives
// its far end.
func judgePlace(f *finding, l *laid, i, k int) float64 {
	r := l.plan.Rolls[i]
	c, b := r.Pieces[k], r.Pieces[k].Shape.Bounds()
	over := math.Max(-b.Min[1], b.Max[1]-r.UsableWidthMM)
	if over > tolerance {
		w := l.pieceWorst(i, k)
		w.ValueMM = over
		f.add(over, w, "%s on %s runs %s over the edge of the usable width of %s", c.ID, rollName(r), mm(over), mm(r.UsableWidthMM))
	}
	if -b.Min[0] > tolerance {
		w := l.pieceWorst(i, k)
		w.ValueMM = -b.Min[0]
		f.add(-b.Min[0], w, "%s starts %s before the free end of %s", c.ID, mm(-b.Min[0]), rollName(r))
	}
	if s := r.StockLengthMM; s != nil && b.Max[0]-*s > tolerance {
		w := l.pieceWorst(i, k)
		w.ValueMM = b.Max[0] - *s
		f.add(w.ValueMM, w, "%s runs %s past the end of %s, which is %s long", c.ID, mm(w.ValueMM), rollName(r), mm(*s))
	}
	return b.Max[0]
}

// judgeOverlap sweeps along the roll: no place belongs to two pieces. It says
// whether it found nothing.
func judgeOverlap(f *finding, l *laid, i int) bool {
	r := l.plan.Rolls[i]
	shapes := make([]shape, len(r.Pieces))
	for k, c := range r.Pieces {
		shapes[k] = shapeIn(c.Shape, alongRoll)
	}
	edges := room(shapes...)
	for k, s := range shapes {
		edges = addEdges(edges, s, int32(k))
	}
	found, ok := sweep(edges, len(r.Pieces), func(inside []int32) (kind, int32, int32) {
		if len(inside) > 1 {
			return overlap, inside[0], inside[1]
		}
		return sound, 0, 0
	})
	if !ok {
		f.add(1e9, laminate.Worst{}, "%s: the outlines are too intricate to be judged", rollName(r))
	}
	for _, t := range found {
		at := [2]float64{t.at[1], -t.at[0]}
		w := l.pieceWorst(i, int(t.b))
		w.ValueMM, w.At = t.value, at
		a, b := r.Pieces[t.a].ID, r.Pieces[t.b].ID
		if t.a == t.b {
			f.add(t.value, w, "%s: the edge of %s crosses itself", rollName(r), a)
			continue
		}
		f.add(t.value, w, "%s: %s and %s lie over each other for %s, %s", rollName(r), a, b, mm(t.value), onRoll(at))
	}
	return ok && len(found) == 0
}

// alongRoll turns the roll frame so that levels run across the roll: few
// pieces lie on one level, however long the roll is.
var alongRoll = geometry.Turned(90)
