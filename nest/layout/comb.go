package layout

import (
	"stripwright/geometry/band"
)

// Line is a side joint that counts: its height and where it runs inside the
// net part.
type Line struct {
	Y     int64
	Spans []band.Span
}

// Comb is the joints of one phase.
type Comb struct {
	Phase  int64
	Joints []int64 // heights inside the blank, rising
	Lines  []Line  // joints that count for stagger
	Clear  bool    // no joint runs where none may run
}

// Phase brings a joint height into [0, Width).
func (c *Class) Phase(y int64) int64 {
	p := y % c.Width
	if p < 0 {
		p += c.Width
	}
	return p
}

// Joints lists the comb's heights strictly inside the blank.
func (c *Class) Joints(phase int64) []int64 {
	first := c.Blank.MinY + c.Phase(phase-c.Blank.MinY)
	if first == c.Blank.MinY {
		first += c.Width
	}
	var out []int64
	for y := first; y < c.Blank.MaxY; y += c.Width {
		out = append(out, y)
	}
	return out
}

// Comb gives the joints of a phase; it costs far less than Measure.
func (c *Class) Comb(phase int64) *Comb {
	phase = c.Phase(phase)
	if m, ok := c.combs[phase]; ok {
		return m
	}
	m := &Comb{Phase: phase, Joints: c.Joints(phase), Clear: true}
	for _, y := range m.Joints {
		if spans := c.net.Chords(y); len(spans) > 0 {
			m.Lines = append(m.Lines, Line{y, spans})
		}
		m.Clear = m.Clear && !c.blocked(y)
	}
	if len(c.combs) >= remembered {
		clear(c.combs)
	}
	c.combs[phase] = m
	return m
}

// blocked says whether a joint at y runs through a region without joints, in
// the trim too.
func (c *Class) blocked(y int64) bool {
	for _, r := range c.Clear {
		if r.MinY < y && y < r.MaxY && len(band.Overlap(c.lean.Chords(y), r.Chords(y))) > 0 {
			return true
		}
	}
	return false
}
