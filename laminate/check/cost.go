package check

import (
	"math"

	"stripwright/laminate"
)

// cost holds what each fabric is said to take: worked out again from the rolls,
// not below the bound, the bound worked out again where it is the area bound,
// the gap true, "optimal" only where used is the bound. Simple shop practice is a
// reference that keeps fewer rules, and no reason to find fault.
func cost(l *laid) *finding {
	f := &finding{rule: RuleCost, opening: doNotOrder, note: "no fabric takes less than its bound"}
	seen := map[string]bool{}
	for _, c := range l.plan.Cost {
		f.counted++
		if seen[c.Fabric] {
			f.add(1e6, laminate.Worst{}, "fabric %q: its cost is listed twice", c.Fabric)
		}
		seen[c.Fabric] = true
		m := &costing{c: c, area: blankArea(l, c.Fabric), gap: l.plan.Rules.CuttingGapMM, f: f}
		for _, y := range l.plies {
			if y.Fabric == c.Fabric {
				m.plies = append(m.plies, y)
			}
		}
		for _, r := range l.plan.Rolls {
			if r.Fabric == c.Fabric {
				m.rolls = append(m.rolls, r)
			}
		}
		m.judge()
	}
	for _, r := range l.plan.Rolls {
		if !seen[r.Fabric] {
			seen[r.Fabric] = true
			f.add(1e6, laminate.Worst{}, "fabric %q: its cost is not listed", r.Fabric)
		}
	}
	return f
}

// costing is the cost of one fabric beside the rolls that it is cut from.
type costing struct {
	c     laminate.Cost
	rolls []laminate.PlanRoll
	plies []laidPly
	area  float64
	gap   float64 // between pieces on a roll
	f     *finding
}

// blankArea sums the blanks of a fabric's plies, in mm².
func blankArea(l *laid, fabric string) float64 {
	sum := 0.0
	for _, y := range l.plies {
		if y.Fabric == fabric {
			sum += y.Blank.Area()
		}
	}
	return sum
}

func (m *costing) fault(bad float64, format string, args ...any) {
	m.f.add(bad, laminate.Worst{ValueMM: m.c.Used}, "fabric %q: "+format, append([]any{m.c.Fabric}, args...)...)
}

// cent is how far sums may be out, in mm or in the unit of price.
const cent = 0.01

func (m *costing) judge() {
	c := m.c
	switch c.Measure {
	case laminate.ByLength:
		m.byLength()
	case laminate.ByLastCut:
		m.byLastCut()
	case laminate.ByPrice:
		m.byPrice()
	default:
		m.fault(1e5, "the measure of cost %q is none of length, price, last_cut", c.Measure)
	}
	m.bound()
	if c.Bound > c.Used+cent {
		m.fault(c.Bound-c.Used, "the bound %s is above the %s used: one of them is wrong", num(c.Bound), num(c.Used))
	}
	if here := c.BoundHere; here != 0 && (here < c.Bound-cent || here > c.Used+cent) {
		m.fault(1, "the bound with the joints where they are, %s, is not between the bound %s and the %s used", num(here), num(c.Bound), num(c.Used))
	}
	if c.Bound > 0 && math.Abs(c.Gap-(c.Used-c.Bound)/c.Bound) > 1e-5 {
		m.fault(1, "the gap is said to be %.5f and is %.5f", c.Gap, (c.Used-c.Bound)/c.Bound)
	}
	m.status()
}

func (m *costing) status() {
	c := m.c
	switch {
	case c.Status == laminate.Optimal && c.Used > c.Bound+cent:
		m.fault(c.Used-c.Bound, "said to be optimal with %s used and a bound of %s", num(c.Used), num(c.Bound))
	case c.Status != laminate.Optimal && c.Status != laminate.Feasible:
		m.fault(1, "the status %q is neither optimal nor feasible", c.Status)
	}
}

// byLength: the cost is the sum of what is used of each roll.
func (m *costing) byLength() {
	if sum := m.usedLength(); math.Abs(sum-m.c.Used) > cent+float64(tolerance*float64(len(m.rolls))) {
		m.fault(math.Abs(sum-m.c.Used), "%s said to be used, the rolls add up to %s", mm(m.c.Used), mm(sum))
	}
}

// byPrice: the cost is what is used of each roll times its price. Plans of rolls
// without a price in them cannot be held to it.
func (m *costing) byPrice() {
	sum, room := 0.0, cent
	for _, r := range m.rolls {
		if !r.HasPrice {
			return
		}
		sum += float64(r.UsedLengthMM * r.PricePerMetre)
		room += float64(tolerance * r.PricePerMetre)
	}
	if off := math.Abs(sum - m.c.Used); off > room+float64(1e-9*sum) {
		m.fault(off, "said to cost %s, the rolls and their prices make %s", num(m.c.Used/1000), num(sum/1000))
	}
}

func (m *costing) usedLength() float64 {
	sum := 0.0
	for _, r := range m.rolls {
		sum += r.UsedLengthMM
	}
	return sum
}

// byLastCut: with the rolls laid end to end the last cut lies no nearer than
// the whole of every listed roll before the last, and what is used of that.
// Rolls without pieces are not listed, so it may lie further.
func (m *costing) byLastCut() {
	least := m.usedLength()
	whole := 0.0
	for i, r := range m.rolls {
		if i == len(m.rolls)-1 {
			least = math.Max(least, whole+r.UsedLengthMM)
		} else if r.StockLengthMM == nil {
			break
		} else {
			whole += *r.StockLengthMM
		}
	}
	if m.c.Used < least-cent {
		m.fault(least-m.c.Used, "the last cut is said to be at %s and lies at %s or beyond", mm(m.c.Used), mm(least))
	}
}

// bound works the bound out again: the blanks' area, the least cost of a mm²
// of roll, which for a length is one by the widest roll in use or less, and what
// stands on them.
func (m *costing) bound() {
	c := m.c
	if off := math.Abs(c.Proof.AreaMM2 - m.area); off > cent+float64(1e-8*m.area) {
		m.fault(off, "the bound stands on %.1f mm² of blanks, the plies have %.1f mm²", c.Proof.AreaMM2, m.area)
	}
	if want := float64(c.Proof.AreaMM2 * c.Proof.PerMM2); c.Proof.Bound == "area" && math.Abs(want-c.Bound) > cent+float64(1e-6*want) {
		m.fault(math.Abs(want-c.Bound), "the area bound is %s, not %s", num(want), num(c.Bound))
	}
	m.leastLength()
	if c.Measure == laminate.ByPrice {
		m.price()
		return
	}
	if widest := m.widest(); widest > 0 && c.Proof.PerMM2 > (1+1e-6)/widest {
		m.fault(1, "the bound takes %.3g mm of roll for a mm², a roll of %s gives it for %.3g", c.Proof.PerMM2, mm(widest), 1/widest)
	}
}

// price: what is used of the rolls cannot cost less than its area at the least
// cost of a mm².
func (m *costing) price() {
	least := 0.0
	for _, r := range m.rolls {
		least += float64(float64(r.UsedLengthMM*r.UsableWidthMM) * m.c.Proof.PerMM2)
	}
	if m.c.Used < float64(least*(1-1e-6))-cent {
		m.fault(least-m.c.Used, "said to cost %s, the rolls used cost %s or more", num(m.c.Used), num(least))
	}
}
