package sheet

import (
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/laminate"
)

// DoNotCut is the stamp on every sheet of a plan that is not sound.
const DoNotCut = "DO NOT CUT"

// Caution stands on every sheet.
const Caution = "Estimates only: check against the supplier's data sheet and a test panel. " +
	"Structural parts need a qualified engineer; local regulations come first."

// Faults gives what the check found wrong, in sentences; a plan that has not
// been checked is at fault too. A sound plan has none.
func Faults(checks []laminate.CheckResult) []string {
	if len(checks) == 0 {
		return []string{"this plan has not been checked"}
	}
	var faults []string
	for _, c := range checks {
		if !c.Pass {
			faults = append(faults, c.Rule+": "+c.Text)
		}
	}
	return faults
}

// Warnings gives what the check found worth a thought in rules that are kept.
func Warnings(checks []laminate.CheckResult) []string {
	var out []string
	for _, c := range checks {
		if words, ok := strings.CutPrefix(c.Text, laminate.Warning); ok && c.Pass {
			out = append(out, "warning: "+c.Rule+": "+words)
		}
	}
	return out
}

// Verdict says in one line whether the plan may be cut.
func Verdict(p laminate.Plan) string {
	faults := Faults(p.Checks)
	switch {
	case len(p.Checks) == 0:
		return DoNotCut + ": not checked"
	case len(faults) > 0:
		return DoNotCut + ": " + Counted(len(faults), "rule fails", "rules fail")
	case p.Stopped:
		return "SOUND: all " + Counted(len(p.Checks), "rule holds", "rules hold") + " (search stopped early)"
	}
	return "SOUND: all " + Counted(len(p.Checks), "rule holds", "rules hold")
}

// Counted writes a number with its word: "1 joint", "2 joints".
func Counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// Stamp draws the band of a plan at fault over a box of the sheet: cross-hatched
// about the words and up to three sentences. Height k is the lettering of the
// sentences in mm. A sound plan gets none.
func Stamp(s *Scene, checks []laminate.CheckResult, b orb.Bound, k float64) {
	faults := Faults(checks)
	if len(faults) == 0 {
		return
	}
	l := s.Layer("FAULT")
	hatch := Fill{Ink: Fault, Spacing: 1.6 * k, Width: 0.3 * k, Crossed: true}
	l.Box(Solid(Fault, k), hatch, b)
	w, h := b.Max[0]-b.Min[0], b.Max[1]-b.Min[1]
	inner := orb.Bound{Min: orb.Point{b.Min[0] + float64(2.5*k), b.Min[1] + float64(2*k)}, Max: orb.Point{b.Max[0] - float64(2.5*k), b.Max[1] - float64(2*k)}}
	l.Box(Solid(Fault, 0.4*k), Fill{Ink: White}, inner)
	big := Text{Height: h * 0.4, Bold: true, Ink: Fault, Words: DoNotCut}.Fitted(w * 0.36)
	l.Write(big.Centred(orb.Point{b.Min[0] + float64(0.2*w), (b.Min[1] + b.Max[1]) / 2}))
	writeFaults(l, faults, orb.Bound{
		Min: orb.Point{b.Min[0] + float64(0.4*w), inner.Min[1] + k}, Max: orb.Point{inner.Max[0] - float64(2*k), inner.Max[1] - k},
	}, k)
}

func writeFaults(l *Layer, faults []string, b orb.Bound, k float64) {
	if len(faults) > 3 {
		more := "and " + Counted(len(faults)-2, "fault", "faults") + " more: see the checks in plan.json"
		faults = append(append([]string{}, faults[:2]...), more)
	}
	step := (b.Max[1] - b.Min[1]) / float64(len(faults))
	for i, f := range faults {
		y := b.Max[1] - float64((float64(i)+0.5)*step) - float64(0.7*k)
		t := Text{Height: 1.3 * k, Bold: true, Ink: Fault, Words: f}
		if wide := b.Max[0] - b.Min[0]; t.Width() > 1.8*wide {
			// The worst of it in letters that can be read, the rest in the checks.
			if first, _, more := strings.Cut(f, "; "); more {
				t.Words = first + "; and more"
			}
		}
		for j, line := range Wrapped(t, b.Max[0]-b.Min[0], 2) {
			line.At = orb.Point{b.Min[0], y + float64((0.5-float64(j))*1.2*k)}
			l.Write(line)
		}
	}
}
