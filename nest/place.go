package nest

import (
	"stripwright/geometry"
	"stripwright/geometry/band"
	"stripwright/laminate"
	"stripwright/nest/layout"
	"stripwright/nest/roll"
)

// placed is a layout of all groups at one set of phases.
type placed struct {
	phases  []int64
	layouts []*roll.Layout // by group
	pieces  [][]pieceRef   // by group, in the order of the task
	cost    float64
	count   int
}

// pieceRef says which piece of which ply a task's piece is.
type pieceRef struct{ ply, piece int }

// piecesKey tells the pieces of plies apart: equal keys give equal pieces.
type piecesKey struct {
	class    *layout.Class
	phase    int64
	ways     roll.Ways
	mirrored bool
}

// lay puts the pieces of all plies on the rolls. A *roll.Shortage says that
// the stock of a group does not hold them; its group comes with it.
func (m *model) lay(phases []int64, e roll.Effort, seed uint64) (*placed, int, error) {
	out := &placed{phases: phases}
	for g := range m.groups {
		task, refs := m.task(g, phases)
		l, err := roll.Lay(task, e, seed)
		if err != nil {
			return nil, g, err
		}
		out.layouts = append(out.layouts, l)
		out.pieces = append(out.pieces, refs)
		out.cost += l.Cost
		out.count += len(refs)
	}
	return out, -1, nil
}

// taskOf collects the pieces of a group, and tells with which piece each of its
// plies begins, and where the last ends.
func (m *model) taskOf(g int, phases []int64) (*roll.Task, []int32) {
	gr := &m.groups[g]
	t := m.emptyTask(g)
	from := make([]int32, 0, len(gr.plies)+1)
	for _, i := range gr.plies {
		from = append(from, int32(len(t.Pieces)))
		t.Pieces = append(t.Pieces, m.pieces(i, phases[i])...)
	}
	return t, append(from, int32(len(t.Pieces)))
}

// pieces gives a ply's pieces at a phase as they may lie on the roll.
func (m *model) pieces(i int, phase int64) []roll.Piece {
	p := &m.job.Plies[i]
	ways := waysOf(m.cloths[m.groups[m.problem.Group[i]].cloth].fabric, p)
	key := piecesKey{m.classes[i], m.classes[i].Phase(phase), ways, p.FaceDown}
	if out, ok := m.ready[key]; ok {
		return out
	}
	d := m.divide(i, phase)
	out := make([]roll.Piece, len(d.Pieces))
	for k := range d.Pieces {
		out[k] = roll.Piece{Shape: m.shaper.Shape(m.cut(d, k), p.FaceDown, m.problem.Gap), Ways: ways}
	}
	if m.shapes += len(out); m.shapes > mostShapes {
		clear(m.ready)
		m.shapes = len(out)
	}
	m.ready[key] = out
	return out
}

// cut gives a piece of a division as it is cut: its strip, or the oblong about it
// where ends are cut straight.
func (m *model) cut(d *layout.Division, k int) *band.Piece {
	if m.job.Rules.StraightEnds {
		return d.Pieces[k].Oblong()
	}
	return &d.Pieces[k]
}

// mostShapes bounds the shapes that are kept for later.
const mostShapes = 40000

// task collects the pieces of a group and tells what each of them is.
func (m *model) task(g int, phases []int64) (*roll.Task, []pieceRef) {
	t, from := m.taskOf(g, phases)
	return t, m.refs(g, from)
}

// refs tells what each piece of a group is.
func (m *model) refs(g int, from []int32) []pieceRef {
	var refs []pieceRef
	for k, i := range m.groups[g].plies {
		for n := range from[k+1] - from[k] {
			refs = append(refs, pieceRef{i, int(n)})
		}
	}
	return refs
}

// emptyTask is a group's task without pieces.
func (m *model) emptyTask(g int) *roll.Task {
	gr := &m.groups[g]
	c := &m.cloths[gr.cloth]
	w := &c.widths[gr.width]
	return &roll.Task{Width: w.usable, Gap: m.problem.Gap, Table: int64(geometry.Micrometres(m.job.TableMM)),
		Stock: w.stock, Measure: c.measure, Memory: &m.memory, Stop: m.stop}
}

// divide gives a ply's pieces at a phase: a sketch of them while searching.
func (m *model) divide(i int, phase int64) *layout.Division {
	if m.sketch {
		return m.classes[i].Sketch(phase)
	}
	return m.classes[i].Divide(phase)
}

// waysOf says how a ply's pieces may lie on the roll.
func waysOf(f *laminate.Fabric, p *laminate.Ply) roll.Ways {
	switch {
	case f.Turn:
		return roll.Either
	case p.Reversed():
		return roll.Turned
	}
	return roll.AsCut
}
