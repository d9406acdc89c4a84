package layup

import (
	"math"
	"sort"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/sheet"
)

// Joints draws all joints of a plan over each other, the worst pair marked, and
// beside or under it how many joints lie through the thickness, as a map.
func Joints(p laminate.Plan, measured []PlyMeasures, sha string) sheet.Scene {
	b := newBoard(p, sha)
	b.s = sheet.Scene{
		Title: "ALL JOINTS OVER EACH OTHER",
		About: "All joints of the laminate, seen from the laying side; unit mm. " + sheet.Verdict(p),
	}
	for _, layer := range []string{"SHEET", "MAP", "OUTLINE", "JOINTS", "DATUM", "TEXT", "TITLE"} {
		b.s.Layer(layer)
	}
	high := math.Max(b.partHigh()+20, 60)
	lower := edgeMargin + blockHigh + 5
	upper := lower + high + 5
	b.layDown(edgeMargin, lower+4, high-12)
	b.countMap(edgeMargin, lower, high)
	b.layDown(edgeMargin, upper+8, high-14)
	b.overlay(edgeMargin, upper, high)
	b.markWorst(measured)
	b.over(b.box(edgeMargin, upper, edgeMargin+drawWide, upper+high))
	b.jointsLegend(edgeMargin+drawWide+8, upper+high, measured)
	head := b.text(edgeMargin, upper+high+6, 11, true, b.s.Title)
	b.s.Layer("TITLE").Write(head.Fitted((sheetWide - 2*edgeMargin) * b.k))
	b.height = upper + high + 25
	return b.finish(nil, nil)
}

// overlay draws the joints by direction, and the part under them.
func (b *board) overlay(left, bottom, high float64) {
	b.outlines(nil)
	b.corners()
	l := b.s.Layer("JOINTS")
	pens := map[sheet.Pen]int{}
	var shapes []sheet.Shape
	for _, ply := range b.plan.Plies {
		for _, j := range ply.Joints {
			pen := directionPen(direction(j).Degrees(), b.k)
			i, ok := pens[pen]
			if !ok {
				i = len(shapes)
				pens[pen] = i
				shapes = append(shapes, sheet.Shape{Pen: pen})
			}
			shapes[i].Lines = append(shapes[i].Lines, sheet.Line{Points: []orb.Point{b.place(orb.Point(j.From)), b.place(orb.Point(j.To))}})
		}
	}
	l.Shapes = append(l.Shapes, shapes...)
	b.zeroArrow(left+4, bottom+5)
	b.s.Layer("TEXT").Write(b.text(left+4, bottom+high-6, 4, true, "SEEN FROM THE LAYING SIDE"))
	b.s.Layer("TITLE").Box(sheet.Solid(sheet.Black, 0.3*b.k), sheet.Fill{}, b.box(left, bottom, left+drawWide, bottom+high))
}

// worstPair is the pair of joints that lie nearest to each other of those that
// the rule counts.
type worstPair struct {
	ply   int
	joint Measured
}

func worst(p laminate.Plan, measured []PlyMeasures) *worstPair {
	var w *worstPair
	for i, m := range measured {
		for _, j := range m.Joints {
			if j.Below != nil && (w == nil || j.Below.MM < w.joint.Below.MM) {
				w = &worstPair{p.Plies[i].Ply, j}
			}
		}
	}
	return w
}

// words names the pair and its distance.
func (w *worstPair) words(units string) string {
	return "plies " + strconv.Itoa(w.joint.Below.Ply) + " and " + strconv.Itoa(w.ply) + ": " + sheet.Tape(w.joint.Below.MM, units)
}

// markWorst rings the place of the worst pair and writes its distance.
func (b *board) markWorst(measured []PlyMeasures) {
	w := worst(b.plan, measured)
	if w == nil {
		return
	}
	c := b.place(w.joint.Below.At)
	l := b.s.Layer("TEXT")
	l.Disc(sheet.Solid(sheet.White, 2*b.k), sheet.Fill{}, c, 6*b.k)
	l.Disc(sheet.Solid(sheet.Black, b.k), sheet.Fill{}, c, 6*b.k)
	t := sheet.Text{Height: 3.6 * b.k, Bold: true, Words: w.words(b.plan.Units)}
	for _, d := range [][2]float64{{0, 10}, {0, -10}, {0, 16}, {0, -16}, {30, 10}, {-30, 10}} {
		at := t.Centred(sheet.Along(c, d, b.k))
		if b.room.try(at) || d[0] == -30 {
			l.Box(sheet.Solid(sheet.Black, 0.3*b.k), sheet.Fill{Ink: sheet.White}, at.Bounds().Pad(0.6*b.k))
			l.Write(at)
			return
		}
	}
}

// jointsLegend names the line of each direction with its number of joints, and
// the worst pair.
func (b *board) jointsLegend(x, top float64, measured []PlyMeasures) {
	l := b.s.Layer("TITLE")
	y := top - 8
	l.Write(b.text(x, y, 4, true, "JOINTS RUN AT"))
	for _, d := range b.directionCounts() {
		y -= 9
		l.Stroke(directionPen(d.deg, b.k), b.at(x, y+2), b.at(x+26, y+2))
		l.Write(b.text(x+30, y, 4.2, true, sheet.Degrees(d.deg)))
		l.Write(b.text(x+58, y, 3.6, false, strconv.Itoa(d.n)+" joints"))
	}
	y -= 13
	l.Write(b.text(x, y, 4, true, "NEAREST PAIR THAT COUNTS"))
	y -= 8
	words := "none"
	if w := worst(b.plan, measured); w != nil {
		words = w.words(b.plan.Units)
		l.Disc(sheet.Solid(sheet.Black, b.k), sheet.Fill{}, b.at(x+4, y+1.8), 3*b.k)
	}
	l.Write(b.text(x+12, y, 4.2, true, words).Fitted(122 * b.k))
	for _, words := range []string{
		"Joints count as a pair where they are parallel within 5° and",
		"fewer plies lie between them than the rule asks for.",
	} {
		y -= 6
		l.Write(b.text(x, y, 2.8, false, words))
	}
}

type directionCount struct {
	deg float64
	n   int
}

func (b *board) directionCounts() []directionCount {
	var out []directionCount
	for _, ply := range b.plan.Plies {
		for _, j := range ply.Joints {
			deg := math.Round(direction(j).Degrees()*100) / 100
			i := sort.Search(len(out), func(i int) bool { return out[i].deg >= deg })
			if i == len(out) || out[i].deg != deg {
				out = append(out, directionCount{})
				copy(out[i+1:], out[i:])
				out[i] = directionCount{deg: deg}
			}
			out[i].n++
		}
	}
	if len(out) > 12 {
		out = out[:12]
	}
	return out
}
