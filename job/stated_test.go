package job

import (
	"slices"
	"strings"
	"testing"

	"stripwright/laminate"
)

// What the job says of its drawing is told again, used or not.
func TestDrawingIsReadAsStated(t *testing.T) {
	two := dxf(4, "LID", box(0, 0, 300, 200), "LID", box(500, 0, 700, 400))
	for _, c := range []struct{ keys, want string }{
		{"layer: LID\n  which: 2", "lid.dxf is read as the job states: layer LID; which 2"},
		{"layer: [LID]\n  join: 1/2 in\n  which: 1", "lid.dxf is read as the job states: layer LID; join 12.7 mm; which 1"},
		{"drawing_units: cm\n  which: 1", "lid.dxf is read as the job states: drawing_units cm; which 1"},
	} {
		j := read(t, drawnJob(t, "layer: LID", c.keys), "lid.dxf", two)
		if !slices.Contains(j.Notes, laminate.Note{Rule: "drawing", Where: "lid.yaml:4", Text: c.want}) {
			t.Errorf("%q is not among the notes: %v", c.want, j.Notes)
		}
	}
	one := dxf(4, "LID", box(0, 0, 300, 200))
	if j := read(t, drawnJob(t, "\n  layer: LID", ""), "lid.dxf", one); slices.ContainsFunc(j.Notes, func(n laminate.Note) bool { return n.Rule == "drawing" }) {
		t.Errorf("a note although nothing is stated: %v", j.Notes)
	}
}

// A drawn part of more than 100 times the widest roll is asked for its unit;
// once it is stated, or written in the job, it is taken.
func TestDrawnSizeBesideTheRoll(t *testing.T) {
	for _, c := range []struct {
		width, keys, roll string
		refused           bool
	}{
		{"5000", "layer: LID", "50", false},
		{"5000.1", "layer: LID", "50", true},
		{"5000.1", "layer: LID\n  drawing_units: mm", "50", false},
		{"5000.1", "layer: LID", "50.1", false},
	} {
		drawing := strings.ReplaceAll(dxf(4, "LID", box(0, 0, 7777, 200)), "7777", c.width)
		_, problems := Parse("lid.yaml", []byte(drawnJob(t, "layer: LID", c.keys, "width: 300", "width: "+c.roll)), folder("lid.dxf", drawing))
		if !c.refused {
			if len(problems) > 0 {
				t.Errorf("%v: %v", c, problems)
			}
			continue
		}
		want := "lid.yaml:4:3: size: the part measures 5000.1 mm by 200 mm (196 27/32 in by 7 7/8 in), more than 100 times the width of the widest roll, 50 mm — write drawing_units:"
		if len(problems) != 1 || !strings.HasPrefix(problems[0].Error(), want) {
			t.Errorf("%v: problems %v, want %q", c, problems, want)
		}
	}
	long := strings.Replace(changed(t, "width: 300", "width: 50"), "{points: [[0, 0], [700, 0], [700, 300], [400, 500], [0, 500]], holes: [[[100, 100], [160, 100], [160, 140]]]}", "{rectangle: [6000, 200]}", 1)
	read(t, long)
}
