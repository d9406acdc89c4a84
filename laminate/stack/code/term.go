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

// after reads what may follow an angle: a degree sign, the mark of woven cloth,
// a bar, a repeat.
func (r *reader) after(t *Term) {
	repeated, degree := false, false
	for {
		from := r.at
		r.blanks()
		c := r.peek()
		_, low := lowered(c)
		switch {
		case c == '°' && !degree && !t.Woven && !repeated:
			degree = true
			r.at++
		case (c == 'f' || c == 'w' || c == 'F' || c == 'W') && !t.Woven:
			t.Woven = true
			r.at++
		case (c == '~' || isBar(c)) && !t.Middle:
			t.Middle = true
			r.at++
		case !repeated && (c == '_' || low || isDigit(c) && (t.Woven || degree) && r.at == from):
			repeated = true
			t.Times = r.repeat(c == '_', t)
		default:
			r.at = from
			r.sense(t)
			return
		}
	}
}

// repeat reads the number after a ply, or a woven mark written as a subscript.
func (r *reader) repeat(marked bool, t *Term) int {
	from := r.at
	if marked {
		r.at++
	}
	braced := r.peek() == '{'
	if braced {
		r.at++
	}
	text := ""
	for {
		c, _ := lowered(r.peek())
		if (c == 'f' || c == 'w') && !t.Woven {
			t.Woven = true
			r.at++
			continue
		}
		if !isDigit(c) {
			break
		}
		text += string(c)
		r.at++
	}
	if braced {
		if r.peek() != '}' {
			r.refuse("write 0_{2} or 0_2", "the brace is not closed")
		}
		r.at++
	}
	if text == "" && t.Woven {
		return 1
	}
	return r.times(text, from)
}

// times reads a repeat: 1 to 2000, without a leading zero.
func (r *reader) times(text string, from int) int {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > mostPlies || text[0] == '0' {
		r.at = from
		r.refuse(fmt.Sprintf("write a whole number from 1 to %d", mostPlies), "%q is no repeat", text)
	}
	return n
}

// sense refuses terms that can be read in two ways.
func (r *reader) sense(t *Term) {
	a, sign := digits(t.Angle), signOf(t.Pair)
	switch {
	case t.Middle && (t.Pair != Single || t.Times > 1):
		r.refuse("write the bar over one ply", "a bar marks one middle ply, and %s%s is more than one", sign, a)
	case t.Pair != Single && t.Woven:
		first, second := a, digits(opposite(t.Angle))
		if t.Pair == MinusPlus {
			first, second = second, first
		}
		r.refuse(fmt.Sprintf("write %sf for one ply with its roll at %s°, or %sf/%sf for two", a, a, first, second),
			"%s%sf may be one woven ply or two", sign, a)
	case t.Pair != Single && t.Times > 1:
		first, second := a, digits(opposite(t.Angle))
		if t.Pair == MinusPlus {
			first, second = second, first
		}
		r.refuse(fmt.Sprintf("write (%s%s)_%d or %s_%d/%s_%d", sign, a, t.Times, first, t.Times, second, t.Times),
			"%s%s_%d may be the pair %s, or each angle %s", sign, a, t.Times, often(t.Times), often(t.Times))
	}
}
