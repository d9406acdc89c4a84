package book

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"

	"stripwright/laminate"
	"stripwright/laminate/waste"
	"stripwright/output/list"
	"stripwright/output/sheet"
)

// cutRow is one piece of the cut list, in words.
type cutRow struct {
	ID, Roll, Cut, Ply, Laid string
	Along, Width             string
	Right, Left              string
	Ends                     string
	Corners                  string
	Down                     bool
	roll                     string // with its copy
}

// cutList is the cut list of one roll.
type cutList struct {
	Roll, Fabric, Width string
	Rows                []cutRow
}

// readCuts reads the cut list as package list writes it, so that the book and the
// file say the same.
func (b *book) readCuts() error {
	data, err := list.CutList(b.plan)
	if err != nil {
		return err
	}
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		return err
	}
	b.cuts = map[string]cutRow{}
	column := map[string]int{}
	for i, name := range rows[0] {
		column[name] = i
	}
	for _, row := range rows[1:] {
		c := b.cutRow(func(name string) string { return row[column[name]] })
		b.rows = append(b.rows, c)
		b.cuts[c.ID] = c
	}
	return nil
}

func (b *book) cutRow(of func(string) string) cutRow {
	mark := func(name string) string {
		v, _ := strconv.ParseFloat(of(name), 64)
		return sheet.Mark(v, b.plan.Units)
	}
	c := cutRow{
		ID: of("piece"), Roll: shown(strings.TrimPrefix(of("roll"), "roll ")), Cut: of("cut_order"), Ply: of("ply"), Laid: of("laid"),
		Along: mark("from_mm") + " to " + mark("to_mm"), Width: mark("width_mm"),
		Right: mark("right_edge_from_mm") + " to " + mark("right_edge_to_mm"),
		Left:  mark("left_edge_from_mm") + " to " + mark("left_edge_to_mm"),
		Down:  of("laid") == "face down", roll: of("roll") + "\x00" + of("copy"),
	}
	if of("across_from_mm") != "0" {
		c.Width += ", " + mark("across_from_mm") + " from the right-hand edge"
	}
	if of("ends") == "straight" {
		c.Ends = of("free_end_angle_deg") + "° and " + of("far_end_angle_deg") + "°"
	} else {
		c.Ends, c.Corners = "shaped: follow the cut map", of("corners_along_by_across_mm")
		if strings.HasPrefix(c.Corners, "curved") {
			c.Ends, c.Corners = c.Corners, ""
		}
	}
	if of("holes") != "0" {
		c.Ends += ", with an opening"
	}
	return c
}

// cutLists parts the rows by roll, in the plan's order.
func (b *book) cutLists() []cutList {
	var out []cutList
	last := "\x00"
	rolls := b.plan.Rolls
	for _, row := range b.rows {
		if row.roll != last {
			last = row.roll
			l := cutList{Roll: row.Roll}
			for _, r := range rolls {
				if row.roll == "roll "+r.Roll+"\x00"+strconv.Itoa(r.Copy) {
					l.Fabric, l.Width = shown(r.Fabric), sheet.Tape(r.WidthMM, b.plan.Units)
					if r.Copy > 1 {
						l.Roll += ", copy " + strconv.Itoa(r.Copy)
					}
				}
			}
			out = append(out, l)
		}
		out[len(out)-1].Rows = append(out[len(out)-1].Rows, row)
	}
	return out
}

// orderView is what is to buy, and what is left over.
type orderView struct {
	Sections []listView
	Left     []leftRow
}

type leftRow struct{ Fabric, Roll, Size, From string }

func (b *book) order() orderView {
	v := orderView{Sections: listViews(list.OrderSections(b.plan))}
	for _, l := range waste.LeftOver(b.plan) {
		v.Left = append(v.Left, leftRow{
			shown(l.Fabric), shown(l.Roll), sheet.Mark(l.LengthMM, b.plan.Units) + " long, " + sheet.Mark(l.WidthMM, b.plan.Units) + " wide",
			sheet.MetreMark(l.FromMM, b.plan.Units) + " from the free end",
		})
	}
	return v
}

// checkView is the verdict on one rule.
type checkView struct {
	Rule, Text, Counted string
	Pass                bool
}

func (b *book) checks() []checkView {
	var out []checkView
	for _, c := range b.plan.Checks {
		out = append(out, checkView{c.Rule, shown(c.Text), strconv.Itoa(c.Counted), c.Pass})
	}
	return out
}

func (b *book) notes() []string {
	var out []string
	for _, n := range b.plan.Notes {
		out = append(out, shown(strings.Trim(n.Where+": "+n.Text, ": ")))
	}
	if b.plan.Stopped {
		out = append(out, "The search was stopped early: the plan is sound, perhaps not the least cloth.")
	}
	return out
}

func warnings(p laminate.Plan) []string {
	out := sheet.Warnings(p.Checks)
	for i := range out {
		out[i] = shown(out[i])
	}
	return out
}
