package label

import (
	"regexp"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/internal/handmade"
	"stripwright/output/sheet"
)

var plans = map[string]func() laminate.Plan{
	"hatch": handmade.Hatch, "disc": handmade.Disc, "small": handmade.Small, "batten": handmade.Batten,
}

// A label for each piece, in cutting order, that names ply and side.
func TestALabelForEachPiece(t *testing.T) {
	for name, plan := range plans {
		p := plan()
		pages, err := Labels(p, handmade.Hash)
		if err != nil {
			t.Fatal(err)
		}
		id := regexp.MustCompile(`^P\d+-S\d+$`)
		var got []string
		up, down := 0, 0
		for _, s := range pages {
			for _, l := range s.Layers {
				for _, text := range l.Texts {
					if b := text.Bounds(); b.Min[0] < 2 || b.Min[1] < 2 || b.Max[0] > 208 || b.Max[1] > 295 {
						t.Errorf("%s: %q leaves its sheet", name, text.Words)
					}
					if id.MatchString(text.Words) {
						got = append(got, text.Words)
					}
					if text.Words == "FACE UP" {
						up++
					}
					if text.Words == "FACE DOWN" {
						down++
					}
				}
			}
		}
		var want []string
		wantDown := 0
		for _, r := range p.Rolls {
			for order := 1; order <= len(r.Pieces); order++ {
				for _, piece := range r.Pieces {
					if piece.CutOrder == order {
						want = append(want, piece.ID)
						if piece.Mirrored {
							wantDown++
						}
					}
				}
			}
		}
		if strings.Join(got, " ") != strings.Join(want, " ") {
			t.Errorf("%s: labels %v, want %v", name, got, want)
		}
		if down != wantDown || up != len(want)-wantDown {
			t.Errorf("%s: %d up, %d down, want %d down of %d", name, up, down, wantDown, len(want))
		}
	}
}

// What lies towards the datum, found by hand: a strip 1000 by 200 mm from (100,
// 100), the datum at the origin, in all ways of cutting it. Drawn on the roll the
// strip's low left corner is the one nearest to the datum; mirrored (laid face
// down) it is the left edge, turned it is the far end.
func TestTowardsTheDatum(t *testing.T) {
	strip := laminate.Strip{ID: "P01-S01", Shape: geometry.Region{Outer: orb.Ring{{100, 100}, {1100, 100}, {1100, 300}, {100, 300}}}}
	p := laminate.Plan{Part: laminate.PlanPart{Corners: []laminate.Corner{{Name: "A"}}}}
	for _, c := range []struct {
		angle     float64
		mirrored  bool
		turned    int
		end, edge string
	}{
		{0, false, 0, "free end", "right edge"},
		{0, false, 180, "far end", "left edge"},
		{0, true, 0, "free end", "left edge"},
		{0, true, 180, "far end", "right edge"},
		// At 90° the roll runs up the part: the strip's left side, towards the
		// datum, is the roll's left-hand edge.
		{90, false, 0, "free end", "left edge"},
		{90, true, 0, "free end", "right edge"},
	} {
		o := one{strip: strip, ply: laminate.PlanPly{AngleDeg: c.angle}, piece: laminate.Piece{Mirrored: c.mirrored, Turned: c.turned}}
		if end, edge := o.towards(p); end != c.end || edge != c.edge {
			t.Errorf("%+v: %s, %s", c, end, edge)
		}
	}
}

// The modules of a code are those of ISO/IEC 18004 version 1 for a short id: 21 a
// side, with the three finder squares of 7 in their corners.
func TestCodeHasItsFinders(t *testing.T) {
	l := &sheet.Layer{}
	if err := code(l, "P03-S02", orb.Bound{Max: orb.Point{29, 29}}); err != nil {
		t.Fatal(err)
	}
	dark := func(col, row int) bool { // from the upper left, quiet zone of 4 left out
		x, y := float64(col)+4.5, 29-(float64(row)+4.5)
		for _, line := range l.Shapes[0].Lines {
			if q := line.Points; q[0][0] < x && x < q[2][0] && q[0][1] < y && y < q[2][1] {
				return true
			}
		}
		return false
	}
	for name, at := range map[string][2]int{"upper left": {0, 0}, "upper right": {14, 0}, "lower left": {0, 14}} {
		for i := range 7 {
			for j := range 7 {
				ring := max(i-3, 3-i, j-3, 3-j)
				if want := ring != 2; dark(at[0]+i, at[1]+j) != want {
					t.Errorf("%s finder: module %d, %d is dark: %v", name, i, j, !want)
				}
			}
		}
	}
	if dark(7, 0) || dark(0, 7) || dark(21, 3) {
		t.Error("a separator or the quiet zone is dark")
	}
}

// No QR code holds this much.
func TestAnIDTooLong(t *testing.T) {
	if err := code(&sheet.Layer{}, strings.Repeat("P01-S01", 1000), orb.Bound{Max: orb.Point{29, 29}}); err == nil {
		t.Error("no error")
	}
}
