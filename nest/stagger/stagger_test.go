package stagger

import (
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/nest/layout"
)

func plate(w, h float64) geometry.Region {
	return geometry.Region{Outer: orb.Ring{{0, 0}, {w, 0}, {w, h}, {0, h}}}
}

func um(mm float64) int64 { return int64(geometry.Micrometres(mm)) }

// stack makes parallel plies over one plate, each from rolls of its width.
func stack(r geometry.Region, angle geometry.Angle, staggerMM float64, between int, widths ...float64) *Web {
	classes := make(map[float64]*layout.Class)
	var plies []Ply
	for k, w := range widths {
		c, ok := classes[w]
		if !ok {
			c = layout.NewBase(angle, r, r, nil).Class(um(w), 0)
			classes[w] = c
		}
		plies = append(plies, Ply{Number: k + 1, Class: c, Stagger: um(staggerMM), Between: between, Covers: true})
	}
	return NewWeb(plies)
}

func same(w float64, n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = w
	}
	return out
}

// The largest possible stagger has closed forms (derived: optimisation of
// joints of one comb): W/n on a part two widths or more across, and
// max(W/n, (2W-B)/(n-1)) between one and two widths; for two widths in one
// direction on a long part at most half their greatest common divisor.
func TestLargestStaggerClosedForms(t *testing.T) {
	cases := []struct {
		name   string
		across float64
		widths []float64
		want   float64
	}{
		{"wide part, 2 plies", 740, same(300, 2), 150},
		{"wide part, 3 plies", 740, same(300, 3), 100},
		{"wide part, 5 plies of tape", 500, same(100, 5), 20},
		{"narrow part 400", 400, same(300, 2), 200},
		{"narrow part 580", 580, same(300, 2), 150},
		{"narrow part 140, 3 plies", 140, same(110, 3), 40},
		{"300 with 200", 2400, []float64{300, 200}, 50},
		{"300 with 250", 3400, []float64{300, 250}, 25},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			at := func(d float64) bool {
				_, ok, _ := stack(plate(3000, c.across), 0, d, 10, c.widths...).Start()
				return ok
			}
			if !at(c.want) || at(c.want+0.01) {
				t.Errorf("possible at %g mm: %v, at %g mm: %v", c.want, at(c.want), c.want+0.01, at(c.want+0.01))
			}
			w := stack(plate(3000, c.across), 0, 2*c.want, 10, c.widths...)
			if got := w.Largest(); got < um(c.want)-2 || got > um(c.want) {
				t.Errorf("largest %d µm, want %d", got, um(c.want))
			}
		})
	}
}

// A part no wider than the roll has no joint and no limit.
func TestNoJointNoLimit(t *testing.T) {
	if _, ok, _ := stack(plate(3000, 290), 0, 1000, 10, same(300, 6)...).Start(); !ok {
		t.Error("refused a part without joints")
	}
}

// Plies strictly between excuse a joint: with 4 asked, plies 1 and 5 must be
// kept apart, plies 1 and 6 need not be (MIL-HDBK-17-3F vol. 3 §12.3.1 item
// at least 4 plies between coincident butts).
func TestPliesBetween(t *testing.T) {
	w := stack(plate(3000, 740), 0, 50, 4, same(300, 7)...)
	conflicts := func(i, j int) bool {
		for _, c := range w.Conflicts[i] {
			if c.With == j {
				return true
			}
		}
		return false
	}
	if !conflicts(0, 4) || conflicts(0, 5) {
		t.Errorf("plies 1 and 5: %v, plies 1 and 6: %v", conflicts(0, 4), conflicts(0, 5))
	}
}

// Between two full plies in line, patches count only where they lie: elsewhere
// the joints stand stacked.
func TestPatchesCountWhereTheyLie(t *testing.T) {
	r := plate(3000, 740)
	full := layout.NewBase(0, r, r, nil).Class(um(300), 0)
	patch := func(x0, x1 float64) *layout.Class {
		p := geometry.Region{Outer: orb.Ring{{x0, 0}, {x1, 0}, {x1, 740}, {x0, 740}}}
		return layout.NewBase(90, p, r, nil).Class(um(300), 0)
	}
	web := func(between ...*layout.Class) *Web {
		plies := []Ply{{Number: 1, Class: full, Stagger: um(50), Between: 2, Covers: true}}
		for _, c := range between {
			plies = append(plies, Ply{Class: c, Stagger: um(50), Between: 2})
		}
		return NewWeb(append(plies, Ply{Class: full, Stagger: um(50), Between: 2, Covers: true}))
	}
	cases := []struct {
		name  string
		web   *Web
		clear bool
	}{
		{"two patches over part of the joint", web(patch(0, 1000), patch(0, 1000)), false},
		{"two patches side by side", web(patch(0, 1500), patch(1500, 3000)), false},
		{"two patches over all of it", web(patch(0, 3000), patch(0, 3000)), true},
		{"four patches that cover it in pairs", web(patch(0, 1500), patch(1500, 3000), patch(0, 1500), patch(1500, 3000)), true},
	}
	for _, c := range cases {
		phases := make([]int64, len(c.web.Plies))
		last := len(phases) - 1
		phases[0], phases[last] = um(150), um(150)
		if got := c.web.Clear(last, phases[last], phases); got != c.clear {
			t.Errorf("%s: clear %v", c.name, got)
		}
	}
}

// On a bar at 15° the joints of two plies need not run side by side: 3 × 60 mm
// is more than the roll of 150 mm, and yet possible.
func TestJointsThatDoNotRunSideBySide(t *testing.T) {
	bar := plate(2000, 20)
	w := stack(bar, 15, 60, 3, same(150, 3)...)
	if _, ok, _ := w.Start(); !ok {
		t.Error("refused on the comb alone")
	}
}

// The last millimetre can cost a strip (derived): 740 across, rolls of 300,
// three plies. 80 mm of stagger leaves 9 strips possible, 81 mm asks for 10.
func TestLastMillimetreCostsAStrip(t *testing.T) {
	for _, c := range []struct {
		stagger float64
		strips  int
	}{{80, 9}, {81, 10}, {100, 10}} {
		w := stack(plate(1180, 740), 0, c.stagger, 10, same(300, 3)...)
		if got := fewestStrips(w); got != c.strips {
			t.Errorf("stagger %g mm: %d strips, want %d", c.stagger, got, c.strips)
		}
	}
}

// fewestStrips tries every whole millimetre.
func fewestStrips(w *Web) int {
	class := w.Plies[0].Class
	best := 1000
	strips := func(p int64) int { d := class.Measure(p); return d.Fulls + len(d.Narrow) }
	phases := []int64{-1, -1, -1}
	var set func(i, sum int)
	set = func(i, sum int) {
		if sum+3*(len(phases)-i) >= best {
			return
		}
		if i == len(phases) {
			best = sum
			return
		}
		for p := int64(0); p < class.Width; p += 1000 {
			phases[i] = -1
			if w.Clear(i, p, phases) {
				phases[i] = p
				set(i+1, sum+strips(p))
				phases[i] = -1
			}
		}
	}
	set(0, 0)
	return best
}

// Near-parallel joints that cross lie within the stagger near their crossing.
func TestNearParallel(t *testing.T) {
	r := plate(1000, 740)
	for _, c := range []struct {
		angle geometry.Angle
		clear bool
	}{{3, false}, {6, true}, {90, true}} {
		a := layout.NewBase(0, r, r, nil).Class(um(300), 0)
		b := layout.NewBase(c.angle, r, r, nil).Class(um(300), 0)
		w := NewWeb([]Ply{{Class: a, Stagger: um(50), Between: 2, Covers: true}, {Class: b, Stagger: um(50), Between: 2, Covers: true}})
		if got := w.Clear(1, um(150), []int64{um(150), -1}); got != c.clear {
			t.Errorf("%v°: clear %v", c.angle, got)
		}
	}
}
