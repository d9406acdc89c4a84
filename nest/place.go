package nest

import (
	"stripwright/geometry"
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

// shapeKey tells shapes apart: equal keys give equal shapes.
type shapeKey struct {
	class    *layout.Class
	phase    int64
	piece    int
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

// task collects the pieces of a group.
func (m *model) task(g int, phases []int64) (*roll.Task, []pieceRef) {
	gr := &m.groups[g]
	c := &m.cloths[gr.cloth]
	w := &c.widths[gr.width]
	t := &roll.Task{Width: w.usable, Gap: m.problem.Gap, Table: int64(geometry.Micrometres(m.job.TableMM)),
		Stock: w.stock, Measure: c.measure, Memory: &m.memory, Stop: m.stop}
	var refs []pieceRef
	for _, i := range gr.plies {
		p := &m.job.Plies[i]
		d := m.divide(i, phases[i])
		for k := range d.Pieces {
			key := shapeKey{m.classes[i], d.Phase, k, p.FaceDown}
			s, ok := m.shapes[key]
			if !ok {
				s = roll.NewShape(&d.Pieces[k], p.FaceDown, t.Gap)
				m.shapes[key] = s
			}
			t.Pieces = append(t.Pieces, roll.Piece{Shape: s, Ways: waysOf(c.fabric, p)})
			refs = append(refs, pieceRef{i, k})
		}
	}
	return t, refs
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
