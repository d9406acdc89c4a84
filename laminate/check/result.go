package check

import (
	"fmt"
	"math"
	"sort"
	"strconv"
	"strings"

	"stripwright/laminate"
)

// Openings of a failed rule's text: what a laminator must not do.
const (
	doNotCut   = "DO NOT CUT: "
	doNotOrder = "DO NOT ORDER BY THIS: "
)

// kept is how many faults of one rule are kept in words; the rest are counted.
// told is how many of them its text names.
const (
	kept = 1000
	told = 4
)

// finding gathers what one rule found.
type finding struct {
	rule    string
	opening string
	counted int
	faults  []fault
	more    int             // faults beyond those kept
	worst   *laminate.Worst // worth telling when nothing is wrong
	note    string          // text when nothing is wrong
	remark  string          // added to the text either way
}

// fault is one breach of a rule; bad says how bad it is among those of its
// rule, larger is worse.
type fault struct {
	bad   float64
	worst laminate.Worst
	text  string
}

// add records a fault.
func (f *finding) add(bad float64, w laminate.Worst, format string, args ...any) {
	if len(f.faults) >= kept && bad <= f.faults[0].bad {
		f.more++
		return
	}
	f.take(fault{bad, w, fmt.Sprintf(format, args...)})
}

// merge records the faults of a part of the rule judged by itself.
func (f *finding) merge(part *finding) {
	f.counted, f.more = f.counted+part.counted, f.more+part.more
	for _, n := range part.faults {
		f.take(n)
	}
}

// take keeps a fault among the worst.
func (f *finding) take(n fault) {
	switch {
	case len(f.faults) >= kept:
		f.more++
		if n.bad > f.faults[0].bad {
			f.faults[0] = n
		}
	case len(f.faults) > 0 && n.bad > f.faults[0].bad:
		f.faults = append(f.faults, f.faults[0])
		f.faults[0] = n
	default:
		f.faults = append(f.faults, n)
	}
}

// result puts the finding into the words of a plan.
func (f *finding) result() laminate.CheckResult {
	r := laminate.CheckResult{Rule: f.rule, Counted: f.counted, Pass: len(f.faults) == 0}
	if r.Pass {
		r.Worst, r.Text = tidyWorst(f.worst), join(f.note, f.remark)
		return r
	}
	sort.SliceStable(f.faults, func(i, j int) bool { return f.faults[i].bad > f.faults[j].bad })
	r.Worst = tidyWorst(&f.faults[0].worst)
	var says []string
	for i := 0; i < len(f.faults) && i < told; i++ {
		says = append(says, f.faults[i].text)
	}
	r.Text = f.opening + strings.Join(says, "; ")
	if rest := len(f.faults) + f.more - len(says); rest > 0 {
		r.Text += fmt.Sprintf("; and %d more of this kind", rest)
	}
	r.Text = join(r.Text, f.remark)
	return r
}

func join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + "; " + b
}

func tidyWorst(w *laminate.Worst) *laminate.Worst {
	if w == nil {
		return nil
	}
	out := *w
	out.ValueMM = round3(w.ValueMM)
	out.At = tidy(w.At)
	if out.Plies == nil {
		out.Plies = []int{}
	}
	return &out
}

// tidy rounds a place to the grid of a plan.
func tidy(p [2]float64) [2]float64 { return [2]float64{round3(p[0]), round3(p[1])} }

func round3(v float64) float64 { return math.Round(float64(v*1000))/1000 + 0 }

// mm prints a length: two decimals at most, three below a tenth.
func mm(v float64) string { return num(v) + " mm" }

func num(v float64) string {
	places := 2
	if math.Abs(v) < 0.1 {
		places = 3
	}
	s := strconv.FormatFloat(v, 'f', places, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// where prints a place in the part.
func where(p [2]float64) string { return "at x " + num(p[0]) + ", y " + num(p[1]) }

// onRoll prints a place on a roll.
func onRoll(p [2]float64) string {
	return num(p[0]) + " mm from the free end, " + num(p[1]) + " mm from the right-hand edge"
}

func rollName(r laminate.PlanRoll) string {
	return fmt.Sprintf("roll %q no. %d", r.Roll, r.Copy)
}
