package book

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"

	"stripwright/laminate/order"
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
	long                     float64 // mm
	roll                     string  // with its copy
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
	long, _ := strconv.ParseFloat(of("length_mm"), 64)
	c := cutRow{
		ID: of("piece"), Roll: shown(strings.TrimPrefix(of("roll"), "roll ")), Cut: of("cut_order"), Ply: of("ply"), Laid: of("laid"),
		Along: mark("from_mm") + " to " + mark("to_mm"), Width: mark("width_mm"),
		Right: mark("right_edge_from_mm") + " to " + mark("right_edge_to_mm"),
		Left:  mark("left_edge_from_mm") + " to " + mark("left_edge_to_mm"),
		Down:  of("laid") == "face down", long: long, roll: of("roll") + "\x00" + of("copy"),
	}
	if of("across_from_mm") != "0" {
		c.Width += ", " + mark("across_from_mm") + " from the right-hand edge"
	}
	if of("ends") == "straight" {
		c.Ends = of("free_end_angle_deg") + "° and " + of("far_end_angle_deg") + "°"
	} else {
		c.Ends, c.Corners = "shaped: follow the cut map", of("corners_along_by_across_mm")
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

// orderView is what cloth is used, bought and left.
type orderView struct {
	Cloth []orderRow
	Left  []leftRow
	Spare string
}

type orderRow struct{ Fabric, Width, Used, OnHand, ToBuy, Practice string }

type leftRow struct{ Fabric, Roll, Size, From string }

func (b *book) order() orderView {
	p := b.plan
	v := orderView{Spare: sheet.Number(p.Rules.SparePercent, 3) + " %"}
	for _, l := range p.Lengths {
		onHand := "-"
		if mm := order.OnHand(p, l); mm > 0 {
			onHand = sheet.MetreMark(mm, p.Units)
		}
		v.Cloth = append(v.Cloth, orderRow{
			shown(l.Fabric), sheet.Tape(l.WidthMM, p.Units), sheet.MetreMark(l.UsedMM, p.Units), onHand,
			sheet.Number(l.ToBuyMM/1000, 3) + " m (" + sheet.Number(l.ToBuyMM/914.4, 2) + " yd)", "",
		})
	}
	for _, l := range waste.LeftOver(p) {
		v.Left = append(v.Left, leftRow{
			shown(l.Fabric), shown(l.Roll), sheet.Mark(l.LengthMM, p.Units) + " long, " + sheet.Mark(l.WidthMM, p.Units) + " wide",
			sheet.MetreMark(l.FromMM, p.Units) + " from the free end",
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

// cautions are printed with every book.
var cautions = []string{
	"Everything here is an estimate: hold it against the supplier's data sheet and a test panel. A structural part needs a qualified engineer, and local regulations come before any of this.",
	"Uncured epoxy and its hardener can make skin allergic for life. Let none touch it; wear nitrile gloves and change them often.",
	"Mixed resin heats itself, the faster the deeper it stands. Mix small batches, pour them out shallow, watch what is left over, bin none of it uncured.",
	"Carbon dust irritates and conducts. Extract it at the tool, wear a mask, keep it away from electrics.",
	"A vessel under vacuum can implode. Use one rated for it, look it over, shield it, and put a resin trap before the pump.",
}
