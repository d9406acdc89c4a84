package paper

import (
	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/layup"
	"stripwright/output/page"
	"stripwright/output/sheet"
)

// press composes pages from the top down: what does not fit goes on the next
// page of the section.
type press struct {
	plan     laminate.Plan
	measured []layup.PlyMeasures
	sha      string
	size     page.Size
	pages    []*sheet.Scene
	cut      map[string]cutPlace
	starts   map[string]int // page of each section, from 1
	leaf     *sheet.Scene
	l        *sheet.Layer
	y        float64 // top of what is free on the page
	title    string
	fabrics  []string // whose joint rule the title block names; none: all
	heading  func(further bool)
}

// section begins a part of the book on a new page; heading draws what stands at
// the top of each of its pages.
func (b *press) section(title string, fabrics []string, heading func(further bool)) {
	b.title, b.fabrics, b.heading = title, fabrics, heading
	b.starts[title] = len(b.pages) + 1
	b.turn(false)
}

// turn begins the next page.
func (b *press) turn(further bool) {
	b.leaf, b.y = page.New(b.plan, b.sha, b.size, b.title, b.fabrics...)
	b.pages = append(b.pages, b.leaf)
	b.l = b.leaf.Layer("PAGE")
	b.heading(further)
}

// right gives the right margin, floor where the room of a page ends.
func (b *press) right() float64 { return b.size.Wide - page.Margin }

// rowHigh is the height of a row of a table.
const rowHigh = 5.8

const floor = page.Margin + page.FootHigh + 3

// need begins a new page where so much room is not left.
func (b *press) need(high float64) {
	if b.y-high < floor {
		b.turn(true)
	}
}

// say writes words on a base line, made smaller where they are wider than room.
func (b *press) say(x, y, height, room float64, heavy bool, words string) {
	b.l.Write(sheet.Text{At: orb.Point{x, y}, Height: height, Bold: heavy, Words: words}.Fitted(room))
}

// rule draws a thin line across.
func (b *press) rule(x, y, wide float64) {
	b.l.Stroke(sheet.Solid(sheet.Grey, 0.15), orb.Point{x, y}, orb.Point{x + wide, y})
}

// bar draws a heading across, white on black.
func (b *press) bar(head string) {
	b.l.Box(sheet.Pen{}, sheet.Fill{Ink: sheet.Black}, orb.Bound{Min: orb.Point{page.Margin, b.y - 5}, Max: orb.Point{b.right(), b.y}})
	b.l.Write(sheet.Text{At: orb.Point{page.Margin + 1.5, b.y - 3.6}, Height: 2.2, Bold: true, Ink: sheet.White, Words: head})
	b.y -= 5.5
}

// tick draws a box to tick, its lower left corner at a place.
func (b *press) tick(x, y, side float64) {
	b.l.Box(sheet.Solid(sheet.Black, 0.35), sheet.Fill{Ink: sheet.White}, orb.Bound{Min: orb.Point{x, y}, Max: orb.Point{x + side, y + side}})
}

// blank draws a line to write on, with what belongs on it before it.
func (b *press) blank(x, y, wide float64, words string) {
	t := sheet.Text{At: orb.Point{x, y}, Height: page.SmallHigh, Words: words}.Fitted(0.7 * wide)
	b.l.Write(t)
	b.l.Stroke(sheet.Solid(sheet.Black, 0.2), orb.Point{x + t.Width() + 1.5, y - 0.4}, orb.Point{x + wide, y - 0.4})
}

// paragraph writes a text over the whole width or less, line by line.
func (b *press) paragraph(x, wide, height float64, heavy bool, words string) {
	for _, t := range sheet.Wrapped(sheet.Text{Height: height, Bold: heavy, Words: words}, wide, 40) {
		b.need(float64(1.75 * height))
		t.At = orb.Point{x, b.y - float64(1.3*height)}
		b.l.Write(t)
		b.y -= float64(1.75 * height)
	}
}
