package length

import "strings"

// typed brings the signs of typeset text to those of a keyboard: ½ to 1/2, ″
// to ", − to -, ² to 2, and takes blanks off the ends.
func typed(text string) string {
	ascii := true
	for i := 0; i < len(text) && ascii; i++ {
		ascii = text[i] < 0x80 && text[i] != '\t'
	}
	if !ascii {
		text = typeset.Replace(text)
	}
	return strings.TrimSpace(text)
}

var typeset = strings.NewReplacer(
	"¼", " 1/4", "½", " 1/2", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "⁄", "/",
	"″", `"`, "”", `"`, "“", `"`, "′", "'", "’", "'", "‘", "'",
	"−", "-", "º", "°", "²", "2", "³", "3", "\u00a0", " ", "\u202f", " ", "\u2009", " ", "\t", " ",
)
