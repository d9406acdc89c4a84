package job

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// A schedule code stands for plies in its place; the plies are worked out by
// hand.
func TestScheduleCode(t *testing.T) {
	for _, c := range []struct {
		lines string
		plies []string
	}{
		{`  - {fabric: ud, code: "[0/±45/90]s"}`, []string{"1 0 up", "2 45 up", "3 -45 up", "4 90 up", "5 90 up", "6 -45 up", "7 45 up", "8 0 up"}},
		{"  - {fabric: ud, angle: 90}\n  - {fabric: ud, code: '[∓30/0]T', face: down}\n  - {fabric: ud, angle: 45}",
			[]string{"1 90 up", "2 -30 down", "3 30 down", "4 0 down", "5 45 up"}},
		{`  - {fabric: ud, code: "[0/90]", times: 2}`, []string{"1 0 up", "2 90 up", "3 0 up", "4 90 up"}},
		{`  - {fabric: ud, code: "[0/90̅]ₛ"}`, []string{"1 0 up", "2 90 up", "3 0 up"}},
		{`  - {fabric: ud, code: "[0/135/180]"}`, []string{"1 0 up", "2 135 up", "3 180 up"}},
	} {
		j := read(t, changed(t, "  - {fabric: ud, angle: 0}", c.lines))
		var got []string
		for _, p := range j.Plies {
			face := "up"
			if p.FaceDown {
				face = "down"
			}
			got = append(got, fmt.Sprintf("%d %v %s", p.Number, p.Heading, face))
			if p.Fabric != "ud" || p.Blank.Empty() {
				t.Errorf("%s: ply %d of fabric %q", c.lines, p.Number, p.Fabric)
			}
		}
		if !slices.Equal(got, c.plies) {
			t.Errorf("%s: %q", c.lines, got)
		}
		said := false
		for _, n := range j.Notes {
			said = said || n.Rule == "code" && strings.Contains(n.Text, "from the tool up")
		}
		if !said {
			t.Errorf("%s: what was understood is not noted", c.lines)
		}
	}
}

// A code takes an outline of its own for all its plies.
func TestScheduleCodeOutline(t *testing.T) {
	j := read(t, changed(t, "fabrics:", "outlines: {doubler: {rectangle: [100, 80], at: [200, 50]}}\nfabrics:",
		"  - {fabric: ud, angle: 0}", "  - {fabric: ud, angle: 0}\n  - {fabric: ud, code: \"[0/90]\", outline: doubler}"))
	for i, want := range []string{"", "doubler", "doubler"} {
		if j.Plies[i].Outline != want {
			t.Errorf("ply %d has outline %q", i+1, j.Plies[i].Outline)
		}
	}
}

// Of stitched cloth it is said that s mirrors plies and not layers.
func TestMirroredCodeOfStitchedCloth(t *testing.T) {
	for code, want := range map[string]bool{"[0/90]s": true, "[(0/90)s/45]": true, "[0/90]2": false} {
		j := read(t, changed(t, "weight: 300 g/m2,", "weight: 300 g/m2, layers: [45, -45],", "angle: 0}", `code: "`+code+`"}`))
		said := false
		for _, n := range j.Notes {
			said = said || strings.Contains(n.Text, "s mirrors the plies of code "+code)
		}
		if said != want {
			t.Errorf("%s: said %v", code, said)
		}
	}
}
