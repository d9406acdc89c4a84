package layup

import (
	"math"
	"sort"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/output/sheet"
)

// cellsAcross is how finely the number of joints is mapped: the longer side of
// the part has this many cells.
const cellsAcross = 24

// countMap draws how many joints run through each cell of the part, shaded and
// in figures.
func (b *board) countMap(left, bottom, high float64) {
	g := b.countJoints()
	l := b.s.Layer("MAP")
	most := 0
	for _, n := range g.n {
		most = max(most, n)
	}
	for row := 0; row < g.rows; row++ {
		for col := 0; col < g.cols; col++ {
			c := g.centre(col, row)
			if !b.plan.Part.Blank.Contains(c) {
				continue
			}
			b.cell(g, col, row, most)
		}
	}
	l.Region(netPen(b.k), sheet.Fill{}, b.plan.Part.Net, b.place)
	words := "JOINTS THROUGH THE THICKNESS: how many run through each square of " + sheet.Tape(g.size, b.plan.Units) + " (most: " + strconv.Itoa(most) + ")"
	b.s.Layer("TEXT").Write(b.text(left+4, bottom+high-6, 3.6, true, words).Fitted((drawWide - 8) * b.k))
	b.s.Layer("TITLE").Box(sheet.Solid(sheet.Black, 0.3*b.k), sheet.Fill{}, b.box(left, bottom, left+drawWide, bottom+high))
}

// shades of the count map, from none to the most, darker with more.
var shades = []string{"#FFFFFF", "#E3E8EE", "#C6D0DB", "#A7B5C6", "#8497AE"}

func (b *board) cell(g *grid, col, row, most int) {
	n := g.n[row*g.cols+col]
	shade := 0
	if n > 0 {
		shade = 1 + (n-1)*(len(shades)-1)/max(most, 1)
	}
	x, y := g.low[0]+float64(float64(col)*g.size), g.low[1]+float64(float64(row)*g.size)
	box := orb.Bound{Min: b.place(orb.Point{x, y}), Max: b.place(orb.Point{x + g.size, y + g.size})}
	l := b.s.Layer("MAP")
	l.Box(sheet.Solid(sheet.Grey, 0.1*b.k), sheet.Fill{Ink: shades[shade]}, box)
	if n > 0 {
		t := sheet.Text{Height: math.Min(0.42*g.size, 4*b.k), Bold: n == most, Words: strconv.Itoa(n)}
		l.Write(t.Fitted(0.8 * g.size).Centred(box.Center()))
	}
}

// grid counts joints in square cells.
type grid struct {
	low        orb.Point
	size       float64
	cols, rows int
	n          []int
}

func (g *grid) centre(col, row int) orb.Point {
	return orb.Point{g.low[0] + float64((float64(col)+0.5)*g.size), g.low[1] + float64((float64(row)+0.5)*g.size)}
}

func (b *board) countJoints() *grid {
	box := b.plan.Part.Blank.Bounds()
	w, h := box.Max[0]-box.Min[0], box.Max[1]-box.Min[1]
	g := &grid{low: box.Min, size: niceCell(math.Max(w, h) / cellsAcross)}
	g.cols, g.rows = int(math.Ceil(w/g.size)), int(math.Ceil(h/g.size))
	g.cols, g.rows = max(g.cols, 1), max(g.rows, 1)
	g.n = make([]int, g.cols*g.rows)
	for _, ply := range b.plan.Plies {
		for _, j := range ply.Joints {
			g.count(orb.Point(j.From), orb.Point(j.To))
		}
	}
	return g
}

// niceCell rounds a size up to 10, 20, 25, 50, 100, 200, 250, 500, … mm.
func niceCell(least float64) float64 {
	for step := 10.0; ; step *= 10 {
		for _, f := range []float64{1, 2, 2.5, 5} {
			if f*step >= least {
				return f * step
			}
		}
	}
}

// count adds one to every cell that a joint runs through: the cells that hold
// the middles of its stretches between grid lines.
func (g *grid) count(from, to orb.Point) {
	cuts := append([]float64{0, 1}, g.crossed(from[0]-g.low[0], to[0]-g.low[0])...)
	cuts = append(cuts, g.crossed(from[1]-g.low[1], to[1]-g.low[1])...)
	seen := map[int]bool{}
	sort.Float64s(cuts)
	for i := 0; i+1 < len(cuts); i++ {
		if cuts[i+1]-cuts[i] < 1e-9 {
			continue
		}
		f := (cuts[i] + cuts[i+1]) / 2
		col := int(math.Floor((from[0] + float64(f*(to[0]-from[0])) - g.low[0]) / g.size))
		row := int(math.Floor((from[1] + float64(f*(to[1]-from[1])) - g.low[1]) / g.size))
		at := row*g.cols + col
		if col < 0 || col >= g.cols || row < 0 || row >= g.rows || seen[at] {
			continue
		}
		seen[at] = true
		g.n[at]++
	}
}

// crossed lists where a stretch from a to b passes multiples of the cell size,
// as fractions of the way.
func (g *grid) crossed(a, b float64) []float64 {
	var out []float64
	if a == b {
		return nil
	}
	low, high := math.Min(a, b), math.Max(a, b)
	for i := math.Ceil(low / g.size); i*g.size < high; i++ {
		if f := (float64(i*g.size) - a) / (b - a); f > 0 && f < 1 {
			out = append(out, f)
		}
	}
	return out
}
