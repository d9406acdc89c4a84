package code

import (
	"fmt"
	"strings"
)

// reader goes through a code character by character.
type reader struct {
	written string
	letters []rune
	at      int
	depth   int
}

// Parse reads a schedule code. The error is an *Error: the first thing that
// cannot be read, or that can be read in two ways, with both.
func Parse(written string) (c Code, err error) {
	r := &reader{written: written, letters: []rune(written)}
	defer func() {
		if p := recover(); p != nil {
			stop, ok := p.(refusal)
			if !ok {
				panic(p)
			}
			c, err = Code{}, stop.Error
		}
	}()
	return r.code(), nil
}

// code reads all of it.
func (r *reader) code() Code {
	if len(r.letters) > mostLetter {
		r.refuse("split the schedule into several lines", "the code is longer than %d characters", mostLetter)
	}
	r.blanks()
	if r.peek() != '[' {
		r.refuse("write [0/90]s", "a code stands in square brackets")
	}
	r.at++
	terms := r.list(']')
	from := r.at
	times, letter := r.suffix(true)
	c := Code{Terms: terms, Times: times, Mirrored: letter == 's', Total: letter == 'T'}
	if r.blanks(); r.at < len(r.letters) {
		r.refuse("end the code after its brackets: ]2s", "%q cannot follow the brackets", string(r.letters[r.at:]))
	}
	r.at = from
	r.middle(terms, times, c.Mirrored)
	if count(terms, times, c.Mirrored) > mostPlies {
		r.refuse("check the repeats", "the code makes more than %d plies", mostPlies)
	}
	return c
}

// list reads terms up to the closing bracket and steps over it.
func (r *reader) list(closing rune) []Term {
	var terms []Term
	for {
		r.blanks()
		if n := r.peek(); len(terms) == 0 && n == closing {
			r.refuse("write at least one angle", "there is nothing between the brackets")
		}
		terms = append(terms, r.term())
		r.blanks()
		switch n := r.peek(); n {
		case closing:
			r.at++
			return terms
		case '/':
			r.at++
		default:
			r.between(n, closing)
		}
	}
}

// between refuses what stands where a slash or the closing bracket is due.
func (r *reader) between(n, closing rune) {
	switch {
	case n == 0:
		r.refuse(fmt.Sprintf("close it with %q", string(closing)), "the bracket is not closed")
	case n == ',' || n == ';':
		r.comma()
	case n == ')' || n == ']':
		r.refuse(fmt.Sprintf("close it with %q", string(closing)), "%q closes another bracket than was opened last", string(n))
	case isDigit(n) && r.at > 0 && isBlank(r.letters[r.at-1]):
		r.refuse("write / between plies (90/2), or _ before a repeat (90_2)", "a blank between two numbers may part two plies or stand before a repeat")
	case isDigit(n) || isSign(n) || n == '(' || n == '[':
		r.refuse("write / between plies", "a slash is missing before %q", string(n))
	}
	r.refuse("write angles with / between them: [0/45/90]", "%q is no part of a code", string(n))
}

// comma tells the readings of a comma apart.
func (r *reader) comma() {
	if r.at > 0 && r.at+1 < len(r.letters) && isDigit(r.letters[r.at-1]) && isDigit(r.letters[r.at+1]) {
		r.refuse("write / between plies, or a point: 22.5", "a comma may part two plies or be a decimal comma")
	}
	r.refuse("write / between plies; the layers of a stitched cloth belong to its fabric: layers: [45, -45]",
		"a comma may part two plies or two layers of one stitched ply")
}

// group reads a group in ( ) with what follows it.
func (r *reader) group() Term {
	if r.depth++; r.depth > mostDepth {
		r.refuse("write the code in fewer groups", "groups stand within groups more than %d deep", mostDepth)
	}
	r.at++
	terms := r.list(')')
	from := r.at
	times, letter := r.suffix(false)
	if letter == 'T' {
		r.refuse("write T after the last bracket only", "a group cannot be total")
	}
	after := r.at
	r.at = from
	r.middle(terms, times, letter == 's')
	r.at = after
	r.depth--
	t := Term{Group: terms, Times: times, Mirrored: letter == 's'}
	if count([]Term{t}, 1, false) > mostPlies {
		r.refuse("check the repeats", "the code makes more than %d plies", mostPlies)
	}
	return t
}

// middle holds that a bar stands over the last ply of a mirrored list only.
func (r *reader) middle(terms []Term, times int, mirrored bool) {
	for i, t := range terms {
		switch {
		case !t.Middle:
		case i < len(terms)-1:
			r.refuse("put the middle ply last", "a bar stands over the last ply of a list only")
		case !mirrored:
			r.refuse("write s after the brackets, or take the bar off", "a bar marks the middle ply of a mirrored list, and this list is not mirrored")
		case times > 1:
			list := spell(terms)
			r.refuse(fmt.Sprintf("write [(%s)_%d/%s]s or [(%s)s]%d", strings.TrimSuffix(list, "~"), times-1, list, list, times),
				"a list with a bar that is laid %d times and mirrored may have one middle ply, or one in each", times)
		}
	}
}

func (r *reader) peek() rune {
	if r.at >= len(r.letters) {
		return 0
	}
	return r.letters[r.at]
}

func (r *reader) blanks() {
	for isBlank(r.peek()) {
		r.at++
	}
}

// refuse stops the reading at the present character.
func (r *reader) refuse(cure, format string, args ...any) {
	panic(refusal{&Error{Code: r.written, At: min(r.at, len(r.letters)) + 1, Text: fmt.Sprintf(format, args...), Cure: cure}})
}

func isBlank(c rune) bool { return c == ' ' || c == '\u00a0' || c == '\u2009' || c == '\u202f' }
func isDigit(c rune) bool { return c >= '0' && c <= '9' }
func isMinus(c rune) bool { return c == '-' || c == '\u2212' || c == '\u2013' }
func isSign(c rune) bool  { return c == '+' || isMinus(c) || c == '±' || c == '∓' }
func isBar(c rune) bool   { return c == '\u0305' || c == '\u0304' }

// lowered gives the figure that a subscript stands for, and whether it is one.
func lowered(c rune) (rune, bool) {
	switch {
	case c >= '₀' && c <= '₉':
		return '0' + c - '₀', true
	case c == 'ₛ':
		return 's', true
	case c == 'ₜ':
		return 'T', true
	}
	return c, false
}
