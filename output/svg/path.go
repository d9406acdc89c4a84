package svg

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/output/sheet"
)

// path writes lines as the data of one path: the first point of a path stands
// from the sheet's corner, all others from the point before. Steps are counted
// in whole thousandths of a millimetre, so they do not drift.
type path struct {
	*writer
	at    [2]int64 // the pen
	begun bool
}

func (w *writer) path(lines []sheet.Line) {
	p := path{writer: w}
	for _, l := range lines {
		p.line(l)
	}
}

func (p *path) line(l sheet.Line) {
	var first [2]int64
	op := byte(0)
	for i, q := range l.Points {
		to := p.grid(q)
		switch {
		case i > 0:
			op = p.step(op, to)
		case p.begun:
			p.b = append(p.b, 'm')
			p.pair(to)
		default:
			p.b = append(p.b, 'M')
			p.pair(to)
			p.begun = true
		}
		p.at = to
		if i == 0 {
			first = to
		}
	}
	if l.Closed && len(l.Points) > 0 {
		p.b = append(p.b, 'z')
		p.at = first
	}
}

// grid gives a place on the sheet in thousandths of a millimetre.
func (p *path) grid(q orb.Point) [2]int64 {
	x, y := q[0]-p.left, p.top-q[1]
	if !sheet.Drawable(x) || !sheet.Drawable(y) {
		p.far = true
		return p.at
	}
	return [2]int64{int64(math.Round(x * 1000)), int64(math.Round(y * 1000))}
}

// step draws on to a point: h and v along one axis, else l; the same letter is
// not repeated.
func (p *path) step(last byte, to [2]int64) byte {
	op := byte('l')
	switch {
	case to[1] == p.at[1]:
		op = 'h'
	case to[0] == p.at[0]:
		op = 'v'
	}
	if op != last {
		p.b = append(p.b, op)
	}
	switch op {
	case 'h':
		p.number(to[0]-p.at[0], op == last)
	case 'v':
		p.number(to[1]-p.at[1], op == last)
	default:
		p.number(to[0]-p.at[0], op == last)
		p.number(to[1]-p.at[1], true)
	}
	return op
}

func (p *path) pair(to [2]int64) {
	p.number(to[0]-p.at[0], false)
	p.number(to[1]-p.at[1], true)
}

// number writes thousandths; a minus parts it from a number before, else a
// blank does.
func (p *path) number(n int64, after bool) {
	if after && n >= 0 {
		p.b = append(p.b, ' ')
	}
	p.b = sheet.AppendThousandths(p.b, n)
}
