package way

import (
	"context"
	"errors"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"stripwright/geometry"
	"stripwright/job"
	"stripwright/laminate"
	"stripwright/nest"
)

// Small jobs whose answers follow from their sizes alone, by hand: a strip
// covers a roll width, so a part so wide takes so many. Each goes the whole
// way, from the file to the checked plan.
// read reads a job of testdata/yaml.
func read(t *testing.T, name string) laminate.Job {
	t.Helper()
	j, problems := job.Read(filepath.Join("..", "..", "testdata", "yaml", name+".yaml"))
	for _, p := range problems {
		t.Fatal(p.Error())
	}
	return j
}

// planned goes the whole way and holds what is true of any plan: sound, strips
// as large as the blanks together, nothing below the bound.
func planned(t *testing.T, name string) laminate.Plan {
	t.Helper()
	p, err := Plan(context.Background(), read(t, name), nest.Settings{})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range p.Checks {
		if !c.Pass {
			t.Errorf("%s: %s", c.Rule, c.Text)
		}
	}
	strips, blanks := 0.0, 0.0
	for _, y := range p.Plies {
		blanks += y.Blank.Area()
		for _, s := range y.Strips {
			strips += s.Shape.Area()
		}
	}
	near(t, "area of all strips", strips, blanks, 1)
	for _, c := range p.Cost {
		if c.Used < c.Bound-1e-6 {
			t.Errorf("used %v is below the bound %v", c.Used, c.Bound)
		}
	}
	return p
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

func strips(p laminate.Plan) int {
	n := 0
	for _, y := range p.Plies {
		n += len(y.Strips)
	}
	return n
}

// levels gives the distinct heights of a ply's joints in its frame.
func levels(y laminate.PlanPly) []float64 {
	f := geometry.PlyFrame(geometry.NewAngle(y.AngleDeg))
	var out []float64
	for _, j := range y.Joints {
		out = append(out, math.Round(f.Apply(j.From)[1]*1000)/1000)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// Rows of one ply: the fewest strips, the roll used, and the area bound, which
// is area / roll width. Strips as long as the part cannot lie beside one
// another on the roll unless two together are no wider than it.
func TestOnePly(t *testing.T) {
	for _, c := range []struct {
		name   string
		strips int
		used   float64 // 0: not held
		bound  float64
	}{
		{"job_min_strips", 3, 3 * 1180, 740 * 1180 / 300.0},           // ceil(740/300)
		{"job_min_strips_90_with_trim", 5, 5 * 790, 1230 * 790 / 300}, // ceil(1230/300), along y
		{"job_edge_sliver", 4, 4 * 1180, 740 * 1180 / 245.0},          // ceil(740/245)
		{"job_bolt_keepout", 3, 3 * 1180, 740 * 1180 / 300.0},
		{"job_inch_oz", 1, 46 * 25.4, 1168.4 * 736.6 / 1270}, // 29 in of a roll of 50 in
		{"job_edge_on_joint", 2, 2100, 630000 / 300.0},       // 1200 × 300 and 900 × 300
		{"job_u_shape", 3, 1600, 480000 / 300.0},             // 1000 × 300, 300 × 300 twice
		{"job_square_45", 4, 0, 740 * 740 / 300.0},           // ceil(740·√2/300)
		{"job_long_part_pdf", 3, 3 * 6200, 3 * 6200},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := planned(t, c.name)
			if got := strips(p); got != c.strips {
				t.Errorf("%d strips, want %d", got, c.strips)
			}
			cost := p.Cost[0]
			near(t, "bound by area", float64(cost.Proof.AreaMM2*cost.Proof.PerMM2), c.bound, 0.01)
			if cost.Bound < c.bound-0.01 || cost.Bound > cost.Used+0.001 {
				t.Errorf("bound %g, by area %g, used %g", cost.Bound, c.bound, cost.Used)
			}
			if c.used > 0 {
				near(t, "used", p.Cost[0].Used, c.used, 0.001)
			}
		})
	}
}

// A square at 45° is 740·√2 = 1046.518 mm across its strips. Laid one behind the
// other, each as long as it is, four strips take more than 2 m of roll: the
// corners must lie into one another.
func TestSquareAt45(t *testing.T) {
	p := planned(t, "job_square_45")
	b := p.Plies[0].Blank.In(geometry.PlyFrame(45)).Bounds()
	near(t, "width across", b.Max[1]-b.Min[1], 740*math.Sqrt2, 0.002)
	if u := p.Cost[0].Used; u > 2100 {
		t.Errorf("%v mm of roll used: corners do not lie into one another", u)
	}
}

// Steps of the outline lie on the joints: two pieces and no third without width;
// a U falls into one piece below and two above, in two courses.
func TestEdgesOnJoints(t *testing.T) {
	p := planned(t, "job_edge_on_joint")
	near(t, "lower piece", p.Plies[0].Strips[0].Shape.Area(), 1200*300, 0.5)
	near(t, "upper piece", p.Plies[0].Strips[1].Shape.Area(), 900*300, 0.5)
	p = planned(t, "job_u_shape")
	if l := levels(p.Plies[0]); !slices.Equal(l, []float64{300}) {
		t.Errorf("joints at %v, want one course below 300 and one above", l)
	}
	if n := len(p.Plies[0].Joints); n != 2 {
		t.Errorf("%d joints, want one to each leg of the U", n)
	}
}

// 740 across with a roll of 245: four strips are needed anyway, so both edge
// strips can be 40 or wider, in place of one of 5.
func TestNoSliver(t *testing.T) {
	for _, s := range planned(t, "job_edge_sliver").Plies[0].Strips {
		if s.WidthMM < 40 {
			t.Errorf("%s is %v mm wide", s.ID, s.WidthMM)
		}
	}
}

// Bolts at y 150 and 450 with 30 mm round them, roll 300: no joint between 120
// and 180, modulo 300.
func TestBoltsKeptClear(t *testing.T) {
	for _, y := range levels(planned(t, "job_bolt_keepout").Plies[0]) {
		if m := math.Mod(y, 300); m > 120.001 && m < 179.999 {
			t.Errorf("a joint at %v runs through a bolt", y)
		}
	}
}

// Three plies of 740 on a roll of 300: at 80 mm of stagger nine strips do, only
// with joints at 140/440, 220/520 and 300/600; 81 to 100 take a tenth strip, for
// the offsets must then be a third of the roll apart. Both are derived in
// closed form: three strips a ply leave 3·300 − 740 = 160 mm of play, shared by
// two steps of 80.
func TestLastMillimetreOfStagger(t *testing.T) {
	p := planned(t, "job_stagger_9_strips")
	if n := strips(p); n != 9 {
		t.Errorf("%d strips, want 9", n)
	}
	var got [][]float64
	for _, y := range p.Plies {
		got = append(got, levels(y))
	}
	slices.SortFunc(got, func(a, b []float64) int { return int(a[0] - b[0]) })
	want := [][]float64{{140, 440}, {220, 520}, {300, 600}}
	for i := range want {
		if !slices.Equal(got[i], want[i]) {
			t.Errorf("joints %v, want %v", got, want)
			break
		}
	}
	p = planned(t, "job_stagger_limit")
	if n := strips(p); n != 10 {
		t.Errorf("%d strips at a stagger of 100, want 10", n)
	}
	for _, c := range p.Checks {
		if c.Rule == "stagger" && (c.Worst == nil || math.Abs(c.Worst.ValueMM-100) > 0.005) {
			t.Errorf("least stagger %+v, want exactly 100", c.Worst)
		}
	}
}

// Refused, with the largest stagger there could be, or with what is missing.
func TestRefused(t *testing.T) {
	for _, c := range []struct {
		name    string
		rule    string
		largest float64
		says    []string
	}{
		// Two combs of pitch 100 are never more than 50 apart.
		{"job_stagger_impossible", nest.RuleStagger, 50, []string{"plies 1, 2", "50 mm"}},
		// 3 × 1180 needed of a rest of 3000.
		{"job_roll_too_short", nest.RuleStock, 0, []string{"3540 mm", "3000 mm", "540 mm are missing", "2 of 3 strips fit"}},
	} {
		_, err := Plan(context.Background(), read(t, c.name), nest.Settings{})
		var r *nest.Refusal
		if !errors.As(err, &r) {
			t.Errorf("%s: %v, want a refusal", c.name, err)
			continue
		}
		if r.Rule != c.rule || r.LargestStaggerMM != c.largest || len(r.Cures) == 0 {
			t.Errorf("%s: %+v", c.name, r)
		}
		for _, s := range c.says {
			if !strings.Contains(r.Text, s) {
				t.Errorf("%s: %q does not say %q", c.name, r.Text, s)
			}
		}
	}
}

// The stagger of 100 mm of three plies on a roll of 300 is the largest there is:
// one micrometre more is refused, and the refusal says 100.
func TestLargestStagger(t *testing.T) {
	j := read(t, "job_stagger_limit")
	j.Rules.StaggerMM = 100.001
	for i := range j.Fabrics {
		j.Fabrics[i].StaggerMM = j.Rules.StaggerMM
	}
	_, err := Plan(context.Background(), j, nest.Settings{})
	var r *nest.Refusal
	if !errors.As(err, &r) || r.LargestStaggerMM != 100 {
		t.Errorf("%v, want a refusal with 100 mm", err)
	}
}

// 46 × 29 in of 17 oz/yd²: 1.0293 yd² weigh 17.498 oz; 46 in are 1.2778 yd.
func TestInchesAndOunces(t *testing.T) {
	p := planned(t, "job_inch_oz")
	near(t, "oz", p.Quantities[0].DryG/28.349523125, 17.498, 0.001)
	near(t, "yd2", p.Quantities[0].AreaMM2/(914.4*914.4), 1.0293, 0.0001)
	near(t, "yd", p.Lengths[0].UsedMM/914.4, 1.2778, 0.0001)
	near(t, "in", p.Lengths[0].UsedMM/25.4, 46, 0.0001)
}

// [0, 45, −45, 90] need not be a mirror to be planned, and thirteen spellings of
// five directions are laid in five directions.
func TestDirections(t *testing.T) {
	planned(t, "job_unsymmetric")
	count := map[float64]int{}
	for _, y := range planned(t, "angle_spellings").Plies {
		count[y.AngleDeg]++
	}
	if count[45] != 7 || count[-45] != 3 || count[0] != 2 || count[90] != 2 {
		t.Errorf("plies by direction: %v", count)
	}
}
