package stock

import (
	"math"
	"math/rand/v2"
	"testing"
)

// alike gives a number of equal rolls.
func alike(length int64, n int) []int64 {
	out := make([]int64, n)
	for i := range out {
		out[i] = length
	}
	return out
}

func kindsOf(lengthCount ...int64) []Piece {
	var out []Piece
	for i := 0; i < len(lengthCount); i += 2 {
		out = append(out, Piece{lengthCount[i], int(lengthCount[i+1])})
	}
	return out
}

// hold says that a plan cuts every piece once, from rolls that hold it, and that
// its last cut is where it says.
func hold(t *testing.T, rolls []int64, pieces []Piece, p Plan) {
	t.Helper()
	cut := make([]int, len(pieces))
	place := int64(0)
	for i, r := range p.Rolls {
		sum := int64(0)
		for k, n := range r {
			if n < 0 {
				t.Errorf("roll %d: %d pieces of kind %d", i, n, k)
			}
			cut[k] += n
			sum += pieces[k].Length * int64(n)
		}
		if !holds(rolls[i], sum) {
			t.Errorf("roll %d of %d holds %d", i, rolls[i], sum)
		}
		if i < len(p.Rolls)-1 {
			sum = rolls[i]
		}
		place += sum
	}
	for k := range pieces {
		if cut[k] != pieces[k].Count {
			t.Errorf("kind %d: %d cut, %d wanted", k, cut[k], pieces[k].Count)
		}
	}
	if place != p.Last {
		t.Errorf("the last cut is at %d, said to be at %d", place, p.Last)
	}
}

// Published cutting-stock problems and their optima, all recomputed with GLPK
// 5.0 and CBC 2.10.8. Sources: the paper rolls, Wikipedia "Cutting stock
// problem"; length 100, V. Chvátal, Linear Programming, 1983, ch. 13 (from
// memory); 17, 132 and the capacity of 100: from memory, known for, in this
// order, the rounded-up bound, the bound that cannot be reached, and
// first-fit-decreasing that takes 11. Of 132 the bound is 1.9621 rolls when a
// pattern may hold more pieces of a kind than are wanted; here it may not.
var published = []struct {
	name        string
	roll        int64
	pieces      []Piece
	bound, best int
}{
	{"5600", 5600, kindsOf(1380, 22, 1520, 25, 1560, 12, 1710, 14, 1820, 18, 1880, 18, 1930, 20, 2000, 10, 2050, 12, 2100, 14, 2140, 16, 2150, 18, 2200, 20), 73, 73},
	{"100", 100, kindsOf(45, 97, 36, 610, 31, 395, 14, 211), 453, 453},
	{"17", 17, kindsOf(3, 25, 5, 20, 9, 15), 19, 19},
	{"132", 132, kindsOf(44, 2, 33, 3, 12, 6), 3, 3},
	{"51", 100, kindsOf(51, 6, 27, 6, 26, 6, 23, 12), 9, 9},
}

// least gives a number of equal rolls that the pieces take at least: the linear
// programme of all patterns, rounded up.
func least(roll int64, pieces []Piece) int {
	_, bound := newSearch([]int64{roll}, pieces, 0).programme(roll)
	return int(math.Ceil(bound - 1e-6))
}

func TestPublishedOptima(t *testing.T) {
	for _, c := range published {
		if got := least(c.roll, c.pieces); got != c.bound {
			t.Errorf("%s: the bound is %d rolls, expected %d", c.name, got, c.bound)
		}
		rolls := alike(c.roll, 500)
		p, ok := Fill(rolls, c.pieces, 200000)
		if !ok || len(p.Rolls) != c.best {
			t.Errorf("%s: %d rolls, the optimum is %d", c.name, len(p.Rolls), c.best)
		}
		hold(t, rolls, c.pieces, p)
		// One roll fewer holds them never, and none is found.
		if p, ok := Fill(alike(c.roll, c.best-1), c.pieces, 20000); ok {
			t.Errorf("%s: %d rolls are said to hold what takes %d: %+v", c.name, c.best-1, c.best, p)
		}
	}
}

// Triplets, in the style of the OR-Library (Beasley 1990; Falkenauer 1996): each
// roll is cut into three pieces without waste, so the optimum is known.
func TestTriplets(t *testing.T) {
	for seed := range uint64(8) {
		rng := rand.New(rand.NewPCG(seed, 3))
		const n, roll = 14, 1000
		var pieces []Piece
		for range n {
			a := 380 + rng.Int64N(111)
			b := 250 + rng.Int64N((roll-a)/2-250+1)
			for _, l := range []int64{a, b, roll - a - b} {
				pieces = append(pieces, Piece{l, 1})
			}
		}
		rolls := alike(roll, n+3)
		p, ok := Fill(rolls, pieces, 3_000_000)
		hold(t, rolls, pieces, p)
		if !ok || p.Last != n*roll || !p.Proved {
			t.Errorf("seed %d: last cut at %d, proved %v; %d is possible", seed, p.Last, p.Proved, n*roll)
		}
	}
}

// On small random jobs the proved plan is that of trying everything.
func TestFillAgainstEverything(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	held := 0
	for range 400 {
		var rolls []int64
		for range 1 + rng.IntN(4) {
			rolls = append(rolls, 20+rng.Int64N(60))
		}
		if rng.IntN(3) == 0 {
			rolls[len(rolls)-1] = 0
		}
		var pieces []Piece
		for range 1 + rng.IntN(5) {
			pieces = append(pieces, Piece{3 + rng.Int64N(30), 1 + rng.IntN(2)})
		}
		want := everything(rolls, pieces)
		p, ok := Fill(rolls, pieces, 1_000_000)
		if ok != (want >= 0) {
			t.Fatalf("%v %v: held %v, should be %v", rolls, pieces, ok, want >= 0)
		}
		if !ok {
			continue
		}
		held++
		hold(t, rolls, pieces, p)
		if p.Last != want || !p.Proved {
			t.Errorf("%v %v: last cut at %d, proved %v; the least is %d", rolls, pieces, p.Last, p.Proved, want)
		}
	}
	if held < 200 {
		t.Errorf("only %d jobs fit their rolls", held)
	}
}

// everything gives the least place of the last cut over all ways to spread the
// pieces, -1 when none holds them.
func everything(rolls []int64, pieces []Piece) int64 {
	var list []int64
	for _, p := range pieces {
		for range p.Count {
			list = append(list, p.Length)
		}
	}
	best := int64(-1)
	used := make([]int64, len(rolls))
	var put func(i int)
	put = func(i int) {
		if i == len(list) {
			place, start := int64(0), int64(0)
			for r, u := range used {
				if u > 0 {
					place = start + u
				}
				start += rolls[r]
			}
			if best < 0 || place < best {
				best = place
			}
			return
		}
		for r := range rolls {
			if holds(rolls[r], used[r]+list[i]) {
				used[r] += list[i]
				put(i + 1)
				used[r] -= list[i]
			}
		}
	}
	put(0)
	return best
}

// Few steps give a sound plan that is not called proved.
func TestFewSteps(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 9))
	var pieces []Piece
	for range 60 {
		pieces = append(pieces, Piece{20000 + rng.Int64N(30000), 1})
	}
	rolls := alike(100000, 60)
	p, ok := Fill(rolls, pieces, 50)
	if !ok || p.Proved {
		t.Errorf("found %v, proved %v after 50 steps", ok, p.Proved)
	}
	hold(t, rolls, pieces, p)
}

func BenchmarkFill(b *testing.B) {
	for b.Loop() {
		Fill(alike(5600, 100), published[0].pieces, 20000)
	}
}
