package code

import (
	"fmt"
	"strconv"
)

// Error says what is wrong with a code and the cure: parts of a sentence, lower
// case, no full stop. At counts characters from 1.
type Error struct {
	Code string
	At   int
	Text string
	Cure string
}

// Error gives the code, the place, text and cure in one line.
func (e *Error) Error() string {
	return fmt.Sprintf("code %s, character %d: %s — %s", e.Quoted(), e.At, e.Text, e.Cure)
}

// refusal carries an error from the place where it is found to Parse.
type refusal struct{ *Error }

// Quoted gives the code in quotation marks, shortened where it is long.
func (e *Error) Quoted() string {
	letters := []rune(e.Code)
	if len(letters) > 60 {
		return strconv.Quote(string(letters[:60])) + "…"
	}
	return strconv.Quote(e.Code)
}
