package job

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"testing"

	"stripwright/geometry"
	"stripwright/laminate"
)

// The traps of testdata/yaml: each either is refused exactly at these places
// under these rules, or is read with the values that the check holds.
var corpus = map[string]struct {
	refused []string
	check   func(t *testing.T, j laminate.Job)
}{
	"alias_bomb.yaml":         {refused: []string{"21:5: alias", "22:10: alias"}},
	"comma_decimal.yaml":      {refused: []string{"5:9: trim"}},
	"comma_decimal_flow.yaml": {refused: []string{"12:27: width"}},
	"duplicate_key.yaml":      {refused: []string{"22:3: repeated key"}},
	"empty_value.yaml":        {refused: []string{"19:3: empty value"}},
	"fractional_count.yaml":   {refused: []string{"12:53: count"}},
	"fractional_times.yaml":   {refused: []string{"17:36: times"}},
	"nan_inf.yaml":            {refused: []string{"12:27: width", "19:12: stagger"}},
	"octal_width.yaml":        {refused: []string{"9:13: weight", "12:27: width"}},
	"tab_indent.yaml":         {refused: []string{"3:1: tabs"}},
	"two_documents.yaml":      {refused: []string{"21:1: second document"}},
	"unknown_key.yaml":        {refused: []string{"19:3: unknown key"}},

	"job_resin_thickness.yaml": {check: func(t *testing.T, j laminate.Job) {
		hatch(t, j)
		for _, c := range []struct {
			what string
			got  laminate.Figure
			want float64
		}{
			{"fibre", j.Fabrics[0].DensityGCM3, 2.56}, {"resin", j.Resin.DensityGCM3, 1.15}, {"volume", j.Resin.FibreVolume, 0.52},
			{"lines", j.Resin.LinesAndPotG, 350}, {"spare", j.Resin.SparePercent, 10},
			{"peel ply", j.Consumables[0].UptakeGSM, 90}, {"mesh", j.Consumables[1].UptakeGSM, 400}, {"margin", j.Consumables[1].MarginMM, 0},
		} {
			if near(t, c.what, c.got.Value, c.want); c.got.Basis != laminate.Given {
				t.Errorf("%s is %s", c.what, c.got.Basis)
			}
		}
		if j.Consumables[0].Kind != laminate.PeelPly || j.Consumables[1].Kind != laminate.FlowMedia || j.Fabrics[0].FibreVolume.Known() {
			t.Errorf("%+v, %+v", j.Consumables, j.Fabrics[0])
		}
	}},

	"bom_crlf.yaml":          {check: hatch},
	"outline_cw_repeat.yaml": {check: sized(1200, 700, 790000)},
	"angle_spellings.yaml": {check: func(t *testing.T, j laminate.Job) {
		count := map[geometry.Angle]int{}
		var headings []float64
		for _, p := range j.Plies {
			count[p.Angle()]++
			headings = append(headings, p.Heading)
		}
		// 45, +45, "45", 45.0, 225 and -135 are one direction, and 45° as well.
		if count[45] != 7 || count[-45] != 3 || count[0] != 2 || count[90] != 2 {
			t.Errorf("directions %v", count)
		}
		if want := []float64{45, 45, 45, 45, -135, -135, -45, 135, -45, 0, 180, 90, -90, 45}; !slices.Equal(headings, want) {
			t.Errorf("headings %v, want %v", headings, want)
		}
	}},
	"text_ids.yaml": {check: func(t *testing.T, j laminate.Job) {
		var names []string
		for _, f := range j.Fabrics {
			names = append(names, f.Name, f.Rolls[0].ID)
		}
		for _, p := range j.Plies {
			names = append(names, p.Fabric)
		}
		want := []string{"on", "no", "1e5", "1.10", "007", "2024-01-02", "~x", "~x", "1.10", "0x1F", "on", "1e5", "007", "~x", "1.10"}
		if !slices.Equal(names, want) {
			t.Errorf("names %q, want %q", names, want)
		}
	}},
	"units_in_values.yaml": {check: func(t *testing.T, j laminate.Job) {
		f := j.Fabrics[0]
		near(t, "width", f.Rolls[0].WidthMM, 1270)
		near(t, "stagger", j.Rules.StaggerMM, 38.1)
		near(t, "trim", j.Part.TrimMM, 15.875)
		if math.Abs(f.WeightGSM-576.4) > 0.01 {
			t.Errorf("17 oz/yd2 is read as %v g/m2", f.WeightGSM)
		}
	}},
	"job_inch_oz.yaml": {check: func(t *testing.T, j laminate.Job) {
		sized(1168.4, 736.6, 860643.44)(t, j)
		near(t, "width", j.Fabrics[0].Rolls[0].WidthMM, 1270)
		near(t, "stagger", j.Rules.StaggerMM, 50.8)
		if j.Units != "in" || math.Abs(j.Fabrics[0].WeightGSM-576.4) > 0.01 {
			t.Errorf("units %q, weight %v", j.Units, j.Fabrics[0].WeightGSM)
		}
	}},
	"job_bolt_keepout.yaml": {check: func(t *testing.T, j laminate.Job) {
		hatch(t, j)
		for i, y := range []float64{150, 450} {
			b := j.Rules.KeepClear[i].Region.Bounds()
			near(t, "lowest", b.Min[1], y-30)
			near(t, "highest", b.Max[1], y+30)
		}
	}},
	"job_roll_too_short.yaml": {check: func(t *testing.T, j laminate.Job) {
		near(t, "length", j.Fabrics[0].Rolls[0].LengthMM, 3000)
	}},
	"job_min_strips_90_with_trim.yaml": {check: func(t *testing.T, j laminate.Job) {
		w, h := j.Part.Blank.Size()
		near(t, "blank width", w, 1230)
		near(t, "blank height", h, 790)
	}},
	"job_names_special.yaml": {check: func(t *testing.T, j laminate.Job) {
		if j.Title != `Hatch ±45° / Ø8,5 – no: 3; "A,B"` || j.Fabrics[0].Name != "Gewebe 0/90°" || j.Fabrics[0].Rolls[0].ID != "P 1.a" {
			t.Errorf("names %q, %q, %q", j.Title, j.Fabrics[0].Name, j.Fabrics[0].Rolls[0].ID)
		}
	}},
	"job_edge_on_joint.yaml":      {check: sized(1200, 600, 630000)},
	"job_edge_sliver.yaml":        {check: func(t *testing.T, j laminate.Job) { near(t, "narrowest", j.Rules.NarrowestMM, 40) }},
	"job_long_part_pdf.yaml":      {check: sized(6200, 900, 5580000)},
	"job_min_strips.yaml":         {check: hatch},
	"job_square_45.yaml":          {check: sized(740, 740, 547600)},
	"job_stagger_9_strips.yaml":   {check: func(t *testing.T, j laminate.Job) { near(t, "stagger", j.Rules.StaggerMM, 80) }},
	"job_stagger_impossible.yaml": {check: func(t *testing.T, j laminate.Job) { near(t, "stagger", j.Rules.StaggerMM, 60) }},
	"job_stagger_limit.yaml":      {check: func(t *testing.T, j laminate.Job) { near(t, "stagger", j.Rules.StaggerMM, 100) }},
	"job_u_shape.yaml":            {check: sized(1000, 600, 480000)},
	"job_unsymmetric.yaml":        {check: hatch},
}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9 {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

// sized holds the net edge against width, height and area worked out by hand.
func sized(w, h, area float64) func(*testing.T, laminate.Job) {
	return func(t *testing.T, j laminate.Job) {
		t.Helper()
		gotW, gotH := j.Part.Net.Size()
		if math.Abs(gotW-w) > 1e-9 || math.Abs(gotH-h) > 1e-9 || math.Abs(j.Part.Net.Area()-area) > 1e-3 {
			t.Errorf("part %v by %v, %v mm², want %v by %v, %v mm²", gotW, gotH, j.Part.Net.Area(), w, h, area)
		}
		if geometry.SignedArea(j.Part.Net.Outer) <= 0 || len(j.Part.Net.Outer) > 1 && j.Part.Net.Outer[0] == j.Part.Net.Outer[len(j.Part.Net.Outer)-1] {
			t.Error("the outer ring runs clockwise or is closed by its first point")
		}
	}
}

// hatch is the 1180 by 740 part of most traps.
func hatch(t *testing.T, j laminate.Job) { sized(1180, 740, 873200)(t, j) }

func TestCorpus(t *testing.T) {
	paths, err := filepath.Glob("../testdata/yaml/*.yaml")
	if err != nil || len(paths) != len(corpus) {
		t.Fatalf("%d files, %d cases, %v", len(paths), len(corpus), err)
	}
	for _, path := range paths {
		t.Run(filepath.Base(path), func(t *testing.T) {
			want, ok := corpus[filepath.Base(path)]
			if !ok {
				t.Fatal("not in the table")
			}
			j, problems := Read(path)
			var got []string
			for _, p := range problems {
				got = append(got, fmt.Sprintf("%d:%d: %s", p.Line, p.Column, p.Rule))
			}
			if !slices.Equal(got, want.refused) {
				t.Errorf("refused at %q, want %q", got, want.refused)
			}
			if len(problems) == 0 && want.check != nil {
				want.check(t, j)
			}
		})
	}
}
