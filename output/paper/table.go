package paper

import (
	"github.com/paulmach/orb"

	"stripwright/output/page"
	"stripwright/output/sheet"
)

// column is a column of a table: its head and its share of the width.
type column struct {
	head  string
	share float64
}

// cell is a figure in bold and small words beside it; a cell with Tick is a box
// to tick.
type cell struct {
	figure, words string
	tick          bool
}

// table writes rows, its head again on every page; in so many tables side by
// side, filled one after the other.
type table struct {
	columns []column
	beside  int // tables side by side, 0 is 1
	high    float64
}

const (
	tableHead = 5.0
	gutter    = 4.0
)

// write writes all rows; the pages are turned where they are full.
func (t table) write(b *press, rows [][]cell) {
	side := max(t.beside, 1)
	for len(rows) > 0 {
		b.need(tableHead + float64(t.high*float64(min(4, (len(rows)+side-1)/side)))) // no lone rows
		fit := int((b.y - floor - tableHead) / t.high)
		n := min(len(rows), side*fit)
		each := (n + side - 1) / side
		wide := (b.size.Inner() - float64(gutter*float64(side-1))) / float64(side)
		for i := 0; i < side && i*each < n; i++ {
			t.column(b, page.Margin+float64(float64(i)*(wide+gutter)), wide, rows[i*each:min((i+1)*each, n)])
		}
		b.y -= tableHead + float64(t.high*float64(each))
		if rows = rows[n:]; len(rows) > 0 {
			b.turn(true)
		}
	}
	b.y -= 3
}

// column writes one of the tables that stand side by side.
func (t table) column(b *press, x, wide float64, rows [][]cell) {
	b.l.Box(sheet.Pen{}, sheet.Fill{Ink: sheet.Black}, orb.Bound{Min: orb.Point{x, b.y - tableHead}, Max: orb.Point{x + wide, b.y}})
	at := t.starts(x, wide)
	for i, c := range t.columns {
		head := sheet.Text{At: orb.Point{at[i] + 1, b.y - 3.5}, Height: page.SmallHigh, Bold: true, Ink: sheet.White, Words: c.head}
		b.l.Write(head.Fitted(at[i+1] - at[i] - 1.5))
	}
	y := b.y - tableHead
	for _, row := range rows {
		for i, c := range row {
			t.cell(b, at[i], y, at[i+1]-at[i], c)
		}
		y -= t.high
		b.rule(x, y, wide)
	}
}

// starts gives where each column begins, and where the last ends.
func (t table) starts(x, wide float64) []float64 {
	total := 0.0
	for _, c := range t.columns {
		total += c.share
	}
	at := []float64{x}
	for _, c := range t.columns {
		x += float64(wide * c.share / total)
		at = append(at, x)
	}
	return at
}

func (t table) cell(b *press, x, top, wide float64, c cell) {
	base := top - float64(t.high/2) - page.BodyHigh/2
	if c.tick {
		b.tick(x+1, top-t.high+0.8, t.high-1.6)
		x += t.high
		wide -= t.high
	}
	figure := sheet.Text{At: orb.Point{x + 1, base}, Height: page.BodyHigh + 0.2, Bold: true, Words: c.figure}
	words := sheet.Text{Height: page.SmallHigh, Words: c.words}
	gap := 0.0
	if c.figure != "" {
		gap = 1.2
	}
	if room := wide - 1.6; figure.Width()+gap+words.Width() > room {
		shrink := room / (figure.Width() + gap + words.Width())
		figure.Height, words.Height, gap = figure.Height*shrink, words.Height*shrink, gap*shrink
	}
	b.l.Write(figure)
	words.At = orb.Point{x + 1 + figure.Width() + gap, base}
	b.l.Write(words)
}
