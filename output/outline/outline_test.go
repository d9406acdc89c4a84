package outline

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/geometry/drawing"
	"stripwright/output/sheet"
	"stripwright/output/svg"
)

var update = flag.Bool("update", false, "write the golden files anew")

// corpus holds drawings with values confirmed from outside: see expected.json.
const corpus = "../../testdata/drawings"

func read(t testing.TB, name string, o drawing.Options) Reading {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(corpus, name))
	if err != nil {
		t.Fatal(err)
	}
	return Reading{File: name, Layers: o.Layers, Which: o.Which, Drawing: drawing.Read(name, data, o)}
}

func drawn(t testing.TB, r Reading) []byte {
	t.Helper()
	data, err := svg.Write(Scene(r))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// The sheets of three drawings, byte for byte; a change is looked at, then
// written with -update.
func TestGolden(t *testing.T) {
	for name, o := range map[string]drawing.Options{
		"dxf_orientation_check.dxf": {}, "dxf_hole_and_island.dxf": {}, "svg_polyline_open.svg": {},
		"dxf_two_parts.dxf": {Which: 2},
	} {
		got := drawn(t, read(t, name, o))
		path := filepath.Join("testdata", "golden", name+".svg")
		if *update {
			if err := os.WriteFile(path, got, 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatalf("%v: run with -update", err)
		}
		if !bytes.Equal(got, want) {
			t.Errorf("%s differs from its golden file", path)
		}
	}
}

// Both plates have their notch at the top right and their rounded corner at the
// bottom right as seen, in DXF with y up and in SVG with y down: so does the
// sheet, when the SVG that is written is read back. That librsvg sees it so too is
// held by testdata/outside/drawings.py.
func TestNotchIsTopRightAsSeen(t *testing.T) {
	for _, name := range []string{"dxf_orientation_check.dxf", "svg_mm_viewbox.svg"} {
		sheetSVG := drawn(t, read(t, name, drawing.Options{}))
		again := drawing.Read("sheet.svg", sheetSVG, drawing.Options{Layers: []string{"OUTLINE"}})
		if len(again.Problems) > 0 || len(again.Regions) != 1 {
			t.Fatalf("%s: the sheet does not give one region: %v", name, again.Problems)
		}
		r := again.Regions[0]
		if w, h := r.Size(); math.Abs(w-1200) > 0.01 || math.Abs(h-700) > 0.01 {
			t.Errorf("%s: drawn %g × %g mm, not true to scale", name, w, h)
		}
		low := r.Bounds().Min
		for _, probe := range []struct {
			x, y   float64
			inside bool
		}{{1100, 600, false}, {100, 600, true}, {1190, 10, false}, {10, 10, true}, {1100, 400, true}} {
			p := orb.Point{low[0] + probe.x, low[1] + probe.y}
			if r.Contains(p) != probe.inside {
				t.Errorf("%s: (%g, %g) from the lower left inside: %v", name, probe.x, probe.y, !probe.inside)
			}
		}
	}
}

// Every region, hole and island of every drawing that is read stands on the
// sheet in its size: read back, the areas are the same.
func TestSheetHoldsWhatWasRead(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(corpus, "*.[ds][xv][fg]"))
	if err != nil || len(files) < 70 {
		t.Fatalf("%d drawings: %v", len(files), err)
	}
	held := 0
	for _, f := range files {
		r := read(t, filepath.Base(f), drawing.Options{})
		got := drawn(t, r)
		if len(r.Drawing.Regions) == 0 {
			if len(r.Drawing.Problems) > 0 && !bytes.Contains(got, []byte("NOT READ")) {
				t.Errorf("%s: a drawing with problems has a sheet that does not say so", f)
			}
			continue
		}
		again := drawing.Read("sheet.svg", got, drawing.Options{Layers: []string{"OUTLINE"}})
		if len(again.Regions) != len(r.Drawing.Regions) || math.Abs(again.AreaMM2-r.Drawing.AreaMM2) > 1e-5*r.Drawing.AreaMM2+1 {
			t.Errorf("%s: %d regions, %.2f mm² on the sheet, %d, %.2f read: %v",
				f, len(again.Regions), again.AreaMM2, len(r.Drawing.Regions), r.Drawing.AreaMM2, again.Problems)
		}
		held++
	}
	if held < 45 {
		t.Errorf("only %d drawings were held against their sheets", held)
	}
}

func words(s sheet.Scene) []string {
	var out []string
	for _, l := range s.Layers {
		for _, t := range l.Texts {
			out = append(out, t.Words)
		}
	}
	return out
}

func TestWords(t *testing.T) {
	square := geometry.Region{Outer: orb.Ring{{0, 0}, {254, 0}, {254, 127}, {0, 127}}}
	other := geometry.Region{Outer: orb.Ring{{500, 0}, {600, 0}, {600, 50}, {500, 50}}}
	d := drawing.Drawing{
		SizeMM: [2]float64{254, 127}, AreaMM2: square.Area(), Regions: []geometry.Region{square}, UnitFrom: "$INSUNITS 1 (in)",
		Layers: []drawing.Layer{{Name: "", Contours: 1}},
		Notes:  []drawing.Note{{Rule: "size", Where: "a.dxf", Text: "a note"}},
	}
	two := d
	two.Regions, two.SizeMM = []geometry.Region{square, other}, [2]float64{600, 127}
	bad := drawing.Drawing{Problems: []drawing.Problem{{Rule: "open", Where: "a.dxf:3", Text: "open contour", Cure: "close it"}}}
	for _, c := range []struct {
		name  string
		r     Reading
		wants []string
	}{
		{"one", Reading{File: "a.dxf", Drawing: d}, []string{
			"READ FROM a.dxf", "254 mm × 127 mm  (10 in × 5 in)", "254 mm", "127 mm", "10 in", "5 in", "0° (x)", "A", "B", "C", "D",
			"area 32258.0 mm², 1 outline, 0 holes, unit: $INSUNITS 1 (in)", "(none): 1 closed contour", "a.dxf: a note",
		}},
		{"several", Reading{File: "a.dxf", Drawing: two}, []string{"1", "2", "1: 254 mm × 127 mm (10 in × 5 in)", "600 mm"}},
		{"chosen", Reading{File: "a.dxf", Which: 2, Drawing: d}, []string{"2", "READ FROM a.dxf, outline 2 alone", "A"}},
		{"layer", Reading{File: "a.dxf", Layers: []string{"LID"}, Drawing: d}, []string{"READ FROM a.dxf, layer LID alone"}},
		{"layers", Reading{File: "a.dxf", Layers: []string{"LID", "B"}, Which: 1, Drawing: d}, []string{"READ FROM a.dxf, layers LID, B alone, outline 1 alone"}},
		{"bad", Reading{File: "a.dxf", Drawing: bad}, []string{"NOT READ: 1 problem", "a.dxf:3: open contour: close it"}},
	} {
		got := "\n" + strings.Join(words(Scene(c.r)), "\n") + "\n"
		for _, want := range c.wants {
			if !strings.Contains(got, "\n"+want+"\n") {
				t.Errorf("%s: %q is not on the sheet:%s", c.name, want, got)
			}
		}
	}
	if got := words(Scene(Reading{Drawing: two})); strings.Contains(strings.Join(got, " "), " B ") {
		t.Error("corners are lettered although there are several outlines")
	}
}

// A sheet stays a sheet: hundreds of notes are cut off with their number, and
// long ones are broken.
func TestManyNotes(t *testing.T) {
	var d drawing.Drawing
	for i := range 300 {
		d.Problems = append(d.Problems, drawing.Problem{Where: fmt.Sprintf("a.dxf:%d", i+1), Text: strings.Repeat("too long ", 40)})
	}
	got := strings.Join(words(Scene(Reading{Drawing: d})), "\n")
	if !strings.Contains(got, "and 285 more: the command line lists them all") || strings.Contains(got, "a.dxf:16:") || !strings.Contains(got, "a.dxf:15:") {
		t.Error("the list is not cut off as it should be")
	}
	for _, l := range wrapped(facts(Reading{Drawing: d})) {
		if w := (sheet.Text{Height: wordsHigh, Bold: true, Words: l.words}).Width(); w > sheetWide {
			t.Errorf("a line is %g units wide on a sheet of %g", w, sheetWide)
		}
	}
}
