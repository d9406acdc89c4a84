package sheet

import (
	"slices"
	"strings"
)

// Wrapped breaks a text into lines no wider than width, at most so many; the
// last is made smaller where it would still be too wide. A figure stays with its
// unit.
func Wrapped(t Text, width float64, most int) []Text {
	var lines []Text
	for _, word := range withUnits(strings.Fields(t.Words)) {
		last := len(lines) - 1
		if last >= 0 {
			longer := t
			longer.Words = lines[last].Words + " " + word
			if longer.Width() <= width || len(lines) == most {
				lines[last] = longer
				continue
			}
		}
		one := t
		one.Words = word
		lines = append(lines, one)
	}
	for i := range lines {
		lines[i] = lines[i].Fitted(width)
	}
	return lines
}

// units are words that mean nothing on a line of their own.
var units = []string{"mm", "m", "in", "yd", "ft", "m2", "ft2", "yd2", "g", "kg", "oz", "lb", "%", "g/m2", "oz/yd2", "oz/ft2"}

// withUnits joins each figure with the unit behind it, whatever ends its clause.
func withUnits(words []string) []string {
	var out []string
	for _, w := range words {
		n := len(out) - 1
		if n >= 0 && endsInDigit(out[n]) && slices.Contains(units, strings.TrimRight(w, ".,;:)")) {
			out[n] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
}

func endsInDigit(word string) bool {
	last := word[len(word)-1]
	return '0' <= last && last <= '9'
}
