package list

import (
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
	return lines
}

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
