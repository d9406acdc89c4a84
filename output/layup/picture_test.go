package layup

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"github.com/peterstace/simplefeatures/geom"

	"stripwright/geometry"
	"stripwright/output/internal/handmade"
	"stripwright/output/sheet"
)

// What Window leaves of an outline has the area that simplefeatures finds for the
// intersection with the box.
func TestWindowKeepsTheArea(t *testing.T) {
	r := rand.New(rand.NewSource(6))
	for trial := range 200 {
		var ring orb.Ring
		var coords []float64
		for i := range 12 {
			sin, cos := math.Sincos(float64(i) * math.Pi / 6)
			radius := 20 + 80*r.Float64()
			ring = append(ring, orb.Point{radius * cos, radius * sin})
			coords = append(coords, radius*cos, radius*sin)
		}
		box := orb.Bound{Min: orb.Point{-60 * r.Float64(), -60 * r.Float64()}, Max: orb.Point{60 * r.Float64(), 60 * r.Float64()}}
		polygon := geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(append(coords, coords[0], coords[1]), geom.DimXY))})
		window := geom.NewEnvelope(geom.XY{X: box.Min[0], Y: box.Min[1]}, geom.XY{X: box.Max[0], Y: box.Max[1]})
		common, err := geom.Intersection(polygon.AsGeometry(), window.AsGeometry())
		if err != nil {
			t.Fatal(err)
		}
		got := 0.0
		if w := Window(ring, box); len(w) > 2 {
			got = math.Abs(geometry.SignedArea(w))
		}
		if want := common.Area(); math.Abs(got-want) > 1e-6*math.Max(1, want) {
			t.Errorf("trial %d: area %v, want %v", trial, got, want)
		}
	}
	if got := Window(orb.Ring{{0, 0}, {1, 0}, {1, 1}}, orb.Bound{Min: orb.Point{5, 5}, Max: orb.Point{6, 6}}); len(got) != 0 {
		t.Errorf("nothing lies in the box, got %v", got)
	}
}

// A picture of a whole ply shows the measures and names of its sheet, each thing
// at the same place of the part.
func TestPictureShowsWhatTheSheetShows(t *testing.T) {
	p := handmade.Hatch()
	measured, missing := Measure(p), 0
	for i, ply := range p.Plies {
		e := Extent(p)
		v := View{Box: orb.Bound{Max: orb.Point{190, 140}}, Middle: e.Center(), Scale: 0.1, K: 0.72}
		words, joints := map[string]int{}, 0
		for _, l := range Picture(p, i, measured[i], v) {
			if l.Clip != v.Box {
				t.Errorf("layer %s is seen outside the view", l.Name)
			}
			for _, text := range l.Texts {
				words[text.Words]++
				if b := text.Bounds(); !v.Box.Contains(b.Min) || !v.Box.Contains(b.Max) {
					t.Errorf("ply %d: %q leaves the view", ply.Ply, text.Words)
				}
			}
			if l.Name != "JOINTS" {
				continue
			}
			for _, shape := range l.Shapes {
				for n, line := range shape.Lines {
					joints++
					for k, end := range [2][2]float64{ply.Joints[n].From, ply.Joints[n].To} {
						want := orb.Point{95 + 0.1*(end[0]-e.Center()[0]), 70 + 0.1*(end[1]-e.Center()[1])}
						if distance(line.Points[k], want) > 1e-9 {
							t.Errorf("ply %d joint %d ends at %v, want %v", ply.Ply, n+1, line.Points[k], want)
						}
					}
				}
			}
		}
		if joints != len(ply.Joints) {
			t.Errorf("ply %d: %d joints drawn, want %d", ply.Ply, joints, len(ply.Joints))
		}
		for _, s := range ply.Strips {
			if id := ShortID(s.ID); words[id] != 1 || words[s.ID] != 0 {
				t.Errorf("ply %d: %s is named %d times", ply.Ply, id, words[id])
			}
		}
		for _, m := range measured[i].Joints {
			for _, end := range m.Ends {
				figure, _ := sheet.MarkFigure(end.AlongMM, p.Units)
				found := words[figure]
				for w, n := range words {
					if strings.HasPrefix(w, m.Name+": "+figure) {
						found += n
					}
				}
				if found == 0 {
					missing++ // no room for it: it is in the table
				}
			}
		}
	}
	if missing > 1 {
		t.Errorf("%d measures have no room on the drawings", missing)
	}
}

// Only what a view shows is named in it: of a stretch of a batten, strips whose
// cloth lies there and joints that end there.
func TestPictureOfAStretch(t *testing.T) {
	p := handmade.Batten()
	measured := Measure(p)
	e := Extent(p)
	v := View{Box: orb.Bound{Max: orb.Point{100, 60}}, Middle: orb.Point{e.Min[0] + 200, e.Center()[1]}, Scale: 0.1, K: 0.6}
	seen := v.Seen()
	for i, ply := range p.Plies {
		for _, l := range Picture(p, i, measured[i], v) {
			for _, text := range l.Texts {
				for _, s := range ply.Strips {
					if text.Words == ShortID(s.ID) && len(Window(s.Shape.Outer, seen)) < 3 {
						t.Errorf("ply %d: %s is named where it does not lie", ply.Ply, s.ID)
					}
				}
			}
		}
	}
}
