package sheet

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
)

func TestAppendMM(t *testing.T) {
	for _, v := range []float64{0, math.Copysign(0, -1), 0.0004, -0.0004, 0.001, -0.001, 0.0105, 12.5, -12.25, 999.9996, 1370, 5200000.123, -0.05} {
		got := string(AppendMM(nil, v))
		back, err := strconv.ParseFloat(got, 64)
		if err != nil || math.Abs(back-v) > 0.00051 || got == "-0" {
			t.Errorf("%v is written %q", v, got)
		}
		if len(got) > 1 && got[len(got)-1] == '0' && back != math.Trunc(back) {
			t.Errorf("%v is written %q, with a zero at the end", v, got)
		}
	}
}

func TestWords(t *testing.T) {
	for _, c := range [][2]string{
		{Tape(600, "mm"), "600 mm"}, {Tape(424.264, "mm"), "424.3 mm"}, {Tape(600.075, "in"), "23 5/8 in (600.1 mm)"},
		{Mark(424.264, "mm"), "424.5 mm"}, {Mark(424.2, "mm"), "424 mm"}, {Mark(600.075, "in"), "23 5/8 in (600 mm)"},
		{Degrees(0), "0°"}, {Degrees(45), "+45°"}, {Degrees(-45), "-45°"}, {Degrees(90), "90°"}, {Degrees(-22.5), "-22.5°"},
		{MetreMark(12500, "mm"), "12.5 m"}, {Size(1370, 620), "1370 x 620 mm (53.94 x 24.41 in)"},
		{Spelt("a\n漢⌀"), "a[U+000A][U+6F22]Ø"}, {PenSpelt("Ø1"), "[U+00D8]1"},
	} {
		if c[0] != c[1] {
			t.Errorf("%q, want %q", c[0], c[1])
		}
	}
}

// The face has what a sheet needs (the list that go fonts were found to cover).
func TestLetteringCovers(t *testing.T) {
	for _, r := range "ABCxyz0189±°×Øµ≤²-+.,:/()" {
		if LetterGlyph(r, false) == nil || LetterGlyph(r, true) == nil {
			t.Errorf("no outline of %c", r)
		}
	}
	for r := range penStrokes {
		lines, ok := PenGlyph(r)
		if !ok || r != ' ' && len(lines) == 0 {
			t.Errorf("no strokes of %c", r)
		}
		for _, l := range lines {
			for _, p := range l.Points {
				if len(l.Points) < 2 || p[0] < 0 || p[0] > 4 || p[1] < -2 || p[1] > 6 {
					t.Errorf("strokes of %c leave their grid: %v", r, l.Points)
				}
			}
		}
	}
	for r := 'A'; r <= 'Z'; r++ {
		for _, c := range []rune{r, r + 'a' - 'A'} {
			if _, ok := PenGlyph(c); !ok {
				t.Errorf("the pen cannot write %c", c)
			}
		}
	}
}

func TestFittedAndWrapped(t *testing.T) {
	long := Text{Height: 5, Words: "LAY THE ROLL FACE UP: stitch-loop side up"}
	if w := long.Fitted(40).Width(); math.Abs(w-40) > 1e-9 {
		t.Errorf("fitted to 40 mm it is %.3f mm", w)
	}
	for _, l := range Wrapped(long, 60, 3) {
		if l.Width() > 60+1e-9 {
			t.Errorf("line %q is %.3f mm wide, room 60", l.Words, l.Width())
		}
	}
	if n := len(Wrapped(long, 1, 3)); n != 3 {
		t.Errorf("%d lines, want 3 at most", n)
	}
}

// However narrow the room, a figure and its unit stand on one line.
func TestWrappedKeepsUnits(t *testing.T) {
	law := Text{Height: 5, Words: "Lay to the marks. Widest gap 2 mm; no laps (30 1/2 in) for 12 m."}
	for width := 5.0; width < 300; width += 5 {
		for _, l := range Wrapped(law, width, 30) {
			for _, unit := range []string{"mm;", "in)", "m."} {
				if strings.HasPrefix(l.Words, unit) {
					t.Errorf("%g mm wide: a line begins with %q", width, l.Words)
				}
			}
		}
	}
}

// A spot's box lies inside the region, on an L, a triangle and round a hole.
func TestSpotLiesInside(t *testing.T) {
	for name, r := range map[string]geometry.Region{
		"L":        {Outer: orb.Ring{{0, 0}, {300, 0}, {300, 40}, {60, 40}, {60, 200}, {0, 200}}},
		"triangle": {Outer: orb.Ring{{0, 0}, {200, 0}, {0, 200}}},
		"holed":    {Outer: orb.Ring{{0, 0}, {300, 0}, {300, 100}, {0, 100}}, Holes: []orb.Ring{{{100, 20}, {100, 80}, {200, 80}, {200, 20}}}},
	} {
		at, h := Spot(r, 3, 20, 2)
		if h < 2 {
			t.Errorf("%s: no room found", name)
		}
		for _, c := range [4]orb.Point{{-1.5, -0.5}, {1.5, -0.5}, {1.5, 0.5}, {-1.5, 0.5}} {
			if p := (orb.Point{at[0] + 0.999*c[0]*h, at[1] + 0.999*c[1]*h}); !r.Contains(p) {
				t.Errorf("%s: box of height %.1f at %v leaves the region at %v", name, h, at, p)
			}
		}
	}
	if _, h := Spot(geometry.Region{Outer: orb.Ring{{0, 0}, {300, 0}, {300, 1}, {0, 1}}}, 3, 20, 2); h != 0 {
		t.Errorf("a sliver has room for %.1f mm", h)
	}
}
