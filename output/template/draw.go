package template

import (
	"errors"
	"fmt"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/layup"
	"stripwright/output/page"
	"stripwright/output/sheet"
)

// MostSheets is how many sheets of paper a template may take.
const MostSheets = 400

// ErrSheets is returned for a template that takes more.
var ErrSheets = errors.New("too many sheets of paper")

// one is a sheet of the grid that a line runs over.
type one struct {
	col, row, number int
	window           orb.Bound
}

// Name gives the name of a ply or piece as it is written in the plan.
func Name(p laminate.Plan, name string) (string, error) {
	s, err := find(p, name)
	return s.name, err
}

// Sheets draws a ply, named P03 or 3, or a piece, named P03-S02, at 1:1 on a size
// of paper. The errors are ErrUnknown and ErrSheets.
func Sheets(p laminate.Plan, name, sha string, size page.Size) ([]sheet.Scene, error) {
	s, err := find(p, name)
	if err != nil {
		return nil, err
	}
	g := gridOf(s, size)
	if g.cols > MostSheets || g.rows > MostSheets || g.cols*g.rows > 20*MostSheets {
		return nil, tooMany(s, "very many")
	}
	var all []one
	for row := range g.rows {
		for col := range g.cols {
			if w := g.window(col, row); s.used(w) {
				all = append(all, one{col, row, len(all) + 1, w})
			}
		}
	}
	if len(all) > MostSheets {
		return nil, tooMany(s, strconv.Itoa(len(all)))
	}
	pages := []*sheet.Scene{s.guide(p, sha, g, all)}
	for _, o := range all {
		pages = append(pages, s.tile(p, sha, g, o, all))
	}
	page.Number(pages, "template of "+s.name+", true to size")
	return page.Scenes(pages), nil
}

func tooMany(s subject, sheets string) error {
	return fmt.Errorf("%s: %w: it takes %s, at most %d are drawn; ask for one piece", s.name, ErrSheets, sheets, MostSheets)
}

// guide is the first sheet: what it is, how the others lie, bars to check.
func (s subject) guide(p laminate.Plan, sha string, g grid, all []one) *sheet.Scene {
	scene, top := page.New(p, sha, g.size, "TEMPLATE OF "+s.name, s.fabric)
	l := scene.Layer("PAGE")
	say := func(y, height float64, heavy bool, words string) {
		l.Write(sheet.Text{At: orb.Point{page.Margin, top - y}, Height: height, Bold: heavy, Words: words}.Fitted(g.size.Inner()))
	}
	say(page.TitleHigh, page.TitleHigh, true, "TEMPLATE, 1:1: "+s.title)
	for i, words := range s.words {
		say(14+float64(5*float64(i)), page.HeadHigh, true, words)
	}
	say(26, page.BodyHigh, false, "Print at 100 % and measure both bars. Lay the sheets so that crosses lie over crosses, then tape them.")
	page.Bars(l, page.Margin, top-29)
	box := orb.Bound{Min: orb.Point{page.Margin, page.Margin + page.FootHigh + 4}, Max: orb.Point{g.size.Wide - page.Margin, top - 46}}
	w, h := float64(g.cols)*g.wide, float64(g.rows)*g.high
	scale := min((box.Max[0]-box.Min[0])/w, (box.Max[1]-box.Min[1])/h, 0.2)
	origin := orb.Point{box.Min[0] - float64(scale*g.low[0]), box.Min[1] - float64(scale*g.low[1])}
	place := func(q orb.Point) orb.Point { return sheet.Along(origin, q, scale) }
	for _, o := range s.lines {
		l.Region(sheet.Solid(sheet.Black, 0.25), sheet.Fill{}, o.region, place)
	}
	for _, j := range s.joints {
		l.Stroke(sheet.Solid(sheet.Black, 0.25), place(j.from), place(j.to))
	}
	for _, o := range all {
		b := orb.Bound{Min: place(o.window.Min), Max: place(o.window.Max)}
		l.Box(sheet.Pen{Ink: sheet.Grey, Width: 0.2, Dash: [6]float64{1, 1}}, sheet.Fill{}, b)
		number := sheet.Text{Height: 3, Bold: true, Ink: sheet.Grey, Words: strconv.Itoa(o.number)}
		l.Write(number.Fitted(0.6 * (b.Max[0] - b.Min[0])).Centred(b.Center()))
	}
	return scene
}

// tile draws one sheet.
func (s subject) tile(p laminate.Plan, sha string, g grid, o one, all []one) *sheet.Scene {
	scene := &sheet.Scene{Title: "SHEET " + strconv.Itoa(o.number), About: s.title, Box: orb.Bound{Max: orb.Point{g.size.Wide, g.size.High}}}
	seen := orb.Bound{Min: orb.Point{page.Margin, page.Margin}, Max: orb.Point{page.Margin + g.wide, page.Margin + g.high}}
	origin := orb.Point{page.Margin - o.window.Min[0], page.Margin - o.window.Min[1]}
	place := func(q orb.Point) orb.Point { return orb.Point{q[0] + origin[0], q[1] + origin[1]} }
	l := scene.Layer("TEMPLATE")
	l.Clip = seen.Pad(0.3)
	for _, line := range s.lines {
		l.Region(line.pen, sheet.Fill{}, line.region, place)
	}
	for _, j := range s.joints {
		s.joint(l, j, o.window, place)
	}
	for _, a := range s.areas {
		name(l, a, o.window, place)
	}
	for i, c := range s.corners {
		if at := orb.Point(c.At); o.window.Contains(at) {
			sheet.CornerMark(l, place(at), sheet.Along(place(at), orb.Point{1, 1}, -9), 1, c.Name, i == 0)
			if i == 0 {
				sheet.Pennant(l, place(at), 1)
			}
		}
	}
	l.Box(sheet.Pen{Ink: sheet.Grey, Width: 0.15}, sheet.Fill{}, seen)
	crosses(l, seen)
	s.head(scene, p, sha, g, o, all)
	if len(sheet.Faults(p.Checks)) > 0 {
		f := scene.Layer("FAULT")
		f.Box(sheet.Solid(sheet.Fault, 0.6), sheet.Fill{Ink: sheet.Fault, Spacing: 14, Width: 0.4, Crossed: true}, seen)
		f.Write(sheet.Text{Height: 14, Bold: true, Ink: sheet.Fault, Words: sheet.DoNotCut}.Centred(seen.Center()))
	}
	return scene
}

// joint draws what of a joint lies on the sheet, named in its middle.
func (s subject) joint(l *sheet.Layer, j named, w orb.Bound, place func(orb.Point) orb.Point) {
	l.Stroke(sheet.Solid(sheet.Black, 0.6), place(j.from), place(j.to))
	from, to, ok := within(j.from, j.to, w)
	if !ok {
		return
	}
	t := sheet.Text{Height: 4, Bold: true, Words: j.words}.Centred(place(sheet.Between(from, to, 0.5)))
	l.Box(sheet.Solid(sheet.Black, 0.3), sheet.Fill{Ink: sheet.White}, t.Bounds().Pad(0.8))
	l.Write(t)
}

// name writes an id into what of its region lies on the sheet.
func name(l *sheet.Layer, a area, w orb.Bound, place func(orb.Point) orb.Point) {
	ring := layup.Window(a.region.Outer, w)
	if len(ring) < 3 {
		return
	}
	seen := geometry.Region{Outer: ring}
	for _, h := range a.region.Holes {
		if hole := layup.Window(h, w); len(hole) > 2 {
			seen.Holes = append(seen.Holes, hole)
		}
	}
	id := sheet.Text{Height: 1, Bold: true, Words: a.words}
	if at, h := sheet.Spot(seen, (id.Width()+0.4)/1.6, 6*1.6, 1.6*1.6); h > 0 {
		id.Height = h / 1.6
		l.Write(id.Centred(place(at)))
	}
}

// crosses are laid over those of the neighbours: they stand in the middle of the
// overlap.
func crosses(l *sheet.Layer, seen orb.Bound) {
	b := seen.Pad(-overlap / 2)
	pen := sheet.Solid(sheet.Black, 0.15)
	for _, x := range [3]float64{b.Min[0], (b.Min[0] + b.Max[0]) / 2, b.Max[0]} {
		for _, y := range [3]float64{b.Min[1], (b.Min[1] + b.Max[1]) / 2, b.Max[1]} {
			if x == (b.Min[0]+b.Max[0])/2 && y == (b.Min[1]+b.Max[1])/2 {
				continue // nothing is laid over the middle
			}
			l.Stroke(pen, orb.Point{x - 4, y}, orb.Point{x + 4, y})
			l.Stroke(pen, orb.Point{x, y - 4}, orb.Point{x, y + 4})
		}
	}
}

// head says which sheet this is and what lies beside it, with the arrow.
func (s subject) head(scene *sheet.Scene, p laminate.Plan, sha string, g grid, o one, all []one) {
	l := scene.Layer("PAGE")
	top := g.size.High - page.Margin
	if len(sha) > sheet.HashShown {
		sha = sha[:sheet.HashShown]
	}
	room := g.size.Inner() - 52
	l.Write(sheet.Text{At: orb.Point{page.Margin, top - 4.5}, Height: 4, Bold: true, Words: s.name + ", sheet " + strconv.Itoa(o.number) + " of " + strconv.Itoa(len(all)) + beside(o, all)}.Fitted(room))
	l.Write(sheet.Text{At: orb.Point{page.Margin, top - 9.5}, Height: page.SmallHigh, Words: p.Title + ", unit mm, 1:1, " + sheet.Verdict(p) + ", plan " + sha}.Fitted(room))
	left, right := orb.Point{g.size.Wide - page.Margin - 45, top - 3}, orb.Point{g.size.Wide - page.Margin - 15, top - 3}
	if s.against {
		left, right = right, left
	}
	l.Arrow(sheet.Black, 0.6, 3, left, right)
	l.Write(sheet.Text{At: orb.Point{g.size.Wide - page.Margin - 45, top - 9.5}, Height: 2.6, Bold: true, Words: s.arrow}.Fitted(45))
}

// beside names the sheets round one.
func beside(o one, all []one) string {
	words := ""
	for i, d := range [4][2]int{{-1, 0}, {1, 0}, {0, -1}, {0, 1}} {
		for _, other := range all {
			if other.col == o.col+d[0] && other.row == o.row+d[1] {
				words += ", " + [4]string{"left", "right", "under", "over"}[i] + " it " + strconv.Itoa(other.number)
			}
		}
	}
	return words
}
