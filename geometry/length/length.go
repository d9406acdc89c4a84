package length

import (
	"math"
	"strconv"
	"strings"
	"unicode"
)

// MostMM is the longest length that is taken for one, 10 km: whole micrometres
// of it are still counted without loss.
const MostMM = 1e7

// Parse reads a length and gives millimetres. A number without a unit is in
// the unit bare; with no bare unit it is refused. What is read: "1370",
// "12.5 mm", "40 m", `5/8"`, "1 1/2 in", "1-1/2 in", "1½ in", `3' 6 1/2"`,
// "3 ft 6 in", "2 yd", each with a sign in front. Fractions are for in, ft and
// yd only. Errors are *Error.
func Parse(text string, bare Unit) (mm float64, err error) {
	n, rest, err := cut(text)
	if err != nil {
		return 0, err
	}
	unit := bare
	if rest != "" {
		word, more := unitWord(rest)
		if unit, err = ParseUnit(word); err != nil {
			return 0, of(text, err)
		}
		if more != "" {
			return feetInches(text, n, unit, more)
		}
	}
	if err := fits(text, n, unit, rest != ""); err != nil {
		return 0, err
	}
	return sensible(text, n.times(unit.factor()))
}

// fits refuses a number without a unit and a metric fraction.
func fits(text string, n number, u Unit, written bool) error {
	switch {
	case u == "":
		return refuse("write its unit: mm, cm, m, in, ft or yd", "%q has no unit", text)
	case n.fraction && u.Metric() && written:
		return refuse("write it with a decimal point", "%q is a fraction of a metric unit", text)
	case n.fraction && u.Metric():
		return refuse("write its unit, like "+strings.TrimSpace(text)+" in", "%q is a fraction, and bare numbers are in %s here", text, u)
	}
	return nil
}

// unitWord parts the unit at the front of s from what follows it.
func unitWord(s string) (word, more string) {
	if strings.HasPrefix(s, "''") {
		return s[:2], s[2:]
	}
	if s[0] == '\'' || s[0] == '"' {
		return s[:1], strings.TrimLeft(strings.TrimPrefix(strings.TrimLeft(s[1:], " "), "-"), " ")
	}
	if i := strings.IndexAny(s, "0123456789"); i > 0 && strings.Trim(s[:i], " -") != "" {
		return strings.TrimRight(s[:i], " -"), s[i:]
	}
	return s, ""
}

// feetInches reads the inches after the feet of 3' 6 1/2", with or without the
// inch mark.
func feetInches(text string, feet number, u Unit, more string) (float64, error) {
	inches, rest, err := cut(more)
	if err != nil {
		return 0, of(text, err)
	}
	const mostFeet, mostParts = 1e6, 1e9
	switch {
	case rest != "" && unitOf(strings.ToLower(rest)) != Inch || u != Foot || feet.over != 1 || !startsDigit(more):
		return 0, refuse(`write one number with one unit, or feet and inches: 3' 6 1/2"`, "%q is not one length", text)
	case inches.value() >= 12:
		return 0, refuse("write less than 12 inches after the feet", "%q has a foot or more in its inches", text)
	case inches.over == 0 || inches.over > mostParts || abs(feet.top) > mostFeet:
		return 0, refuse("write fewer digits", "%q has too many digits", text)
	}
	whole := number{top: 12*abs(feet.top)*inches.over + inches.top, over: inches.over}
	if strings.HasPrefix(typed(text), "-") {
		whole = whole.negated()
	}
	return sensible(text, whole.times(Inch.factor()))
}

// sensible refuses a length beyond MostMM.
func sensible(text string, mm float64) (float64, error) {
	if math.Abs(mm) > MostMM {
		return 0, refuse("is the unit right?", "%q is longer than 10 km", text)
	}
	return mm + 0, nil // no minus zero
}

// of puts the whole of a measure before what is wrong with a part of it.
func of(text string, err error) error {
	e, ok := err.(*Error)
	if !ok || strings.Contains(e.Text, text) {
		return err
	}
	return &Error{Text: quote(text) + ": " + e.Text, Cure: e.Cure}
}

// quote shows a measure as it was typed, inch marks and all; only what would
// break the line or not be seen is spelt out.
func quote(text string) string {
	text = strings.TrimSpace(text)
	if strings.ContainsFunc(text, func(c rune) bool { return !unicode.IsPrint(c) }) {
		return strconv.Quote(text)
	}
	return `"` + text + `"`
}

// Bare says whether a measure is a number alone, without a unit.
func Bare(text string) bool {
	_, rest, err := cut(text)
	return err == nil && rest == ""
}
