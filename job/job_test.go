package job

import (
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/laminate"
)

// plain is a job without a fault; tests change a line of it.
const plain = `title: Locker lid
units: mm
part:
  outline: {points: [[0, 0], [700, 0], [700, 300], [400, 500], [0, 500]], holes: [[[100, 100], [160, 100], [160, 140]]]}
  trim: 0
  drawn_from: laying side
fabrics:
  ud: {weight: 300 g/m2, fibre: carbon, face_is: smooth side, rolls: [{id: A, width: 300}]}
schedule:
  - {fabric: ud, angle: 0}
joints: {stagger: 50, plies_between: 4}
`

// changed gives the plain job with texts replaced, two by two.
func changed(t testing.TB, pairs ...string) string {
	t.Helper()
	s := plain
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(s, pairs[i]) {
			t.Fatalf("the plain job holds no %q", pairs[i])
		}
		s = strings.Replace(s, pairs[i], pairs[i+1], 1)
	}
	return s
}

func read(t testing.TB, text string, files ...string) laminate.Job {
	t.Helper()
	j, problems := Parse("lid.yaml", []byte(text), folder(files...))
	for _, p := range problems {
		t.Error(p)
	}
	if len(problems) > 0 {
		t.Fatal("the job is not read")
	}
	return j
}

// folder gives files by name and content, two by two.
func folder(files ...string) func(string) ([]byte, error) {
	return func(name string) ([]byte, error) {
		for i := 0; i < len(files); i += 2 {
			if files[i] == name {
				return []byte(files[i+1]), nil
			}
		}
		return nil, fs.ErrNotExist
	}
}

func TestEveryKey(t *testing.T) {
	j := read(t, `title: Foredeck locker
units: cm
part:
  name: lid
  outline: {rectangle: [137, 62], corner: 4}
  trim: 25 mm
  corners: round
  drawn_from: laying side
  zero: 90
  load: -45
outlines: {doubler: {rectangle: [30, 20], at: [53.5, 21]}}
fabrics:
  biax:
    weight: 450
    fibre: E-glass
    layers: [{angle: 45, weight: 225}, {angle: -45, weight: 225}]
    turn: false
    stagger: 8
    plies_between: 6
    rolls:
      - {id: B-300, width: 30, bad_edge: 0.5, length: 40 m, count: 2, price: 3.10}
      - {id: rest-7, width: 30, length: 4.2 m, remnant: true, price: 0}
  ud: {weight: 9 oz/yd2, density: 1.8 g/cm3, face_is: stitch-loop side, rolls: [{id: U, width: 12 in}]}
schedule:
  - {fabric: biax, angle: 0}
  - {fabric: ud, angle: -135, face: down, times: 2, outline: doubler}
  - {fabric: ud, angle: 90, face: up}
joints:
  stagger: 5
  plies_between: 4
  narrowest: 4
  cutting_gap: 0.2
  laying_tolerance: 0.2
  max_gap: 2 mm
  style: butt
  end_joints: never
  keep_clear: [{ellipse: [6, 4], at: [20, 14], grow: 1, angles: [0, 90]}]
order: {spare: 10 %, sold_by: 1 m}
table: 6 m
search: {effort: quick, seed: 7}
`)
	f, u := j.Fabrics[0], j.Fabrics[1]
	for _, c := range []struct {
		what      string
		got, want any
	}{
		{"title", j.Title, "Foredeck locker"}, {"units", j.Units, "cm"}, {"file", j.File.Name, "lid.yaml"}, {"name", j.Part.Name, "lid"},
		{"trim", j.Part.TrimMM, 25.0}, {"zero", j.Part.ZeroDeg, 90.0}, {"load", *j.Part.LoadDeg, -45.0}, {"side", j.Part.DrawnFrom, laminate.LayingSide},
		{"weight", f.WeightGSM, 450.0}, {"density", f.DensityGCM3, laminate.Figure{Value: 2.54, Basis: laminate.Assumed, From: "generic e-glass"}}, {"turn", f.Turn, false}, {"stagger", f.StaggerMM, 80.0}, {"between", f.PliesBetween, 6},
		{"layer", f.Layers[1], laminate.Layer{AngleDeg: -45, WeightGSM: 225}},
		{"roll", f.Rolls[0], laminate.Roll{ID: "B-300", WidthMM: 300, BadEdgeMM: 5, LengthMM: 40000, Count: 2, PricePerMetre: 3.1, HasPrice: true}},
		{"remnant", f.Rolls[1], laminate.Roll{ID: "rest-7", WidthMM: 300, LengthMM: 4200, Count: 1, HasPrice: true, Remnant: true}},
		{"ud", u.Rolls[0], laminate.Roll{ID: "U", WidthMM: 304.8, Count: 1}}, {"ud density", u.DensityGCM3, laminate.Figure{Value: 1.8, Basis: laminate.Given}}, {"ud face", u.FaceIs, "stitch-loop side"},
		{"ud stagger", u.StaggerMM, 50.0}, {"ud between", u.PliesBetween, 4}, {"ud turn", u.Turn, true},
		{"plies", len(j.Plies), 4}, {"number", j.Plies[2].Number, 3}, {"heading", j.Plies[2].Heading, -135.0}, {"down", j.Plies[2].FaceDown, true},
		{"outline", j.Plies[1].Outline, "doubler"}, {"up", j.Plies[3].FaceDown, false}, {"whole", j.Plies[3].Outline, ""},
		{"narrowest", j.Rules.NarrowestMM, 40.0}, {"gap", j.Rules.CuttingGapMM, 2.0}, {"tolerance", j.Rules.LayingToleranceMM, 2.0}, {"max gap", *j.Rules.MaxGapMM, 2.0},
		{"angles", fmt.Sprint(j.Rules.KeepClear[0].Angles), "[0 90]"},
		{"spare", j.Order.SparePercent, 10.0}, {"sold by", j.Order.SoldByMM, 1000.0}, {"table", j.TableMM, 6000.0},
		{"search", j.Search, laminate.Search{Effort: laminate.Quick, Seed: 7}},
	} {
		if c.got != c.want {
			t.Errorf("%s is %v, want %v", c.what, c.got, c.want)
		}
	}
	// Turned by -90°: what was 1370 wide is now 1370 high; 25 mm of trim all round.
	w, h := j.Part.Blank.Size()
	if math.Abs(w-670) > 0.1 || math.Abs(h-1420) > 0.1 {
		t.Errorf("blank %v by %v, want 670 by 1420", w, h)
	}
	// The doubler lay from (535, 210) to (835, 410): (x, y) goes to (y, -x).
	if b := j.Plies[1].Blank.Bounds(); b.Min != (orb.Point{210, -835}) || b.Max != (orb.Point{410, -535}) {
		t.Errorf("doubler at %v", b)
	}
	if w, h := j.Rules.KeepClear[0].Region.Size(); math.Abs(w-60) > 0.05 || math.Abs(h-80) > 0.05 {
		t.Errorf("keep clear %v by %v, want 60 by 80", w, h)
	}
}

// The whole of what a bare job leaves open is noted, word for word.
func TestAssumed(t *testing.T) {
	j := read(t, `part: {outline: {rectangle: [700, 500]}, trim: 10}
fabrics:
  ud: {weight: 300, fibre: carbon, rolls: [{id: A, width: 300}, {id: B, width: 200, bad_edge: 5}]}
  mat: {weight: 450 g/m2, fibre: wool, rolls: [{id: M, width: 1.2 m, bad_edge: 0}]}
schedule: [{fabric: ud, angle: 90}]
joints: {stagger: 50, plies_between: 4}
`)
	var got []string
	for _, n := range j.Notes {
		got = append(got, n.Where+": "+n.Rule+": "+n.Text)
	}
	want := []string{
		"lid.yaml: units: assumed units mm for bare numbers",
		"lid.yaml: title: assumed the file's name as the title",
		"lid.yaml:1: corners: assumed mitred corners of the trim allowance",
		"lid.yaml:3: weight: assumed g/m2 for the weight 300 of ud",
		"lid.yaml:3: density: assumed fibre density 1.78 g/cm3 of carbon, a table value",
		"lid.yaml:3: turn: assumed that pieces of ud may be turned end for end on the roll",
		"lid.yaml:3: fibre_volume: assumed 57.5 % of fibre by volume in ud (55 to 60 % is usual)",
		"lid.yaml:3: bad_edge: assumed no bad edge on rolls of ud: A",
		`lid.yaml:4: density: no density is known for fibre "wool": write density: where thickness is wanted`,
		"lid.yaml:4: turn: assumed that pieces of mat may be turned end for end on the roll",
		"lid.yaml:6: narrowest: assumed narrowest 25 mm",
		"lid.yaml:6: cutting_gap: assumed no cutting gap between pieces",
		"lid.yaml:6: laying_tolerance: assumed laying tolerance 0 mm",
		"lid.yaml: spare: assumed no spare cloth: spare 0 %",
		"lid.yaml: sold_by: assumed that cloth is sold by any length",
		"lid.yaml: effort: assumed effort normal",
		"lid.yaml: seed: assumed seed 1",
		"lid.yaml:1: drawn_from: assumed that it is drawn from the laying side: all plies lie face up at 0° or 90°",
		"lid.yaml:4: fabrics: fabric mat is in no ply: nothing is cut from it",
	}
	if !slices.Equal(got, want) {
		t.Errorf("notes\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if j.Title != "lid" || j.Part.Name != "lid" || j.Rules.NarrowestMM != 25 || j.Search != (laminate.Search{Effort: laminate.Normal, Seed: 1}) || j.Fabrics[0].Rolls[0].Count != 1 {
		t.Errorf("assumed %+v", j)
	}
}

func TestReadFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "lid.yaml")
	if err := os.WriteFile(path, []byte(plain), 0o644); err != nil {
		t.Fatal(err)
	}
	if j, problems := Read(path); len(problems) > 0 || j.File.Name != "lid.yaml" {
		t.Errorf("file %q, problems %v", j.File.Name, problems)
	}
	for _, c := range [][2]string{{filepath.Join(dir, "no.yaml"), "there is no such file"}, {dir, "this is a folder"}} {
		if _, problems := Read(c[0]); len(problems) != 1 || !strings.Contains(problems[0].Error(), c[1]) || problems[0].File != c[0] {
			t.Errorf("%s gives %v", c[0], problems)
		}
	}
}

func TestStarter(t *testing.T) {
	j, problems := Parse("job.yaml", Starter(), nil)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if len(j.Plies) != 10 || len(j.Part.Net.Holes) != 1 || j.Part.Blank.Area() <= j.Part.Net.Area() {
		t.Errorf("%d plies, %d holes", len(j.Plies), len(j.Part.Net.Holes))
	}
	for _, n := range j.Notes {
		if n.Rule != "corners" && n.Rule != "density" {
			t.Errorf("the starter leaves open: %s", n.Text)
		}
	}
	Starter()[0] = 'x'
	if Starter()[0] != '#' {
		t.Error("the starter can be altered")
	}
}

// Same input, same result: no map order in problems or notes.
func TestSameEveryTime(t *testing.T) {
	wrong := changed(t, "trim: 0", "trim: x", "width: 300", "width: y", "angle: 0", "angle: z")
	first := ""
	for range 20 {
		j, _ := Parse("lid.yaml", []byte(plain), nil)
		_, problems := Parse("lid.yaml", []byte(wrong), nil)
		now := fmt.Sprint(j.Notes, j.Part, problems)
		if first == "" {
			first = now
		}
		if now != first {
			t.Fatalf("another result:\n%s\n%s", now, first)
		}
	}
}
