package bound

import (
	"math"

	"stripwright/nest/layout"
)

// Task is the plies of one fabric that share rolls of one usable width.
type Task struct {
	Width    int64   // usable, µm
	Gap      int64   // between pieces on the roll, µm
	Rolls    []int64 // in the order of use, µm, laid end to end; 0: as long as needed; none: one such
	Plies    []Ply
	Straight bool    // pieces are cut as oblongs
	Phases   []int64 // of the plies, µm: the bound is for these alone; none: for all that the stagger leaves
	Nodes    int     // most branches to look at; more only sharpens the bound
}

// Ply is a blank at an angle, and the plies that its joints must keep away from.
type Ply struct {
	Base *layout.Base
	Near []Near
}

// Near is an earlier ply of the task on the same comb, of which the joints must
// lie Stagger µm away where the two run side by side.
type Near struct {
	Ply     int
	Stagger int64
}

// Kind names the argument that a bound stands on.
type Kind string

// Kinds of bound.
const (
	Area      Kind = "area"
	Chord     Kind = "chord"
	Interlock Kind = "interlock"
	Openings  Kind = "openings"
	Across    Kind = "across"
	Strips    Kind = "strips"
	RollEnds  Kind = "roll ends"
	Straight  Kind = "straight ends"
)

// Bound is a proved least length of roll.
type Bound struct {
	Kind   Kind
	Length int64   // µm: no plan is shorter
	Area   float64 // of all blanks, µm²
	Waste  float64 // interlock, openings: µm² that no plan fills
	Steps  int     // chord: of the dual feasible function
}

// Least gives the best bound of the task. At is a length that is known to
// suffice, in µm: a bound that reaches it is not sharpened further; 0 when none
// is known.
func Least(t *Task, at int64) Bound {
	f := newFabric(t)
	best := f.area()
	for _, prove := range []func(*fabric, int64) Bound{chordBound, rollEnds, stripsBound, straightBound, interlockBound, openingsBound} {
		if at > 0 && best.Length >= at {
			break
		}
		if b := prove(f, at); b.Length > best.Length {
			best = b
		}
	}
	if at == 0 || best.Length < at {
		if b := acrossBound(f, at, best.Length); b.Length > best.Length {
			best = b
		}
	}
	return best
}

// fabric is a task with what all arguments need of its blanks.
type fabric struct {
	*Task
	shapes []*shape // the different blanks
	of     []int    // shape of each ply
	count  []int    // plies of each shape
}

func newFabric(t *Task) *fabric {
	f := &fabric{Task: t, of: make([]int, len(t.Plies))}
	type kind struct {
		base  *layout.Base
		phase int64
	}
	known, blanks := make(map[kind]int), make(map[*layout.Base]*blank)
	for i := range t.Plies {
		of := kind{base: t.Plies[i].Base}
		if t.Phases != nil {
			of.phase = modulo(t.Phases[i], t.Width)
		}
		k, ok := known[of]
		if !ok {
			k = len(f.shapes)
			known[of] = k
			if blanks[of.base] == nil {
				blanks[of.base] = newBlank(of.base)
			}
			f.shapes = append(f.shapes, &shape{blank: blanks[of.base]})
			f.count = append(f.count, 0)
			if t.Phases != nil {
				f.shapes[k].only = []cell{{of.phase, of.phase}}
			}
		}
		f.of[i] = k
		f.count[k]++
	}
	return f
}

// area is the bound by area alone.
func (f *fabric) area() Bound { return f.withWaste(Area, 0) }

// withWaste is the bound by the area and what is proved to be wasted, less what
// the vertices' micrometres may have added to either.
func (f *fabric) withWaste(kind Kind, waste float64) Bound {
	area, off := 0.0, 0.0
	for k, s := range f.shapes {
		n := float64(f.count[k])
		area += float64(n * s.area)
		off += float64(n * s.snapped)
		if waste > 0 {
			off += float64(n * s.thinned)
		}
	}
	long := float64(area+waste-off) / float64(f.Width) * (1 - 1e-12)
	return Bound{Kind: kind, Area: area, Waste: waste, Length: max(0, int64(math.Ceil(long)))}
}
