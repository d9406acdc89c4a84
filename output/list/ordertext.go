package list

import (
	"math"
	"strconv"
	"strings"

	"stripwright/laminate"
	"stripwright/laminate/order"
	"stripwright/output/sheet"
)

// OrderText gives the order sheet for people: the verdict, the sections of
// OrderSections, cautions.
func OrderText(p laminate.Plan) string {
	var b strings.Builder
	w, h := p.Part.Net.Size()
	b.WriteString("ORDER for " + sheet.Spelt(p.Title) + "; part " + sheet.Spelt(p.Part.Name) + " " + sheet.Size(w, h) + "\n")
	b.WriteString(sheet.Verdict(p) + "\n")
	for _, f := range sheet.Faults(p.Checks) {
		b.WriteString("  " + sheet.Spelt(f) + "\n")
	}
	b.WriteString("\n")
	for _, s := range OrderSections(p) {
		b.WriteString(s.Text())
	}
	cautions := []string{sheet.Caution}
	if p.Resin != nil {
		cautions = append(cautions, ResinCautions...)
	}
	for _, c := range cautions {
		b.WriteString(wrapped(c))
	}
	return b.String()
}

// OrderSections gives the order part by part: what is to buy, how the resin adds
// up and is mixed, how the consumables are laid, the sheets of core, the dry
// weight of each ply, what is missing from the sums and what they assume.
func OrderSections(p laminate.Plan) []Section {
	t := &orderSheet{plan: p, order: order.Of(p), inches: inchShop(p)}
	t.buy()
	t.resin()
	t.supplies()
	t.cores()
	t.kits()
	t.missing()
	return t.sections
}

// orderWords gives what a plan takes besides cloth in a few lines: resin to mix,
// consumables and core to buy, what is missing.
func orderWords(p laminate.Plan) []string {
	o := order.Of(p)
	t := &orderSheet{plan: p, order: o, inches: inchShop(p)}
	var lines []string
	if r := o.Resin; r != nil {
		words := "resin to mix: "
		if !r.Whole {
			words += "at least "
		}
		words += t.mass(r.TotalG)
		if m := r.Mix; m != nil {
			words += ": resin (A) " + t.mass(m.A.G) + ", hardener (B) " + t.mass(m.B.G)
			if m.Batches > 1 {
				words += "; " + strconv.Itoa(m.Batches) + " batches of " + t.mass(m.BatchG)
			}
		}
		lines = append(lines, words)
	}
	for _, kind := range []string{order.ConsumableItem, order.CoreItem} {
		var words []string
		for _, i := range o.Items {
			if i.Kind == kind {
				words = append(words, sheet.Spelt(i.Name)+" "+t.toBuy(i))
			}
		}
		if len(words) > 0 {
			lines = append(lines, kind+"s to buy: "+strings.Join(words, "; "))
		}
	}
	for _, m := range o.Missing {
		lines = append(lines, "missing: "+sheet.Spelt(m))
	}
	return lines
}

func inchShop(p laminate.Plan) bool { return p.Units == "in" || p.Units == "ft" || p.Units == "yd" }

// ResinCautions stand wherever resin is ordered or mixed.
var ResinCautions = []string{
	"Uncured resin and hardener can make skin allergic for life: no skin contact, nitrile gloves, changed often.",
	"Mixed resin heats itself, the faster the more of it stands together: mix small batches, pour them out shallow, watch what is left over, bin none of it uncured. Ten degrees warmer leave about half the pot life.",
	"A vessel under vacuum can implode: a rated one, looked over, shielded, with a resin trap before the pump.",
}

// orderSheet is the order as it grows, section by section.
type orderSheet struct {
	sections []Section
	plan     laminate.Plan
	order    order.Order
	inches   bool // inch units first
}

// table begins a section.
func (t *orderSheet) table(heading string, rows [][]string) {
	t.sections = append(t.sections, Section{Heading: heading, Table: rows})
}

// line adds a sentence to the last section.
func (t *orderSheet) line(words string) {
	last := &t.sections[len(t.sections)-1]
	last.Lines = append(last.Lines, words)
}

// amount prints an amount in both units, that of the shop first.
func (t *orderSheet) amount(a order.Amount) string {
	if a.Unit == order.Kilos {
		return t.mass(float64(a.Value * 1000))
	}
	metric := number(a.Value, 3) + " " + a.Unit
	if a.Unit == a.USUnit {
		return metric
	}
	us := number(a.US, 2) + " " + a.USUnit
	if a.US > 0 && a.US < 0.01 {
		us = number(a.US, 4) + " " + a.USUnit
	}
	if t.inches {
		return us + " (" + metric + ")"
	}
	return metric + " (" + us + ")"
}

// toBuy prints what is to buy: rounded up in both units, but for what is a whole
// number of what is sold.
func (t *orderSheet) toBuy(i order.Item) string {
	a := i.ToBuy
	if i.SoldBy.Value > 0 || a.Unit == a.USUnit {
		return t.amount(a)
	}
	up := func(v, scale float64) float64 { return math.Ceil(float64(v*scale)-1e-6) / scale }
	a.Value, a.US = up(a.Value, 1000), up(a.US, 100)
	return t.amount(a)
}

// some prints an amount, a dash where there is none.
func (t *orderSheet) some(a order.Amount) string {
	if a.Value == 0 {
		return "-"
	}
	return t.amount(a)
}

// mass prints grams, from a kilogram up in kilograms, and ounces, from a pound up
// in pounds.
func (t *orderSheet) mass(g float64) string {
	metric, us := number(g, 0)+" g", number(g/28.349523125, 1)+" oz"
	if g < 100 {
		metric, us = number(g, 1)+" g", number(g/28.349523125, 2)+" oz"
	}
	if g >= 1000 {
		metric = number(g/1000, 3) + " kg"
	}
	if g >= 453.59 {
		us = number(g/453.59237, 2) + " lb"
	}
	if t.inches {
		return us + " (" + metric + ")"
	}
	return metric + " (" + us + ")"
}

// weight prints an areal weight in both units.
func (t *orderSheet) weight(gsm float64) string {
	metric, us := number(gsm, 1)+" g/m2", number(gsm/33.905747, 2)+" oz/yd2"
	if t.inches {
		return us + " (" + metric + ")"
	}
	return metric + " (" + us + ")"
}

// area prints mm² in m², with square feet.
func (t *orderSheet) area(mm2 float64) string {
	metric, us := number(mm2/1e6, 3)+" m2", number(mm2/92903.04, 2)+" ft2"
	if t.inches {
		return us + " (" + metric + ")"
	}
	return metric + " (" + us + ")"
}

// buy lists the items.
func (t *orderSheet) buy() {
	priced := t.order.Price > 0
	rows := [][]string{{"item", "", "roll width", "net", "spare", "sold by", "on hand", "TO BUY"}}
	if priced {
		rows[0] = append(rows[0], "each", "price")
	}
	for _, i := range t.order.Items {
		width := "-"
		if i.WidthMM > 0 {
			width = sheet.Tape(i.WidthMM, t.plan.Units)
		}
		row := []string{sheet.Spelt(i.Name), sheet.Spelt(i.What), width, t.amount(i.Net), number(i.SparePercent.Value, 2) + " %", t.some(i.SoldBy), t.some(i.OnHand), t.toBuy(i)}
		if priced {
			each, price := "-", "-"
			if i.HasPrice {
				each, price = money(i.PriceEach)+"/"+i.ToBuy.Unit, money(i.Price)
				if t.inches {
					each = money(i.PriceEachUS()) + "/" + i.ToBuy.USUnit
				}
				each = strings.TrimSuffix(each, "s")
			}
			row = append(row, each, price)
		}
		rows = append(rows, row)
	}
	t.table("To buy", rows)
	if priced {
		words := "price of these: " + money(t.order.Price)
		if n := t.order.Unpriced; len(n) > 0 {
			words += ", without " + sheet.Spelt(strings.Join(unique(n), ", "))
		}
		t.line(words)
	}
}

// money prints a price to the hundredth; prices of a job are in one currency.
func money(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }

func unique(words []string) []string {
	var out []string
	seen := map[string]bool{}
	for _, w := range words {
		if !seen[w] {
			out = append(out, w)
		}
		seen[w] = true
	}
	return out
}

// resin tells how the resin adds up and how it is mixed.
func (t *orderSheet) resin() {
	r := t.order.Resin
	if r == nil {
		return
	}
	rows := [][]string{{"held by", "area", "at", "resin", "basis"}}
	for _, l := range r.Lines {
		row := []string{sheet.Spelt(l.What), "-", "-", t.mass(l.MassG.Value), basis(l.MassG)}
		if l.AreaMM2 > 0 {
			row[1], row[2], row[4] = t.area(l.AreaMM2), t.weight(l.GSM.Value), basis(l.GSM)
		}
		rows = append(rows, row)
	}
	rows = append(rows, []string{"together", "", "", t.mass(r.NetG), laminate.Computed})
	rows = append(rows, []string{"spare", "", number(r.SparePercent.Value, 2) + " %", t.mass(r.SpareG), basis(r.SparePercent)})
	total := "TO MIX"
	if !r.Whole {
		total = "TO MIX, AT LEAST"
	}
	rows = append(rows, []string{total, "", "", t.mass(r.TotalG), laminate.Computed})
	t.table("Resin: "+sheet.Spelt(r.Name)+", "+number(r.DensityGCM3.Value, 3)+" g/cm3 ("+basis(r.DensityGCM3)+")", rows)
	if m := r.Mix; m != nil {
		t.mix(*m)
	}
}

// mix tells resin from hardener, whole and by batches.
func (t *orderSheet) mix(m order.Mixed) {
	rows := [][]string{{"mix " + m.Ratio, "resin (A)", "hardener (B)", "together"}}
	rows = append(rows, []string{"all", t.part(m.A), t.part(m.B), t.mass(m.A.G + m.B.G)})
	if m.Batches > 1 {
		rows = append(rows, []string{strconv.Itoa(m.Batches) + " batches, each", t.part(m.EachA), t.part(m.EachB), t.mass(m.BatchG)})
	}
	t.table("Mixing", rows)
	switch {
	case m.LimitG > 0:
		t.line("no batch above " + t.mass(m.LimitG) + ", as stated; mix the next when the last has gone in")
	default:
		t.line("no largest batch is stated: write batch: under resin:; a large one heats itself and goes off early")
	}
}

func (t *orderSheet) part(p order.Part) string {
	words := t.mass(p.G)
	if p.ML > 0 {
		words += ", " + number(p.ML, 0) + " ml"
	}
	return words
}

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
	for _, s := range t.order.Supplies {
		if s.Kind == laminate.Film && s.Lanes > 1 {
			t.line(sheet.Spelt(s.Name) + " is wider than its roll: its lanes are joined with sealant tape, which is not counted here; a wider roll is safer")
		}
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
