package paper

import (
	"stripwright/output/page"
	"stripwright/output/sheet"
)

// recordPages composes what is filled in while the part is made.
func (b *press) recordPages() {
	b.section("RECORD", nil, func(further bool) {
		b.say(page.Margin, b.y-page.TitleHigh, page.TitleHigh, b.size.Inner(), true, "RECORD: "+b.plan.Title)
		b.y -= 12
	})
	b.form("PART", []string{"part no.", "tool", "date begun", "date finished"}, 4, 1)
	b.rollRecord()
	b.form("RESIN", []string{"resin batch", "hardener batch", "mixed, g", "time mixed", "resin °C", "shop °C"}, 3, 2)
	b.form("VACUUM AND LEAK TEST", []string{"pump on at", "reached, mbar", "pump shut at", "mbar then", "minutes later", "mbar then"}, 3, 1)
	b.form("INFUSION", []string{"resin open at", "wetted at", "clamped at", "gelled at", "vacuum off at", "cure, h at °C"}, 3, 1)
	b.form("WEIGHTS, g", []string{"dry cloth, weighed", "resin, mixed", "resin, left over", "part, released", "part, trimmed", "peel ply and media"}, 3, 1)
	b.form("DEVIATIONS", []string{"", "", ""}, 1, 1)
	b.form("SIGNATURES", []string{"plan read by", "cut by", "laid by", "infused by", "checked by", "released by"}, 3, 1)
}

// form draws a heading and lines to fill in, so many side by side, all of them
// again as often as wanted.
func (b *press) form(head string, lines []string, side, times int) {
	rows := (len(lines) + side - 1) / side * times
	b.need(7 + float64(8*float64(rows)))
	b.bar(head)
	wide := b.size.Inner() / float64(side)
	for range times {
		for i, words := range lines {
			b.blank(page.Margin+float64(float64(i%side)*wide), b.y-6, wide-4, words)
			if i%side == side-1 || i == len(lines)-1 {
				b.y -= 8
			}
		}
	}
	b.y -= 3.5
}

// rollRecord is a line for each roll: batch, width measured, what is used.
func (b *press) rollRecord() {
	var rows [][]cell
	grams := 0.0
	for _, q := range b.plan.Quantities {
		grams += q.DryG
	}
	for _, r := range b.plan.Rolls {
		rows = append(rows, []cell{
			{figure: r.Fabric}, {figure: cutPlace{roll: r.Roll, copy: r.Copy}.words()}, {figure: sheet.Tape(r.WidthMM, b.plan.Units)},
			{}, {}, {tick: true},
		})
	}
	table{columns: []column{
		{"FABRIC", 50}, {"ROLL", 34}, {"WIDTH PLANNED", 30}, {"WIDTH MEASURED", 30}, {"BATCH", 34}, {"RIGHT", 12},
	}, high: 7}.write(b, rows)
	b.say(page.Margin, b.y-2.5, page.BodyHigh, b.size.Inner(), true, "All plies together weigh "+sheet.Number(grams, 0)+" g dry, worked out from the blanks and the fabrics' weights.")
	b.y -= 6.5
}
