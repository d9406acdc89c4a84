package drawing_test

import (
	"encoding/json"
	"strings"
	"testing"

	"stripwright/geometry/drawing"
)

// readHarder gives the harder kinds of what the corpus holds, made by
// testdata/outside/harder.py: values from formulas by hand, those of bent shapes
// from shapely and ezdxf's own spline evaluation.
func readHarder(t testing.TB) []expected {
	t.Helper()
	var cases []expected
	if err := json.Unmarshal(readFile(t, "harder/expected.json"), &cases); err != nil {
		t.Fatal(err)
	}
	for i := range cases {
		cases[i].File = "harder/" + cases[i].File
	}
	return cases
}

func TestHarder(t *testing.T) {
	cases := readHarder(t)
	if len(cases) < 270 {
		t.Errorf("%d cases, 270 were there", len(cases))
	}
	for _, c := range cases {
		t.Run(c.File, func(t *testing.T) {
			data := readFile(t, c.File)
			plain := drawing.Read(c.File, data, drawing.Options{})
			with := drawing.Read(c.File, data, c.options(t))
			if !strings.Contains(told(plain)+told(with), c.Says) {
				t.Errorf("must say %q, says:\n%s", c.Says, told(plain)+told(with))
			}
			if c.Verdict == "error" && c.Says == "" {
				t.Error("a refusal must be looked at: its words are not stated")
			}
			holdVerdict(t, c, plain, with)
			if c.Area > 0 {
				holdValues(t, c, with)
			}
			holdPromises(t, plain)
			holdPromises(t, with)
		})
	}
}
