package code

import (
	"strconv"
	"strings"
)

// mostNamed is how many runs of equal plies Words names.
const mostNamed = 24

// Words says what was understood, first ply laid first: "8 plies from the tool
// up: 0°, 45°, -45°, 90° twice, -45°, 45°, 0°".
func (c Code) Words() string {
	plies := c.Plies()
	var words []string
	for i := 0; i < len(plies); {
		n := run(plies[i:])
		if len(words) == mostNamed {
			words = append(words, "and "+strconv.Itoa(len(plies)-i)+" more")
			break
		}
		words = append(words, plies[i].words(n))
		i += n
	}
	head := strconv.Itoa(len(plies)) + " plies from the tool up: "
	if len(plies) == 1 {
		head = "1 ply: "
	}
	return head + strings.Join(words, ", ")
}

func (p Ply) words(n int) string {
	text := strconv.FormatFloat(p.Angle, 'f', -1, 64) + "°"
	if p.Woven {
		text = "woven at " + text
	}
	if n > 1 {
		text += " " + often(n)
	}
	return text
}
