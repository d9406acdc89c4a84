package nest

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"stripwright/laminate"
)

func priced(id string, width, length, price float64, remnant bool) laminate.Roll {
	return laminate.Roll{ID: id, WidthMM: width, LengthMM: length, Count: 1, HasPrice: true, PricePerMetre: price, Remnant: remnant}
}

// Where the price counts the cheap remnants are used up first, wherever they
// are listed. By hand: of two strips of 900 mm the rest roll of 1 m takes one.
func TestCheapRemnantsFirst(t *testing.T) {
	j := jobOf(plate(900, 600), 300, 25, 2, 0)
	j.Fabrics[0].Rolls = []laminate.Roll{priced("new", 300, 0, 9, false), priced("rest", 300, 1000, 3, true)}
	p := planOf(t, j)
	c := p.Cost[0]
	if want := 900*3.0 + 900*9.0; math.Abs(c.Used-want) > 0.01 {
		t.Errorf("used %g, want %g", c.Used, want)
	}
	// The rest roll holds 0.3 m² at 3 for 0.3 m², the new one the other 0.24 m².
	if want := 3.0*1000 + 9*800.0; math.Abs(c.Bound-want) > 0.01 {
		t.Errorf("bound %g, want %g", c.Bound, want)
	}
	if len(p.Rolls) != 2 || p.Rolls[0].Roll != "rest" || !p.Rolls[0].Remnant {
		t.Errorf("the rolls used are %+v", p.Rolls)
	}
	if c.Practice != 1800*9 {
		t.Errorf("practice takes the first listed roll: %g, want %g", c.Practice, 1800*9.0)
	}
}

// Of rolls of one price the remnants come first; where any roll has no price,
// list order is kept.
func TestOrderOfRolls(t *testing.T) {
	f := laminate.Fabric{Rolls: []laminate.Roll{
		priced("a", 300, 5000, 4, false), priced("b", 200, 0, 4, false), priced("c", 300, 2000, 4, true), priced("d", 300, 3000, 3, false),
	}}
	ids := func() (out []string) {
		for _, w := range widthsOf(&f) {
			for _, k := range w.rolls {
				out = append(out, f.Rolls[k].ID)
			}
		}
		return out
	}
	if got, want := ids(), []string{"d", "c", "a", "b"}; !slices.Equal(got, want) {
		t.Errorf("priced: %v, want %v", got, want)
	}
	f.Rolls[1].HasPrice = false
	if got, want := ids(), []string{"a", "c", "d", "b"}; !slices.Equal(got, want) {
		t.Errorf("without a price: %v, want %v", got, want)
	}
}

// Random stock with prices: the bound holds, the rolls hold what is cut from
// them, and the order in which the rolls are listed changes no cost.
func TestPricedStock(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 4))
	for k := range 12 {
		j := jobOf(plate(900+float64(rng.IntN(400)), 600+float64(rng.IntN(300))), 300, 25, 2, 0, 90, 0)
		rolls := []laminate.Roll{priced("new", 300, 0, 9, false)}
		for i := range rng.IntN(3) {
			rolls = append(rolls, priced(string(rune('a'+i)), 300, float64(1500+rng.IntN(3000)), float64(2+i), true))
		}
		j.Fabrics[0].Rolls = rolls
		p, err := Plan(context.Background(), j, Settings{})
		if err != nil {
			t.Fatal(err)
		}
		c := p.Cost[0]
		if c.Bound > c.Used+0.01 {
			t.Errorf("job %d: bound %g above %g", k, c.Bound, c.Used)
		}
		sum := 0.0
		for _, r := range p.Rolls {
			i := slices.IndexFunc(rolls, func(o laminate.Roll) bool { return o.ID == r.Roll })
			sum += r.UsedLengthMM * rolls[i].PricePerMetre
			if r.StockLengthMM != nil && r.UsedLengthMM > *r.StockLengthMM {
				t.Errorf("job %d: %g mm cut from a roll of %g", k, r.UsedLengthMM, *r.StockLengthMM)
			}
		}
		if math.Abs(sum-c.Used) > 0.1 {
			t.Errorf("job %d: %g used, the rolls cost %g", k, c.Used, sum)
		}
		slices.Reverse(j.Fabrics[0].Rolls)
		if q := planOf(t, j); math.Abs(q.Cost[0].Used-c.Used) > 0.01 {
			t.Errorf("job %d: %g when listed the other way, %g before", k, q.Cost[0].Used, c.Used)
		}
	}
}

// Plies of one direction take two widths where that pays. By construction: 2 × 900
// are 3 × 600 and 3 × 900 are 5 × 540 without waste, while five plies of one
// width take 8 strips of 600 or 9 of 540 for 7.5 and 8.33.
func TestPliesOfOneDirectionMixWidths(t *testing.T) {
	for _, between := range []int{1, 3} {
		j := jobOf(plate(1500, 900), 600, 25, between, 0, 0, 0, 0, 0)
		j.Fabrics[0].Rolls = []laminate.Roll{priced("a", 600, 0, 6, false), priced("b", 540, 0, 5.4, false)}
		p := planOf(t, j)
		if c := p.Cost[0]; math.Abs(c.Used-5*1500*9.0) > 0.01 || c.Status != laminate.Optimal {
			t.Errorf("%d plies between: %+v", between, c)
		}
		var lengths []float64
		for _, r := range p.Rolls {
			lengths = append(lengths, r.UsedLengthMM)
		}
		slices.Sort(lengths)
		if !slices.Equal(lengths, []float64{3 * 1500, 5 * 1500}) {
			t.Errorf("%d plies between: used %v of the two widths", between, lengths)
		}
	}
}

// Mixes change the first or the last plies of one direction, no choice twice
// over and none equal to the one begun with.
func TestMixes(t *testing.T) {
	sets := []widthSet{{plies: []int{0, 2, 3}, widths: 2}, {plies: []int{1}, widths: 2}}
	got := mixes(sets, choice{0, 1, 0, 0})
	want := []choice{{1, 1, 0, 0}, {0, 1, 0, 1}, {1, 1, 1, 0}, {0, 1, 1, 1}}
	if !slices.EqualFunc(got, want, func(a, b choice) bool { return slices.Equal(a, b) }) {
		t.Errorf("%v, want %v", got, want)
	}
}
