package main

import (
	"math"
	"testing"

	"stripwright/laminate"
)

func TestSlope(t *testing.T) {
	var xs, ys []float64
	for _, n := range []float64{25, 50, 100, 200, 400} {
		xs, ys = append(xs, math.Log(n)), append(ys, math.Log(3*math.Pow(n, 1.3)))
	}
	if got := slope(xs, ys); math.Abs(got-1.3) > 1e-9 {
		t.Errorf("%v, want 1.3", got)
	}
	if got := median([]float64{9, 1, 4, 2}); got != 3 {
		t.Errorf("median %v, want 3", got)
	}
}

// Gains under leastGain do not count, losses do, and only jobs with something
// to gain are weighed.
func TestQuality(t *testing.T) {
	job := func(used, bound, best, known float64) result {
		r := result{job: laminate.Job{Plies: make([]laminate.Ply, 8)}}
		r.used, r.bound, r.known.best, r.known.bound = used, bound, best, known
		return r
	}
	lines := quality([]result{
		job(100, 100, 100, 100), // nothing to gain
		job(99.97, 99, 100, 98), // a gain that does not count
		job(98, 96, 100, 95),    // a gain
		job(100.3, 90, 100, 80), // a loss
		{job: laminate.Job{}},   // refused
		job(500, 480, 0, 0),     // nothing known
	})
	want := []figure{
		{got: "1.0030", met: false},
		{got: "0.9943", met: true},
		{got: "2.08%", met: false},
		{got: "11.44%", met: false},
		{got: "1 of 5", met: true},
	}
	for k, f := range lines {
		if f.got != want[k].got || f.met != want[k].met {
			t.Errorf("%s: %s %v, want %s %v", f.name, f.got, f.met, want[k].got, want[k].met)
		}
	}
}

// A schedule is begun or repeated, and counted through.
func TestRepeated(t *testing.T) {
	j := laminate.Job{Plies: []laminate.Ply{{Number: 1, Fabric: "A"}, {Number: 2, Fabric: "B"}}}
	got := repeated(j, 5)
	if len(got.Plies) != 5 || got.Plies[4].Number != 5 || got.Plies[4].Fabric != "A" || got.Plies[3].Fabric != "B" || len(repeated(j, 1).Plies) != 1 {
		t.Errorf("%+v", got.Plies)
	}
}
