package layout

import (
	"math"
	"slices"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
)

func um(mm float64) int64 { return int64(geometry.Micrometres(mm)) }

func box(x0, y0, x1, y1 float64) geometry.Region {
	return geometry.Region{Outer: orb.Ring{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}}
}

func class(r geometry.Region, angle geometry.Angle, width, narrowest float64, clear ...geometry.Region) *Class {
	return NewBase(angle, r, r, clear).Class(um(width), um(narrowest))
}

func TestDivideCounts(t *testing.T) {
	steps := geometry.Region{Outer: orb.Ring{{0, 0}, {1200, 0}, {1200, 300}, {900, 300}, {900, 600}, {0, 600}}}
	cases := []struct {
		name    string
		c       *Class
		phase   float64
		pieces  int
		fulls   int
		across  float64
		covered float64 // mm²
	}{
		{"740 across, three strips", class(box(0, 0, 1180, 740), 0, 300, 0), 0, 3, 2, 740, 1180 * 740},
		{"90° with trim, five strips", class(box(0, 0, 1230, 790), 90, 300, 0), 0, 5, 4, 1230, 1230 * 790},
		{"steps on the joints", class(steps, 0, 300, 0), 0, 2, 2, 600, 630000},
		{"square at 45°", class(box(0, 0, 740, 740), 45, 300, 0), 0, 4, 2, 1046.518, 547600},
		{"narrower than the roll", class(box(0, 0, 900, 180), 0, 300, 0), 0, 1, 0, 180, 900 * 180},
	}
	for _, k := range cases {
		t.Run(k.name, func(t *testing.T) {
			d := k.c.Divide(um(k.phase))
			area := 0.0
			for i := range d.Pieces {
				area += float64(d.Pieces[i].Area2()) / 2e6
			}
			if len(d.Pieces) != k.pieces || d.Fulls != k.fulls {
				t.Errorf("%d pieces, %d of full width; want %d, %d", len(d.Pieces), d.Fulls, k.pieces, k.fulls)
			}
			if got := geometry.Micrometre(k.c.Blank.Across()).MM(); math.Abs(got-k.across) > 0.002 {
				t.Errorf("%g mm across, want %g", got, k.across)
			}
			if math.Abs(area-k.covered) > 5 {
				t.Errorf("pieces cover %g mm², want %g", area, k.covered)
			}
		})
	}
}

// A joint may run along a keep-clear border, never inside it: bolts at y 150
// and 450 with 30 mm about them, rolls of 300, forbid phases between 120 and 180.
func TestKeepClearForbidsPhases(t *testing.T) {
	c := class(box(0, 0, 1180, 740), 0, 300, 0, box(170, 120, 230, 180), box(870, 420, 930, 480))
	for p := 0.0; p < 300; p++ {
		want := None
		if p > 120 && p < 180 {
			want = NotClear
		}
		if got := c.Measure(um(p)).Fault; got != want {
			t.Errorf("phase %g: %v, want %v", p, got, want)
		}
	}
	if b := c.Barriers(); !slices.Contains(b, um(120)) || !slices.Contains(b, um(180)) {
		t.Errorf("barriers %v", b)
	}
}

// 740 across and rolls of 245 leave 5 mm when started at the edge: allowed only
// where both edge strips are wide enough.
func TestNarrowest(t *testing.T) {
	c := class(box(0, 0, 1180, 740), 0, 245, 40)
	for _, k := range []struct {
		phase float64
		want  Fault
	}{{0, TooNarrow}, {125, None}, {40, None}, {39.999, TooNarrow}, {210, None}, {210.001, TooNarrow}} {
		if got := c.Measure(um(k.phase)).Fault; got != k.want {
			t.Errorf("phase %g: %v, want %v", k.phase, got, k.want)
		}
	}
	whole := class(box(0, 0, 1180, 30), 0, 245, 40)
	if got := whole.Measure(0).Fault; got != None {
		t.Error("a blank narrower than the narrowest strip is one piece and no fault")
	}
}

// Joints count only with net material on both sides.
func TestLinesCountInTheNetPart(t *testing.T) {
	blank, net := box(-25, -25, 1205, 765), box(0, 0, 1180, 740)
	c := NewBase(0, blank, net, nil).Class(um(300), 0)
	heights := func(phase float64) (out []float64) {
		for _, l := range c.Measure(um(phase)).Lines {
			out = append(out, geometry.Micrometre(l.Y).MM())
		}
		return out
	}
	if got := heights(290); !slices.Equal(got, []float64{290, 590}) {
		t.Errorf("joints that count: %v", got) // -10 runs in the trim
	}
	if got := heights(0); !slices.Equal(got, []float64{300, 600}) {
		t.Errorf("joints that count: %v", got) // 0 runs on the net edge
	}
}
