package nest

import (
	"context"
	"slices"
	"strings"
	"testing"

	"stripwright/nest/roll"
)

// Plies that are cut alike exchange phases until the least stagger is as large
// as the phases allow: of five phases 10 mm apart, neighbours get two that are
// at least 20 mm apart. The pieces go with the phases.
func TestPhasesAreExchanged(t *testing.T) {
	j := jobOf(plate(900, 620), 200, 5, 1, 0, 0, 0, 0, 0)
	p, err := newPlanner(context.Background(), &j, Settings{})
	if err != nil {
		t.Fatal(err)
	}
	c := choices(&j, p.cloths)[0]
	m := newModel(&j, p.cloths, p.bases, c)
	a, _, err := m.lay([]int64{0, 10e3, 20e3, 30e3, 40e3}, roll.Effort{ChainMoves: 100, Trials: 10}, 1)
	if err != nil {
		t.Fatal(err)
	}
	before := m.standing(a.phases)
	m.exchangePhases(a)
	after := m.standing(a.phases)
	if before.least != 10e3 || after.least < 20e3 {
		t.Errorf("least stagger %d before, %d µm after", before.least, after.least)
	}
	sorted := slices.Sorted(slices.Values(a.phases))
	if !slices.Equal(sorted, []int64{0, 10e3, 20e3, 30e3, 40e3}) {
		t.Errorf("phases %v", a.phases)
	}
	task, _ := m.taskOf(0, a.phases)
	lengths, heights := map[int64]int{}, map[int64]int{}
	for _, s := range task.Pieces {
		lengths[s.Shape.Length()]++
		heights[s.Shape.Height()]++
	}
	for _, ref := range a.pieces[0] {
		d := m.divide(ref.ply, a.phases[ref.ply])
		lengths[d.Pieces[ref.piece].MaxX-d.Pieces[ref.piece].MinX]--
		heights[d.Pieces[ref.piece].Height()]--
	}
	for h, n := range heights {
		if n != 0 {
			t.Errorf("%d pieces too few of height %d µm", n, h)
		}
	}
	for l, n := range lengths {
		if n != 0 {
			t.Errorf("%d pieces too few of length %d µm", n, l)
		}
	}
}

// Of strips with the same outline, those of the ply that is laid first are cut
// first.
func TestEqualStripsAreCutInLayupOrder(t *testing.T) {
	p, err := Plan(context.Background(), jobOf(plate(900, 620), 200, 25, 1, 0, 0, 0, 0), Settings{})
	if err != nil {
		t.Fatal(err)
	}
	var plies []string
	for _, piece := range p.Rolls[0].Pieces {
		if b := piece.Shape.Bounds(); b.Max[1]-b.Min[1] > 199 {
			ply, _, _ := strings.Cut(piece.ID, "-")
			plies = append(plies, ply)
		}
	}
	if len(plies) < 8 || !slices.IsSorted(plies) {
		t.Errorf("full strips are cut for the plies %v", plies)
	}
}
