package dxf

import (
	"math"
	"strconv"
	"strings"

	"github.com/paulmach/orb"
)

// values reads the numbers of one entity and reports each that is none; bad is
// set then, and the entity gives no line.
type values struct {
	file *File
	e    entity
	bad  bool
}

func (f *File) values(e entity) *values { return &values{file: f, e: e} }

// find gives the first group with a code.
func (v *values) find(code int) (group, bool) {
	for _, g := range v.e.groups {
		if g.code == code {
			return g, true
		}
	}
	return group{}, false
}

// number gives a length, ratio or angle; otherwise when the code is not there.
func (v *values) number(code int, otherwise float64) float64 {
	g, ok := v.find(code)
	if !ok {
		return otherwise
	}
	return v.parse(g)
}

// must gives a number that has to be there.
func (v *values) must(code int) float64 {
	g, ok := v.find(code)
	if !ok {
		v.problem("number", v.e.line, "save the drawing as DXF again, unedited", "%s has no group %d", v.e.kind, code)
		return 0
	}
	return v.parse(g)
}

// point gives the point with x at code and y at code+10, both needed.
func (v *values) point(code int) orb.Point { return orb.Point{v.must(code), v.must(code + 10)} }

// whole gives a whole number; otherwise when the code is not there.
func (v *values) whole(code, otherwise int) int {
	g, ok := v.find(code)
	if !ok {
		return otherwise
	}
	n, err := strconv.Atoi(g.value)
	if err != nil {
		v.problem("number", g.line, "save the drawing as DXF again, unedited", "%q is not a whole number", g.value)
	}
	return n
}

// largest bounds a coordinate: beyond it a drawing has lost its digits.
const largest = 1e13

// parse reads digits, sign, decimal point and exponent, nothing else.
func (v *values) parse(g group) float64 {
	const cure = "write the drawing with plain decimal numbers"
	n, err := strconv.ParseFloat(g.value, 64)
	switch {
	case strings.Contains(g.value, ","):
		v.problem("number", g.line, "export with a decimal point", "%q has a decimal comma", g.value)
	case strings.Trim(g.value, "0123456789+-.eE") != "" || (err != nil && !isRange(err)):
		v.problem("number", g.line, cure, "%q is not a number", g.value)
	case math.Abs(n) > largest:
		v.problem("number", g.line, cure, "%s is out of all reason for a coordinate", g.value)
	default:
		return n
	}
	return 0
}

func isRange(err error) bool {
	e, ok := err.(*strconv.NumError)
	return ok && e.Err == strconv.ErrRange
}

func (v *values) problem(rule string, line int, cure, text string, args ...any) {
	v.bad = true
	r := v.file.report
	r.Problem(rule, r.Line(line), cure, text, args...)
}
