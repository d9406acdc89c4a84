package drawing_test

import (
	"math"
	"path/filepath"
	"reflect"
	"testing"

	"stripwright/geometry"
	"stripwright/geometry/drawing"
)

func FuzzDXF(f *testing.F) { fuzz(f, ".dxf") }
func FuzzSVG(f *testing.F) { fuzz(f, ".svg") }
func FuzzCSV(f *testing.F) {
	f.Add([]byte("x_mm,y_mm\n0,0\n700,0\n700,500\n"), "", 0.0)
	f.Add([]byte("0;0\n70;0\n70;50\n\n10;10\n20;10\n20;20\n"), "cm", 1.0)
	fuzz(f, ".csv")
}

// fuzz changes the files of the corpus and holds whatever comes out to the
// promises of Read.
func fuzz(f *testing.F, ending string) {
	for _, c := range readCorpus(f) {
		if filepath.Ext(c.File) == ending && c.File != "dxf_100k_points.dxf" {
			o := drawing.Options{}
			if c.Options != "" && c.Outer > 0 {
				o = c.options(f)
			}
			f.Add(readFile(f, c.File), o.Units, o.JoinMM)
		}
	}
	f.Fuzz(func(t *testing.T, data []byte, units string, join float64) {
		o := drawing.Options{Units: units, JoinMM: join}
		d := drawing.Read("fuzzed"+ending, data, o)
		holdPromises(t, d)
		if again := drawing.Read("fuzzed"+ending, data, o); !reflect.DeepEqual(d, again) {
			t.Error("read twice, two answers")
		}
	})
}

// holdPromises checks what every drawing must keep to, whatever the file was.
func holdPromises(t *testing.T, d drawing.Drawing) {
	t.Helper()
	if len(d.Problems) > 0 {
		if len(d.Regions) > 0 || d.AreaMM2 != 0 {
			t.Error("a drawing with problems must have no regions")
		}
		return
	}
	if len(d.Regions) == 0 {
		t.Fatal("a drawing without problems must have a region")
	}
	sum := 0.0
	for _, r := range d.Regions {
		for i, ring := range r.Rings() {
			area := geometry.SignedArea(ring)
			if len(ring) < 3 || (area > 0) != (i == 0) || math.IsNaN(area) || math.IsInf(area, 0) {
				t.Errorf("ring %d of %d points has the area %v", i, len(ring), area)
			}
			for _, p := range ring {
				if geometry.Snap(p[0]) != p[0] || geometry.Snap(p[1]) != p[1] {
					t.Fatalf("%v is not on the micrometre grid", p)
				}
			}
		}
		if at, found := geometry.Crossing(r.Rings()...); found {
			t.Errorf("a region crosses itself at %v", at)
		}
		sum += r.Area()
	}
	if !(sum > 0) || math.Abs(sum-d.AreaMM2) > 1e-9*sum {
		t.Errorf("area %v, regions have %v", d.AreaMM2, sum)
	}
}
