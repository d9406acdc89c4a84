package book

import (
	"cmp"
	"html/template"
	"slices"
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/laminate/content"
	"stripwright/laminate/zone"
	"stripwright/output/list"
	"stripwright/output/sheet"
)

// listView is a section of a report: a heading, a table, sentences.
type listView struct {
	Heading string
	Head    []string
	Rows    [][]cellView
	Lines   []lineView
}

// cellView is a cell with the caption of its column.
type cellView struct{ Of, Words string }

// lineView is a sentence; Under belongs to the one before.
type lineView struct {
	Words string
	Under bool
}

// listViews takes sections of a report as package list gives them.
func listViews(sections []list.Section) []listView {
	var out []listView
	for _, s := range sections {
		v := listView{Heading: shown(s.Heading)}
		if len(s.Table) > 1 {
			v.Head = s.Table[0]
			for _, row := range s.Table[1:] {
				v.Rows = append(v.Rows, cells(s.Table[0], row))
			}
		}
		for _, l := range s.Lines {
			v.Lines = append(v.Lines, lineView{shown(strings.TrimSpace(l)), strings.HasPrefix(l, " ")})
		}
		out = append(out, v)
	}
	return out
}

func cells(head, row []string) []cellView {
	out := make([]cellView, len(row))
	for i, words := range row {
		out[i].Words = shown(words)
		if i < len(head) {
			out[i].Of = head[i]
		}
	}
	return out
}

// laminateView is what the laminate is: its zones as a map, and the report on its
// stack.
type laminateView struct {
	Zones    []figure
	Sections []listView
}

func (b *book) laminate() laminateView {
	v := laminateView{}
	for _, s := range listViews(list.Stack(b.plan)) {
		if s.Heading != "Cautions" { // they have a page of their own
			v.Sections = append(v.Sections, s)
		}
	}
	if r := content.Of(b.plan); len(r.Zones) > 1 {
		for _, w := range b.ground.views {
			v.Zones = append(v.Zones, figure{SVG: template.HTML(b.drawZones(r.Zones, w)), Words: w.words})
		}
	}
	return v
}

// drawZones draws the outlines of the zones with their names and thickness.
func (b *book) drawZones(zones []content.Zone, v view) []byte {
	m := &plyMap{plan: b.plan, g: b.ground, v: v}
	m.edge = v.shown()
	m.open(v.box, "map", "Zones of the part by the plies that lie there; the tables below say what each holds")
	for i, z := range zones {
		m.text(`<path class="z`, strconv.Itoa(i%5), `" d="`)
		for _, f := range z.Fields {
			m.lines(m.corner4(f), true)
		}
		m.text(`"/>`)
	}
	for i, ply := range b.plan.Plies {
		if ply.Outline != "" {
			m.use("o"+strconv.Itoa(i+1), "zone")
		}
	}
	m.use("net", "net")
	m.corners(b.plan)
	m.zero()
	for _, z := range zones {
		words := z.Name
		if z.Thick {
			words += ": " + sheet.Number(z.ThicknessMM.Value, 2) + " mm"
		}
		m.zoneName(words, z.Fields)
	}
	m.fault(b.plan)
	m.text("</svg>")
	return m.b
}

// corner4 takes the corners of a field onto the page.
func (m *plyMap) corner4(f zone.Field) []orb.Point {
	return []orb.Point{
		m.g.at(orb.Point{f.LeftLow, f.Low}), m.g.at(orb.Point{f.RightLow, f.Low}),
		m.g.at(orb.Point{f.RightHigh, f.High}), m.g.at(orb.Point{f.LeftHigh, f.High}),
	}
}

// zoneName letters a zone in the largest of its fields that has room in this
// view.
func (m *plyMap) zoneName(words string, fields []zone.Field) {
	fields = slices.Clone(fields)
	size := func(f zone.Field) float64 {
		return (f.High - f.Low) * (f.RightLow - f.LeftLow + f.RightHigh - f.LeftHigh)
	}
	slices.SortStableFunc(fields, func(a, b zone.Field) int { return cmp.Compare(size(b), size(a)) })
	for _, f := range fields {
		q := m.corner4(f)
		c := orb.Point{(q[0][0] + q[1][0] + q[2][0] + q[3][0]) / 4, (q[0][1] + q[2][1]) / 2}
		if m.try(boxAbout(c, wide(words, figureSize, true), figureSize, 0)) {
			m.centred(c, figureSize, "b back", 0, words)
			return
		}
	}
}
