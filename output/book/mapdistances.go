package book

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/output/layup"
	"stripwright/output/sheet"
)

// distances writes beside each end how far it is from its corner, where there is
// room; all of them stand in the table.
func (m *plyMap) distances() {
	m.text(`<g class="dist">`)
	for _, j := range m.measured.Joints {
		if j.InTrim {
			continue
		}
		line := sheet.Towards(m.g.at(orb.Point(j.Joint.From)), m.g.at(orb.Point(j.Joint.To)))
		m.distance(j.Name, j.Ends[0], orb.Point{-line[0], -line[1]})
		m.distance(j.Name, j.Ends[1], line)
	}
	m.text(`</g>`)
}

func (m *plyMap) distance(name string, t layup.Tick, away orb.Point) {
	at := m.g.at(t.At)
	if !m.edge.Contains(at) {
		return
	}
	words, _ := sheet.MarkFigure(t.AlongMM, m.plan.Units)
	under := name + " from " + t.From
	long := math.Max(wide(words, figureSize, true), wide(under, fromSize, false)) + 14
	out := orb.Point{t.Outward[0], -t.Outward[1]}
	far := float64(m.plan.Part.TrimMM/m.g.k*1.1) + 12 + float64((float64(math.Abs(out[0])*long)+float64(math.Abs(out[1])*46))/2)
	beside := orb.Point{-out[1], out[0]}
	for _, step := range [][2]float64{{0, 0}, {0, 1}, {0, -1}, {1, 0}, {1, 1}, {1, -1}} {
		c := sheet.Along(sheet.Along(at, out, far+float64(44*step[0])), beside, 40*step[1])
		box := boxAbout(c, long, 46, 0)
		if !m.try(box) {
			continue
		}
		if step[0] != 0 || step[1] != 0 {
			m.text(`<path class="lead" d="`)
			m.lines([]orb.Point{at, nearestOf(box, at)}, false)
			m.text(`"/>`)
		}
		m.centred(orb.Point{c[0], c[1] - 11}, figureSize, "b back", 0, words)
		m.centred(orb.Point{c[0], c[1] + 13}, fromSize, "back", 0, under)
		return
	}
	m.distanceAlong(name+" "+words, at, away)
}

// nearestOf gives the point of a box that is nearest to a place.
func nearestOf(b orb.Bound, at orb.Point) orb.Point {
	return orb.Point{math.Max(b.Min[0], math.Min(at[0], b.Max[0])), math.Max(b.Min[1], math.Min(at[1], b.Max[1]))}
}

// distanceAlong writes a distance in one line that carries the joint on.
func (m *plyMap) distanceAlong(words string, at, away orb.Point) {
	long := wide(words, fromSize, true)
	turn := sheet.Upright(math.Atan2(-away[1], away[0]) * 180 / math.Pi)
	c := sheet.Along(at, away, float64(m.plan.Part.TrimMM/m.g.k*1.3)+10+float64(long/2))
	if m.tryAll(boxesAlong(c, long, fromSize*0.9, turn)) {
		m.centred(c, fromSize, "b", turn, words)
	}
}
