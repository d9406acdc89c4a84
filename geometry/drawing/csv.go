package drawing

import (
	"bytes"
	"math"
	"regexp"
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/geometry/drawing/trace"
)

// csv reads a plain list of points: x and y on each line, parted by a comma,
// semicolon, tab or blanks, joined in their order to a closed outline. A blank
// line begins the next contour; a line that begins with # is left out. The first
// line may be a heading, which may state the unit: "x_mm,y_mm", "x (in); y (in)".
func (rd *reading) csv(data []byte, d *Drawing) {
	text := string(bytes.TrimPrefix(data, []byte("\ufeff")))
	text = strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
	list := pointList{report: rd.report}
	for i, row := range strings.Split(text, "\n") {
		list.row(i+1, strings.TrimSpace(row))
	}
	unit := list.unit
	d.UnitFrom = list.from
	if rd.override > 0 {
		unit, d.UnitFrom = rd.override, "stated: "+rd.options.Units
	}
	if unit == 0 {
		rd.report.Problem("unit", rd.report.File, unitCure, "the list of points does not say its unit")
		return
	}
	chosen := chooseLayers(rd.options.Layers, nil, rd.report)
	rd.regions(scaled(list.lines, unit), chosen, d)
}

// pointList is a list of points as it is read row by row.
type pointList struct {
	report  *trace.Report
	lines   []trace.Line
	inside  bool // of a contour
	started bool // a row that is not empty was met
	unit    float64
	from    string
}

func (l *pointList) row(number int, row string) {
	if row == "" {
		l.inside = false
		return
	}
	if row[0] == '#' {
		return
	}
	p, ok := pointOf(row)
	heading := !ok && !l.started
	l.started = true
	switch {
	case heading:
		if mm, name := headingUnit(row); mm > 0 {
			l.unit, l.from = mm, "heading ("+name+")"
		}
		return
	case !ok:
		l.report.Problem("number", l.report.Line(number), "write each point as x,y with decimal points", "%q is not a point", trace.Printable(row))
		return
	case !l.inside:
		l.lines = append(l.lines, trace.Line{Closed: true, At: number, Names: []string{""}})
		l.inside = true
	}
	last := &l.lines[len(l.lines)-1]
	last.Points = append(last.Points, p)
}

var separators = regexp.MustCompile(`\s*[;,\t]\s*|\s+`)

// pointOf reads two plain decimal numbers and nothing else.
func pointOf(row string) (p orb.Point, ok bool) {
	words := separators.Split(row, -1)
	if n := len(words); n == 3 && words[2] == "" {
		words = words[:2]
	}
	if len(words) != 2 {
		return p, false
	}
	for i, w := range words {
		v, err := strconv.ParseFloat(w, 64)
		if err != nil || strings.Trim(w, "0123456789+-.eE") != "" || math.Abs(v) > farthest {
			return p, false
		}
		p[i] = v
	}
	return p, true
}

// headingUnit finds a unit among the words of a heading.
func headingUnit(row string) (mm float64, name string) {
	words := strings.FieldsFunc(strings.ToLower(row), func(c rune) bool { return (c < 'a' || c > 'z') && c != 'µ' })
	for _, w := range words {
		if f, ok := statedUnits[w]; ok {
			return f, w
		}
	}
	return 0, ""
}
