package list

import (
	"strings"

	"stripwright/laminate"
	"stripwright/laminate/stack"
	"stripwright/output/sheet"
)

// Stack gives what the laminate is: the judgement of its stack first, then its
// figures (Material), then cautions.
func Stack(p laminate.Plan) []Section {
	var out []Section
	for _, s := range stack.Report(p) {
		out = append(out, Section(s))
	}
	out = append(out, Material(p)...)
	return append(out, Section{Heading: "Cautions", Lines: []string{
		sheet.Caution,
		"Symmetry and balance are judged on the schedule as written; cloth that is laid on the wrong face, or turned, is another stack.",
	}})
}

// stackLine gives the verdict on the stack in one line.
func stackLine(p laminate.Plan) string {
	r := stack.Read(p)
	line := sheet.Spelt(r.Line())
	if r.Mendable() {
		line += "; stack-report.txt says what would mend it"
	}
	return line
}

// StackReport gives the same as text, for stack-report.txt.
func StackReport(p laminate.Plan) ([]byte, error) {
	var b strings.Builder
	b.WriteString("Stack report: " + sheet.Spelt(p.Title) + ", part " + sheet.Spelt(p.Part.Name) + "\n")
	b.WriteString(sheet.Verdict(p) + "\n\n")
	for _, s := range Stack(p) {
		b.WriteString(s.Text())
	}
	return []byte(b.String()), nil
}
