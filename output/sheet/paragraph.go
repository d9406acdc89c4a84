package sheet

import "strings"

// Wrapped breaks a text into lines no wider than width, at most so many; the
// last is made smaller where it would still be too wide.
func Wrapped(t Text, width float64, most int) []Text {
	var lines []Text
	for _, word := range strings.Fields(t.Words) {
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
