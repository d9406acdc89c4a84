package book

import (
	"fmt"
	"strings"
	"unicode"
)

// shown gives a name of the job as it can be shown: signs that cannot be seen, or
// that turn the reading direction, are written by what they are called in
// Unicode, as [U+202E], so that two names never look the same.
func shown(s string) string {
	plain := func(r rune) bool { return unicode.IsGraphic(r) && !unicode.Is(unicode.Cf, r) }
	if strings.IndexFunc(s, func(r rune) bool { return !plain(r) }) < 0 {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		if plain(r) {
			b.WriteRune(r)
			continue
		}
		fmt.Fprintf(&b, "[U+%04X]", r)
	}
	return b.String()
}
