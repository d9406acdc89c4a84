package job

import (
	"slices"
	"strings"
	"testing"

	"stripwright/laminate"
)

// A roll of 12 for a part of 1370 is refused, one of 12 mm is taken and noted;
// so is a wide part under ordinary tape.
func TestNarrowTape(t *testing.T) {
	for _, c := range []struct {
		width, part string
		refused     bool
	}{{"6", "[700, 500]", true}, {"6 mm", "[700, 500]", false}, {"60", "[7000, 500]", false}, {"8", "[700, 300]", false}} {
		text := changed(t, "width: 300", "width: "+c.width, "plies_between: 4", "plies_between: 4, narrowest: 0")
		text = text[:strings.Index(text, "{points")] + "{rectangle: " + c.part + "}" + text[strings.Index(text, "\n  trim"):]
		j, problems := Parse("lid.yaml", []byte(text), nil)
		noted := slices.ContainsFunc(j.Notes, func(n laminate.Note) bool {
			return n.Rule == "width" && strings.Contains(n.Text, "more than 100 strips")
		})
		if c.refused != (len(problems) == 1 && problems[0].Rule == "width") || !c.refused && noted != (c.width != "8") {
			t.Errorf("roll %s, part %s: %v, noted %v", c.width, c.part, problems, noted)
		}
	}
}
