package svg

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"github.com/tdewolff/canvas"
)

// written prints runs as "0,0 9,0 9,9 z" for comparison, whole units only.
func written(runs []run) string {
	var out []string
	for _, r := range runs {
		for _, p := range r.points {
			out = append(out, fmt.Sprintf("%.4g,%.4g", p[0], p[1]))
		}
		if r.closed {
			out = append(out, "z")
		}
	}
	return strings.Join(out, " ")
}

// The spellings that SVG 2, section 9.3 (the grammar for path data) allows.
func TestPathSpellings(t *testing.T) {
	for data, want := range map[string]string{
		"":                                   "",
		"M0 0L9 0 9 9z":                      "0,0 9,0 9,9 z",
		"m0 0 9 0 0 9z":                      "0,0 9,0 9,9 z",
		"M0,0,9,0,9,9Z":                      "0,0 9,0 9,9 z",
		" M 0 0\n\tH9V9 h-9 v-9 ":            "0,0 9,0 9,9 0,9 0,0",
		"M1.5.5-2-3":                         "1.5,0.5 -2,-3",
		"M1e1 2E0L+3 .5e1":                   "10,2 3,5",
		"M5 5h4v4zm1 1h1v1z":                 "5,5 9,5 9,9 z 6,6 7,6 7,7 z",
		"M5 5h4v4zh2v2z":                     "5,5 9,5 9,9 z 5,5 7,5 7,7 z",
		"M1 1M2 2M3 3h1":                     "3,3 4,3",
		"M0 0A5 0 0 0 0 9 9":                 "0,0 9,9",
		"M0 0A5 5 0 0 0 0 0h3":               "0,0 0,0 3,0",
		"M0 0C0 0 9 9 9 9S18 18 18 18":       "0,0 9,9 18,18",
		"M0 0Q3 3 6 6T12 12":                 "0,0 6,6 12,12",
		"M0 0T6 6":                           "0,0 6,6",
		"M0 0h1e-3":                          "0,0 0.001,0",
		"M0 0 L 1 1 , 2 2":                   "0,0 1,1 2,2",
		"M0 0C1 1 2 2 3 3 4 4 5 5 6 6":       "0,0 3,3 6,6",
		"M100,200 L 100.0000 200.00":         "100,200 100,200",
		"M0 0 a1 1 0 0 0 0 0 1 1 0 00 0 0 z": "0,0 0,0 0,0 z",
	} {
		runs, err := parsePath(data, 100, 1000)
		if err != nil || written(runs) != want {
			t.Errorf("%q: %q (%v), want %q", data, written(runs), err, want)
		}
	}
}

// What is no path data is refused, with the letter at which it stops to be.
func TestPathErrors(t *testing.T) {
	for data, letter := range map[string]int{
		"L5 5":                2,
		"5 5":                 1,
		"M0":                  3,
		"M0 0L5":              7,
		"M0 0 x 9 9":          6,
		"M0 0 L NaN 9":        8,
		"M0 0 L Infinity 9":   8,
		"M0 0 L 9 1e400":      10,
		"M0 0,L9 9":           6,
		"M0 0 L9 9,":          11,
		"M0 0,,9 9":           6,
		"M0 0 A5 5 0 2 0 9 9": 13,
		"M0 0 A5 5 0 0 9 9":   15,
		"M0 0 z 5":            8,
		"M0 0 L9 9 #":         11,
		"M0 0 L 0x10 9":       9,
		"M0 0 L1_0 9":         8,
	} {
		_, err := parsePath(data, 0.1, 1000)
		if err == nil {
			t.Errorf("%q was taken", data)
			continue
		}
		if !strings.Contains(err.Error(), fmt.Sprintf("at letter %d:", letter)) {
			t.Errorf("%q: %v, want letter %d", data, err, letter)
		}
	}
	if _, err := parsePath("M0 0"+strings.Repeat("h1", 50), 0.1, 40); err == nil {
		t.Error("more points than allowed were taken")
	}
}

// Random paths held against a general-purpose graphics library
// (tdewolff/canvas): the box around the curves is the same.
func TestPathAgainstCanvas(t *testing.T) {
	rnd := rand.New(rand.NewPCG(11, 12))
	for range 400 {
		data := randomPath(rnd)
		runs, err := parsePath(data, 0.01, 1e6)
		if err != nil {
			t.Fatalf("%q: %v", data, err)
		}
		bound := orb.Bound{Min: orb.Point{math.Inf(1), math.Inf(1)}, Max: orb.Point{math.Inf(-1), math.Inf(-1)}}
		for _, r := range runs {
			for _, p := range r.points {
				bound = bound.Extend(p)
			}
		}
		path, err := canvas.ParseSVGPath(data)
		if err != nil {
			t.Fatalf("%q: canvas: %v", data, err)
		}
		want := orb.MultiPoint{}
		for _, c := range path.Flatten(0.001).Coords() {
			want = append(want, orb.Point{c.X, c.Y})
		}
		box := want.Bound()
		tolerance := 0.03
		if strings.ContainsAny(data, "aA") {
			tolerance = 1 // canvas turns arcs into Béziers, a few thousandths of their radius off
		}
		for i := range 2 {
			if math.Abs(bound.Min[i]-box.Min[i]) > tolerance || math.Abs(bound.Max[i]-box.Max[i]) > tolerance {
				t.Errorf("%q: box %v, want %v", data, bound, box)
			}
		}
	}
}

func randomPath(rnd *rand.Rand) string {
	n := func() string { return fmt.Sprintf("%.2f ", rnd.Float64()*400-200) }
	r := func() string { return fmt.Sprintf("%.2f ", 20+rnd.Float64()*200) }
	data := "M" + n() + n() + "l" + n() + n() // canvas takes a z right after M for one at (0, 0)
	before := byte(0)
	for range 1 + rnd.IntN(6) {
		command := "LHVCSQTAlhvcsqtaZz"[rnd.IntN(18)]
		if command|0x20 == before {
			continue // canvas drops the tip where h runs back on h
		}
		before = command | 0x20
		data += string(command)
		switch command | 0x20 {
		case 'a':
			data += r() + r() + n() + fmt.Sprint(rnd.IntN(2), rnd.IntN(2)) + " " + n() + n()
		default:
			for range arguments[command|0x20] {
				data += n()
			}
		}
	}
	return data + "L" + n() + n()
}

// Each transform function on the point (3, 1): SVG 2 section 8.5 / CSS
// Transforms 1, worked by hand.
func TestTransforms(t *testing.T) {
	for text, want := range map[string]orb.Point{
		"":                              {3, 1},
		"translate(5)":                  {8, 1},
		"translate(5,-1)":               {8, 0},
		"scale(2)":                      {6, 2},
		"scale(-1 1)":                   {-3, 1},
		"rotate(90)":                    {-1, 3},
		"rotate(-90, 3, 0)":             {4, 0},
		"skewX(45)":                     {4, 1},
		"skewY(45)":                     {3, 4},
		"matrix(1 2 3 4 5 6)":           {11, 16},
		"translate(10)rotate(90)":       {9, 3},
		" translate(10 0) , scale(2,2)": {16, 2},
	} {
		m, err := parseTransform(text, false, box{})
		got := m.Apply(orb.Point{3, 1})
		if err != nil || math.Hypot(got[0]-want[0], got[1]-want[1]) > 1e-9 {
			t.Errorf("%q: %v (%v), want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"turn(5)", "rotate(1 2)", "scale()", "matrix(1 2 3)", "translate(1", "translate 5", "rotate(NaN)", "translate(5px)", "scale(1,)"} {
		if _, err := parseTransform(text, false, box{}); err == nil {
			t.Errorf("%q was taken", text)
		}
	}
}

// CSS Values and Units: 1in = 25.4mm = 2.54cm = 101.6Q = 72pt = 6pc = 96px.
func TestLengths(t *testing.T) {
	for text, want := range map[string]float64{
		"96": 96, "96px": 96, "1in": 96, "25.4mm": 96, "2.54cm": 96, "101.6Q": 96, "72pt": 96, "6pc": 96, " 1e0IN ": 96, "50%": 100,
	} {
		l, err := parseLength(text)
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		if got, err := l.of(200); err != nil || math.Abs(got-want) > 1e-9 {
			t.Errorf("%q: %v (%v), want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"", "mm", "5 mm x", "1,5mm", "NaN", "5furlong", "0x5"} {
		if l, err := parseLength(text); err == nil {
			t.Errorf("%q was taken for %v", text, l)
		}
	}
	if l, err := parseLength("2em"); err != nil {
		t.Error(err)
	} else if _, err := l.of(1); err == nil {
		t.Error("em has no size in the real world")
	}
}

// preserveAspectRatio, SVG 2 section 8.6: a viewBox of 200 by 100 in a viewport
// of 400 by 400; where its corner and its far corner come to lie.
func TestAspect(t *testing.T) {
	v := viewBox{10, 20, 200, 100}
	for aspect, want := range map[string][2]orb.Point{
		"":               {{0, 100}, {400, 300}},
		"xMidYMid meet":  {{0, 100}, {400, 300}},
		"xMinYMin":       {{0, 0}, {400, 200}},
		"xMaxYMax meet":  {{0, 200}, {400, 400}},
		"none":           {{0, 0}, {400, 400}},
		"xMinYMid slice": {{0, 0}, {800, 400}},
		"xMidYMin slice": {{-200, 0}, {600, 400}},
		"xMaxYMin slice": {{-400, 0}, {400, 400}},
	} {
		m, err := v.into(400, 400, aspect)
		a, b := m.Apply(orb.Point{10, 20}), m.Apply(orb.Point{210, 120})
		if err != nil || a != want[0] || b != want[1] {
			t.Errorf("%q: %v to %v (%v), want %v", aspect, a, b, err, want)
		}
	}
	for _, aspect := range []string{"middle", "xMidYMid cover", "xMidYmid", "XMidYMid"} {
		if _, err := v.into(1, 1, aspect); err == nil {
			t.Errorf("%q was taken", aspect)
		}
	}
}
