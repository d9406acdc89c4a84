package list

import (
	"strconv"
	"strings"

	"stripwright/laminate"
	"stripwright/output/sheet"
)

// supplies tells how each consumable is laid.
func (t *orderSheet) supplies() {
	if len(t.order.Supplies) == 0 {
		return
	}
	rows := [][]string{{"consumable", "kind", "layers", "margin", "area", "length", "basis"}}
	for _, s := range t.order.Supplies {
		row := []string{sheet.Spelt(s.Name), s.Kind, strconv.Itoa(s.Layers), "-", "-", "-", ""}
		var stands []string
		if s.MarginMM.Known() {
			row[3] = sheet.Tape(s.MarginMM.Value, t.plan.Units)
			stands = append(stands, "margin "+basis(s.MarginMM))
		}
		if s.AreaMM2 > 0 {
			row[4] = t.area(s.AreaMM2)
		}
		if s.LengthMM.Known() {
			row[5] = number(s.LengthMM.Value/1000, 3) + " m"
			if t.inches {
				row[5] = number(s.LengthMM.Value/914.4, 2) + " yd"
			}
			if s.Lanes > 0 {
				row[5] += " in " + sheet.Counted(s.Lanes, "lane", "lanes") + " along " + s.Along
			}
		}
		if s.Pleats.Value > 0 {
			stands = append(stands, number(s.Pleats.Value, 0)+" pleats of "+sheet.Tape(s.PleatMM.Value, t.plan.Units)+" ("+basis(s.Pleats)+")")
		}
		if s.UptakeGSM.Known() {
			stands = append(stands, "uptake "+t.weight(s.UptakeGSM.Value)+" "+basis(s.UptakeGSM))
		}
		row[6] = sheet.Spelt(strings.Join(stands, "; "))
		rows = append(rows, row)
	}
	defer t.inLanes()
	t.table("Consumables; margins from the net edge, below 0 short of it; openings are covered, not bagged apart", rows)
}

// inLanes tells of a bag that is wider than its roll.
func (t *orderSheet) inLanes() {
	lap := false
	for _, s := range t.order.Supplies {
		lap = lap || s.Kind != laminate.Film && s.Lanes > 1
		if s.Kind == laminate.Film && s.Lanes > 1 {
			t.line(sheet.Spelt(s.Name) + " is wider than its roll: its lanes are joined with sealant tape, which is not counted here; a wider roll is safer")
		}
	}
	if lap {
		t.line("Lanes lie edge to edge; where yours lap, add it to the spare.")
	}
}

// cores tells the sheets of each core.
func (t *orderSheet) cores() {
	if len(t.order.Cores) == 0 {
		return
	}
	rows := [][]string{{"core", "lies on", "thick", "area", "dry", "sheets", "least by area", "laid"}}
	for _, c := range t.order.Cores {
		on := "the tool"
		if c.AfterPly > 0 {
			on = "ply " + strconv.Itoa(c.AfterPly)
		}
		row := []string{sheet.Spelt(c.Name), on, sheet.Tape(c.ThicknessMM, t.plan.Units), t.area(c.AreaMM2), t.mass(c.MassG), "-", "-", "size of sheet not stated"}
		if c.Sheets.Known() {
			row[5], row[6] = number(c.Sheets.Value, 0), strconv.Itoa(c.ByArea)
			row[7] = "straight rows, first side of the sheet along " + c.Along + ", offcuts not used again"
		}
		rows = append(rows, row)
	}
	t.table("Core", rows)
}

// kits lists the dry weight of each ply.
func (t *orderSheet) kits() {
	rows := [][]string{{"ply", "fabric", "pieces", "longest", "blank", "dry"}}
	area, dry, pieces := 0.0, 0.0, 0
	for _, k := range t.order.Kits {
		rows = append(rows, []string{strconv.Itoa(k.Ply), sheet.Spelt(k.Fabric), strconv.Itoa(k.Pieces), sheet.Tape(k.LongestMM, t.plan.Units), t.area(k.AreaMM2), t.mass(k.DryG)})
		area, dry, pieces = area+k.AreaMM2, dry+k.DryG, pieces+k.Pieces
	}
	rows = append(rows, []string{"all", "", strconv.Itoa(pieces), "", t.area(area), t.mass(dry)})
	t.table("Dry weight for the kit of each ply, computed from areal weight and blank", rows)
}

// missing tells what is not in the sums, and what they assume.
func (t *orderSheet) missing() {
	if len(t.order.Missing) > 0 {
		t.table("Not in these sums", nil)
		for _, m := range t.order.Missing {
			t.line(sheet.Spelt(m))
		}
	}
	var said []string
	names := map[string][]string{}
	for _, i := range t.order.Items {
		for _, a := range i.Assumed {
			if names[a] == nil {
				said = append(said, a)
			}
			names[a] = append(names[a], i.Name)
		}
	}
	if len(said) > 0 {
		t.table("Assumed; write it in the job to have it your way", nil)
		for _, a := range said {
			t.line(sheet.Spelt(strings.Join(unique(names[a]), ", ") + ": " + a))
		}
	}
}
