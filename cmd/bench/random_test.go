package main

import (
	"context"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/geometry/grow"
	"stripwright/laminate"
	"stripwright/laminate/check"
	"stripwright/laminate/order"
	"stripwright/nest"
)

// randomJobs is how many jobs TestRandomJobs plans; the environment variable
// RANDOM_JOBS asks for more.
const randomJobs = 100

// Whatever the job, a plan is sound by the check's own sums, never below its
// bound, and never worse than shop practice where practice keeps the same
// rules; what is refused is refused for the stagger, the stock or a region
// without joints. Parts, rolls and rules are drawn at random.
func TestRandomJobs(t *testing.T) {
	n := randomJobs
	if s, err := strconv.Atoi(os.Getenv("RANDOM_JOBS")); err == nil {
		n = s
	}
	refused := 0
	for k := range n {
		rng := rand.New(rand.NewPCG(uint64(k), 2026))
		j := randomJob(rng)
		j.Rules.StraightEnds = k%5 == 4
		p, err := nest.Plan(context.Background(), j, nest.Settings{Effort: laminate.Quick})
		var r *nest.Refusal
		if errors.As(err, &r) {
			refused++
			t.Logf("job %d: %s", k, r.Text)
			continue
		}
		if err != nil {
			t.Fatalf("job %d: %v", k, err)
		}
		p = order.Fill(p, j)
		for _, c := range check.Plan(p) {
			if !c.Pass {
				t.Errorf("job %d: %s: %s", k, c.Rule, c.Text)
			}
		}
		for _, c := range p.Cost {
			free := len(j.Rules.KeepClear) == 0 && j.Rules.NarrowestMM == 0 && j.TableMM == 0 && j.Rules.CuttingGapMM == 0
			if c.Used < c.Bound-0.001 || free && c.Practice > 0 && c.Used > c.Practice+0.01 {
				t.Errorf("job %d: used %g, bound %g, practice %g", k, c.Used, c.Bound, c.Practice)
			}
		}
	}
	if refused > n/2 {
		t.Errorf("%d of %d jobs refused: too few were planned", refused, n)
	}
}

func some(rng *rand.Rand, from, to float64) float64 {
	return math.Round(10*(from+(to-from)*rng.Float64())) / 10
}

// randomRegion draws one of the shapes that parts have.
func randomRegion(rng *rand.Rand) geometry.Region {
	w, h := some(rng, 400, 1800), some(rng, 250, 1000)
	box := func(x0, y0, x1, y1 float64) orb.Ring { return orb.Ring{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}} }
	round := func(cx, cy, a, b float64, n int) (out orb.Ring) {
		for i := range n {
			s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			out = append(out, orb.Point{cx + a*c, cy + b*s})
		}
		return out
	}
	r := geometry.Region{Outer: box(0, 0, w, h)}
	switch rng.IntN(9) {
	case 0:
		r.Outer = orb.Ring{{0, 0}, {w, 0}, {w, h / 2.3}, {w / 2.7, h / 2.3}, {w / 2.7, h}, {0, h}}
	case 1:
		r.Holes = []orb.Ring{box(w/5, h/4, w/1.3, h/1.4)}
	case 2:
		r.Outer, r.Holes = round(0, 0, w/2, w/2, 72), []orb.Ring{round(0, 0, w/4, w/4, 48)}
	case 3:
		r.Outer = round(0, 0, w/2, h/2, 60)
	case 4: // C
		r.Outer = orb.Ring{{0, 0}, {w, 0}, {w, h / 4}, {w / 4, h / 4}, {w / 4, h / 1.5}, {w, h / 1.5}, {w, h}, {0, h}}
	case 5:
		r.Outer = orb.Ring{{0, 0}, {w, h / 7}, {w / 1.2, h}, {w / 9, h / 1.1}}
	case 6:
		r.Holes = []orb.Ring{round(w/3, h/2, min(w, h)/6, min(w, h)/6, 40), box(w/1.4, h/3, w/1.2, h/2)}
	case 7:
		r.Outer = orb.Ring{{0, 0}, {w, 0}, {0, h}}
	}
	return r.Snapped()
}

func randomJob(rng *rand.Rand) laminate.Job {
	r := randomRegion(rng)
	j := laminate.Job{Title: "random", Units: "mm", File: laminate.FileRef{Name: "random.yaml", SHA256: fmt.Sprintf("%064x", 0)},
		Part:   laminate.Part{Name: "random", DrawnFrom: laminate.LayingSide, Net: r, Blank: r},
		Search: laminate.Search{Effort: laminate.Quick, Seed: 1}}
	if rng.IntN(3) == 0 {
		j.Part.TrimMM = some(rng, 5, 30)
		blank, err := grow.Blank(r, j.Part.TrimMM, []grow.Corner{grow.Mitred, grow.Round}[rng.IntN(2)])
		if err != nil {
			panic(err)
		}
		j.Part.Blank = blank
		r = blank
	}
	j.Rules = laminate.Rules{StaggerMM: some(rng, 10, 45), PliesBetween: rng.IntN(5)}
	if rng.IntN(4) == 0 {
		j.Rules.NarrowestMM = some(rng, 5, 30)
	}
	if rng.IntN(4) == 0 {
		j.Rules.LayingToleranceMM = some(rng, 0, 3)
	}
	if rng.IntN(5) == 0 {
		j.Rules.CuttingGapMM = some(rng, 0, 4)
		j.Rules.StraightEnds = rng.IntN(6) == 0
	}
	if rng.IntN(3) == 0 {
		b := r.Bounds()
		c := orb.Point{b.Min[0] + (b.Max[0]-b.Min[0])*rng.Float64(), b.Min[1] + (b.Max[1]-b.Min[1])*rng.Float64()}
		z := geometry.Region{Outer: orb.Ring{{c[0], c[1]}, {c[0] + 40, c[1]}, {c[0] + 40, c[1] + 30}, {c[0], c[1] + 30}}}
		j.Rules.KeepClear = []laminate.KeepClear{{Region: z.Snapped()}}
	}
	width := some(rng, 120, 320)
	j.Fabrics = []laminate.Fabric{randomFabric(rng, "A", width, j.Rules)}
	if rng.IntN(4) == 0 {
		j.Fabrics = append(j.Fabrics, randomFabric(rng, "B", width, j.Rules))
	}
	if rng.IntN(6) == 0 {
		j.TableMM = some(rng, 2600, 5000)
	}
	angles := [][]float64{{0, 90}, {45, -45}, {0, 45, -45, 90}, {0}, {17, -17, 90}, {163, 0}, {30, -60}}[rng.IntN(7)]
	for k := range 1 + rng.IntN(9) {
		p := laminate.Ply{Number: k + 1, Fabric: j.Fabrics[rng.IntN(len(j.Fabrics))].Name,
			Heading: angles[rng.IntN(len(angles))], FaceDown: rng.IntN(5) == 0, Blank: r}
		if rng.IntN(6) == 0 {
			p.Outline, p.Blank = "patch", patchIn(r)
		}
		j.Plies = append(j.Plies, p)
	}
	return j
}

// patchIn is the lower left part of a region's own outline, cut straight: the
// part itself where it is too odd to be cut by hand.
func patchIn(r geometry.Region) geometry.Region {
	if len(r.Outer) != 4 || len(r.Holes) > 0 {
		return r
	}
	o := r.Outer
	mid := func(a, b orb.Point) orb.Point { return orb.Point{(a[0] + b[0]) / 2, (a[1] + b[1]) / 2} }
	return geometry.Region{Outer: orb.Ring{o[0], mid(o[0], o[1]), mid(mid(o[0], o[1]), mid(o[2], o[3])), mid(o[0], o[3])}}.Snapped()
}

func randomFabric(rng *rand.Rand, name string, width float64, rules laminate.Rules) laminate.Fabric {
	f := laminate.Fabric{Name: name, WeightGSM: 300, Fibre: "carbon", FaceIs: "smooth side", Turn: rng.IntN(4) > 0,
		StaggerMM: rules.StaggerMM, PliesBetween: rules.PliesBetween,
		Rolls: []laminate.Roll{{ID: name + "-1", WidthMM: width, Count: 1}}}
	switch rng.IntN(6) {
	case 0:
		f.Rolls = []laminate.Roll{{ID: name + "-1", WidthMM: width, LengthMM: some(rng, 2600, 9000), Count: 1, Remnant: true},
			{ID: name + "-2", WidthMM: width, LengthMM: 20000, Count: 9}}
	case 1:
		f.Rolls[0].HasPrice, f.Rolls[0].PricePerMetre = true, 3
		f.Rolls = append(f.Rolls, laminate.Roll{ID: name + "-2", WidthMM: 1.4 * width, Count: 1, HasPrice: true, PricePerMetre: 4})
	case 2:
		f.Rolls[0].BadEdgeMM = 7.5
	}
	return f
}
