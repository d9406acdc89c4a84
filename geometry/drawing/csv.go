package drawing

import (
	"strings"

	"github.com/paulmach/orb"

	"stripwright/geometry/drawing/trace"
)

// csv reads a plain list of points: x and y on each line, parted by a comma,
// semicolon, tab or blanks, joined in their order to a closed outline. A blank
// line begins the next contour; a line that begins with # is left out. The first
// line may be a heading, which may state the unit and which column is which:
// "x_mm,y_mm", "Y (in); X (in)".
func (rd *reading) csv(data []byte, d *Drawing) {
	text := strings.ReplaceAll(strings.ReplaceAll(string(data), "\r\n", "\n"), "\r", "\n")
	list := pointList{report: rd.report}
	for i, row := range strings.Split(text, "\n") {
		list.row(i+1, strings.TrimSpace(row))
	}
	unit := list.head.mm
	if unit > 0 {
		d.UnitFrom = "heading (" + list.head.unit + ")"
	}
	if rd.override > 0 {
		unit, d.UnitFrom = rd.override, "stated: "+rd.options.Units
		if said := list.head.unit; said != "" {
			rd.report.Note("unit", "the heading says %s; read in %s as stated", said, rd.options.Units)
		}
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
	head    heading
}

func (l *pointList) row(number int, row string) {
	if strings.Trim(row, ",;\t ") == "" {
		l.inside = false
		return
	}
	if row[0] == '#' {
		return
	}
	first := !l.started
	l.started = true
	if first && isHeading(row) {
		l.head = headingOf(row)
		if l.head.wrong != "" {
			l.report.Problem("unit", l.report.Line(number), "head the columns x_mm,y_mm (or cm, m, in, ft, yd)", "%s: %q", l.head.wrong, trace.Printable(row))
		}
		return
	}
	p, why, cure := pointOf(row)
	if why != "" {
		l.report.Problem("number", l.report.Line(number), cure, "%q is not a point: %s", trace.Printable(row), why)
		return
	}
	if l.head.swapped {
		p = orb.Point{p[1], p[0]}
	}
	if !l.inside {
		l.lines = append(l.lines, trace.Line{Closed: true, At: number, Names: []string{""}})
		l.inside = true
	}
	last := &l.lines[len(l.lines)-1]
	last.Points = append(last.Points, p)
}
