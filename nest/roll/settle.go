package roll

import (
	"math"
	"slices"

	"stripwright/nest/stock"
)

// square says whether some pieces have edges only along and across the roll:
// their lengths then add up in any order, but for steps that fit each other.
func (t *Task) square(pieces []int32) bool {
	oblique := func(c cell) bool { return c.l0 != c.l1 || c.r0 != c.r1 }
	for _, p := range pieces {
		for _, c := range t.Pieces[p].Shape.ways[0].columns {
			if slices.ContainsFunc(c.cells, oblique) {
				return false
			}
		}
	}
	return true
}

// shared orders a chain of square pieces so that the last cut comes early: which
// pieces come from which lane is chosen for all lanes together, with room for
// the narrow pieces side by side.
func (t *Task) shared(chain []link, e Effort) []link {
	var fit, never []link
	f := &filler{task: t}
	length := int64(0)
	for _, l := range chain {
		if form := &t.Pieces[l.piece].Shape.ways[0]; f.fits(form) {
			fit = append(fit, l)
			length += form.length
		} else {
			never = append(never, l)
		}
	}
	rolls := f.lanesFor(length)
	_, narrow := t.split()
	out, ok := t.share(fit, t.abreast(narrow), rolls, e)
	if !ok {
		if out, ok = t.share(fit, nil, rolls, e); !ok {
			return byLength(t, chain)
		}
	}
	return append(out, never...)
}

// lanesFor opens lanes and gives what they hold, 0 for as much as needed: as
// many as take a length with a good deal to spare, and two more.
func (f *filler) lanesFor(length int64) []int64 {
	var out []int64
	room := 0.0
	for more := 2; more > 0 && f.grow(); {
		capacity := f.lanes[len(f.lanes)-1].capacity
		if room += float64(capacity); room > 1.5*float64(length) {
			more--
		}
		if capacity >= endless {
			capacity = 0
		}
		out = append(out, capacity)
	}
	return out
}

// share puts a chain in the order of the rolls that its pieces come from, with
// a mark behind each.
// blocks are lengths that are to find room beside it. ok is false when the rolls
// do not hold that much.
func (t *Task) share(chain []link, blocks, rolls []int64, e Effort) (out []link, ok bool) {
	links := make(map[int64][]link)
	lengths := slices.Clone(blocks)
	for _, l := range chain {
		n := t.Pieces[l.piece].Shape.Length()
		links[n] = append(links[n], l)
		lengths = append(lengths, n)
	}
	pieces := counted(lengths)
	plan, ok := stock.Fill(rolls, pieces, 2*e.ChainMoves)
	for _, count := range plan.Rolls {
		for k, n := range count {
			list := links[pieces[k].Length]
			n = min(n, len(list)) // the others are blocks
			out, links[pieces[k].Length] = append(out, list[:n]...), list[n:]
		}
		out = append(out, nextLane)
	}
	return out, ok
}

// counted gives each different length and how often it comes.
func counted(lengths []int64) []stock.Piece {
	slices.Sort(lengths)
	var out []stock.Piece
	for _, n := range lengths {
		if k := len(out) - 1; k >= 0 && out[k].Length == n {
			out[k].Count++
		} else {
			out = append(out, stock.Piece{Length: n, Count: 1})
		}
	}
	return out
}

// abreast gives the lengths that narrow pieces take side by side, the longest
// first: each beside those that leave it least room across the roll.
func (t *Task) abreast(narrow []int32) []int64 {
	var lengths, free []int64
	for _, p := range t.long(narrow) {
		s := t.Pieces[p].Shape
		best := -1
		for i := range free {
			if free[i] >= s.Height() && (best < 0 || free[i] < free[best]) {
				best = i
			}
		}
		if best < 0 {
			best = len(free)
			lengths = append(lengths, max(1, int64(math.Round(s.Chord))+t.Gap))
			free = append(free, t.Width+t.Gap)
		}
		free[best] -= s.Height()
	}
	return lengths
}
