package geometry

import (
	"slices"
	"sort"
)

// passing lists the edges that pass the present height of a sweep, from left
// to right, in short runs, so that to let one in or out moves few others. No
// run is empty.
type passing struct {
	sweep *clearSweep
	runs  [][]int32
}

// place is where an edge is listed; the place after the last edge has the
// number of runs for its run.
type place struct{ run, at int }

// longestRun is the length at which a run is cut in two.
const longestRun = 128

// find gives the place of the first edge that does not pass left of a point.
func (l *passing) find(p gridPoint) place {
	passesLeft := func(e int32) bool { return l.sweep.sideOf(e, p) < 0 }
	run := sort.Search(len(l.runs), func(i int) bool { return !passesLeft(l.runs[i][len(l.runs[i])-1]) })
	if run == len(l.runs) {
		return place{run, 0}
	}
	return place{run, sort.Search(len(l.runs[run]), func(i int) bool { return !passesLeft(l.runs[run][i]) })}
}

// edge gives the edge at a place, none beyond either end.
func (l *passing) edge(p place) int32 {
	if p.run < 0 || p.run >= len(l.runs) {
		return none
	}
	return l.runs[p.run][p.at]
}

// left gives the place before another; before the first it has run -1.
func (l *passing) left(p place) place {
	switch {
	case p.run >= 0 && p.at > 0:
		return place{p.run, p.at - 1}
	case p.run > 0:
		return place{p.run - 1, len(l.runs[p.run-1]) - 1}
	}
	return place{-1, 0}
}

// right gives the place after another.
func (l *passing) right(p place) place {
	if p.run < len(l.runs) && p.at+1 < len(l.runs[p.run]) {
		return place{p.run, p.at + 1}
	}
	return place{p.run + 1, 0}
}

func (l *passing) replace(p place, e int32) { l.runs[p.run][p.at] = e }

// insert lists two edges in front of a place.
func (l *passing) insert(p place, e, f int32) {
	if len(l.runs) == 0 {
		l.runs = [][]int32{{e, f}}
		return
	}
	if p.run == len(l.runs) {
		p.run--
		p.at = len(l.runs[p.run])
	}
	run := slices.Insert(l.runs[p.run], p.at, e, f)
	l.runs[p.run] = run
	if half := len(run) / 2; len(run) > longestRun {
		l.runs = slices.Insert(l.runs, p.run+1, slices.Clone(run[half:]))
		l.runs[p.run] = run[:half]
	}
}

// removeTwo takes the edge at a place and the one after it off the list.
func (l *passing) removeTwo(p place) {
	second := l.right(p)
	l.remove(second) // first, as it moves nothing before it
	l.remove(p)
}

func (l *passing) remove(p place) {
	l.runs[p.run] = slices.Delete(l.runs[p.run], p.at, p.at+1)
	if len(l.runs[p.run]) == 0 {
		l.runs = slices.Delete(l.runs, p.run, p.run+1)
	}
}
