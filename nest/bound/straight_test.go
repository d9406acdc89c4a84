package bound

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/nest/layout"
)

// Worked out by hand: a triangle 200 along the roll and 100 high, rolls of 50. With a
// joint at p (below 50) the strips are 200, 200-2p and 100-2p long and p, 50 and 50-p
// high: 15000 - 100p + 2p² mm², least 13750 at p = 25. At p = 0 they take 15000.
func TestStraightEnds(t *testing.T) {
	triangle := geometry.Region{Outer: orb.Ring{{0, 0}, {200, 0}, {0, 100}}}
	job := task(triangle, 50, 0, 0, 0)
	job.Straight = true
	if b := Least(job, 0); b.Kind != Straight || math.Abs(float64(b.Length)/1000-275) > 3 || b.Length > um(275) {
		t.Errorf("%s: %d µm, by hand 275 mm", b.Kind, b.Length)
	}
	job.Phases = []int64{0}
	if b := Least(job, 0); b.Kind != Straight || math.Abs(float64(b.Length)/1000-300) > 0.2 || b.Length > um(300) {
		t.Errorf("%s at the lower edge: %d µm, by hand 300 mm", b.Kind, b.Length)
	}
	job.Straight = false
	if b := straightBound(newFabric(job), 0); b.Length > um(200) {
		t.Errorf("cut to shape: %d µm, by area 200 mm", b.Length)
	}
}

// At no phase do the oblongs of a blank take less than the bound over all phases, and
// at single phases the bound is what they take.
func TestStraightEndsOfRandomBlanks(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 7))
	for k := range 60 {
		blank := disc(150+rng.Float64()*300, 3+rng.IntN(9))
		switch k % 4 {
		case 1: // a frame
			blank.Holes = []orb.Ring{disc(30+rng.Float64()*30, 12).Outer}
			blank.Holes[0].Reverse()
		case 2: // an L
			x, y := 200+rng.Float64()*400, 200+rng.Float64()*300
			blank = geometry.Region{Outer: orb.Ring{{0, 0}, {x, 0}, {x, y / 3}, {x / 4, y / 3}, {x / 4, y}, {0, y}}}
		case 3: // a ring of so many points that the bound takes fewer
			blank = disc(25, 1700)
			blank.Holes = []orb.Ring{disc(5+rng.Float64()*7, 600).Outer}
			blank.Holes[0].Reverse()
		}
		width := 60 + math.Floor(rng.Float64()*200)
		job := task(blank, width, 0, 0, geometry.NewAngle(180*rng.Float64()))
		job.Straight = true
		whole := float64(straightBound(newFabric(job), 0).Length)
		least := math.Inf(1)
		for n := range 60 {
			phase := rng.Int64N(job.Width)
			if hole := len(blank.Holes); hole > 0 && n < 40 { // a joint near the top of the hole
				top := -math.MaxFloat64
				for _, p := range blank.Holes[0] {
					top = max(top, math.Hypot(p[0], p[1]))
				}
				phase = modulo(um(top)+int64(n)-30, job.Width)
			}
			taken := oblongsAt(job.Plies[0].Base, job.Width, phase)
			least = min(least, taken)
			job.Phases = []int64{phase}
			if at := float64(straightBound(newFabric(job), 0).Length); at > taken || at < taken-0.008*taken {
				t.Errorf("blank %d at %d: bound %g, oblongs take %g µm", k, phase, at, taken)
			}
			job.Phases = nil
		}
		if whole > least || whole < 0.9*least {
			t.Errorf("blank %d: bound %g, oblongs take %g µm at the best of 60 phases", k, whole, least)
		}
	}
}

// oblongsAt gives the roll length that the oblongs about the strips of a phase fill.
func oblongsAt(b *layout.Base, width, phase int64) float64 {
	sum := 0.0
	d := b.Class(width, 0).Divide(phase)
	for k := range d.Pieces {
		o := d.Pieces[k].Oblong()
		sum += float64(o.Area2()) / 2
	}
	return sum / float64(width)
}
