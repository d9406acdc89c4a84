package job

import (
	"fmt"
	"sort"
	"strings"

	"gopkg.in/yaml.v3"
)

// Problem is one thing that keeps a job from being planned: where it stands,
// the rule it goes against, a sentence and the cure. Line and Column start at
// 1 and are 0 where there is none.
type Problem struct {
	File   string
	Line   int
	Column int
	Rule   string
	Text   string
	Cure   string
}

// Error gives the problem in one line: "hatch.yaml:14:3: stagger: … — cure".
func (p Problem) Error() string {
	var b strings.Builder
	b.WriteString(p.File)
	if p.Line > 0 {
		fmt.Fprintf(&b, ":%d", p.Line)
		if p.Column > 0 {
			fmt.Fprintf(&b, ":%d", p.Column)
		}
	}
	fmt.Fprintf(&b, ": %s: %s", p.Rule, p.Text)
	if p.Cure != "" {
		b.WriteString(" — " + p.Cure)
	}
	return b.String()
}

// Names of rules that are not the name of a key.
const (
	ruleText    = "text"
	ruleYAML    = "yaml"
	ruleTabs    = "tabs"
	ruleBlock   = "block"
	ruleUnknown = "unknown key"
	ruleTwice   = "repeated key"
	ruleEmpty   = "empty value"
	ruleMissing = "missing key"
	ruleLater   = "not yet"
	ruleAlias   = "alias"
	ruleSecond  = "second document"
	ruleSize    = "size"
)

// mostProblems is how many are listed: more than that is one cause many times.
const mostProblems = 60

// refuse adds a problem at a place of the file; a nil place is the whole file.
func (r *reading) refuse(at *yaml.Node, rule, cure, format string, args ...any) {
	p := Problem{File: r.jobName, Rule: rule, Text: fmt.Sprintf(format, args...), Cure: cure}
	if at != nil {
		p.Line, p.Column = at.Line, at.Column
	}
	r.problems = append(r.problems, p)
}

// sorted gives the problems in the order of the job file, then those of
// drawings; equal ones once, and no more than mostProblems.
func (r *reading) sorted() []Problem {
	ps := append([]Problem(nil), r.problems...)
	sort.SliceStable(ps, func(i, j int) bool {
		a, b := ps[i], ps[j]
		if (a.File == r.jobName) != (b.File == r.jobName) {
			return a.File == r.jobName
		}
		if a.Line != b.Line {
			return a.Line < b.Line
		}
		return a.Column < b.Column
	})
	var out []Problem
	for _, p := range ps {
		if len(out) == 0 || out[len(out)-1] != p {
			out = append(out, p)
		}
	}
	if more := len(out) - mostProblems; more > 0 {
		out = append(out[:mostProblems], Problem{
			File: r.jobName, Rule: "more", Text: fmt.Sprintf("%d more problems are not listed", more), Cure: "cure these first",
		})
	}
	return out
}
