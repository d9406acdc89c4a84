package job

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/laminate"
)

// dxf writes a drawing of closed polylines in R12, the oldest form that all
// programs read: layer, then points. Unit 1 is the inch, 4 the millimetre.
func dxf(unit int, layers ...any) string {
	var b strings.Builder
	fmt.Fprintf(&b, "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n%d\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n", unit)
	for i := 0; i < len(layers); i += 2 {
		fmt.Fprintf(&b, "0\nPOLYLINE\n8\n%s\n66\n1\n70\n1\n", layers[i])
		for _, p := range layers[i+1].(orb.Ring) {
			fmt.Fprintf(&b, "0\nVERTEX\n8\n%s\n10\n%v\n20\n%v\n", layers[i], p[0], p[1])
		}
		fmt.Fprintf(&b, "0\nSEQEND\n")
	}
	b.WriteString("0\nENDSEC\n0\nEOF\n")
	return b.String()
}

func box(x, y, w, h float64) orb.Ring {
	return orb.Ring{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}
}

// lid is a drawing with the part, two holes in it, bolts, and a doubler.
var lid = dxf(4, "LID", box(100, 50, 700, 500), "LID", box(200, 150, 10, 10), "LID", box(400, 250, 100, 80),
	"BOLTS", box(300, 100, 20, 20), "BOLTS", box(600, 400, 20, 20), "DOUBLER", box(550, 100, 200, 150))

func drawnJob(t *testing.T, pairs ...string) string {
	from, to := strings.Index(plain, "{points"), strings.Index(plain, "\n  trim")
	return changed(t, append([]string{plain[from:to], "lid.dxf\n  layer: LID"}, pairs...)...)
}

func TestDrawnPart(t *testing.T) {
	text := drawnJob(t, "angle: 0", "angle: 0, outline: d", "trim: 0", "trim: 8",
		"plies_between: 4", "plies_between: 4, keep_clear: [{layer: BOLTS, grow: 5}, {holes_up_to: 10, grow: 15, angles: [90]}]") + "outlines: {d: {layer: DOUBLER}}\n"
	j := read(t, text, "lid.dxf", lid)
	if b := j.Part.Net.Bounds(); b.Min != (orb.Point{100, 50}) || b.Max != (orb.Point{800, 550}) || len(j.Part.Net.Holes) != 2 {
		t.Errorf("net %v with %d holes", b, len(j.Part.Net.Holes))
	}
	if b := j.Part.Blank.Bounds(); b.Min != (orb.Point{92, 42}) || len(j.Part.Blank.Holes) != 1 {
		t.Errorf("blank %v with %d holes: the hole of 10 is closed by 8 of trim", b, len(j.Part.Blank.Holes))
	}
	if b := j.Plies[0].Blank.Bounds(); b.Min != (orb.Point{550, 100}) || b.Max != (orb.Point{750, 250}) {
		t.Errorf("doubler %v", b)
	}
	var at []string
	for _, k := range j.Rules.KeepClear {
		b := k.Region.Bounds()
		at = append(at, fmt.Sprintf("%.2f-%.2f %v", b.Min[0], b.Max[0], k.Angles))
	}
	slices.Sort(at)
	if want := []string{"185.00-225.00 [90]", "295.00-325.00 []", "595.00-625.00 []"}; !slices.Equal(at, want) {
		t.Errorf("keep clear %q, want %q", at, want)
	}
	if len(j.Drawings) != 1 || j.Drawings[0].Name != "lid.dxf" || len(j.Drawings[0].SHA256) != 64 {
		t.Errorf("drawings %v", j.Drawings)
	}
	for i, n := range j.Notes {
		if slices.Contains(j.Notes[:i], n) {
			t.Errorf("note twice: %v", n)
		}
		if n.Rule == "several" {
			t.Errorf("a note for one who chooses a part: %v", n)
		}
	}
}

// The unit is the drawing's own, or what the job says of it: never that of the
// job's numbers.
func TestDrawingUnits(t *testing.T) {
	inches := dxf(1, "LID", box(0, 0, 46, 29))
	for _, c := range []struct {
		drawing, say string
		width        float64
	}{{inches, "", 1168.4}, {dxf(4, "LID", box(0, 0, 460, 290)), "cm", 4600}, {dxf(0, "LID", box(0, 0, 3, 2)), "yd", 2743.2}, {dxf(0, "LID", box(0, 0, 46, 29)), "inch", 1168.4}} {
		say := "layer: LID"
		if c.say != "" {
			say += "\n  drawing_units: " + c.say
		}
		j := read(t, drawnJob(t, "layer: LID", say), "lid.dxf", c.drawing)
		if w, _ := j.Part.Net.Size(); w != c.width {
			t.Errorf("%s: width %v, want %v", c.say, w, c.width)
		}
	}
}

// What a drawing lacks is said under the drawing's name, what the job says
// wrongly of it under the job's, all at once.
func TestDrawingRefused(t *testing.T) {
	two := dxf(4, "LID", box(0, 0, 300, 200), "LID", box(500, 0, 300, 200))
	for _, c := range []struct {
		text, drawing string
		want          []string
	}{
		{drawnJob(t, "stagger: 50", "stagger: 0"), "", []string{`lid.yaml:4:12: outline: drawing "lid.dxf": there is no such file`, "lid.yaml:12:19: stagger"}},
		{drawnJob(t), two, []string{"lid.yaml:4:12: which: lid.dxf holds 2 outlines: 1: 300 x 200 mm at (0, 0)"}},
		{drawnJob(t, "LID", "LIDD"), lid, []string{"lid.dxf: layer: the drawing has no layer"}},
		{drawnJob(t), dxf(0, "LID", box(0, 0, 300, 200)), []string{"lid.dxf: unit"}},
		{drawnJob(t), strings.Replace(lid, "10\n100\n", "10\nnan\n", 1), []string{"lid.dxf:"}},
		{drawnJob(t, "LID", "LID\n  which: 0\n  join: 5 m\n  drawing_units: 0/in"), two, []string{"lid.yaml:6:10: which", "lid.yaml:7:9: join", "lid.yaml:8:18: drawing_units"}},
		{drawnJob(t), dxf(4, "LID", box(0, 0, 46, 19)), []string{"lid.yaml:4:3: size: the part measures 46 mm by 19 mm"}},
		{drawnJob(t, "plies_between: 4", "plies_between: 4, keep_clear: [{layer: BOLT}, {holes_up_to: 9}]"), lid,
			[]string{"lid.yaml:12:83: holes_up_to: the smallest hole of the part measures 10 mm", `lid.dxf: layer: the drawing has no layer "BOLT"`}},
	} {
		files := []string{"lid.dxf", c.drawing}
		if c.drawing == "" {
			files = nil
		}
		j, problems := Parse("lid.yaml", []byte(c.text), folder(files...))
		ok := len(problems) == len(c.want) && len(j.Plies) == 0
		for i := range problems {
			ok = ok && strings.HasPrefix(problems[i].Error(), c.want[i])
		}
		if !ok {
			t.Errorf("problems %v, want %q", problems, c.want)
		}
	}
}

func TestWhichAndFolders(t *testing.T) {
	two := dxf(4, "LID", box(0, 0, 300, 200), "LID", box(500, 0, 700, 400))
	j := read(t, drawnJob(t, "lid.dxf", "drawings/lid.dxf", "LID", "[LID]\n  which: 2"), "drawings/lid.dxf", two)
	if w, _ := j.Part.Net.Size(); w != 300 || j.Drawings[0].Name != "lid.dxf" {
		t.Errorf("width %v, drawing %v", w, j.Drawings)
	}
	far := read(t, drawnJob(t, "plies_between: 4", "plies_between: 4, keep_clear: [{circle: 60, at: [9000, 0]}, {circle: 60, at: [100, 50], angles: 45}]"), "lid.dxf", lid)
	said := func(part string) bool {
		return slices.ContainsFunc(far.Notes, func(n laminate.Note) bool { return n.Where == "lid.yaml:12" && strings.Contains(n.Text, part) })
	}
	if !said("round (9000, 0) mm lies outside the part") || !said("no ply lies at 45°") {
		t.Errorf("notes %v", far.Notes)
	}
}

// A part drawn kilometres off its origin is moved to it, and a region to be kept
// clear, which is written in the drawing's coordinates, moves with it.
func TestFarFromTheOrigin(t *testing.T) {
	text := `title: Far off
part: {outline: dxf_huge_offset.dxf, trim: 25, drawn_from: laying side}
fabrics: {ud: {weight: 300 g/m2, rolls: [{id: U, width: 300}]}}
schedule: [{fabric: ud, angle: 0}]
joints:
  stagger: 50
  plies_between: 4
  keep_clear: [{circle: 60, at: [5200300, 3400200]}]
`
	j, problems := Parse("far.yaml", []byte(text), func(name string) ([]byte, error) {
		return os.ReadFile(filepath.Join("..", "testdata", "drawings", name))
	})
	if len(problems) > 0 {
		t.Fatal(problems[0].Error())
	}
	b, k := j.Part.Net.Bounds(), j.Rules.KeepClear[0].Region.Bounds()
	if b.Min[0] < 0 || b.Min[0] >= 1 || b.Min[1] < 0 || b.Min[1] >= 1 || math.Abs(j.Part.Net.Area()-870109.73) > 435 {
		t.Errorf("bounds %v, area %v", b, j.Part.Net.Area())
	}
	if k.Min[0] < b.Min[0] || k.Max[0] > b.Max[0] || k.Min[1] < b.Min[1] || k.Max[1] > b.Max[1] {
		t.Errorf("the region to be kept clear lies at %v, the part at %v", k, b)
	}
	told := false
	for _, n := range j.Notes {
		told = told || strings.Contains(n.Text, "more than 100 m from the origin")
	}
	if !told {
		t.Error("the move is not told")
	}
	near := strings.Replace(text, "[5200300, 3400200]", "[300, 200]", 1)
	_, problems = Parse("far.yaml", []byte(near), func(name string) ([]byte, error) {
		return os.ReadFile(filepath.Join("..", "testdata", "drawings", name))
	})
	if len(problems) != 1 || !strings.Contains(problems[0].Error(), "more than 1 km from the part") {
		t.Errorf("a region near the origin, far from the part: %v", problems)
	}
}

// An outline of 100000 points is laid out with a small part of them, its area
// within a ten-thousandth of that of the drawing.
func TestDenseOutline(t *testing.T) {
	text := `title: Dense
part: {outline: dxf_100k_points.dxf, trim: 25, drawn_from: laying side}
fabrics: {ud: {weight: 300 g/m2, rolls: [{id: U, width: 300}]}}
schedule: [{fabric: ud, angle: 0}]
joints: {stagger: 50, plies_between: 4}
`
	j, problems := Parse("dense.yaml", []byte(text), func(name string) ([]byte, error) {
		return os.ReadFile(filepath.Join("..", "testdata", "drawings", name))
	})
	if len(problems) > 0 {
		t.Fatal(problems[0].Error())
	}
	if n, a := len(j.Part.Net.Outer), j.Part.Net.Area(); n > 5000 || math.Abs(a-678719.73) > 68 {
		t.Errorf("%d points, area %v", n, a)
	}
	if !slices.ContainsFunc(j.Notes, func(n laminate.Note) bool { return strings.Contains(n.Text, "drawn with 100000 points") }) {
		t.Errorf("not told: %+v", j.Notes)
	}
}
