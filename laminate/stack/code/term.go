package code

import (
	"fmt"
	"strconv"
	"strings"
)

// term reads an angle, a pair or a group.
func (r *reader) term() Term {
	if r.peek() == '(' {
		return r.group()
	}
	pair, negative := r.sign()
	r.blanks()
	t := Term{Pair: pair, Times: 1}
	r.angle(&t)
	if negative {
		t.Angle = opposite(t.Angle)
	}
	r.after(&t)
	return t
}

// sign reads the sign of an angle, in any of its spellings.
func (r *reader) sign() (pair Pair, negative bool) {
	first := r.peek()
	if !isSign(first) {
		return Single, false
	}
	r.at++
	switch first {
	case '±':
		pair = PlusMinus
	case '∓':
		pair = MinusPlus
	default:
		pair = r.secondSign(first)
	}
	r.blanks()
	if isSign(r.peek()) {
		r.refuse("write ±45, +-45, 45 or -45", "one sign too many")
	}
	return pair, pair == Single && isMinus(first)
}

// secondSign reads the rest of +-, +/-, -+ or -/+.
func (r *reader) secondSign(first rune) Pair {
	from := r.at
	r.blanks()
	if r.peek() == '/' {
		r.at++
		r.blanks()
	}
	second := r.peek()
	switch {
	case first == '+' && isMinus(second):
		r.at++
		return PlusMinus
	case isMinus(first) && second == '+':
		r.at++
		return MinusPlus
	}
	r.at = from
	return Single
}

// angle reads the figures of an angle and the bar over them.
func (r *reader) angle(t *Term) {
	from := r.at
	text := r.figures(t)
	after := r.at
	r.at = from
	if text == "" || text == "." || strings.Count(text, ".") > 1 {
		r.noAngle(after)
	}
	prefix, times, ambiguous := reading(text)
	switch sign := signOf(t.Pair); {
	case ambiguous && times > 1:
		r.refuse(fmt.Sprintf("write %s%s_%d or %s%s", sign, prefix, times, sign, plainAngle(text)),
			"%s may be %s° %s, or %s°", text, prefix, often(times), strings.TrimLeft(text[:len(text)-1], "0")+text[len(text)-1:])
	case number(text) > 180:
		r.refuse("write an angle from -180 to 180", "%s is no direction", text)
	case ambiguous:
		r.refuse("write "+plainAngle(text), "%s begins with 0", text)
	}
	t.Angle = number(text)
	r.at = after
}

// plainAngle writes an angle that has been misread as it must be written.
func plainAngle(text string) string {
	v := number(text)
	for v > 180 {
		v -= 360
		if v < -1e6 || v > 1e6 {
			return "an angle from -180 to 180"
		}
	}
	return digits(v)
}

func signOf(p Pair) string {
	switch p {
	case PlusMinus:
		return "±"
	case MinusPlus:
		return "∓"
	}
	return ""
}

func often(n int) string {
	if n == 2 {
		return "twice"
	}
	return strconv.Itoa(n) + " times"
}

// noAngle refuses what is no number, the commonest mistakes by name.
func (r *reader) noAngle(after int) {
	if after > r.at {
		r.refuse("write one number: 22.5", "%q is no angle", string(r.letters[r.at:after]))
	}
	switch n := r.peek(); {
	case n == 0:
		r.refuse("write an angle and close the bracket", "the code ends where an angle is due")
	case n == '/' || n == ')' || n == ']':
		r.refuse("write an angle, or take the / out", "an angle is missing before %q", string(n))
	case n == '[' || n == '{':
		r.refuse("write ( ) round a group", "%q cannot open a group", string(n))
	case n == ',' || n == ';':
		r.comma()
	default:
		r.refuse("write angles with / between them: [0/45/90]", "%q is no angle", string(n))
	}
}

// figures reads digits, points and bars.
func (r *reader) figures(t *Term) string {
	var text []rune
	for {
		c := r.peek()
		switch {
		case isDigit(c) || c == '.':
			text = append(text, c)
		case isBar(c) && len(text) > 0:
			t.Middle = true
		default:
			return string(text)
		}
		r.at++
	}
}
