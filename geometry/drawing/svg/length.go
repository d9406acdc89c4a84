package svg

import (
	"fmt"
	"math"
	"strings"
)

// perUnit gives the user units of each absolute unit: CSS Values and Units,
// 1in = 96px = 25.4mm = 72pt = 6pc.
var perUnit = map[string]float64{
	"": 1, "px": 1, "in": 96, "mm": 96 / 25.4, "cm": 96 / 2.54, "pt": 96.0 / 72, "pc": 16, "q": 96 / 101.6,
}

// length is a number with its unit, "" for user units.
type length struct {
	value float64
	unit  string
}

// parseLength reads "12", "4in", "100%"; blanks around it are allowed.
func parseLength(text string) (length, error) {
	s := scanner{text: strings.TrimSpace(text)}
	v, err := s.number()
	if err != nil {
		return length{}, fmt.Errorf("%q is not a length", text)
	}
	unit := strings.ToLower(s.text[s.at:])
	if _, ok := perUnit[unit]; !ok && unit != "%" && unit != "em" && unit != "ex" && unit != "rem" && unit != "ch" {
		return length{}, fmt.Errorf("%q is not a length", text)
	}
	return length{v, unit}, nil
}

// physical says whether the unit has a size in the real world.
func (l length) physical() bool {
	switch l.unit {
	case "in", "mm", "cm", "pt", "pc", "q":
		return true
	}
	return false
}

// of gives the length in user units, a percentage taken of whole.
func (l length) of(whole float64) (float64, error) {
	if f, ok := perUnit[l.unit]; ok {
		return l.value * f, nil
	}
	if l.unit == "%" {
		return l.value / 100 * whole, nil
	}
	return 0, fmt.Errorf("the unit %s has no size in the real world", l.unit)
}

// box is the viewport that percentages are taken of, in user units.
type box struct{ w, h float64 }

// diagonal is what a percentage of a radius is taken of.
func (b box) diagonal() float64 { return math.Hypot(b.w, b.h) / math.Sqrt2 }
