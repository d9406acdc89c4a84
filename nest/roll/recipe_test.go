package roll

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// A layout's recipe gives the layout again; varied again and again, and made to
// fit after pieces were taken out, it still holds every piece once, and what it
// lays keeps apart and costs what Weigh says.
func TestRecipe(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 3))
	for k := range 60 {
		task := randomTask(rng)
		task.Memory = &Memory{}
		first, err := Lay(task, Effort{ChainMoves: 2000, Trials: 300}, 1)
		if err != nil {
			continue
		}
		again, err := Follow(task, first.Recipe)
		if err != nil || !slices.Equal(again.Places, first.Places) {
			t.Fatalf("task %d: the recipe gives another layout: %v", k, err)
		}
		r := first.Recipe.Copy()
		for range 50 {
			r.Vary(task, 5000, rng)
		}
		r.Renumber(withoutSome(len(task.Pieces), rng))
		r.Complete(task, make([]bool, len(task.Pieces)), rng)
		l, err := Follow(task, r)
		if err != nil {
			continue // where rolls end, an order may not do
		}
		noOverlap(t, task, l)
		if w, ok := Weigh(task, r, math.Inf(1)); !ok || w.Cost != l.Cost {
			t.Errorf("task %d: weighed %g, laid %g", k, w.Cost, l.Cost)
		}
		if _, ok := Weigh(task, r, l.Cost-1); ok && task.Measure == Length && len(l.Rolls) == 1 {
			t.Errorf("task %d: not found too dear", k)
		}
		once(t, r, len(task.Pieces))
	}
}

// withoutSome strikes out a quarter of n pieces.
func withoutSome(n int, rng *rand.Rand) []int32 {
	to := make([]int32, n)
	for i := range to {
		if to[i] = int32(i); rng.IntN(4) == 0 {
			to[i] = -1
		}
	}
	return to
}

// once says when a recipe does not hold each of n pieces once.
func once(t *testing.T, r *Recipe, n int) {
	t.Helper()
	var all []int32
	for _, l := range r.chain {
		if l.piece >= 0 {
			all = append(all, l.piece)
		}
	}
	all = append(all, r.order...)
	slices.Sort(all)
	for i := range all {
		if len(all) != n || all[i] != int32(i) {
			t.Fatalf("pieces %v, want each of %d once", all, n)
		}
	}
}

// Moving element i to position j keeps the order of the others (by hand).
func TestMove(t *testing.T) {
	for _, c := range []struct {
		i, j int
		want []int
	}{{0, 3, []int{1, 2, 3, 0, 4}}, {3, 0, []int{3, 0, 1, 2, 4}}, {2, 2, []int{0, 1, 2, 3, 4}}} {
		got := []int{0, 1, 2, 3, 4}
		if move(got, c.i, c.j); !slices.Equal(got, c.want) {
			t.Errorf("%d to %d: %v, want %v", c.i, c.j, got, c.want)
		}
	}
	got := []int{0, 1, 2, 3, 4}
	if rotate(got, 2); !slices.Equal(got, []int{2, 3, 4, 0, 1}) {
		t.Errorf("rotated: %v", got)
	}
}
