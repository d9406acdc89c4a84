package stack

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// The shuffle against every permutation with every way to lie, on small stacks.
func TestShuffleAgainstTryingAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plies := drawn(t, 1, 4)
		if rapid.Bool().Draw(t, "mirrored") {
			plies = slices.Concat(plies[:min(2, len(plies))], mirrored(plies[:min(2, len(plies))]))
		}
		m := &mending{plies: plies, ids: names{}}
		by := means{}
		if rapid.Bool().Draw(t, "turned") {
			by = means{faces: true, quarters: true}
		}
		choices := m.choices(by)
		best := never
		var try func(left []int, cost int, ids []int)
		try = func(left []int, cost int, ids []int) {
			if len(left) == 0 {
				if cost < best && reads(ids) {
					best = cost
				}
				return
			}
			for i, k := range left {
				for _, v := range choices[k] {
					try(slices.Delete(slices.Clone(left), i, i+1), cost+v.cost, slices.Concat(ids, v.ids))
				}
			}
		}
		try(counting(len(plies)), 0, nil)
		order, lie, ok := sorted(choices).order()
		if ok != (best < never) {
			t.Fatalf("found %v, the least is %d", ok, best)
		}
		if !ok {
			return
		}
		cost, now := 0, []Ply(nil)
		for i, k := range order {
			cost += choices[k][lie[i]].cost
			now = append(now, choices[k][lie[i]].ply)
		}
		if cost != best || !Judge(now).Mirror {
			t.Fatalf("order %v at %d, the least is %d; mirror %v", order, cost, best, Judge(now).Mirror)
		}
		if used := slices.Sorted(slices.Values(order)); !slices.Equal(used, counting(len(plies))) {
			t.Fatalf("order %v", order)
		}
	})
}

func ud45() Cloth {
	c := ud
	c.GSM = 225
	c.Lies = slices.Clone(c.Lies)
	c.Lies[0].AngleDeg, c.Lies[0].WeightGSM = -45, 225
	return c
}

// Layers of different plies lie opposite each other: stitched -45 45 on the tool
// and unidirectional -45 on it are a mirror, which no pairing of whole plies
// finds.
func TestOrderAcrossPlies(t *testing.T) {
	plies := append(of(t, ud45(), "[0]", ""), of(t, biax, "[0]", "")...)
	for i := range plies {
		plies[i].Number = i + 1
	}
	m := Mend(plies, nil)
	if !slices.Contains(wordsOf(m.Cures), "exchange plies 1 and 2") {
		t.Errorf("%q", wordsOf(m.Cures))
	}
	s := &mending{plies: plies, ids: names{}}
	if order, _, ok := sorted(s.choices(means{})).order(); !ok || !slices.Equal(order, []int{1, 0}) {
		t.Errorf("order %v", order)
	}
}
