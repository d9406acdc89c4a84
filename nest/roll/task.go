package roll

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"stripwright/geometry/band"
)

// Stock is a kind of roll: Copies equal rolls of Length µm, 0 for as long as
// needed. Rolls are used in the order given.
type Stock struct {
	Length int64
	Copies int
	Price  float64 // for a µm of roll
}

// Piece is what is to be laid: its shape and the ways it may lie.
type Piece struct {
	Shape *Shape
	Ways  Ways
}

// Measure says what is to be least.
type Measure int

// What a layout costs: the roll length used, its price, or the place of the
// last cut when the rolls are laid end to end in the order given.
const (
	Length Measure = iota
	Price
	LastCut
)

// Task is all pieces of one fabric and usable width, and the rolls for them.
// Lengths are µm.
type Task struct {
	Width   int64 // usable
	Gap     int64 // cutting gap between pieces
	Table   int64 // longest stretch between clear cross-cuts, 0 for any
	Stock   []Stock
	Measure Measure
	Pieces  []Piece
	Memory  *Memory     // may be nil
	Stop    func() bool // true: search no further; may be nil
	alone   int64       // height from which a piece leaves no room for any other beside it, 0 if not known
}

// Place is where a piece lies: its roll (numbered over all copies), the lower
// left corner of its box without the gap, and the way it lies.
type Place struct {
	Roll int
	U, V int64
	Way  int8
}

// Layout is a full answer to a Task.
type Layout struct {
	Places []Place
	Rolls  []Used
	Cost   float64
	Order  int     // which order of full-width pieces it came from, 1 first
	Recipe *Recipe // how it was laid
	lanes  int     // stretches of roll in use
}

// Used is a roll that is cut: which kind of stock, which copy (0 first), how far
// it is used, and the clear cross-cuts within that length.
type Used struct {
	Stock, Copy int
	Length      int64
	Cuts        []int64
}

// Shortage is the error of a Task whose stock does not hold its pieces.
type Shortage struct {
	Unplaced []int // pieces, by number
	Longest  int64 // length of the longest of them, µm
	Missing  int64 // roll length that they would take at least, µm
}

// Error counts the pieces without room.
func (s *Shortage) Error() string {
	return fmt.Sprintf("%d pieces find no room on the rolls", len(s.Unplaced))
}

// Effort bounds the work: moves of the chain search and trials of the order of
// the narrow pieces, counted in pieces laid.
type Effort struct {
	ChainMoves int
	Trials     int
	Order      int // 0: the orders of full-width pieces that may pay; n: only the n-th
}

// cost weighs the rolls used by the task's measure.
func (t *Task) cost(used []Used) float64 {
	sum := 0.0
	switch t.Measure {
	case Length:
		for _, u := range used {
			sum += float64(u.Length)
		}
	case Price:
		for _, u := range used {
			sum += float64(float64(u.Length) * t.Stock[u.Stock].Price)
		}
	case LastCut:
		if len(used) == 0 {
			return 0
		}
		last := used[len(used)-1]
		for s, st := range t.Stock[:last.Stock+1] {
			n := st.Copies
			if s == last.Stock {
				n = last.Copy
			}
			sum += float64(float64(st.Length) * float64(n))
		}
		sum += float64(last.Length)
	}
	return sum
}

// full says whether a piece takes the whole width, or so much of it that no other
// piece of the task finds room beside it. One with openings or notches across the
// roll counts only in the first case, for it may lie about others or in them; so do
// a few pieces, which are tried in any order.
func (t *Task) full(p int32) bool {
	s := t.Pieces[p].Shape
	width := t.Width + t.Gap
	if s.Height() > width-band.Slip {
		return true
	}
	if len(t.Pieces) <= mostMixed {
		return false
	}
	if t.alone == 0 {
		t.alone = max(width-t.leastHeight(), width*leastAlone/100)
	}
	return s.Height() > t.alone && len(s.ways[0].columns) == 1
}

// leastAlone is the least height, in percent of the width, of what counts as taking
// all of it: lower pieces are curved so much that others reach in beside them.
const leastAlone = 60

func (t *Task) leastHeight() int64 {
	least := int64(math.MaxInt64)
	for i := range t.Pieces {
		least = min(least, t.Pieces[i].Shape.Height())
	}
	return least
}

// split parts the pieces that take the whole width from the narrower ones.
func (t *Task) split() (full, narrow []int32) {
	for i := range t.Pieces {
		if t.full(int32(i)) {
			full = append(full, int32(i))
		} else {
			narrow = append(narrow, int32(i))
		}
	}
	return full, narrow
}

// long orders narrow pieces by falling length, then height.
func (t *Task) long(narrow []int32) []int32 {
	out := slices.Clone(narrow)
	slices.SortStableFunc(out, func(a, b int32) int {
		p, q := t.Pieces[a].Shape, t.Pieces[b].Shape
		return cmp.Or(cmp.Compare(q.Length(), p.Length()), cmp.Compare(q.Height(), p.Height()))
	})
	return out
}

func (t *Task) shortage(left []int) *Shortage {
	s := &Shortage{Unplaced: left}
	area := 0.0
	for _, p := range left {
		s.Longest = max(s.Longest, t.Pieces[p].Shape.Length()-t.Gap)
		area += t.Pieces[p].Shape.Area
	}
	s.Missing = max(s.Longest, int64(math.Ceil(area/float64(t.Width))))
	return s
}

// Labour weighs how dear it is to lay all pieces once, in plain pieces: an edge
// of many bends costs more.
func (t *Task) Labour() int {
	const bends = 12 // cells that cost as much as a plain piece
	cells := 0
	for i := range t.Pieces {
		for _, c := range t.Pieces[i].Shape.ways[0].columns {
			cells += len(c.cells)
		}
	}
	return len(t.Pieces) + max(0, cells-len(t.Pieces))/bends
}

// Columns counts the columns of all pieces: one for a piece without notches or
// openings across the roll.
func (t *Task) Columns() int {
	sum := 0
	for i := range t.Pieces {
		sum += len(t.Pieces[i].Shape.ways[0].columns)
	}
	return sum
}
