package main

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"stripwright/geometry/length"
	"stripwright/nest"
)

// refused words the error of a job that cannot be planned: rule and plies, the
// largest stagger there could be, and what would help.
func refused(name string, err error) error {
	var r *nest.Refusal
	if !errors.As(err, &r) {
		if err != nil {
			err = mistake("%s: %v", name, err)
		}
		return err
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s: %s", name, r.Rule, r.Text)
	if len(r.Plies) > 0 {
		fmt.Fprintf(&b, "\n  plies: %s", numbers(r.Plies))
	}
	if r.LargestStaggerMM > 0 {
		fmt.Fprintf(&b, "\n  largest possible stagger: %s", length.MM(r.LargestStaggerMM))
	}
	for _, c := range r.Cures {
		fmt.Fprintf(&b, "\n  cure: %s", c)
	}
	return fault{b.String()}
}

func numbers(ns []int) string {
	text := make([]string, len(ns))
	for i, n := range ns {
		text[i] = strconv.Itoa(n)
	}
	return strings.Join(text, ", ")
}
