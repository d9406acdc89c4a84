package layup

import (
	"math"
	"sort"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/sheet"
)

// cellsAcross is how finely the number of joints is mapped: the longer side of
// the part has this many cells.
const cellsAcross = 24

// countMap draws how many joints run through each cell of the part, shaded and
// in figures.
func (b *board) countMap(left, bottom, high float64) {
	g := CountJoints(b.plan)
	l := b.s.Layer("MAP")
	for row := 0; row < g.Rows; row++ {
		for col := 0; col < g.Cols; col++ {
			if g.OnPart[row*g.Cols+col] {
				b.cell(g, col, row)
			}
		}
	}
	l.Region(netPen(b.k), sheet.Fill{}, b.plan.Part.Net, b.place)
	words := "JOINTS THROUGH THE THICKNESS: how many plies have one in each square of " + sheet.Tape(g.SizeMM, b.plan.Units) + " (most: " + strconv.Itoa(g.Most) + ")"
	b.s.Layer("TEXT").Write(b.text(left+4, bottom+high-6, 3.6, true, words).Fitted((drawWide - 8) * b.k))
	b.s.Layer("TITLE").Box(sheet.Solid(sheet.Black, 0.3*b.k), sheet.Fill{}, b.box(left, bottom, left+drawWide, bottom+high))
}

// shades of the count map, from none to the most, darker with more.
var shades = []string{"#FFFFFF", "#E3E8EE", "#C6D0DB", "#A7B5C6", "#8497AE"}

// Shade gives how dark a square is, from 0 for none to 4 for the most.
func (g *Grid) Shade(n int) int {
	if n == 0 {
		return 0
	}
	return 1 + (n-1)*(len(shades)-1)/g.Most
}

func (b *board) cell(g *Grid, col, row int) {
	n := g.N[row*g.Cols+col]
	low := g.Corner(col, row)
	box := orb.Bound{Min: b.place(low), Max: b.place(orb.Point{low[0] + g.SizeMM, low[1] + g.SizeMM})}
	l := b.s.Layer("MAP")
	l.Box(sheet.Solid(sheet.Grey, 0.1*b.k), sheet.Fill{Ink: shades[g.Shade(n)]}, box)
	if n > 0 {
		t := sheet.Text{Height: math.Min(0.42*g.SizeMM, 4*b.k), Bold: n == g.Most, Words: strconv.Itoa(n)}
		l.Write(t.Fitted(0.8 * g.SizeMM).Centred(box.Center()))
	}
}

// Grid tells for square cells how many plies have a joint that runs through
// them. Cells lie in rows from the lower left corner of the part's blank; N and
// OnPart hold Cols cells of each row.
type Grid struct {
	Low        orb.Point
	SizeMM     float64
	Cols, Rows int
	N          []int
	OnPart     []bool // some of the cell is covered by the blank
	Most       int
}

// Corner gives the lower left corner of a cell in the part frame.
func (g *Grid) Corner(col, row int) orb.Point {
	return orb.Point{g.Low[0] + float64(float64(col)*g.SizeMM), g.Low[1] + float64(float64(row)*g.SizeMM)}
}

// CountJoints counts the plies with a joint in each cell of the part.
func CountJoints(p laminate.Plan) *Grid {
	box := p.Part.Blank.Bounds()
	w, h := box.Max[0]-box.Min[0], box.Max[1]-box.Min[1]
	g := &Grid{Low: box.Min, SizeMM: niceCell(math.Max(w, h) / cellsAcross)}
	g.Cols, g.Rows = int(math.Ceil(w/g.SizeMM)), int(math.Ceil(h/g.SizeMM))
	g.Cols, g.Rows = max(g.Cols, 1), max(g.Rows, 1)
	g.N, g.OnPart = make([]int, g.Cols*g.Rows), make([]bool, g.Cols*g.Rows)
	for _, ply := range p.Plies {
		seen := map[int]bool{}
		for _, j := range ply.Joints {
			g.count(orb.Point(j.From), orb.Point(j.To), seen)
		}
	}
	for i, n := range g.N {
		g.Most = max(g.Most, n)
		g.OnPart[i] = n > 0 || g.covered(p.Part.Blank, i%g.Cols, i/g.Cols)
	}
	return g
}

// covered says whether the blank covers one of some places of a cell.
func (g *Grid) covered(blank geometry.Region, col, row int) bool {
	low := g.Corner(col, row)
	for _, x := range []float64{0.5, 0.1, 0.9} {
		for _, y := range []float64{0.5, 0.1, 0.9} {
			if blank.Contains(orb.Point{low[0] + float64(x*g.SizeMM), low[1] + float64(y*g.SizeMM)}) {
				return true
			}
		}
	}
	return false
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

// count adds one to every cell that a joint of a ply runs through, but for those
// that another joint of the ply was seen in: the cells that hold the middles of
// its stretches between grid lines.
func (g *Grid) count(from, to orb.Point, seen map[int]bool) {
	cuts := append([]float64{0, 1}, g.crossed(from[0]-g.Low[0], to[0]-g.Low[0])...)
	cuts = append(cuts, g.crossed(from[1]-g.Low[1], to[1]-g.Low[1])...)
	sort.Float64s(cuts)
	for i := 0; i+1 < len(cuts); i++ {
		if cuts[i+1]-cuts[i] < 1e-9 {
			continue
		}
		p := sheet.Between(from, to, (cuts[i]+cuts[i+1])/2)
		col := int(math.Floor((p[0] - g.Low[0]) / g.SizeMM))
		row := int(math.Floor((p[1] - g.Low[1]) / g.SizeMM))
		at := row*g.Cols + col
		if col < 0 || col >= g.Cols || row < 0 || row >= g.Rows || seen[at] {
			continue
		}
		seen[at] = true
		g.N[at]++
	}
}

// crossed lists where a stretch from a to b passes multiples of the cell size,
// as fractions of the way.
func (g *Grid) crossed(a, b float64) []float64 {
	var out []float64
	if a == b {
		return nil
	}
	low, high := math.Min(a, b), math.Max(a, b)
	for i := math.Ceil(low / g.SizeMM); i*g.SizeMM < high; i++ {
		if f := (float64(i*g.SizeMM) - a) / (b - a); f > 0 && f < 1 {
			out = append(out, f)
		}
	}
	return out
}
