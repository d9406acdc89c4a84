package rim

import (
	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/layup"
	"stripwright/output/page"
	"stripwright/output/sheet"
)

// Measures of a page in mm.
const (
	headHigh = 33.0
	apart    = 4.0 // between strips
)

// Strips draws the rim strips along a line, on paper laid across.
func Strips(p laminate.Plan, line layup.Line, sha string, size page.Size) []sheet.Scene {
	size = size.Across()
	var all []piece
	for _, s := range line.Stretches() {
		all = append(all, pieces(p, line, s)...)
	}
	var pages []*sheet.Scene
	for len(all) > 0 {
		s, top := page.New(p, sha, size, "RIM STRIPS")
		l := s.Layer("PAGE")
		y := top - headHigh
		n := 0
		for n < len(all) && (n == 0 || y-all[n].high() > page.Margin+page.FootHigh+2) {
			all[n].draw(l, p, page.Margin+1, y)
			y -= all[n].high() + apart
			n++
		}
		head(l, p, line, size, top, all[:n])
		pages = append(pages, s)
		all = all[n:]
	}
	page.Number(pages, "rim strips, true to size")
	return page.Scenes(pages)
}

// head says how the strips are used, with bars to check the print and a map of
// the stretches on the page.
func head(l *sheet.Layer, p laminate.Plan, line layup.Line, size page.Size, top float64, shown []piece) {
	say := func(y, height float64, heavy bool, words string) {
		l.Write(sheet.Text{At: orb.Point{page.Margin, top - y}, Height: height, Bold: heavy, Words: words}.Fitted(size.Inner() - 118 - mapWide))
	}
	say(6, 6, true, "RIM STRIPS, 1:1")
	say(11, page.BodyHigh, true, "Print at 100 %, measure both bars. Along "+line.Words+".")
	say(15.5, page.SmallHigh, false, "Cut out, splice at the black triangles, lay the thick line on the edge.")
	say(19, page.SmallHigh, false, "Stand outside, look in: the corners' letters run from left to right.")
	say(22.5, page.SmallHigh, false, "At each tick: ply and joint, 3 J2. Grey band: curve, nick the paper there.")
	say(26, page.SmallHigh, true, "Take the strips off before bagging.")
	page.Bars(l, size.Wide-page.Margin-mapWide-114, top-2)
	miniature(l, p, line, orb.Bound{
		Min: orb.Point{size.Wide - page.Margin - mapWide, top - headHigh + 3}, Max: orb.Point{size.Wide - page.Margin, top},
	}, shown)
}

// mapWide is the width of the map in the head.
const mapWide = 48.0

// miniature draws the line with its corners, the pieces of this page thick.
func miniature(l *sheet.Layer, p laminate.Plan, line layup.Line, box orb.Bound, shown []piece) {
	stretches := line.Stretches()
	var b orb.Bound
	for i, s := range stretches {
		for k, q := range s.Points {
			if i == 0 && k == 0 {
				b = q.Bound()
			}
			b = b.Extend(q)
		}
	}
	room := box.Pad(-4.5)
	w, h := b.Max[0]-b.Min[0], b.Max[1]-b.Min[1]
	scale := min((room.Max[0]-room.Min[0])/max(w, 1), (room.Max[1]-room.Min[1])/max(h, 1))
	c, o := room.Center(), b.Center()
	place := func(q orb.Point) orb.Point {
		return orb.Point{c[0] + float64(scale*(q[0]-o[0])), c[1] + float64(scale*(q[1]-o[1]))}
	}
	for _, s := range stretches {
		stroke(l, sheet.Solid(sheet.Grey, 0.25), s.Points, place)
	}
	for _, one := range shown {
		stroke(l, sheet.Solid(sheet.Black, 1.1), between(one.stretch.Points, one.from, one.to), place)
	}
	ring := p.Part.Net.Oriented().Outer
	for i, s := range stretches {
		at := place(s.Points[0])
		out := sheet.Outward(ring, s.Points[0])
		letter := sheet.Text{Height: 1.9, Bold: true, Words: s.From}.Centred(sheet.Along(at, out, 2.9))
		if i == 0 {
			l.Disc(sheet.Pen{}, sheet.Fill{Ink: sheet.Black}, sheet.Along(at, out, 2.9), 1.8)
			letter.Ink = sheet.White
		}
		l.Write(letter)
	}
}

func stroke(l *sheet.Layer, pen sheet.Pen, points []orb.Point, place func(orb.Point) orb.Point) {
	placed := make([]orb.Point, len(points))
	for i, q := range points {
		placed[i] = place(q)
	}
	l.Stroke(pen, placed...)
}

// between gives what of a line lies between two lengths along it.
func between(points []orb.Point, from, to float64) []orb.Point {
	var out []orb.Point
	at := 0.0
	for i := 0; i+1 < len(points); i++ {
		d := sheet.Towards(points[i], points[i+1])
		long := float64((points[i+1][0]-points[i][0])*d[0]) + float64((points[i+1][1]-points[i][1])*d[1])
		a, b := max(from-at, 0), min(to-at, long)
		if a < b {
			if len(out) == 0 {
				out = append(out, sheet.Along(points[i], d, a))
			}
			out = append(out, sheet.Along(points[i], d, b))
		}
		at += long
	}
	return out
}
