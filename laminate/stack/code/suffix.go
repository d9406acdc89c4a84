package code

import (
	"fmt"
	"strings"
)

// suffix reads what follows a closing bracket: a repeat and s or T. letter is
// 's', 'T' or 0.
func (r *reader) suffix(outer bool) (times int, letter rune) {
	from := r.at
	text := r.suffixText(outer)
	end := r.at
	r.at = from
	figures := strings.TrimRight(text, "sT")
	letters := text[len(figures):]
	switch {
	case strings.ContainsAny(text, "fw"):
		r.refuse("write f after each angle: [0f/90f]", "f after a bracket may mean one woven ply or that every ply in it is woven")
	case strings.ContainsAny(figures, "sT"):
		r.orderOf(figures, letters)
	case len(letters) > 1:
		r.refuse("write s for a mirrored list or T for a total one", "%q after a bracket is not understood", letters)
	}
	times = 1
	if figures != "" {
		times = r.times(figures, from)
	}
	r.at = end
	if letters != "" {
		letter = rune(letters[0])
	}
	return times, letter
}

// orderOf refuses s2: mirrored and then repeated, or the other way about.
func (r *reader) orderOf(figures, letters string) {
	n := strings.Trim(figures, "sT")
	if letters == "" && figures == "s"+n {
		r.refuse(fmt.Sprintf("write ]%ss to repeat and then mirror, or [(…)s]%s to mirror and then repeat", n, n),
			"s%s may repeat the list and then mirror it, or mirror it and then repeat it", n)
	}
	r.refuse("write ]2s or ]2T", "%q after a bracket is not understood", figures+letters)
}

// suffixText gathers repeat and letters, marks of subscripts left out. After the
// inner bracket of a group it ends where the next term is due.
func (r *reader) suffixText(outer bool) string {
	text, braced := "", false
	for {
		from := r.at
		r.blanks()
		c, low := lowered(r.peek())
		switch {
		case isDigit(c) && r.at > from && text == "" && !low && !outer:
			r.refuse("write / between plies, or the repeat right after the bracket: )2", "a blank between a bracket and a number may part two plies or stand before a repeat")
		case isDigit(c):
			text += string(c)
		case c == 's' || c == 'S':
			text += "s"
		case c == 'T' || c == 't':
			text += "T"
		case c == 'f' || c == 'w' || c == 'F' || c == 'W':
			text += "f"
		case c == '_' && !braced:
		case c == '{' && !braced:
			braced = true
		case c == '}' && braced:
			braced = false
		default:
			r.at = from
			if braced {
				r.refuse("write ]_{2s} or ]2s", "the brace is not closed")
			}
			return text
		}
		r.at++
	}
}
