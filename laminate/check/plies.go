package check

import (
	"fmt"
	"regexp"
	"strconv"

	"stripwright/laminate"
)

// plies holds that plies are numbered from the tool up without a break, that
// each names a fabric and a face, that a ply without an outline of its own has
// the part's blank, and that patches and named corners lie on the part.
func plies(l *laid) *finding {
	f := &finding{rule: RulePlies, opening: doNotCut, note: "plies are numbered from the tool without a break"}
	if len(l.plies) == 0 {
		f.add(1, laminate.Worst{}, "the plan has no plies")
	}
	for i := range l.plies {
		f.counted++
		judgePlyHead(f, l, i)
	}
	patches(f, l)
	marks(f, l.plan.Part)
	return f
}

func judgePlyHead(f *finding, l *laid, i int) {
	y := &l.plies[i]
	w := laminate.Worst{Plies: []int{y.Ply}}
	if len(y.Blank.Outer) > 0 {
		w.At = y.Blank.Outer[0]
	}
	if y.Ply != i+1 {
		f.add(float64(len(l.plies)-i+10), w, "ply %d stands at place %d from the tool: a ply is missing, doubled or out of order", y.Ply, i+1)
	}
	if _, ok := l.fabrics[y.Fabric]; !ok {
		f.add(5, w, "ply %d is of fabric %q, which the plan does not list", y.Ply, y.Fabric)
	}
	if y.Face != laminate.FaceUp && y.Face != laminate.FaceDown {
		f.add(5, w, "ply %d lies %q: neither face up nor face down", y.Ply, y.Face)
	}
	if y.Outline == "" && !y.full {
		f.add(8, w, "ply %d has no outline of its own, and its blank is not the part's", y.Ply)
	}
	if len(y.Strips) == 0 {
		f.add(9, w, "ply %d has no strips", y.Ply)
	}
}

// idForm is how a strip is named: P03-S02.
var idForm = regexp.MustCompile(`^P(\d{2,})-S(\d{2,})$`)

// wrongID tells what is wrong with the id of a strip of ply n, "" for nothing.
func wrongID(id string, n int) string {
	m := idForm.FindStringSubmatch(id)
	if m == nil {
		return fmt.Sprintf("ply %d: strip id %q is not of the form P03-S02", n, id)
	}
	if got, err := strconv.Atoi(m[1]); err != nil || got != n {
		return fmt.Sprintf("ply %d: strip id %s carries the number of another ply", n, id)
	}
	return ""
}
