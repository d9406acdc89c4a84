package check

import (
	"strings"
	"testing"

	"stripwright/laminate"
)

// A cost by price is the sum of length times price, by hand.
func TestCostByPrice(t *testing.T) {
	priced := func() laminate.Plan {
		p := lshape(t)
		for i := range p.Cost {
			c := &p.Cost[i]
			sum := 0.0
			for k := range p.Rolls {
				if r := &p.Rolls[k]; r.Fabric == c.Fabric {
					r.HasPrice, r.PricePerMetre = true, 3.1
					sum += r.UsedLengthMM * 3.1
				}
			}
			c.Measure, c.Used = laminate.ByPrice, sum
		}
		return p
	}
	// The bounds of the plan are in mm of roll and do not matter here.
	const words = "the rolls and their prices make"
	p := priced()
	if r := verdict(Plan(p), RuleCost); strings.Contains(r.Text, words) {
		t.Error(r.Text)
	}
	p.Rolls[0].PricePerMetre = 3.2
	if r := verdict(Plan(p), RuleCost); r.Pass || !strings.Contains(r.Text, words) {
		t.Errorf("another price passes: %s", r.Text)
	}
	p.Rolls[0].HasPrice = false
	if r := verdict(Plan(p), RuleCost); strings.Contains(r.Text, words) {
		t.Errorf("a roll without a price: %s", r.Text)
	}
}
