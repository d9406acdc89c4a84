package template

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/internal/handmade"
	"stripwright/output/page"
	"stripwright/output/sheet"
)

// Every line of a ply or piece is on the sheets, true to size: each vertex of the
// outline is found, and the distance of any two of one sheet is that of the part.
func TestSheetsCoverTheOutline(t *testing.T) {
	p := handmade.Hatch()
	for _, size := range []page.Size{page.A4, page.Letter} {
		for _, name := range []string{"P02", "3", "P01-S02", p.Rolls[0].Pieces[3].ID} {
			s, err := find(p, name)
			if err != nil {
				t.Fatal(err)
			}
			g := gridOf(s, size)
			for _, line := range s.lines {
				for _, ring := range line.region.Rings() {
					for _, q := range ring {
						covered := false
						for row := range g.rows {
							for col := range g.cols {
								w := g.window(col, row)
								covered = covered || w.Contains(q) && s.used(w)
							}
						}
						if !covered {
							t.Fatalf("%s %s: %v is on no sheet", name, size.Name, q)
						}
					}
				}
			}
			if got := g.window(1, 0).Min[0] - g.window(0, 0).Max[0]; math.Abs(got+overlap) > 1e-9 {
				t.Errorf("%s: sheets overlap by %v", name, -got)
			}
			pages, err := Sheets(p, name, handmade.Hash, size)
			if err != nil {
				t.Fatal(err)
			}
			trueToSize(t, name, pages, s)
		}
	}
}

// trueToSize holds the first outline as drawn on the second page against the
// subject's: moved, neither turned nor scaled.
func trueToSize(t *testing.T, name string, pages []sheet.Scene, s subject) {
	t.Helper()
	drawn := pages[1].Layer("TEMPLATE").Shapes[0].Lines[0].Points
	want := s.lines[0].region.Outer
	if len(drawn) != len(want) {
		t.Fatalf("%s: %d points drawn, want %d", name, len(drawn), len(want))
	}
	move := orb.Point{drawn[0][0] - want[0][0], drawn[0][1] - want[0][1]}
	for i := range want {
		if math.Abs(drawn[i][0]-want[i][0]-move[0]) > 1e-9 || math.Abs(drawn[i][1]-want[i][1]-move[1]) > 1e-9 {
			t.Errorf("%s: point %d is moved by another way", name, i)
		}
	}
}

// Crosses of neighbours lie over each other.
func TestCrossesMeet(t *testing.T) {
	p := handmade.Hatch()
	s, err := find(p, "P01")
	if err != nil {
		t.Fatal(err)
	}
	g := gridOf(s, page.A4)
	// A cross stands overlap/2 inside its sheet's frame.
	a, b := g.window(0, 0), g.window(1, 0)
	if right, left := a.Max[0]-overlap/2, b.Min[0]+overlap/2; math.Abs(right-left) > 1e-9 {
		t.Errorf("the right crosses of one sheet stand at %v, the left ones of the next at %v", right, left)
	}
}

func TestRefusals(t *testing.T) {
	p := handmade.Hatch()
	for _, name := range []string{"P99", "P01-S99", "", "S01", "P1-S1"} {
		if _, err := Sheets(p, name, handmade.Hash, page.A4); !errors.Is(err, ErrUnknown) || !strings.Contains(err.Error(), "plies are P01 to P") {
			t.Errorf("%q: %v", name, err)
		}
	}
	huge := handmade.Plate(1, 60000, 40000, 30000)
	if _, err := Sheets(huge, "P01", handmade.Hash, page.A4); !errors.Is(err, ErrSheets) {
		t.Errorf("a part of 60 by 40 m: %v", err)
	}
}

// A face-down piece is drawn as it is cut, and says so; a plan at fault is
// stamped on every sheet.
func TestWhatTemplatesSay(t *testing.T) {
	p := handmade.Faulty(handmade.Hatch())
	var mirrored laminate.Piece
	for _, r := range p.Rolls {
		for _, piece := range r.Pieces {
			if piece.Mirrored {
				mirrored = piece
			}
		}
	}
	if mirrored.ID == "" {
		t.Fatal("no piece lies face down")
	}
	pages, err := Sheets(p, mirrored.ID, handmade.Hash, page.A4)
	if err != nil {
		t.Fatal(err)
	}
	for i, s := range pages {
		words := ""
		for _, l := range s.Layers {
			for _, text := range l.Texts {
				words += text.Words + "\n"
			}
		}
		if !strings.Contains(words, sheet.DoNotCut) {
			t.Errorf("sheet %d is not stamped", i)
		}
		if i == 0 && (!strings.Contains(words, "mirrored already") || !strings.Contains(words, "laid FACE DOWN")) {
			t.Errorf("the first sheet does not tell that the piece is mirrored:\n%s", words)
		}
		if i > 0 && !strings.Contains(words, "free end of the roll") {
			t.Errorf("sheet %d has no arrow along the roll", i)
		}
	}
}
