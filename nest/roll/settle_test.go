package roll

import (
	"math/rand/v2"
	"testing"

	"github.com/paulmach/orb"
)

// stripsOf makes strips of the whole width of a roll of 10 mm, lengths in mm and
// how many of each.
func stripsOf(lengthCount ...float64) []Piece {
	var out []Piece
	for i := 0; i < len(lengthCount); i += 2 {
		n := lengthCount[i]
		s := shapeOf(orb.Ring{{0, 0}, {n, 0}, {n, 10}, {0, 10}})
		for range int(lengthCount[i+1]) {
			out = append(out, Piece{s, Either})
		}
	}
	return out
}

// The stock is just what the optimum takes, so laying succeeds only at it.
// Sources: the paper rolls of 5600, Wikipedia "Cutting stock problem"; length
// 100, V. Chvátal, Linear Programming, 1983, ch. 13 (from memory); 17, 132 and
// the capacity of 100 from memory; all recomputed with GLPK 5.0 and CBC 2.10.8.
func TestStockJustHolds(t *testing.T) {
	for _, c := range []struct {
		name   string
		roll   float64
		rolls  int
		pieces []Piece
	}{
		{"paper rolls", 5600, 73, stripsOf(1380, 22, 1520, 25, 1560, 12, 1710, 14, 1820, 18, 1880, 18, 1930, 20, 2000, 10, 2050, 12, 2100, 14, 2140, 16, 2150, 18, 2200, 20)},
		{"length 100", 100, 453, stripsOf(45, 97, 36, 610, 31, 395, 14, 211)},
		{"length 17", 17, 19, stripsOf(3, 25, 5, 20, 9, 15)},
		{"length 132", 132, 3, stripsOf(44, 2, 33, 3, 12, 6)},
		{"capacity 100", 100, 9, stripsOf(51, 6, 27, 6, 26, 6, 23, 12)},
	} {
		task := &Task{Width: um(10), Measure: LastCut, Stock: []Stock{{Length: um(c.roll), Copies: c.rolls}}, Pieces: c.pieces}
		if l, err := Lay(task, Effort{ChainMoves: 8000}, 1); err != nil || len(l.Rolls) != c.rolls {
			t.Errorf("%s: not laid on %d rolls: %v", c.name, c.rolls, err)
		}
		task.Stock[0].Copies--
		if _, err := Lay(task, Effort{ChainMoves: 8000}, 1); err == nil {
			t.Errorf("%s: laid on %d rolls, fewer than the optimum", c.name, c.rolls-1)
		}
	}
}

// Rest rolls of all lengths, each cut up without waste, so that the optimum is
// known: the last cut is where the last roll ends.
func TestRestRollsCutUp(t *testing.T) {
	for seed := range uint64(6) {
		rng := rand.New(rand.NewPCG(seed, 21))
		task := &Task{Width: um(10), Measure: LastCut}
		total := 0.0
		for range 5 {
			length := 0.0
			for range 3 + rng.IntN(2) {
				n := float64(200 + 10*rng.IntN(80))
				task.Pieces = append(task.Pieces, stripsOf(n, 1)...)
				length += n
			}
			total += length
			task.Stock = append(task.Stock, Stock{Length: um(length), Copies: 1})
		}
		task.Stock = append(task.Stock, Stock{Copies: 1})
		rng.Shuffle(len(task.Pieces), func(i, j int) { task.Pieces[i], task.Pieces[j] = task.Pieces[j], task.Pieces[i] })
		l, err := Lay(task, Effort{ChainMoves: 8000}, 1)
		if err != nil || l.Cost != float64(um(total)) {
			t.Errorf("seed %d: last cut at %g µm, %d is possible (%v)", seed, l.Cost, um(total), err)
		}
	}
}

// Two narrow strips side by side take the room of one: the rolls keep it for
// them. By hand: 1200 + 1200 + 900 and 4 × 1200 and 3 × 900 are cut from the rest
// rolls, the last cut is 4 × 900 behind them.
func TestRoomIsKeptForNarrowPieces(t *testing.T) {
	half := func(n float64) Piece {
		return Piece{shapeOf(orb.Ring{{0, 0}, {n, 0}, {n, 5}, {0, 5}}), Either}
	}
	task := &Task{Width: um(10), Measure: LastCut, Stock: []Stock{{Length: um(3350), Copies: 1}, {Length: um(4900), Copies: 1}, {Length: um(2750), Copies: 1}, {Copies: 1}}}
	task.Pieces = append(stripsOf(1200, 5, 900, 7), half(1200), half(1200), half(900), half(900))
	task.Memory = &Memory{}
	task.number()
	e := Effort{ChainMoves: 8000}
	full, narrow := task.split()
	l, short := layWith(task, task.shared(shortest(task, full, e), e), narrow, e, nil)
	if short != nil {
		t.Fatal(short)
	}
	if want := float64(um(3350 + 4900 + 2750 + 4*900)); l.Cost != want {
		t.Errorf("last cut at %g µm, want %g", l.Cost, want)
	}
}
