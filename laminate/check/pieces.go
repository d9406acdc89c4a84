package check

import (
	"fmt"

	"stripwright/geometry"
	"stripwright/laminate"
)

// pieces holds that every strip is cut exactly once, from a roll of its
// fabric, and that each piece is its strip: turned into the roll's direction,
// mirrored when the ply lies face down, turned end for end only where the cloth
// allows it; where ends are cut straight, the oblong about its strip.
func pieces(l *laid) *finding {
	f := &finding{rule: RulePieces, opening: doNotCut, note: "every strip is cut once, and each piece is its strip"}
	cut := map[string]int{}
	for i, r := range l.plan.Rolls {
		for k, c := range r.Pieces {
			f.counted++
			cut[c.ID]++
			if cut[c.ID] == 2 {
				f.add(1e6, l.pieceWorst(i, k), "%s is cut twice: again from %s", c.ID, rollName(r))
			}
			at, ok := l.strips[c.ID]
			if !ok {
				f.add(1e6, l.pieceWorst(i, k), "%s on %s is no strip of any ply", c.ID, rollName(r))
				continue
			}
			judgePiece(f, l, i, k, at)
		}
	}
	for i := range l.plies {
		for k, s := range l.plies[i].Strips {
			if cut[s.ID] == 0 {
				f.add(1e6, l.plies[i].stripWorst(k), "ply %d: %s is not cut from any roll", l.plies[i].Ply, s.ID)
			}
		}
	}
	return f
}

// pieceWorst points to the middle of a piece on its roll.
func (l *laid) pieceWorst(i, k int) laminate.Worst {
	c := l.plan.Rolls[i].Pieces[k]
	b := c.Shape.Bounds()
	w := laminate.Worst{Piece: c.ID, At: [2]float64{(b.Min[0] + b.Max[0]) / 2, (b.Min[1] + b.Max[1]) / 2}}
	if at, ok := l.strips[c.ID]; ok {
		w.Plies = []int{l.plies[at.in].Ply}
	}
	return w
}

func judgePiece(f *finding, l *laid, i, k int, at place) {
	r := l.plan.Rolls[i]
	c, y, w := r.Pieces[k], &l.plies[at.in], l.pieceWorst(i, k)
	down := y.Face == laminate.FaceDown
	if r.Fabric != y.Fabric {
		f.add(1e5, w, "%s of ply %d is of %q and is cut from %s of %q", c.ID, y.Ply, y.Fabric, rollName(r), r.Fabric)
	}
	if c.Turned != 0 && c.Turned != 180 {
		f.add(1e4, w, "%s is turned by %d°: a piece lies straight or end for end", c.ID, c.Turned)
		return
	}
	if want := straight(y); !l.fabrics[y.Fabric].Turn && c.Turned != want {
		f.add(1e4, w, "%s of ply %d is turned by %d°, and %q may not be turned: %d° needed", c.ID, y.Ply, c.Turned, y.Fabric, want)
	}
	if c.Mirrored != down {
		f.add(1e4, w, "%s of ply %d, face %s, is%s mirrored: it would come out wrong side up", c.ID, y.Ply, y.Face, not(c.Mirrored))
	}
	judgeOutline(f, y, at.of, c, w)
}

// straight gives the only turn allowed for cloth that may not be turned.
func straight(y *laidPly) int {
	if y.Reversed {
		return 180
	}
	return 0
}

func not(b bool) string {
	if b {
		return ""
	}
	return " not"
}

// judgeOutline holds a piece against its strip; when they differ, it says which
// mirror or turn would make them one, if any does.
func judgeOutline(f *finding, y *laidPly, strip int, c laminate.Piece, w laminate.Worst) {
	got := shapeIn(c.Shape, geometry.Turned(0))
	if fits(y, strip, got, c.Mirrored, c.Turned) {
		return
	}
	for _, mirrored := range []bool{c.Mirrored, !c.Mirrored} {
		for _, turned := range []int{c.Turned, 180 - c.Turned} {
			if fits(y, strip, got, mirrored, turned) {
				f.add(1e3, w, "%s of ply %d is cut %s and is said to be %s", c.ID, y.Ply, lies(mirrored, turned), lies(c.Mirrored, c.Turned))
				return
			}
		}
	}
	lo, hi := y.shapes[strip].bounds()
	gl, gh := got.bounds()
	w.ValueMM = larger((gh[0]-gl[0])-(hi[0]-lo[0]), (gh[1]-gl[1])-(hi[1]-lo[1]))
	f.add(1e3, w, "%s of ply %d is not its strip: %s × %s on the roll, %s × %s in the ply",
		c.ID, y.Ply, num(gh[0]-gl[0]), mm(gh[1]-gl[1]), num(hi[0]-lo[0]), mm(hi[1]-lo[1]))
}

// larger gives the value of the larger size.
func larger(a, b float64) float64 {
	if b*b > a*a {
		return b
	}
	return a
}

func lies(mirrored bool, turned int) string {
	return fmt.Sprintf("%s, turned %d°", map[bool]string{true: "mirrored", false: "unmirrored"}[mirrored], turned)
}

// fits says whether a piece is the strip, mirrored and turned so, wherever it
// lies on the roll.
func fits(y *laidPly, strip int, got shape, mirrored bool, turned int) bool {
	want := y.shapes[strip]
	if y.square {
		want = want.oblong()
	}
	want = want.onRoll(mirrored, turned == 180)
	wl, wh := want.bounds()
	gl, gh := got.bounds()
	for k := range wl {
		if off := (gh[k] - gl[k]) - (wh[k] - wl[k]); off > 2*tolerance || off < -2*tolerance {
			return false
		}
	}
	return same(want.moved(point{
		((gl[0] - wl[0]) + (gh[0] - wh[0])) / 2,
		((gl[1] - wl[1]) + (gh[1] - wh[1])) / 2,
	}), got)
}

// oblong gives what is cut for a strip whose ends are cut straight.
func (s shape) oblong() shape {
	lo, hi := s.bounds()
	return shape{{lo, {hi[0], lo[1]}, hi, {lo[0], hi[1]}}}
}

// onRoll gives a strip as it is cut: mirrored across the roll direction when
// the ply lies face down, then turned end for end. Rings keep the cloth on
// their left.
func (s shape) onRoll(mirrored, turned bool) shape {
	sx, sy := 1.0, 1.0
	if mirrored {
		sy = -1
	}
	if turned {
		sx, sy = -sx, -sy
	}
	out := make(shape, len(s))
	for i, r := range s {
		m := make([]point, len(r))
		for k, p := range r {
			at := k
			if mirrored {
				at = len(r) - 1 - k
			}
			m[at] = point{sx * p[0], sy * p[1]}
		}
		out[i] = m
	}
	return out
}
