package check

import (
	"math"

	"stripwright/laminate"
)

// strips holds that every strip has an id of its own, the width it says, fits
// the roll it is cut from and is no narrower than allowed. A strip that no
// joint bounds is as wide as the blank there and may be narrow.
func strips(l *laid) *finding {
	f := &finding{rule: RuleStrips, opening: doNotCut, note: "every strip has its width"}
	seen := map[string]int{}
	for i := range l.plies {
		y := &l.plies[i]
		cut := y.bounded()
		for k := range y.Strips {
			f.counted++
			id := y.Strips[k].ID
			w := y.stripWorst(k)
			if text := wrongID(id, y.Ply); text != "" {
				f.add(1e6, w, "%s", text)
			}
			if first, ok := seen[id]; ok {
				f.add(1e6, w, "strip id %s is used twice, in plies %d and %d", id, first, y.Ply)
			}
			seen[id] = y.Ply
			judgeWidth(f, l, y, k, cut[k])
		}
	}
	return f
}

// bounded says which strips of a ply have a seam.
func (y *laidPly) bounded() []bool {
	out := make([]bool, len(y.Strips))
	for _, s := range y.seams {
		out[s.below], out[s.above] = true, true
	}
	return out
}

// stripWorst points to the middle of a strip.
func (y *laidPly) stripWorst(k int) laminate.Worst {
	lo, hi := y.shapes[k].bounds()
	return laminate.Worst{
		Plies: []int{y.Ply}, Piece: y.Strips[k].ID,
		At: y.back((lo[0]+hi[0])/2, (lo[1]+hi[1])/2),
	}
}

func judgeWidth(f *finding, l *laid, y *laidPly, k int, bounded bool) {
	lo, hi := y.shapes[k].bounds()
	across, s, w := hi[1]-lo[1], y.Strips[k], y.stripWorst(k)
	if off := math.Abs(across - s.WidthMM); off > tolerance {
		w.ValueMM = across
		f.add(off, w, "ply %d: %s is said to be %s wide and is %s", y.Ply, s.ID, mm(s.WidthMM), mm(across))
	}
	if least := l.plan.Rules.NarrowestMM; bounded && across < least-tolerance {
		w.ValueMM = across
		f.add(least-across, w, "ply %d: %s is %s wide, %s needed", y.Ply, s.ID, mm(across), mm(least))
	}
	at, ok := l.rolls[s.ID]
	if !ok {
		return
	}
	r := l.plan.Rolls[at.in]
	if over := across - r.UsableWidthMM; over > tolerance {
		w.ValueMM = across
		f.add(over, w, "ply %d: %s is %s wide, %s gives %s", y.Ply, s.ID, mm(across), rollName(r), mm(r.UsableWidthMM))
	}
}
