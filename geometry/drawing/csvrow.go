package drawing

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/paulmach/orb"
)

var (
	separators    = regexp.MustCompile(`\s*[;,\t]\s*|\s+`)
	quotedColumns = regexp.MustCompile(`"\s*[;,\t]\s*"`)
	strong        = regexp.MustCompile(`\s*[;\t]\s*`) // part columns where a comma is in the numbers
)

// columns parts a row; quotes round a whole column are taken off.
func columns(row string, by *regexp.Regexp) []string {
	words := by.Split(row, -1)
	if n := len(words); n > 1 && words[n-1] == "" {
		words = words[:n-1]
	}
	for i, w := range words {
		if n := len(w); n > 1 && w[0] == '"' && w[n-1] == '"' {
			words[i] = strings.TrimSpace(w[1 : n-1])
		}
	}
	return words
}

const pointCure = "write each point as x,y with decimal points"

// pointOf reads two plain decimal numbers and nothing else, or says why not and
// what to do.
func pointOf(row string) (p orb.Point, why, cure string) {
	words := columns(row, separators)
	if len(words) != 2 {
		return p, columnsWrong(row, len(words)), pointCure
	}
	for i, w := range words {
		v, err := strconv.ParseFloat(w, 64)
		switch {
		case err != nil && !strings.Contains(err.Error(), "range"), strings.Trim(w, "0123456789+-.eE") != "":
			return p, fmt.Sprintf("%q is not a number", w), pointCure
		case math.Abs(v) > farthest:
			return p, fmt.Sprintf("%s is out of all reason for a coordinate", w), "write the points at their real size"
		}
		p[i] = v
	}
	return p, "", ""
}

var (
	decimalComma = regexp.MustCompile(`^"?[+-]?\d+,\d+"?$`)
	thousands    = regexp.MustCompile(`\d[ ,.'’]\d{3}([,.]|\b)`)
)

// columnsWrong says why a row has not two columns.
func columnsWrong(row string, n int) string {
	parts := columns(row, strong)
	if strings.Contains(row, `"`) {
		parts = columns(row, quotedColumns)
	} else if len(parts) == 1 {
		parts = strings.Fields(row)
	}
	if len(parts) == 2 && slices.ContainsFunc(parts, decimalComma.MatchString) {
		return "it has decimal commas"
	}
	if len(parts) == 2 && slices.ContainsFunc(parts, thousands.MatchString) {
		return "it has separators between thousands"
	}
	if n == 1 {
		return "it has one column, x alone"
	}
	return fmt.Sprintf("it has %d columns, not x and y alone", n)
}

// heading is what the first line says of the columns.
type heading struct {
	mm      float64 // of one unit, 0: not said
	unit    string
	swapped bool   // y comes before x
	wrong   string // what it says makes no sense
}

// isHeading says whether a row names columns: it begins with a letter, and no
// column is a number or wants to be one.
func isHeading(row string) bool {
	for _, w := range columns(strings.ToLower(row), separators) {
		if _, err := strconv.ParseFloat(w, 64); err == nil || w == "nan" || strings.HasPrefix(strings.TrimLeft(w, "+-"), "inf") {
			return false
		}
	}
	c := strings.TrimLeft(row, `" ([`)
	return c != "" && (c[0] >= 'A' && c[0] <= 'Z' || c[0] >= 'a' && c[0] <= 'z' || c[0] >= 0x80)
}

// headingUnits are the spellings of units in a heading.
var headingUnits = map[string]string{
	"mm": "mm", "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm",
	"cm": "cm", "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm",
	"m": "m", "metre": "m", "metres": "m", "meter": "m", "meters": "m",
	"in": "in", "inch": "in", "inches": "in", "ft": "ft", "foot": "ft", "feet": "ft", "yd": "yd", "yard": "yd", "yards": "yd",
}

// axisName finds the name of an axis at the beginning of a column's heading.
var axisName = regexp.MustCompile(`^\W*(?:coordinate |coord |pos |position |point |points )?\W*([xy])(?:\b|_|\d|coord)`)

// headingOf reads the unit and the order of the columns. The word "in" counts
// as inches only where it stands by itself in a column after x or y, or in
// brackets: "points in mm" is in mm.
func headingOf(row string) (h heading) {
	row = strings.ToLower(row)
	var units, axes []string
	for _, column := range columns(row, regexp.MustCompile(`\s*[;,\t]\s*`)) {
		axis := axisName.FindStringSubmatch(column)
		if axis != nil {
			axes = append(axes, axis[1])
		}
		words := strings.FieldsFunc(column, func(c rune) bool { return c < 'a' || c > 'z' })
		for i, w := range words {
			last := i == len(words)-1
			if w == "in" && !(last && len(words) <= 2) && !strings.Contains(column, "(in)") && !strings.Contains(column, "[in]") {
				continue
			}
			if u := headingUnits[w]; u != "" {
				units = append(units, u)
			}
		}
		if strings.HasSuffix(column, `"`) {
			units = append(units, "in")
		}
	}
	if len(axes) == 0 && len(strings.Fields(row)) == 2 {
		for _, w := range strings.Fields(row) {
			if axis := axisName.FindStringSubmatch(w); axis != nil {
				axes = append(axes, axis[1])
			}
		}
	}
	slices.Sort(units)
	units = slices.Compact(units)
	switch {
	case len(units) > 1:
		h.wrong = "the heading says " + strings.Join(units, " and ")
	case len(axes) == 2 && axes[0] == axes[1]:
		h.wrong = "the heading names " + axes[0] + " twice"
	case len(units) == 1:
		h.unit, h.mm = units[0], statedUnits[units[0]]
	}
	h.swapped = len(axes) == 2 && axes[0] == "y" && axes[1] == "x"
	return h
}
