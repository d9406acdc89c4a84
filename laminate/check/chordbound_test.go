package check

import (
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

// Three plies 1000 mm long and 430 mm across from a roll of 200: seven strips by
// the chords, worked out by hand; what is said beyond that is found.
func TestChordBound(t *testing.T) {
	for _, k := range []struct {
		length float64
		steps  int
		faults int
	}{{7000, 6, 0}, {6999, 6, 0}, {7001, 6, 1}, {7000, 2, 1}, {7000, 0, 1}} {
		m := threePlies(k.length, "chord")
		m.c.Proof.Steps = k.steps
		m.leastLength()
		if got := len(m.f.faults); got != k.faults {
			t.Errorf("%g mm by %d steps: %d faults, want %d", k.length, k.steps, got, k.faults)
		}
	}
}

// With 10 mm between pieces each of the 1000 mm chords takes 1010 of the roll and
// the last gap may lie beyond its end: seven strips are 7060 mm. The same by chords
// that take what they are long (no steps): 430 mm three times are 6.45 widths.
func TestChordBoundWithGap(t *testing.T) {
	for _, k := range []struct {
		length float64
		steps  int
		faults int
	}{{7060, 6, 0}, {7059, 6, 0}, {7061, 6, 1}, {6504.5, 0, 0}, {6505, 0, 1}} {
		m := threePlies(k.length, "chord")
		m.gap, m.c.Proof.Steps = 10, k.steps
		m.leastLength()
		if got := len(m.f.faults); got != k.faults {
			t.Errorf("%g mm by %d steps: %d faults, want %d", k.length, k.steps, got, k.faults)
		}
	}
}

// Between the last piece of a roll and the first of the next there is no gap: cut
// from rolls of 1000 mm, seven strips are 7000 mm, and 7060 are not shown.
func TestNoGapBetweenRolls(t *testing.T) {
	for _, k := range []struct {
		length float64
		faults int
	}{{7000, 0}, {7060, 1}} {
		m := threePlies(k.length, "chord")
		m.gap, m.c.Proof.Steps, m.c.Measure = 10, 6, laminate.ByLastCut
		m.leastLength()
		if got := len(m.f.faults); got != k.faults {
			t.Errorf("%g mm: %d faults, want %d", k.length, got, k.faults)
		}
	}
}

// Three plies of 1000 mm chords, 6.45 widths in all. On an endless roll the last cut
// lies on a whole strip: 7000 mm. From rolls of 2500 mm, two strips each, the seventh
// is cut from the fourth: 7500 + 1000 mm (worked out by hand).
func TestRollEnds(t *testing.T) {
	stock := 2500.0
	for _, k := range []struct {
		length float64
		finite bool
		gap    float64
		faults int
	}{{7000, false, 0, 0}, {7001, false, 0, 1}, {8500, true, 0, 0}, {8501, true, 0, 1}, {7060, false, 10, 0}, {7061, false, 10, 1}} {
		m := threePlies(k.length, "roll ends")
		m.gap = k.gap
		if k.finite {
			m.c.Measure, m.c.Used = laminate.ByLastCut, 8500
			m.rolls = nil
			for _, used := range []float64{2000, 2000, 2000, 1000} {
				m.rolls = append(m.rolls, laminate.PlanRoll{UsableWidthMM: 200, UsedLengthMM: used, StockLengthMM: &stock})
			}
		}
		m.leastLength()
		if got := len(m.f.faults); got != k.faults {
			t.Errorf("%+v: %d faults: %v", k, got, m.f.faults)
		}
	}
	tapered := geometry.Region{Outer: orb.Ring{{0, 0}, {1000, 0}, {900, 430}, {0, 430}}}
	m := threePlies(7000, "roll ends")
	m.plies[1].Blank = tapered
	if m.leastLength(); len(m.f.faults) != 1 {
		t.Errorf("chords that change from level to level: %v", m.f.faults)
	}
}

// threePlies is the cost of three plies 1000 mm long and 430 mm across from a roll of
// 200, with a bound of some length.
func threePlies(length float64, bound string) *costing {
	blank := geometry.Region{Outer: orb.Ring{{0, 0}, {1000, 0}, {1000, 430}, {0, 430}}}
	m := &costing{f: &finding{rule: RuleCost}, area: 1290000, rolls: []laminate.PlanRoll{{UsableWidthMM: 200}}}
	m.c = laminate.Cost{Measure: laminate.ByLength, Bound: length, Proof: laminate.Proof{Bound: bound, LengthMM: length}}
	for range 3 {
		m.plies = append(m.plies, laidPly{PlanPly: laminate.PlanPly{Blank: blank}})
	}
	return m
}

// A bound for the joints where they are lies between the bound for all joints and
// what is used.
func TestBoundWithTheJointsWhereTheyAre(t *testing.T) {
	for _, k := range []struct {
		here   float64
		faults int
	}{{0, 0}, {6450, 0}, {7000, 0}, {6449, 1}, {7001, 1}} {
		m := threePlies(0, "area")
		m.rolls[0].UsedLengthMM = 7000
		m.c = laminate.Cost{Measure: laminate.ByLength, Used: 7000, Bound: 6450, Gap: 550. / 6450, BoundHere: k.here,
			Proof: laminate.Proof{Bound: "area", AreaMM2: 1290000, PerMM2: 1. / 200}, Status: laminate.Feasible}
		m.judge()
		if got := len(m.f.faults); got != k.faults {
			t.Errorf("%g mm: %d faults, want %d: %v", k.here, got, k.faults, m.f.faults)
		}
	}
}
