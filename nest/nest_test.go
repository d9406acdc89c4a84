package nest

import (
	"context"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

func plate(w, h float64) geometry.Region {
	return geometry.Region{Outer: orb.Ring{{0, 0}, {w, 0}, {w, h}, {0, h}}}
}

// jobOf makes a job of one fabric on endless rolls of one width.
func jobOf(r geometry.Region, width, stagger float64, between int, angles ...float64) laminate.Job {
	j := laminate.Job{Title: "test plate", Units: "mm", Part: laminate.Part{DrawnFrom: laminate.LayingSide, Net: r, Blank: r},
		Rules:  laminate.Rules{StaggerMM: stagger, PliesBetween: between},
		Search: laminate.Search{Effort: laminate.Quick, Seed: 1},
		Fabrics: []laminate.Fabric{{Name: "F", WeightGSM: 300, Turn: true, StaggerMM: stagger, PliesBetween: between,
			Rolls: []laminate.Roll{{ID: "F-1", WidthMM: width, Count: 1}}}}}
	for k, a := range angles {
		j.Plies = append(j.Plies, laminate.Ply{Number: k + 1, Fabric: "F", Heading: a, Blank: r})
	}
	return j
}

func planOf(t *testing.T, j laminate.Job) laminate.Plan {
	t.Helper()
	p, err := Plan(context.Background(), j, Settings{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func refusalOf(t *testing.T, j laminate.Job) *Refusal {
	t.Helper()
	_, err := Plan(context.Background(), j, Settings{})
	var r *Refusal
	if !errors.As(err, &r) {
		t.Fatalf("not refused: %v", err)
	}
	return r
}

// Every strip is cut once, the strips of a ply cover its blank, and the plan
// lies between its bound and shop practice: random parts of several kinds.
func TestRandomJobs(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 5))
	for k := range 40 {
		j := randomJob(rng)
		p, err := Plan(context.Background(), j, Settings{})
		if err != nil {
			t.Fatalf("job %d: %v", k, err)
		}
		c := p.Cost[0]
		if c.Used < c.Bound-0.001 || c.Used > c.Practice+0.001 {
			t.Errorf("job %d: used %g, bound %g, practice %g", k, c.Used, c.Bound, c.Practice)
		}
		cut := make(map[string]float64)
		for _, r := range p.Rolls {
			for _, pc := range r.Pieces {
				if _, twice := cut[pc.ID]; twice {
					t.Errorf("job %d: %s is cut twice", k, pc.ID)
				}
				cut[pc.ID] = pc.Shape.Area()
			}
		}
		for _, ply := range p.Plies {
			area := 0.0
			for _, s := range ply.Strips {
				area += s.Shape.Area()
				if math.Abs(cut[s.ID]-s.Shape.Area()) > 1+1e-5*s.Shape.Area() {
					t.Errorf("job %d: %s: strip %g mm², piece %g mm²", k, s.ID, s.Shape.Area(), cut[s.ID])
				}
				delete(cut, s.ID)
			}
			if math.Abs(area-ply.Blank.Area()) > 5 {
				t.Errorf("job %d ply %d: strips %g mm², blank %g mm²", k, ply.Ply, area, ply.Blank.Area())
			}
		}
		if len(cut) > 0 {
			t.Errorf("job %d: pieces that are no strip: %v", k, cut)
		}
	}
}

func randomJob(rng *rand.Rand) laminate.Job {
	w, h := 400+rng.Float64()*1200, 300+rng.Float64()*700
	r := plate(w, h)
	switch rng.IntN(4) {
	case 1: // L
		r.Outer = orb.Ring{{0, 0}, {w, 0}, {w, h / 2}, {w / 2, h / 2}, {w / 2, h}, {0, h}}
	case 2: // frame
		r.Holes = []orb.Ring{{{w / 4, h / 4}, {w / 4, 3 * h / 4}, {3 * w / 4, 3 * h / 4}, {3 * w / 4, h / 4}}}
	case 3: // round
		r.Outer = nil
		for i := range 40 {
			a := 2 * math.Pi * float64(i) / 40
			r.Outer = append(r.Outer, orb.Point{w / 2 * math.Cos(a), h / 2 * math.Sin(a)})
		}
	}
	angles := [][]float64{{0, 90, 0, 90}, {45, -45, -45, 45}, {0, 45, -45, 90}, {17, 17, -17}}[rng.IntN(4)]
	j := jobOf(r.Snapped(), 150+float64(rng.IntN(150)), 20, 3, angles...)
	j.Fabrics[0].Turn = rng.IntN(3) > 0
	for i := range j.Plies {
		j.Plies[i].FaceDown = rng.IntN(4) == 0
	}
	return j
}

// Any number of workers gives the same plan.
func TestWorkersDoNotMatter(t *testing.T) {
	j := jobOf(plate(900, 620), 200, 25, 3, 0, 45, -45, 90, 0)
	var first laminate.Plan
	for _, workers := range []int{1, 2, 5} {
		p, err := Plan(context.Background(), j, Settings{Workers: workers})
		if err != nil {
			t.Fatal(err)
		}
		if workers == 1 {
			first = p
		} else if !reflect.DeepEqual(p, first) {
			t.Errorf("%d workers give another plan than one", workers)
		}
	}
}

// What is told while a search goes on falls, stays above the bound, and ends
// with what the plan takes.
func TestProgress(t *testing.T) {
	var told []Found
	p, err := Plan(context.Background(), jobOf(plate(900, 620), 200, 25, 3, 0, 45, -45, 90, 0), Settings{Progress: func(f Found) { told = append(told, f) }})
	if err != nil || len(told) == 0 {
		t.Fatal(err, told)
	}
	for k, f := range told {
		if !f.Lengths || f.Bound <= 0 || f.Best < f.Bound-0.01 || k > 0 && f.Best >= told[k-1].Best {
			t.Errorf("step %d of %v", k, told)
		}
	}
	if last := told[len(told)-1]; math.Abs(last.Best-p.Cost[0].Used) > 0.01 {
		t.Errorf("%v mm told last, the plan uses %v", last.Best, p.Cost[0].Used)
	}
}

// A cancelled plan is whole, and says that it was stopped.
func TestCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	p, err := Plan(ctx, jobOf(plate(900, 620), 200, 25, 3, 0, 45, -45, 90), Settings{})
	if err != nil || !p.Stopped || len(p.Rolls) == 0 {
		t.Errorf("stopped %v, %d rolls, %v", p.Stopped, len(p.Rolls), err)
	}
}

func TestRefusals(t *testing.T) {
	finite := jobOf(plate(1180, 740), 300, 50, 2, 0)
	finite.Fabrics[0].Rolls[0].LengthMM = 3000
	long := jobOf(plate(1180, 740), 300, 50, 2, 0)
	long.Fabrics[0].Rolls[0].LengthMM = 1000
	table := jobOf(plate(1180, 740), 300, 50, 2, 0)
	table.TableMM = 1000
	tolerant := jobOf(plate(1180, 740), 300, 50, 2, 0, 0, 0, 0, 0)
	tolerant.Rules.LayingToleranceMM, tolerant.Rules.PliesBetween, tolerant.Fabrics[0].PliesBetween = 30, 4, 4
	blocked := jobOf(plate(1180, 740), 300, 50, 2, 0)
	blocked.Rules.KeepClear = []laminate.KeepClear{{Region: plate(1180, 740)}}
	narrow := jobOf(plate(1180, 740), 300, 50, 2, 0)
	narrow.Rules.NarrowestMM = 280
	two := jobOf(plate(3400, 2400), 300, 60, 2, 0)
	other := two.Fabrics[0]
	other.Name, other.Rolls = "G", []laminate.Roll{{ID: "G-1", WidthMM: 200, Count: 1}}
	two.Fabrics = append(two.Fabrics, other)
	two.Plies = append(two.Plies, laminate.Ply{Number: 2, Fabric: "G", Blank: two.Part.Blank})
	cases := []struct {
		name    string
		job     laminate.Job
		rule    string
		plies   string
		largest float64
		says    []string
	}{
		{"neighbours on tape", jobOf(plate(1180, 740), 100, 60, 2, 0, 0), RuleStagger, "[1 2]", 50, []string{"2 × 60 = 120 mm", "100 mm", "largest possible stagger 50 mm"}},
		{"between one and two rolls across", jobOf(plate(1180, 400), 300, 210, 2, 0, 0), RuleStagger, "[1 2]", 200, []string{"400 mm across", "largest possible stagger 200 mm"}},
		{"five in a window", jobOf(plate(1000, 500), 100, 30, 4, 0, 0, 0, 0, 0, 0), RuleStagger, "[1 2 3 4 5]", 20, []string{"plies 1–5", "150 mm"}},
		{"laying tolerance counts twice", tolerant, RuleStagger, "[1 2 3 4 5]", 0, []string{"5 × 110 = 550 mm", "laying tolerance of 30 mm"}},
		{"two widths", two, RuleStagger, "[1 2]", 50, []string{"200 and 300", "largest possible stagger 50 mm"}},
		{"stock too short", finite, RuleStock, "[1]", 0, []string{"3540 mm", "3000 mm", "540 mm are missing", "2 of 3 strips fit"}},
		{"strip longer than any roll", long, RuleStock, "[1]", 0, []string{"1180 mm", "1000 mm"}},
		{"strip longer than the table", table, RuleTable, "[1]", 0, []string{"1180 mm", "1000 mm"}},
		{"nowhere clear", blocked, RuleKeepClear, "[1]", 0, []string{"keep-clear"}},
		{"always too narrow", narrow, RuleNarrowest, "[1]", 0, []string{"narrower than 280 mm"}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			r := refusalOf(t, c.job)
			if r.Rule != c.rule || fmt.Sprint(r.Plies) != c.plies || math.Abs(r.LargestStaggerMM-c.largest) > 0.002 {
				t.Errorf("%s, plies %v, largest %g; want %s, %s, %g", r.Rule, r.Plies, r.LargestStaggerMM, c.rule, c.plies, c.largest)
			}
			for _, s := range c.says {
				if !strings.Contains(r.Text, s) {
					t.Errorf("%q does not say %q", r.Text, s)
				}
			}
			if len(r.Cures) == 0 {
				t.Error("no cure")
			}
		})
	}
}

// A ply laid face down is cut from mirrored pieces, one of no-turn cloth never
// from turned ones; a heading against the angle turns all its pieces.
func TestFacesAndTurns(t *testing.T) {
	r := geometry.Region{Outer: orb.Ring{{0, 0}, {900, 0}, {700, 500}, {0, 400}}}
	j := jobOf(r, 200, 25, 3, 17, -17, 163, 17)
	j.Plies[3].FaceDown = true
	j.Fabrics[0].Turn = false
	p := planOf(t, j)
	for _, roll := range p.Rolls {
		for _, pc := range roll.Pieces {
			ply := int(pc.ID[2] - '0')
			wantTurned := 0
			if ply == 3 {
				wantTurned = 180 // 163° is -17° from the other end of the roll
			}
			if pc.Turned != wantTurned || pc.Mirrored != (ply == 4) {
				t.Errorf("%s: turned %d, mirrored %v", pc.ID, pc.Turned, pc.Mirrored)
			}
		}
	}
	if p.Plies[2].AngleDeg != -17 || !p.Plies[2].Reversed || p.Plies[0].Reversed {
		t.Errorf("ply 3: %g°, reversed %v", p.Plies[2].AngleDeg, p.Plies[2].Reversed)
	}
}

// The table breaks the roll at clear cross-cuts.
func TestTable(t *testing.T) {
	j := jobOf(plate(1180, 740), 300, 50, 2, 0, 90)
	j.TableMM = 2500
	p := planOf(t, j)
	for _, r := range p.Rolls {
		edges := append([]float64{0}, append(r.CrossCuts, r.UsedLengthMM)...)
		for i := 1; i < len(edges); i++ {
			if edges[i]-edges[i-1] > 2500 {
				t.Errorf("a stretch of %g mm on a table of 2500", edges[i]-edges[i-1])
			}
		}
		for _, pc := range r.Pieces {
			b := pc.Shape.Bounds()
			for _, x := range r.CrossCuts {
				if b.Min[0] < x-0.001 && b.Max[0] > x+0.001 {
					t.Errorf("%s crosses the cut at %g mm", pc.ID, x)
				}
			}
		}
	}
}

// Two widths of one fabric: each direction takes one, and price decides.
func TestPriceDecidesTheWidth(t *testing.T) {
	j := jobOf(plate(1200, 1000), 300, 25, 2, 0, 90)
	roll := j.Fabrics[0].Rolls[0]
	roll.HasPrice, roll.PricePerMetre = true, 3
	wide := laminate.Roll{ID: "F-2", WidthMM: 500, Count: 1, HasPrice: true, PricePerMetre: 5}
	j.Fabrics[0].Rolls = []laminate.Roll{roll, wide}
	p := planOf(t, j)
	// 0°: 1000 across = 2 × 500; 90°: 1200 across = 4 × 300: no waste at all.
	if c := p.Cost[0]; c.Measure != laminate.ByPrice || math.Abs(c.Used-c.Bound) > 0.01 || c.Status != laminate.Optimal {
		t.Errorf("%+v", c)
	}
}
