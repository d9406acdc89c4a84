package dxf

import (
	"strings"

	"stripwright/geometry/drawing/trace"
)

// deepest bounds INSERT in INSERT, so that a block that holds itself ends.
const deepest = 32

// insert places a block: its base point is brought to the insertion point,
// scaled and turned, once for every row and column.
func (t *tracer) insert(v *values, layer string, p place) {
	b := t.blockOf(v, layer)
	if b == nil {
		return
	}
	m, ok := t.plane(v, layer, p)
	if !ok {
		return
	}
	if p.depth >= deepest {
		v.problem("not-read", v.e.line, "explode the blocks", "block %q holds itself, or blocks lie more than %d deep", trace.Printable(b.name), deepest)
		t.full = true
		return
	}
	at := v.point(10)
	t.height(v.number(30, 0))
	turn := trace.Move(at[0], at[1]).Of(trace.Turn(v.number(50, 0)))
	sx, sy := v.number(41, 1), v.number(42, 1)
	if sx == 0 || sy == 0 {
		v.problem("number", v.e.line, "insert it again", "block %q is inserted with a scale of 0", trace.Printable(b.name))
	}
	inner := trace.Scale(sx, sy).Of(trace.Move(-b.base[0], -b.base[1]))
	columns, rows := max(v.whole(70, 1), 1), max(v.whole(71, 1), 1)
	dx, dy := v.number(44, 0), v.number(45, 0)
	for row := 0; row < rows && !v.bad && !t.full; row++ {
		for column := 0; column < columns && !t.full; column++ {
			t.count()
			step := trace.Move(float64(column)*dx, float64(row)*dy)
			t.trace(b.entities, place{m.Of(turn).Of(step).Of(inner), layer, p.depth + 1})
		}
	}
}

// blockOf finds the block an INSERT names; one that is not in the file is a
// problem on a layer that is wanted.
func (t *tracer) blockOf(v *values, layer string) *block {
	g, _ := v.find(2)
	name := t.file.decode(g.value)
	b := t.file.blocks[strings.ToLower(name)]
	switch {
	case b != nil && !(b.external && len(b.entities) == 0):
		return b
	case !t.wanted(layer):
		t.file.report.LeaveOut("INSERT of a block that is not in the file")
	case b == nil:
		v.problem("not-read", v.e.line, "save the drawing with its blocks, or explode them", "block %q is not in the file", trace.Printable(name))
	default:
		v.problem("not-read", v.e.line, "bind it into the drawing and save again", "block %q lies in another file", trace.Printable(name))
	}
	return nil
}
