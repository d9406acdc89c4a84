package sheet

import (
	"fmt"
	"strings"
	"sync"

	"github.com/paulmach/orb"
)

// penStrokes are single-stroke letters for a pen: points as column 0-4 and row
// 0-8, base line on row 2, capitals to row 8, small letters to row 6. A blank
// goes on, a semicolon lifts the pen. Zero is slashed, so that it is no O.
var penStrokes = map[rune]string{
	' ': "",
	'0': "03 07 18 38 47 43 32 12 03;03 47", '1': "17 28 22;12 32", '2': "07 18 38 47 46 02 42",
	'3': "07 18 38 47 46 35 15;35 44 43 32 12 03", '4': "32 38 04 44", '5': "48 08 05 35 44 43 32 12 03",
	'6': "38 18 07 03 12 32 43 44 35 05", '7': "08 48 12",
	'8': "15 06 07 18 38 47 46 35 15 04 03 12 32 43 44 35", '9': "03 12 32 43 47 38 18 07 06 15 45",
	'A': "02 06 28 46 42;04 44", 'B': "02 08 38 47 46 35 05;35 44 43 32 02", 'C': "47 38 18 07 03 12 32 43",
	'D': "02 08 28 46 44 22 02", 'E': "48 08 02 42;05 35", 'F': "48 08 02;05 35",
	'G': "47 38 18 07 03 12 32 43 45 25", 'H': "02 08;42 48;05 45", 'I': "12 32;22 28;18 38",
	'J': "03 12 22 33 38", 'K': "02 08;48 05 42", 'L': "08 02 42", 'M': "02 08 25 48 42", 'N': "02 08 42 48",
	'O': "03 07 18 38 47 43 32 12 03", 'P': "02 08 38 47 46 35 05",
	'Q': "03 07 18 38 47 43 32 12 03;24 42", 'R': "02 08 38 47 46 35 05;25 42",
	'S': "47 38 18 07 06 15 35 44 43 32 12 03", 'T': "08 48;28 22", 'U': "08 03 12 32 43 48",
	'V': "08 22 48", 'W': "08 12 25 32 48", 'X': "02 48;08 42", 'Y': "08 25 48;25 22", 'Z': "08 48 02 42",
	'a': "46 42;45 36 16 05 03 12 32 43", 'b': "08 02;05 16 36 45 43 32 12 03", 'c': "45 36 16 05 03 12 32 43",
	'd': "48 42;45 36 16 05 03 12 32 43", 'e': "04 44 45 36 16 05 03 12 32 43", 'f': "12 17 28 38;05 35",
	'g': "46 41 30 10;45 36 16 05 03 12 32 43", 'h': "02 08;05 16 36 45 42", 'i': "22 26;27 28",
	'j': "10 21 26;27 28", 'k': "02 08;36 04 32", 'l': "18 13 22 32", 'm': "02 06;05 16 25 22;25 36 45 42",
	'n': "02 06;05 16 36 45 42", 'o': "03 05 16 36 45 43 32 12 03", 'p': "00 06;05 16 36 45 43 32 12 03",
	'q': "40 46;45 36 16 05 03 12 32 43", 'r': "02 06;04 16 26 35", 's': "45 36 16 05 14 34 43 32 12 03",
	't': "18 13 22 32;06 26", 'u': "06 03 12 32 43;46 42", 'v': "06 22 46", 'w': "06 12 24 32 46",
	'x': "02 46;06 42", 'y': "06 22;46 22 10", 'z': "06 46 02 42",
	'-': "05 45", '+': "05 45;23 27", '.': "12 13 23 22 12", ',': "23 22 11", '/': "02 48",
	':': "23 24;26 27", ';': "23 22 11;26 27", '(': "38 17 13 32", ')': "18 37 33 12", '=': "04 44;06 46",
	'_': "01 41", '#': "12 18;32 38;04 44;06 46", '%': "02 48;08 18 17 07 08;42 32 33 43 42",
	'°': "07 08 18 17 07", '±': "06 46;24 28;03 43", '*': "23 27;04 46;06 44", '!': "28 24;22 23",
	'?': "07 18 38 47 46 25 24;22 23", '"': "18 17;38 37", '\'': "28 27", '<': "47 05 43", '>': "07 45 03",
	'[': "38 18 12 32", ']': "18 38 32 12", '~': "04 15 24 35", '|': "20 28", '\\': "08 42",
}

// PenGrid is the height of capitals in units of the pen letters, PenAdvance
// the way to the next letter.
const (
	PenGrid    = 6.0
	PenAdvance = 6.0
)

var penLetters = sync.OnceValue(func() map[rune][]Line {
	letters := make(map[rune][]Line, len(penStrokes))
	for r, strokes := range penStrokes {
		letters[r] = penLines(strokes)
	}
	return letters
})

func penLines(strokes string) []Line {
	if strokes == "" {
		return nil
	}
	var lines []Line
	for _, stroke := range strings.Split(strokes, ";") {
		var l Line
		for _, p := range strings.Fields(stroke) {
			l.Points = append(l.Points, orb.Point{float64(p[0] - '0'), float64(p[1]-'0') - 2})
		}
		lines = append(lines, l)
	}
	return lines
}

// PenGlyph gives the strokes of a letter on the pen grid, base line at y = 0;
// false for one that the pen cannot write.
func PenGlyph(r rune) ([]Line, bool) {
	lines, ok := penLetters()[r]
	return lines, ok
}

// PenSpelt writes letters that the pen lacks by what they are called in
// Unicode, as [U+00E9].
func PenSpelt(words string) string {
	var b strings.Builder
	for _, r := range words {
		if _, ok := penStrokes[r]; ok {
			b.WriteRune(r)
			continue
		}
		fmt.Fprintf(&b, "[U+%04X]", r)
	}
	return b.String()
}

// penAdvance gives the length of a text for capitals of height 1.
func penAdvance(words string) float64 {
	n := 0
	for range PenSpelt(words) {
		n++
	}
	if n == 0 {
		return 0
	}
	return (float64(float64(n)*PenAdvance) - 2) / PenGrid
}
