package check

import (
	"fmt"
	"runtime"
	"slices"
	"sync"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

// blankOwner is the owner number of a ply's blank in a sweep; strip k of the
// ply is owner k+1.
const blankOwner = 0

// coverage holds that the strips of every ply cover its blank exactly once:
// nothing bare, nothing double, nothing outside; and that the part's blank is
// its net outline with the trim allowance all round.
func coverage(l *laid) *finding {
	f := &finding{rule: RuleCoverage, opening: doNotCut, note: "every ply is covered exactly once"}
	netInBlank(f, l.plan.Part)
	if len(f.faults) == 0 {
		trim(f, l.plan.Part)
	}
	for _, part := range coverPlies(l.plies) {
		f.merge(part)
	}
	return f
}

// coverPlies judges the plies side by side.
func coverPlies(plies []laidPly) []*finding {
	parts := make([]*finding, len(plies))
	next := make(chan int)
	var all sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(plies)) {
		all.Go(func() {
			for i := range next {
				parts[i] = &finding{counted: 1}
				coverPly(parts[i], &plies[i])
			}
		})
	}
	for i := range plies {
		next <- i
	}
	close(next)
	all.Wait()
	return parts
}

func coverPly(f *finding, y *laidPly) {
	edges := addEdges(room(slices.Concat(y.shapes, []shape{y.blank})...), y.blank, blankOwner)
	for k, s := range y.shapes {
		edges = addEdges(edges, s, int32(k+1))
	}
	found, ok := sweep(edges, len(y.shapes)+1, judgePly)
	if !ok {
		tooIntricate(f, y.Ply, y.Blank)
	}
	for _, t := range found {
		at := y.back(t.at[0], t.at[1])
		w := laminate.Worst{ValueMM: t.value, Plies: []int{y.Ply}, At: at, Piece: y.owner(t.b)}
		f.add(t.value, w, "ply %d: %s, %s", y.Ply, y.wrong(t), where(at))
	}
}

// judgePly: inside the blank there is one strip, outside none.
func judgePly(inside []int32) (kind, int32, int32) {
	blank, first, second := false, int32(-1), int32(-1)
	for _, o := range inside {
		switch {
		case o == blankOwner:
			blank = true
		case first < 0:
			first = o
		case second < 0:
			second = o
		}
	}
	switch {
	case second >= 0:
		return overlap, first, second
	case blank && first < 0:
		return gap, blankOwner, blankOwner
	case !blank && first >= 0:
		return outside, blankOwner, first
	}
	return sound, 0, 0
}

func (y *laidPly) owner(o int32) string {
	if o <= 0 || int(o) > len(y.Strips) {
		return ""
	}
	return y.Strips[o-1].ID
}

// wrong puts trouble of a ply into words.
func (y *laidPly) wrong(t trouble) string {
	a, b := y.owner(t.a), y.owner(t.b)
	switch {
	case t.kind == gap:
		return fmt.Sprintf("bare for %s", mm(t.value))
	case t.kind == overlap:
		return fmt.Sprintf("%s and %s lie over each other for %s", a, b, mm(t.value))
	case t.kind == outside:
		return fmt.Sprintf("%s runs %s outside the blank", b, mm(t.value))
	case t.a == t.b && b == "":
		return "the blank's own edge crosses itself"
	case t.a == t.b:
		return fmt.Sprintf("the edge of %s crosses itself", b)
	case a == "":
		return fmt.Sprintf("%s crosses the blank's edge by %s", b, mm(t.value))
	}
	return fmt.Sprintf("%s and %s cross by %s", a, b, mm(t.value))
}

// netInBlank: where there is net part there is blank.
func netInBlank(f *finding, p laminate.PlanPart) {
	f.counted++
	turn := geometry.PlyFrame(0)
	edges := addEdges(nil, shapeIn(p.Blank, turn), 0)
	edges = addEdges(edges, shapeIn(p.Net, turn), 1)
	found, ok := sweep(edges, 2, func(inside []int32) (kind, int32, int32) {
		if len(inside) == 1 && inside[0] == 1 {
			return outside, 0, 1
		}
		return sound, 0, 0
	})
	if !ok {
		tooIntricate(f, 0, p.Blank)
	}
	for _, t := range found {
		w := laminate.Worst{ValueMM: t.value, At: t.at}
		f.add(t.value, w, "%s, %s", netTrouble(t), where(t.at))
	}
}

func netTrouble(t trouble) string {
	switch {
	case t.kind == outside:
		return "the net edge lies " + mm(t.value) + " outside the blank"
	case t.a != t.b:
		return "the net edge crosses the edge of the blank by " + mm(t.value)
	case t.a == 0:
		return "the edge of the blank crosses itself"
	}
	return "the net edge crosses itself"
}

func tooIntricate(f *finding, ply int, r geometry.Region) {
	at := orb.Point{}
	if len(r.Outer) > 0 {
		at = r.Outer[0]
	}
	if ply == 0 {
		f.add(1e9, laminate.Worst{At: at}, "the part's outlines are too intricate to be judged: simplify them")
		return
	}
	w := laminate.Worst{Plies: []int{ply}, At: at}
	f.add(1e9, w, "ply %d: the outlines are too intricate to be judged: simplify them", ply)
}
