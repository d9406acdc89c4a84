package book

import (
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/sheet"
)

// shared writes what several drawings use, once: the outlines of the part, and
// for each ply its own outline, its shaded strips and its joints.
func shared(p laminate.Plan, g ground) []byte {
	w := &ink{}
	w.text(`<svg class="shared" aria-hidden="true" focusable="false" width="0" height="0"><defs>`, patterns)
	w.net(p, g)
	w.path("blank", func() { w.region(p.Part.Blank, g.at) })
	if len(p.Rules.KeepClear) > 0 {
		w.path("clear", func() {
			for _, c := range p.Rules.KeepClear {
				w.region(c.Region, g.at)
			}
		})
	}
	for i, ply := range p.Plies {
		n := strconv.Itoa(i + 1)
		if ply.Outline != "" {
			w.path("o"+n, func() { w.region(ply.Blank, g.at) })
		}
		w.path("s"+n, func() {
			for k := 1; k < len(ply.Strips); k += 2 {
				w.region(ply.Strips[k].Shape, g.at)
			}
		})
		w.path("j"+n, func() {
			for _, j := range ply.Joints {
				w.joint(g, j)
			}
		})
	}
	w.text(arrowShape, "</defs></svg>")
	return w.b
}

// net writes the net edge with what a unit of it is in mm and where its zero lies
// in the part frame, so that a distance along it can be worked out again.
func (w *ink) net(p laminate.Plan, g ground) {
	w.text(`<path id="net" data-unit-mm="`, strconv.FormatFloat(g.k, 'g', 12, 64), `" data-left-mm="`)
	w.b = sheet.AppendMM(w.b, g.low[0])
	w.text(`" data-top-mm="`)
	w.b = sheet.AppendMM(w.b, g.high[1])
	w.text(`" d="`)
	w.fine(p.Part.Net, g.at)
	w.text(`"/>`)
}

func (w *ink) path(id string, data func()) {
	w.text(`<path id="`, id, `" d="`)
	data()
	w.text(`"/>`)
}

func (w *ink) joint(g ground, j laminate.Joint) {
	w.lines([]orb.Point{g.at(orb.Point(j.From)), g.at(orb.Point(j.To))}, false)
}

func (w *ink) use(id, class string) { w.text(`<use href="#`, id, `" class="`, class, `"/>`) }

// patterns are the hatchings: of offcuts, of faults and of places without joints.
const patterns = `<pattern id="hatch" patternUnits="userSpaceOnUse" width="9" height="9" patternTransform="rotate(-45)"><path class="hatch" d="M0 4.5H9"/></pattern>` +
	`<pattern id="fault" patternUnits="userSpaceOnUse" width="34" height="34" patternTransform="rotate(-45)"><path class="barred" d="M0 17H34M17 0V34"/></pattern>` +
	`<pattern id="keep" patternUnits="userSpaceOnUse" width="12" height="12" patternTransform="rotate(20)"><path class="hatch" d="M0 6H12"/></pattern>`

// arrowShape is an arrow to the right, 100 long, about its middle; and the
// pennant of the datum, which looks the same turned or mirrored from no side.
const arrowShape = `<path id="arrow" d="M-50-2.5H22V-13L50 0 22 13V2.5H-50z"/>` +
	`<path id="pennant" d="M0 0V-46L29-36 4-26V0z"/>`
