package nest

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"stripwright/laminate"
)

// A small right-angled job is solved here by trying everything: all phases on a
// grid, and for each set of them all ways to pack the strips. Lengths are grid
// steps, two to the step that the sizes of the job lie on: two plies half a roll
// apart, their lower edge strips side by side, stand at quarters of the roll.
type small struct {
	width, stagger, between, narrowest int
	plies                              []smallPly
	sums                               map[int]bool   // sums of lengths of plies
	short                              map[string]int // by narrow strips: no less will do
	best                               int            // least length of roll so far
}

// smallPly is a ply that is long along its strips and across them.
type smallPly struct{ long, across int }

const (
	step = 10.0    // mm
	none = 1 << 20 // no length of roll: the rules cannot be met
)

// job makes the job of it; plies as long as the first lie at 0°.
func (s *small) job() laminate.Job {
	var angles []float64
	for _, p := range s.plies {
		angles = append(angles, map[bool]float64{true: 0, false: 90}[p == s.plies[0]])
	}
	r := plate(step*float64(s.plies[0].long), step*float64(s.plies[0].across))
	j := jobOf(r, step*float64(s.width), step*float64(s.stagger), s.between, angles...)
	j.Rules.NarrowestMM = step * float64(s.narrowest)
	return j
}

// joints lists the joints of a ply at a phase.
func (s *small) joints(k, phase int) []int {
	var out []int
	for y := phase; y < s.plies[k].across; y += s.width {
		if y > 0 {
			out = append(out, y)
		}
	}
	return out
}

// heights lists the strips of a ply; false when one is too narrow.
func (s *small) heights(k, phase int) ([]int, bool) {
	from, wide := 0, true
	var out []int
	joints := s.joints(k, phase)
	for _, y := range append(joints, s.plies[k].across) {
		out = append(out, y-from)
		wide = wide && (y-from >= s.narrowest || len(joints) == 0)
		from = y
	}
	return out, wide
}

// apart says whether ply k at its phase keeps the stagger to those before it.
func (s *small) apart(k int, phases []int) bool {
	for i := max(0, k-s.between); i < k; i++ {
		if s.plies[i] != s.plies[k] {
			continue
		}
		for _, y := range s.joints(k, phases[k]) {
			for _, z := range s.joints(i, phases[i]) {
				if max(y-z, z-y) < s.stagger {
					return false
				}
			}
		}
	}
	return true
}

// solve tries the phases of ply k and the plies behind it; full is the length of
// the full-width strips before it, narrow the other strips.
func (s *small) solve(k, full int, phases []int, narrow []piece) {
	if k == len(s.plies) {
		s.best = min(s.best, full+s.pack(narrow, s.best-full))
		return
	}
	for phases[k] = range s.width {
		heights, wide := s.heights(k, phases[k])
		if !wide || !s.apart(k, phases) {
			continue
		}
		more, kept := full, slices.Clone(narrow)
		for _, h := range heights {
			if h == s.width {
				more += s.plies[k].long
			} else {
				kept = append(kept, piece{s.plies[k].long, h})
			}
		}
		s.solve(k+1, more, phases, kept)
	}
}

// randomSmall makes a job of a few plies of one direction or of two.
func randomSmall(rng *rand.Rand, crossed bool) *small {
	w := 3 + rng.IntN(3)
	s := &small{width: 2 * w, stagger: 2 + 2*rng.IntN(max(1, w/2)), between: 1 + rng.IntN(3), narrowest: 2 * rng.IntN(2), short: make(map[string]int), best: none}
	a, b := 2*(w+1+rng.IntN(3*w)), 2*(w+1+rng.IntN(3*w))
	for k := range 2 + rng.IntN(3) {
		p := smallPly{a, b}
		if crossed && k > 0 && (k == 1 || rng.IntN(2) == 0) {
			p = smallPly{b, a}
		}
		s.plies = append(s.plies, p)
	}
	s.sums = map[int]bool{0: true}
	for n := range 20 * (a + b) {
		for _, p := range s.plies {
			s.sums[n+p.long] = s.sums[n+p.long] || s.sums[n]
		}
	}
	return s
}

// Jobs of two to four plies, solved by trying everything. A job is refused when
// no phases keep its rules, and only then; no bound is above the optimum; plies
// of one direction take the optimum, and of two directions nearly always.
func TestEverythingTried(t *testing.T) {
	for _, c := range []struct {
		crossed    bool
		jobs, miss int     // so many may take more than the optimum,
		more       float64 // by this part of it
	}{{false, 40, 0, 0}, {true, 24, 2, 0.03}} {
		rng := rand.New(rand.NewPCG(13, 3))
		missed := 0
		for k := range c.jobs {
			s := randomSmall(rng, c.crossed)
			s.solve(0, 0, make([]int, len(s.plies)), nil)
			if tried(t, fmt.Sprintf("crossed %v, job %d", c.crossed, k), s, c.more) {
				missed++
			}
		}
		if missed > c.miss {
			t.Errorf("crossed %v: %d of %d jobs take more than the optimum", c.crossed, missed, c.jobs)
		}
		t.Logf("crossed %v: %d of %d jobs take more than the optimum", c.crossed, missed, c.jobs)
	}
}

// tried holds a plan against a solved job and says whether it takes more cloth,
// which may be more of it by so much.
func tried(t *testing.T, name string, s *small, more float64) bool {
	t.Helper()
	p, err := Plan(context.Background(), s.job(), Settings{})
	var r *Refusal
	if refused := errors.As(err, &r); refused || s.best == none {
		if !refused || s.best < none {
			t.Errorf("%s: refused %v, by trying everything %d steps (%v)", name, refused, s.best, err)
		}
		return false
	}
	if err != nil {
		t.Fatal(name, err)
	}
	best, cost := step*float64(s.best), p.Cost[0]
	switch {
	case cost.Bound > best+0.001:
		t.Errorf("%s: the bound is %g, %g will do", name, cost.Bound, best)
	case cost.Used < best-0.001:
		t.Errorf("%s: used %g, by trying everything %g: is the plan sound, the grid too wide?", name, cost.Used, best)
	case cost.Status == laminate.Optimal && cost.Used > best+0.001:
		t.Errorf("%s: called optimal with %g, %g will do", name, cost.Used, best)
	case cost.Used > best*(1+more)+0.001:
		t.Errorf("%s: used %g, %g will do", name, cost.Used, best)
	}
	return cost.Used > best+0.001
}
