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
	r := rd.report
	text := string(bytes.TrimPrefix(data, []byte("\ufeff")))
	text = strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
	unit, from := rd.override, "stated: "+rd.options.Units
	var lines []trace.Line
	begin := true
	first := true
	for i, row := range strings.Split(text, "\n") {
		row = strings.TrimSpace(row)
		switch {
		case row == "":
			begin = true
			continue
		case row[0] == '#':
			continue
		}
		p, ok := pointOf(row)
		if !ok && first {
			first = false
			if mm, name := headingUnit(row); unit == 0 && mm > 0 {
				unit, from = mm, "heading ("+name+")"
			}
			continue
		}
		first = false
		if !ok {
			cure := "write each point as x,y with decimal points"
			r.Problem("number", r.Line(i+1), cure, "%q is not a point", trace.Printable(row))
			continue
		}
		if begin {
			lines = append(lines, trace.Line{Closed: true, At: i + 1, Names: []string{""}})
			begin = false
		}
		last := &lines[len(lines)-1]
		last.Points = append(last.Points, p)
	}
	if unit == 0 {
		r.Problem("unit", r.File, unitCure, "the list of points does not say its unit")
		return
	}
	d.UnitFrom = from
	chosen := chooseLayers(rd.options.Layers, nil, r)
	rd.regions(scaled(lines, unit), chosen, d)
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
