package svg

import (
	"errors"
	"math"
	"strconv"
	"strings"
)

// largest bounds every number of a drawing.
const largest = 1e12

// scanner reads numbers out of attributes, as SVG 2 spells them: sign, digits,
// decimal point, exponent; blanks and at most one comma between them.
type scanner struct {
	text string
	at   int
}

func (s *scanner) blanks() {
	for s.at < len(s.text) && strings.IndexByte(" \t\r\n\f", s.text[s.at]) >= 0 {
		s.at++
	}
}

// comma skips blanks and one comma between numbers.
func (s *scanner) comma() {
	s.blanks()
	if s.at < len(s.text) && s.text[s.at] == ',' {
		s.at++
		s.blanks()
	}
}

func (s *scanner) done() bool {
	s.blanks()
	return s.at >= len(s.text)
}

// peek gives the next byte, 0 at the end.
func (s *scanner) peek() byte {
	if s.at >= len(s.text) {
		return 0
	}
	return s.text[s.at]
}

// startsNumber says whether a number comes next.
func (s *scanner) startsNumber() bool {
	c := s.peek()
	return c == '+' || c == '-' || c == '.' || (c >= '0' && c <= '9')
}

var (
	errNoNumber = errors.New("a number was expected")
	errTooLarge = errors.New("a number is out of all reason")
)

// number reads one number and nothing after it: "1.5.5" is 1.5 and then .5.
func (s *scanner) number() (float64, error) {
	s.blanks()
	end := s.numberEnd()
	v, err := strconv.ParseFloat(s.text[s.at:end], 64)
	if err != nil && !errors.Is(err, strconv.ErrRange) {
		return 0, errNoNumber
	}
	if math.Abs(v) > largest {
		return 0, errTooLarge
	}
	s.at = end
	return v, nil
}

func (s *scanner) numberEnd() int {
	i := s.at
	digits := func() (n int) {
		for i < len(s.text) && s.text[i] >= '0' && s.text[i] <= '9' {
			i, n = i+1, n+1
		}
		return n
	}
	if i < len(s.text) && (s.text[i] == '+' || s.text[i] == '-') {
		i++
	}
	n := digits()
	if i < len(s.text) && s.text[i] == '.' {
		i++
		n += digits()
	}
	if n == 0 {
		return s.at
	}
	mantissa := i
	if i < len(s.text) && (s.text[i] == 'e' || s.text[i] == 'E') {
		i++
		if i < len(s.text) && (s.text[i] == '+' || s.text[i] == '-') {
			i++
		}
		if digits() == 0 {
			return mantissa // "2em": the e belongs to the unit
		}
	}
	return i
}

// flag reads an arc flag: one digit, 0 or 1, that may be glued to what follows.
func (s *scanner) flag() (bool, error) {
	s.blanks()
	c := s.peek()
	if c != '0' && c != '1' {
		return false, errors.New("an arc flag, 0 or 1, was expected")
	}
	s.at++
	return c == '1', nil
}

// numbers reads a whole attribute of numbers.
func numbers(text string) ([]float64, error) {
	s := scanner{text: text}
	var out []float64
	for !s.done() {
		v, err := s.number()
		if err != nil {
			return nil, err
		}
		out = append(out, v)
		at := s.at
		s.comma()
		if s.at >= len(s.text) && strings.Contains(text[at:], ",") {
			return nil, errNoNumber
		}
	}
	return out, nil
}
