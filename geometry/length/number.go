package length

import (
	"math"
	"strconv"
	"strings"
)

// number is a written value as a quotient of whole numbers, so that a unit's
// factor can be applied with one rounding. Where it has too many digits for
// that, over is 0 and long holds the value.
type number struct {
	top, over int64
	long      float64
	fraction  bool // written with a slash
}

const (
	mostDigits = 15   // every whole number of so many digits is a float64
	mostText   = 80   // letters in a measure
	mostUnder  = 1000 // below the line of a fraction
	exact      = 1 << 53
)

// times gives the number × num / den, rounded once where the digits allow it.
func (n number) times(num, den int64) float64 {
	if n.over == 0 {
		return float64(n.long*float64(num)) / float64(den)
	}
	if abs(n.top) <= exact/num && n.over <= exact/den {
		return float64(n.top*num) / float64(n.over*den)
	}
	return float64(float64(n.top)/float64(n.over)*float64(num)) / float64(den)
}

func (n number) value() float64 { return n.times(1, 1) }

func (n number) negated() number {
	n.top, n.long = -n.top, -n.long
	return n
}

func abs(v int64) int64 { return max(v, -v) }

// cut reads the number at the front of a measure and gives what follows it
// without blanks around it. Text is the measure as it was written.
func cut(text string) (n number, rest string, err error) {
	s := typed(text)
	switch {
	case s == "":
		return n, "", refuse("write a number", "nothing is written")
	case len(s) > mostText:
		return n, "", refuse("write one number with its unit", "%d letters are too many for a measure", len(s))
	case endless(s):
		return n, "", refuse("write a number with an end", "%q is not a number", text)
	}
	body, negative := strings.CutPrefix(s, "-")
	if !negative {
		body = strings.TrimPrefix(body, "+")
	}
	if n, rest, err = mixed(text, strings.TrimLeft(body, " ")); err != nil {
		return n, "", err
	}
	if negative {
		n = n.negated()
	}
	return n, rest, nil
}

// endless knows the spellings of infinity and of no number at all.
func endless(s string) bool {
	switch strings.TrimLeft(strings.ToLower(s), "+-.") {
	case "nan", "inf", "infinity", "∞", "null", "~", "none":
		return true
	}
	return false
}

// mixed reads "12.5", "5/8" or "1 1/2" at the front of s.
func mixed(text, s string) (n number, rest string, err error) {
	n, size, err := decimal(text, s)
	if err != nil {
		return n, "", err
	}
	rest = s[size:]
	if under, ok := strings.CutPrefix(rest, "/"); ok && startsDigit(under) {
		n, rest, err = over(text, n, under)
		return n, rest, err
	}
	after := strings.TrimLeft(rest, " ")
	if d, ok := strings.CutPrefix(after, "-"); ok && startsDigit(d) && after == rest {
		after = d // 1-1/2
	}
	if !startsDigit(after) || after == s[size:] {
		return n, strings.TrimLeft(rest, " "), nil
	}
	part, size, err := decimal(text, after)
	if err != nil {
		return n, "", err
	}
	under, ok := strings.CutPrefix(after[size:], "/")
	if !ok || !startsDigit(under) || n.over != 1 {
		return n, "", refuse("write one number, with nothing between its digits", "%q holds two numbers", text)
	}
	if part, rest, err = over(text, part, under); err != nil {
		return n, "", err
	}
	if part.top >= part.over {
		return n, "", refuse("write a fraction below 1 after the whole number", "%q has a fraction of 1 or more", text)
	}
	return number{top: n.top*part.over + part.top, over: part.over, fraction: true}, rest, nil
}

// over puts n above the whole number at the front of s.
func over(text string, n number, s string) (number, string, error) {
	under, size, err := decimal(text, s)
	if err != nil {
		return n, "", err
	}
	if n.over != 1 || under.over != 1 || under.top == 0 || under.top > mostUnder || n.top > exact/mostUnder/mostUnder {
		return n, "", refuse("write a fraction of whole numbers, like 5/8", "%q is no fraction", text)
	}
	return number{top: n.top, over: under.top, fraction: true}, strings.TrimLeft(s[size:], " "), nil
}

// decimal reads the digits at the front of s, with or without a point.
func decimal(text, s string) (n number, size int, err error) {
	point, digits := -1, 0
	n.over = 1
	for size < len(s) && (s[size] >= '0' && s[size] <= '9' || s[size] == '.' || s[size] == ',' || s[size] == '_') {
		switch c := s[size]; {
		case c == ',':
			return n, 0, comma(text, s)
		case c == '_':
			return n, 0, refuse("write nothing between the digits", "%q has an underscore", text)
		case c == '.' && point >= 0:
			return n, 0, refuse("write one decimal point", "%q has two decimal points", text)
		case c == '.':
			point = size
		default:
			if digits++; digits <= mostDigits {
				n.top = 10*n.top + int64(c-'0')
				if point >= 0 {
					n.over *= 10
				}
			}
		}
		size++
	}
	switch {
	case digits == 0:
		return n, 0, refuse("write a number first, then its unit", "%q does not start with a number", text)
	case len(s) > 1 && s[0] == '0' && startsDigit(s[1:]):
		return n, 0, refuse("write it without the zero in front: "+trimZeros(s[:size]), "%q starts with a zero", text)
	case digits > mostDigits:
		n.over = 0
		if n.long, err = strconv.ParseFloat(s[:size], 64); err != nil || math.IsInf(n.long, 0) {
			return n, 0, refuse("write fewer digits", "%q is not a number of any size", text)
		}
	}
	return n, size, exponent(text, s[size:])
}

func trimZeros(digits string) string {
	t := strings.TrimLeft(digits, "0")
	if t == "" || t[0] == '.' {
		return "0" + t
	}
	return t
}

// comma says what to write instead of a decimal comma.
func comma(text, s string) *Error {
	end := strings.IndexFunc(s, func(r rune) bool { return r != ',' && r != '.' && (r < '0' || r > '9') })
	if end < 0 {
		end = len(s)
	}
	written := s[:end]
	if strings.Count(written, ",") == 1 && !strings.Contains(written, ".") && !strings.HasSuffix(written, ",") {
		return refuse("write it with a decimal point, "+strings.Replace(written, ",", ".", 1)+", and nothing between thousands",
			"%q has a comma", text)
	}
	return refuse("use a decimal point, and nothing between thousands", "%q has a comma", text)
}

// exponent refuses what follows a number in 1e5 and 0x1F.
func exponent(text, rest string) error {
	if rest == "" {
		return nil
	}
	switch tail := strings.TrimLeft(rest[1:], "+-"); {
	case (rest[0] == 'e' || rest[0] == 'E') && startsDigit(tail):
		return refuse("write it out in digits", "%q is written with an exponent", text)
	case strings.IndexByte("xXoObB", rest[0]) >= 0 && rest[1:] != "" && strings.Trim(rest[1:], "0123456789abcdefABCDEF") == "":
		return refuse("write it in ordinary digits", "%q is not a decimal number", text)
	}
	return nil
}

func startsDigit(s string) bool { return s != "" && s[0] >= '0' && s[0] <= '9' }
