package paper

import (
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/layup"
	"stripwright/output/page"
	"stripwright/output/sheet"
)

// coverPages composes what comes first: the verdict, the schedule with the page
// of each ply, cloth by roll, what the check looked at, notes. Before is how many
// pages the cover itself takes.
func (b *press) coverPages(before int) []*sheet.Scene {
	c := newPress(b.plan, b.measured, b.sha, b.size)
	c.section("LAY-UP SHEETS", nil, c.coverHead)
	for _, w := range sheet.Warnings(b.plan.Checks) {
		c.paragraph(page.Margin, c.size.Inner(), page.BodyHigh, true, w)
		c.y -= 2
	}
	c.schedule(b.starts, before)
	c.clothRows()
	c.checkRows()
	c.notes()
	return c.pages
}

func (b *press) coverHead(further bool) {
	if further {
		b.say(page.Margin, b.y-4.5, 4.5, b.size.Inner(), true, "LAY-UP SHEETS: "+b.plan.Title)
		b.y -= 9
		return
	}
	b.say(page.Margin, b.y-9, 9, b.size.Inner(), true, b.plan.Title)
	w, h := b.plan.Part.Net.Size()
	b.say(page.Margin, b.y-16, page.HeadHigh, b.size.Inner(), false, b.plan.Part.Name+", "+sheet.Size(w, h)+", finished size; lay-up sheets for "+
		sheet.Counted(len(b.plan.Plies), "ply", "plies"))
	sound := len(sheet.Faults(b.plan.Checks)) == 0
	fill, ink := sheet.Fill{Ink: sheet.White}, sheet.Black
	if !sound {
		fill, ink = sheet.Fill{Ink: sheet.Fault}, sheet.White
	}
	box := orb.Bound{Min: orb.Point{page.Margin, b.y - 33}, Max: orb.Point{b.right(), b.y - 20}}
	b.l.Box(sheet.Solid(sheet.Black, 0.6), fill, box)
	verdict := sheet.Text{Height: 5.5, Bold: true, Ink: ink, Words: sheet.Verdict(b.plan)}
	b.l.Write(verdict.Fitted(b.size.Inner() - 8).Centred(box.Center()))
	b.y -= 37
}

// schedule lists the plies from the tool up, with the page of each.
func (b *press) schedule(starts map[string]int, before int) {
	var rows [][]cell
	for _, ply := range b.plan.Plies {
		at := strconv.Itoa(before + starts[layup.Title(b.plan, ply)])
		side := layup.FaceWords(ply)
		if ply.Outline != "" {
			side += ", " + ply.Outline
		}
		rows = append(rows, []cell{
			{figure: strconv.Itoa(ply.Ply)}, {figure: ply.Fabric}, {figure: sheet.Degrees(ply.AngleDeg)}, {figure: side},
			{words: sheet.Counted(len(ply.Strips), "strip", "strips") + ", " + sheet.Counted(len(ply.Joints), "joint", "joints")},
			{words: gramsOf(b.plan, ply.Ply)}, {figure: at}, {tick: true},
		})
	}
	table{columns: []column{
		{"PLY", 10}, {"FABRIC", 44}, {"ANGLE", 18}, {"SIDE", 40}, {"STRIPS, JOINTS", 32}, {"DRY", 18}, {"PAGE", 12}, {"LAID", 12},
	}, high: 5.2}.write(b, rows)
}

// gramsOf gives what a ply weighs dry.
func gramsOf(p laminate.Plan, ply int) string {
	for _, q := range p.Quantities {
		if q.Ply == ply {
			return sheet.Number(q.DryG, 0) + " g"
		}
	}
	return ""
}

// clothRows lists roll widths with what is used and bought.
func (b *press) clothRows() {
	var rows [][]cell
	for _, l := range b.plan.Lengths {
		rows = append(rows, []cell{
			{figure: l.Fabric}, {figure: sheet.Tape(l.WidthMM, b.plan.Units)},
			{figure: sheet.MetreMark(l.UsedMM, b.plan.Units)}, {figure: sheet.MetreMark(l.ToBuyMM, b.plan.Units)},
		})
	}
	table{columns: []column{{"FABRIC", 60}, {"ROLL WIDTH", 40}, {"CUT FROM ROLLS", 45}, {"TO BUY, with spare", 45}}, high: 5.2}.write(b, rows)
}

// checkRows lists the rules that were checked, with what was found.
func (b *press) checkRows() {
	if len(b.plan.Checks) == 0 {
		return
	}
	b.need(20)
	b.bar("WHAT WAS CHECKED, AND WHAT WAS FOUND")
	inner := b.size.Inner()
	for _, c := range b.plan.Checks {
		holds := "holds"
		if !c.Pass {
			holds = "FAILS"
		}
		lines := sheet.Wrapped(sheet.Text{Height: page.SmallHigh, Words: c.Text}, 0.72*inner, 8)
		high := 1.8 + float64(3*float64(len(lines)))
		b.need(high)
		b.say(page.Margin+1, b.y-3.4, page.BodyHigh, 0.08*inner, true, holds)
		b.say(page.Margin+float64(0.1*inner), b.y-3.4, page.BodyHigh, 0.17*inner, true, c.Rule)
		for i, t := range lines {
			t.At = orb.Point{page.Margin + float64(0.28*inner), b.y - 3.2 - float64(3*float64(i))}
			b.l.Write(t)
		}
		b.y -= high
		b.rule(page.Margin, b.y, inner)
	}
	b.y -= 4
}

func (b *press) notes() {
	for _, n := range b.plan.Notes {
		b.paragraph(page.Margin, b.size.Inner(), page.BodyHigh, false, strings.Trim(n.Where+": "+n.Text, ": "))
	}
}
