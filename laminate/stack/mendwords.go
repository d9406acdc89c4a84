package stack

import "strings"

// mostCures is how many cures of one kind are told.
const mostCures = 4

// lines says what would mend a stack, or that nothing of this cloth does.
func (m Mending) lines(now Judgement) []string {
	var out []string
	add := func(words string) { out = append(out, words) }
	if !now.Mirror {
		m.symmetryLines(now, add)
	}
	if !now.Balanced {
		for i, c := range m.Balances {
			if i < mostCures {
				add("To balance it: " + c.Words + c.notes(now) + ".")
			}
		}
		if len(m.Balances) == 0 && len(m.Tried) > 0 {
			add("Nothing that was tried balances it.")
		}
	}
	for i, t := range m.Tried {
		if i == 0 {
			add("Tried and judged:")
		}
		add("  " + t)
	}
	for i, t := range m.Untried {
		if i == 0 {
			add("Not searched:")
		}
		add("  " + t)
	}
	return out
}

// symmetryLines tells the cures of a stack that is no mirror.
func (m Mending) symmetryLines(now Judgement, add func(string)) {
	for i, c := range m.Cures {
		switch {
		case i == mostCures:
			return
		case i == 0:
			add("To make it symmetric: " + c.Words + c.notes(now) + ".")
		default:
			add("Or: " + c.Words + c.notes(now) + ".")
		}
	}
	if len(m.Cures) > 0 || len(m.Tried) == 0 {
		return
	}
	if m.Hand != nil {
		add("Nothing of this cloth mends it: no turn or flip that keeps its directions, no other order, not one more ply. It needs the opposite-hand cloth: " + m.Hand.Words + m.Hand.notes(now) + ".")
	} else {
		add("Nothing that was tried mends it.")
	}
	if m.Doubled != nil {
		add("Doubled it would be symmetric: " + m.Doubled.Words + m.Doubled.notes(now) + ".")
	}
	if m.Closer != nil {
		add("Closer, but not symmetric: " + m.Closer.Words + "; it then couples by " + figure(m.Closer.After.Coupling) + " in place of " + figure(now.Coupling) + m.Closer.notes(now) + ".")
	}
}

// notes says what a cure changes beside what it is for.
func (c Cure) notes(was Judgement) string {
	var words []string
	if was.Balanced && !c.After.Balanced {
		words = append(words, "no longer balanced")
	}
	if !was.Mirror && !was.Balanced && c.After.Mirror && c.After.Balanced {
		words = append(words, "symmetric and balanced")
	}
	if len(c.After.Layers) == len(was.Layers) {
		words = append(words, directionsMoved(was, c.After)...)
	}
	if len(words) == 0 {
		return ""
	}
	return " (then " + strings.Join(words, "; ") + ")"
}

// directionsMoved tells shares of fibre that change by a tenth of a percent or
// more.
func directionsMoved(was, now Judgement) []string {
	part := func(j Judgement, s Share) float64 {
		for _, o := range j.Shares {
			if same(o.Angle, s.Angle) {
				return o.Part
			}
		}
		return 0
	}
	var words []string
	say := func(s Share) {
		a, b := part(was, s), part(now, s)
		if percent(a) != percent(b) {
			words = append(words, degrees(s.Angle.Degrees())+" "+percent(b)+" in place of "+percent(a))
		}
	}
	for _, s := range was.Shares {
		say(s)
	}
	for _, s := range now.Shares {
		if part(was, s) == 0 {
			say(s)
		}
	}
	return words
}
