package code

import (
	"fmt"
	"strconv"
)

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
