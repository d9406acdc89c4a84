package dxf

import (
	"fmt"
	"strings"
)

// longestText is what release 12 takes in one string.
const longestText = 250

// ascii writes a text in the letters that release 12 has. Two different texts
// stay different: a percent sign beside another one and a backslash before U+
// are written by code too.
func ascii(words string) string {
	doubled := strings.Contains(words, "%%")
	var b strings.Builder
	for _, r := range strings.ReplaceAll(words, `\U+`, `\U+005CU+`) {
		switch {
		case r == '°':
			b.WriteString("%%d")
		case r == '±':
			b.WriteString("%%p")
		case r == 'Ø' || r == '⌀':
			b.WriteString("%%c")
		case r == '%' && doubled:
			b.WriteString("%%%")
		case r >= ' ' && r <= '~':
			b.WriteRune(r)
		default:
			fmt.Fprintf(&b, `\U+%04X`, r)
		}
		if b.Len() > longestText {
			return b.String()[:longestText] + "..."
		}
	}
	return b.String()
}
