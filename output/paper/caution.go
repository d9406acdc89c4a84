package paper

import (
	"stripwright/output/page"
	"stripwright/output/sheet"
)

// cautionPages composes the cautions, and how the sheets are read.
func (b *press) cautionPages() {
	b.section("CAUTIONS", nil, func(bool) {
		b.say(page.Margin, b.y-page.TitleHigh, page.TitleHigh, b.size.Inner(), true, "CAUTIONS")
		b.y -= 13
	})
	for _, c := range sheet.Cautions {
		b.told(c[0], c[1])
	}
	b.y -= 4
	b.need(40)
	b.say(page.Margin, b.y-5, 4.5, b.size.Inner(), true, "HOW THESE SHEETS ARE READ")
	b.y -= 10
	for _, r := range reading {
		b.told(r[0], r[1])
	}
}

func (b *press) told(head, words string) {
	b.need(12)
	b.paragraph(page.Margin, b.size.Inner(), page.HeadHigh, true, head)
	b.paragraph(page.Margin, b.size.Inner(), page.BodyHigh+0.2, false, words)
	b.y -= 3
}

// reading says what the words on the sheets mean.
var reading = [][2]string{
	{"Sides and angles", "Every lay-up sheet is seen from the laying side, looking down on the tool. Angles are the roll's direction as it lies in the part, turned from the 0° arrow, + anticlockwise. FACE UP and FACE DOWN say where the fabric's face looks; a piece laid face down is drawn mirrored on the roll and is turned over about its length."},
	{"Corners", "Corners are lettered anticlockwise from A, the datum, which carries the pennant. The pennant looks the same from no other side: if it does not match what lies before you, the sheet is turned or mirrored."},
	{"Joints", "Each joint is marked at both ends, along the edge of the finished part, from the corner that is named. NEAREST BELOW is the distance, square to the joint, to the nearest joint of a lower ply that counts."},
	{"Rolls", "Lay the roll face up. Running lengths count from the free end, widths from the right-hand edge of the usable width, standing at the free end and looking along the roll. A map of a roll has no 0° of the part."},
}
