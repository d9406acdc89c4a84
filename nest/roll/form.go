package roll

import (
	"math"
	"slices"

	"stripwright/geometry/band"
)

// Shape is a piece as it may lie on the roll: as cut from the ply, or turned
// end for end. Pieces of equal shape may share one Shape.
type Shape struct {
	ways  [2]form // as it is, turned by 180°
	Area  float64 // µm²
	Chord float64 // mean length between the outermost edges, µm
	ends  band.Ends
}

// form is a shape in one of its two ways: heights from 0 to height across the
// roll, leftmost point at u = 0. Its columns cover it: one for a piece without
// openings or notches across the roll.
type form struct {
	height, length int64
	columns        []column
	upright        bool          // one cell with square ends
	longest        float64       // longest stretch of material along the roll
	inner          int64         // longest opening along the roll between columns
	outer          column        // the outermost edges, level by level
	at             [3][2]float64 // the outermost edges at a quarter, half and three quarters of the height
	number         uint32        // in a Memory
}

// NewShape reads a piece in the frame of its ply; mirrored for a ply that is
// laid face down. gap is the cutting gap in µm: half of it is added all round.
func NewShape(p *band.Piece, mirrored bool, gap int64) *Shape {
	return new(Shaper).Shape(p, mirrored, gap)
}

// Shaper reads one piece after the other in the same room, and counts that in a
// Memory where it has one. The zero value is ready; it is for one goroutine.
type Shaper struct {
	Memory *Memory
	slicer band.Slicer
	cells  []cell
	below  []int // columns that end at the foot of a level
	level  []int // and those of the level
	column []int // of each cell
	counts []int // cells of each column
}

// Shape is NewShape.
func (s *Shaper) Shape(p *band.Piece, mirrored bool, gap int64) *Shape {
	base := form{height: p.Height(), length: p.MaxX - p.MinX, columns: s.columns(p)}
	if s.Memory != nil {
		s.Memory.work += int64(workShape + workCell*len(s.cells))
	}
	if mirrored {
		base = base.flipped()
	}
	out := &Shape{Area: float64(p.Area2()) / 2}
	if out.ends, out.Chord = band.EndsOf(p); mirrored {
		out.ends = out.ends.Mirrored()
	}
	base = base.widened(gap)
	out.ways = [2]form{base.finished(), base.turned().finished()}
	return out
}

// Height gives the extent across the roll in µm, with the cutting gap.
func (s *Shape) Height() int64 { return s.ways[0].height }

// Length gives the extent along the roll in µm, with the cutting gap.
func (s *Shape) Length() int64 { return s.ways[0].length }

// flipped mirrors across the roll: v to height - v.
func (f form) flipped() form {
	return f.upended(func(c cell) cell { return trapezoid(f.height-c.v1, f.height-c.v0, c.l1, c.l0, c.r1, c.r0) })
}

// turned turns by 180°: v to height - v, u to length - u.
func (f form) turned() form {
	n := float64(f.length)
	return f.upended(func(c cell) cell {
		return trapezoid(f.height-c.v1, f.height-c.v0, n-c.r1, n-c.r0, n-c.l1, n-c.l0)
	})
}

// upended applies to every cell what turns the form upside down; columns are then
// read from the top.
func (f form) upended(to func(cell) cell) form {
	sum := 0
	for i := range f.columns {
		sum += len(f.columns[i].cells)
	}
	out := form{height: f.height, length: f.length, columns: make([]column, len(f.columns))}
	all := make([]cell, 0, sum)
	for i := range f.columns {
		from := len(all)
		for _, c := range slices.Backward(f.columns[i].cells) {
			all = append(all, to(c))
		}
		out.columns[i].cells = all[from:len(all):len(all)]
	}
	return out
}

// finished works out what the search asks for again and again.
func (f form) finished() form {
	for k := range f.columns {
		c := &f.columns[k]
		c.v0, c.v1 = c.cells[0].v0, c.cells[len(c.cells)-1].v1
		l, r := math.Inf(1), math.Inf(-1)
		for _, x := range c.cells {
			l, r = min(l, x.l0, x.l1), max(r, x.r0, x.r1)
			f.longest = max(f.longest, x.r0-x.l0, x.r1-x.l1)
		}
		c.l, c.r = int64(math.Floor(l)), int64(math.Ceil(r))
		leaning(c.cells)
	}
	f.inner = f.opening()
	f.outer = f.envelope()
	for k := range f.at {
		f.at[k] = f.outer.edgesAt(f.height * int64(k+1) / 4)
	}
	c := f.columns[0].cells
	f.upright = len(f.columns) == 1 && len(c) == 1 && c[0] == trapezoid(0, f.height, 0, 0, float64(f.length), float64(f.length))
	return f
}

// opening gives the longest clear stretch between two columns, in µm, rounded
// up; 0 for a form of one column.
func (f *form) opening() int64 {
	most := int64(0)
	for i := range f.columns {
		for k := range f.columns {
			a, b := &f.columns[i], &f.columns[k]
			if i != k && a.v0 < b.v1 && b.v0 < a.v1 {
				most = max(most, opening(a, b))
			}
		}
	}
	return most
}

// envelope gives the outermost edges of all columns, level by level. Columns do not
// cross, so between two bends one of them is outermost all the way.
func (f *form) envelope() column {
	if len(f.columns) == 1 {
		return f.columns[0]
	}
	levels := heights(f)
	slices.Sort(levels)
	levels = slices.Compact(levels)
	next := make([]int, len(f.columns)) // cell of each column
	var out column
	for i := 0; i+1 < len(levels); i++ {
		o := trapezoid(levels[i], levels[i+1], math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1))
		for k := range f.columns {
			cells := f.columns[k].cells
			for next[k] < len(cells) && cells[next[k]].v1 <= o.v0 {
				next[k]++
			}
			if next[k] < len(cells) && cells[next[k]].v0 <= o.v0 {
				o.cover(&cells[next[k]])
			}
		}
		if o.l0 <= o.r0 {
			out.cells = append(out.cells, o)
		}
	}
	return out
}

// edgesAt gives the edges at a height, just above it where they step; nothing where
// there is no cell.
func (c *column) edgesAt(v int64) [2]float64 {
	for i := range c.cells {
		if x := &c.cells[i]; x.v0 <= v && v < x.v1 {
			return [2]float64{at(x.v0, x.v1, x.l0, x.l1, v), at(x.v0, x.v1, x.r0, x.r1, v)}
		}
	}
	return [2]float64{math.Inf(1), math.Inf(-1)}
}

// behindAtLeast gives a position along the roll, relative to a, that b behind it
// cannot stay short of: at a few heights neither may reach into the other.
func behindAtLeast(a, b *form) float64 {
	least := -float64(a.length + b.length)
	for k := range a.at {
		least = max(least, a.at[k][1]-b.at[k][0])
	}
	return least
}

// cover moves the edges of a cell out to those of one that spans its levels.
func (o *cell) cover(c *cell) {
	o.l0, o.l1 = min(o.l0, at(c.v0, c.v1, c.l0, c.l1, o.v0)), min(o.l1, at(c.v0, c.v1, c.l0, c.l1, o.v1))
	o.r0, o.r1 = max(o.r0, at(c.v0, c.v1, c.r0, c.r1, o.v0)), max(o.r1, at(c.v0, c.v1, c.r0, c.r1, o.v1))
}

func at(v0, v1 int64, x0, x1 float64, v int64) float64 {
	switch v {
	case v0:
		return x0
	case v1:
		return x1
	}
	return x0 + float64((x1-x0)*float64(v-v0))/float64(v1-v0)
}
