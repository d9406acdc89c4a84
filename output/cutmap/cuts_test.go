package cutmap

import (
	"math"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/internal/handmade"
	"stripwright/output/sheet"
)

func piece(points ...orb.Point) laminate.Piece {
	return laminate.Piece{Shape: geometry.Region{Outer: points}.Oriented()}
}

func cutLength(lines []sheet.Line) float64 {
	sum := 0.0
	for _, l := range lines {
		for _, s := range segments(l) {
			sum += math.Hypot(s[1][0]-s[0][0], s[1][1]-s[0][1])
		}
	}
	return sum
}

func segments(l sheet.Line) [][2]orb.Point {
	var out [][2]orb.Point
	for i := 1; i < len(l.Points); i++ {
		out = append(out, [2]orb.Point{l.Points[i-1], l.Points[i]})
	}
	if l.Closed {
		out = append(out, [2]orb.Point{l.Points[len(l.Points)-1], l.Points[0]})
	}
	return out
}

// Lengths by hand: perimeters less what two pieces share.
func TestCutsSharedOnce(t *testing.T) {
	for _, c := range []struct {
		name   string
		pieces []laminate.Piece
		lines  int
		long   float64
	}{
		{"one", []laminate.Piece{piece(orb.Point{0, 0}, orb.Point{100, 0}, orb.Point{100, 50}, orb.Point{0, 50})}, 1, 300},
		{"apart", []laminate.Piece{
			piece(orb.Point{0, 0}, orb.Point{100, 0}, orb.Point{100, 50}, orb.Point{0, 50}),
			piece(orb.Point{101, 0}, orb.Point{200, 0}, orb.Point{200, 50}, orb.Point{101, 50}),
		}, 2, 598},
		{"side by side", []laminate.Piece{
			piece(orb.Point{0, 0}, orb.Point{100, 0}, orb.Point{100, 50}, orb.Point{0, 50}),
			piece(orb.Point{0, 50}, orb.Point{100, 50}, orb.Point{100, 80}, orb.Point{0, 80}),
		}, 2, 460},
		{"overlapping in part", []laminate.Piece{
			piece(orb.Point{0, 0}, orb.Point{100, 0}, orb.Point{100, 50}, orb.Point{0, 50}),
			piece(orb.Point{40, 50}, orb.Point{170, 50}, orb.Point{170, 80}, orb.Point{40, 80}),
		}, 2, 300 + 320 - 60},
		{"short on long, noted by the one cut first", []laminate.Piece{
			piece(orb.Point{40, 50}, orb.Point{70, 50}, orb.Point{70, 80}, orb.Point{40, 80}),
			piece(orb.Point{0, 0}, orb.Point{100, 0}, orb.Point{100, 50}, orb.Point{0, 50}),
		}, 2, 120 + 300 - 30},
		{"slanting, both rounded apart", []laminate.Piece{
			piece(orb.Point{0, 0}, orb.Point{100, 0}, orb.Point{0, 77.777}),
			piece(orb.Point{100.001, 0.001}, orb.Point{33.334, 51.852}, orb.Point{90, 90}),
		}, 2, 100 + 77.777 + math.Hypot(100, 77.777) + math.Hypot(56.666, 38.148) + math.Hypot(10.001, 89.999)},
		{"in a hole", []laminate.Piece{
			{Shape: geometry.Region{
				Outer: orb.Ring{{0, 0}, {100, 0}, {100, 100}, {0, 100}},
				Holes: []orb.Ring{{{20, 20}, {20, 80}, {80, 80}, {80, 20}}},
			}},
			piece(orb.Point{20, 20}, orb.Point{80, 20}, orb.Point{80, 40}, orb.Point{20, 40}),
		}, 3, 400 + 240 + 60},
	} {
		lines := Cuts(c.pieces)
		if len(lines) != c.lines {
			t.Errorf("%s: %d lines, want %d", c.name, len(lines), c.lines)
		}
		if got := cutLength(lines); math.Abs(got-c.long) > 0.02 {
			t.Errorf("%s: %.3f mm cut, want %.3f", c.name, got, c.long)
		}
	}
}

// On whole plans: no two cuts lie on each other, and every point of every
// piece's outline is cut.
func TestCutsCoverEveryOutlineOnce(t *testing.T) {
	for name, p := range map[string]laminate.Plan{"hatch": handmade.Hatch(), "disc": handmade.Disc(), "batten": handmade.Batten()} {
		for _, l := range Lengths(p) {
			var all [][2]orb.Point
			for _, line := range Cuts(l.Pieces) {
				all = append(all, segments(line)...)
			}
			if twice := doubled(all); twice > 0.05 {
				t.Errorf("%s: %.3f mm cut twice", name, twice)
			}
			for _, piece := range l.Pieces {
				for _, ring := range piece.Shape.Rings() {
					for i, a := range ring {
						b := ring[(i+1)%len(ring)]
						for _, f := range []float64{0, 0.31, 0.5, 0.83} {
							q := orb.Point{a[0] + f*(b[0]-a[0]), a[1] + f*(b[1]-a[1])}
							if d := nearestOf(all, q); d > 0.01 {
								t.Fatalf("%s: %s: outline at %v is %.3f mm from the nearest cut", name, piece.ID, q, d)
							}
						}
					}
				}
			}
		}
	}
}

// doubled gives the length that two segments have in common, over all pairs.
func doubled(all [][2]orb.Point) float64 {
	sum := 0.0
	for i, s := range all {
		d := sheet.Towards(s[0], s[1])
		long := math.Hypot(s[1][0]-s[0][0], s[1][1]-s[0][1])
		for _, o := range all[:i] {
			var along [2]float64
			off := 0.0
			for k, p := range o {
				x, y := p[0]-s[0][0], p[1]-s[0][1]
				along[k] = x*d[0] + y*d[1]
				off = math.Max(off, math.Abs(d[0]*y-d[1]*x))
			}
			low, high := math.Max(0, math.Min(along[0], along[1])), math.Min(long, math.Max(along[0], along[1]))
			if off < 0.01 && high > low {
				sum += high - low
			}
		}
	}
	return sum
}

func nearestOf(all [][2]orb.Point, p orb.Point) float64 {
	best := math.Inf(1)
	for _, s := range all {
		d := sheet.Towards(s[0], s[1])
		long := math.Hypot(s[1][0]-s[0][0], s[1][1]-s[0][1])
		t := math.Max(0, math.Min(long, (p[0]-s[0][0])*d[0]+(p[1]-s[0][1])*d[1]))
		best = math.Min(best, math.Hypot(p[0]-s[0][0]-t*d[0], p[1]-s[0][1]-t*d[1]))
	}
	return best
}

// The cutter's layers come in the order that a cutter needs, and each piece's
// inner cuts before its outline.
func TestCutterOrder(t *testing.T) {
	p := handmade.Hatch()
	s := Cutter(p, Lengths(p)[0], handmade.Hash)
	want := []string{"TEXT", "MARK", "NOTCH", "GRAIN", "ROLL", "DATUM", "SCALE", "CUT"}
	if len(s.Layers) != len(want) {
		t.Fatalf("%d layers, want %d", len(s.Layers), len(want))
	}
	for i, l := range s.Layers {
		if l.Name != want[i] {
			t.Errorf("layer %d is %s, want %s", i+1, l.Name, want[i])
		}
		for _, shape := range l.Shapes {
			if shape.Fill.Ink != "" || shape.Pen.Ink == "" {
				t.Errorf("layer %s has a fill or no stroke", l.Name)
			}
		}
	}
	holed := laminate.Piece{Shape: geometry.Region{
		Outer: orb.Ring{{0, 0}, {100, 0}, {100, 100}, {0, 100}}, Holes: []orb.Ring{{{20, 20}, {20, 80}, {80, 80}, {80, 20}}},
	}}
	if first := Cuts([]laminate.Piece{holed})[0]; first.Points[0][0] < 20 {
		t.Errorf("first cut %v is not the opening", first.Points)
	}
}
