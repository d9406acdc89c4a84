package drawing

import (
	"math"

	"stripwright/geometry/curve"
	"stripwright/geometry/drawing/dxf"
	"stripwright/geometry/drawing/svg"
	"stripwright/geometry/drawing/trace"
)

// Read reads a drawing: DXF (text or binary), SVG, or a CSV of points, told by
// its content. The name is used for places only, and for its ending where the
// content does not tell the kind. Every problem that can be found at once is.
func Read(name string, data []byte, o Options) Drawing {
	if name == "" {
		name = "drawing"
	}
	r := &trace.Report{File: trace.Printable(name)}
	var d Drawing
	read := reading{options: o.checked(r), report: r, override: overriddenUnit(o.Units, r)}
	if len(r.Problems) == 0 {
		read.file(name, data, &d)
	}
	r.Close()
	d.Notes, d.Problems = r.Notes, r.Problems
	if len(d.Problems) > 0 {
		d.Regions, d.SizeMM, d.AreaMM2 = nil, [2]float64{}, 0
	}
	return d
}

// reading is one drawing being read.
type reading struct {
	options  Options
	report   *trace.Report
	override float64 // mm of one unit as stated by the user, 0 if not
}

// checked puts the default for what is not stated; what makes no sense is a
// problem.
func (o Options) checked(r *trace.Report) Options {
	limit := func(what string, v, most float64) {
		if !(v >= 0 && v <= most) {
			r.Problem("option", r.File, "state mm between 0 and "+trace.Number(most), "%s cannot be %v mm", what, v)
		}
	}
	limit("the gap to join", o.JoinMM, 100)
	limit("the chord error", o.ChordMM, 10)
	if o.Which < 0 {
		r.Problem("option", r.File, "count the outlines from 1", "there is no outline number %d", o.Which)
	}
	if o.ChordMM == 0 {
		o.ChordMM = curve.DefaultChord
	}
	o.ChordMM = math.Max(o.ChordMM, 1e-3) // finer than the grid of a micrometre shows
	return o
}

func (rd *reading) file(name string, data []byte, d *Drawing) {
	const most = 256 << 20
	if len(data) <= most {
		data = plain(data)
	}
	kind, why, cure := format(name, data)
	switch {
	case len(data) > most:
		rd.report.Problem("size", rd.report.File, "keep only the outline in the drawing", "the file is larger than 256 MB")
	case kind == "dxf":
		rd.dxf(data, d)
	case kind == "svg":
		rd.svg(data, d)
	case kind == "csv":
		rd.csv(data, d)
	default:
		rd.report.Problem("format", rd.report.File, cure, "%s", why)
	}
}

func (rd *reading) dxf(data []byte, d *Drawing) {
	f := dxf.Parse(data, rd.report)
	if f == nil {
		return
	}
	mm, from := unitOfDXF(f, rd.override, rd.options.Units, rd.report)
	d.UnitFrom = from
	chosen := chooseLayers(rd.options.Layers, f.LayerNames(), rd.report)
	scale := mm
	if scale == 0 {
		scale = 1 // entities are read all the same, for the problems in them
	}
	lines := f.Lines(rd.options.ChordMM/scale, func(layer string) bool { return chosen.takes(layer) })
	if mm > 0 {
		rd.regions(scaled(lines, mm), chosen, d)
	}
}

func scaled(lines []trace.Line, mm float64) []trace.Line {
	if mm == 1 {
		return lines
	}
	out := make([]trace.Line, len(lines))
	for i, l := range lines {
		out[i] = l.Map(trace.Scale(mm, mm))
	}
	return out
}

func (rd *reading) svg(data []byte, d *Drawing) {
	root := svg.Parse(data, rd.report)
	if root == nil {
		return
	}
	chosen := chooseLayers(rd.options.Layers, svg.Names(root), rd.report)
	page := svg.Open(root, rd.override, rd.options.Units, rd.report)
	if page == nil {
		return
	}
	d.UnitFrom = page.UnitFrom()
	lines := page.Lines(rd.options.ChordMM, func(names []string) bool { return chosen.takes(names...) })
	rd.regions(lines, chosen, d)
}
