package code

import (
	"math"
	"strconv"
	"strings"
)

// A number of a code may hide a repeat, typed without its mark: 902 for 90_2.
// Directions that are laid in practice are whole multiples of this many
// degrees, so that what stands before the last figure of a number tells whether
// a repeat is likely.
const usualStep = 2.5

// reading splits a number into an angle and a repeat, and says whether it has
// to be told apart from the plain angle.
//
//	90      an angle        902    90 twice, or 902°
//	52      an angle        105    10 five times, or 105°
//	120     an angle        02     0 twice, or 2°
//	26.565  an angle        22.52  22.5 twice, or 22.52°
func reading(text string) (angle string, times int, ambiguous bool) {
	whole, fraction, decimal := strings.Cut(text, ".")
	last := len(text) - 1
	switch {
	case last == 0 || decimal && fraction == "":
		return text, 1, false
	case len(whole) > 1 && whole[0] == '0':
		angle, times = split(text, 1)
		return angle, times, true
	case !decimal && len(whole) == 2:
		return text, 1, false
	case !decimal && tooFar(text):
		angle, times = split(text, longest(text))
		return angle, times, true
	case text[last] < '2' || strings.HasSuffix(text[:last], "."):
		return text, 1, false
	}
	before := number(text[:last])
	if before > 90 || math.Mod(before, usualStep) != 0 {
		return text, 1, false
	}
	angle, times = split(text, last)
	return angle, times, true
}

// tooFar says whether a number is beyond any direction.
func tooFar(text string) bool { return number(text) > 180 }

// longest gives how many figures from the front make an angle up to 90 before a
// repeat that does not begin with 0.
func longest(text string) int {
	for n := min(2, len(text)-1); n > 0; n-- {
		if number(text[:n]) <= 90 && text[n] != '0' {
			return n
		}
	}
	return len(text)
}

// split parts a number after so many characters; times is 0 where the rest is
// no repeat.
func split(text string, at int) (angle string, times int) {
	angle = text[:at]
	times, err := strconv.Atoi(text[at:])
	if err != nil || times < 2 || times > mostPlies || text[at] == '0' {
		return angle, 0
	}
	return angle, times
}

// number reads plain figures with at most one point.
func number(text string) float64 {
	v, err := strconv.ParseFloat(strings.TrimSuffix(text, "."), 64)
	if err != nil {
		return math.Inf(1)
	}
	return v
}

// digits writes an angle so that it is read as that angle again.
func digits(a float64) string {
	text := strconv.FormatFloat(a, 'f', -1, 64)
	if _, _, ambiguous := reading(strings.TrimPrefix(text, "-")); !ambiguous {
		return text
	}
	if strings.Contains(text, ".") {
		return text + "0"
	}
	return text + ".0"
}
