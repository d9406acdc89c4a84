package length

import "fmt"

// Error says what is wrong with a written measure, and the cure. Both are
// parts of a sentence: lower case, no full stop.
type Error struct {
	Text string
	Cure string
}

// Error gives text and cure in one line.
func (e *Error) Error() string {
	if e.Cure == "" {
		return e.Text
	}
	return e.Text + " — " + e.Cure
}

func refuse(cure, format string, args ...any) *Error {
	return &Error{Text: fmt.Sprintf(format, args...), Cure: cure}
}
