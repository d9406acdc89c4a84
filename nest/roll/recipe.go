package roll

import (
	"math/rand/v2"
	"slices"

	"stripwright/geometry/band"
)

// Recipe says in which order the pieces of a task are laid: full-width pieces
// form the chain, the others are tucked in one after the other. A mixed recipe
// has no chain: full-width pieces are tucked in among the others.
type Recipe struct {
	chain []link
	order []int32
	mixed bool
}

// Copy gives a recipe that shares nothing with r.
func (r *Recipe) Copy() *Recipe {
	return &Recipe{slices.Clone(r.chain), slices.Clone(r.order), r.mixed}
}

// Set makes r a copy of another recipe, in its own room.
func (r *Recipe) Set(o *Recipe) {
	r.chain, r.order, r.mixed = append(r.chain[:0], o.chain...), append(r.order[:0], o.order...), o.mixed
}

// Renumber names the pieces anew: piece i becomes to[i], and is struck out
// where that is negative.
func (r *Recipe) Renumber(to []int32) {
	chain := r.chain[:0]
	for _, l := range r.chain {
		if l.piece < 0 { // no piece: a mark between those of two rolls
			chain = append(chain, l)
		} else if l.piece = to[l.piece]; l.piece >= 0 {
			chain = append(chain, l)
		}
	}
	order := r.order[:0]
	for _, p := range r.order {
		if p = to[p]; p >= 0 {
			order = append(order, p)
		}
	}
	r.chain, r.order = chain, order
}

// Complete makes a recipe fit a task: pieces that it has in the wrong list are
// taken out, those that it lacks are put in, and full-width pieces whose shape
// is new (changed) are put where they lose least.
func (r *Recipe) Complete(t *Task, changed []bool, rng *rand.Rand) {
	has := r.keepFitting(t)
	for i := range has {
		switch p := int32(i); {
		case has[i]:
		case r.mixed:
			r.order = slices.Insert(r.order, rng.IntN(len(r.order)+1), p)
		case t.full(p) && t.ends():
			r.chain = slices.Insert(r.chain, rng.IntN(len(r.chain)+1), link{p, t.Pieces[p].Ways.only()})
		case t.full(p):
			r.link(t, p)
		default:
			r.tuckByLength(t, p)
		}
	}
	if !r.mixed && !t.ends() {
		r.relinkSome(t, func(p int32) bool { return has[p] && changed[p] && t.full(p) }, rng)
	}
}

// mostTried bounds the places in the chain that are looked at for pieces of new
// shape, so that a long chain costs no more than its length.
const mostTried = 2000

// relinkSome puts the pieces that are wanted where they lose least: all of them
// where the chain is short.
func (r *Recipe) relinkSome(t *Task, wanted func(int32) bool, rng *rand.Rand) {
	left := 1 + mostTried/(len(r.chain)+1)
	for i, first := 0, rng.IntN(len(t.Pieces)); i < len(t.Pieces) && left > 0; i++ {
		if p := int32((first + i) % len(t.Pieces)); wanted(p) {
			r.relink(t, p)
			left--
		}
	}
}

// keepFitting drops pieces from lists that they do not belong to and tells
// which pieces are left.
func (r *Recipe) keepFitting(t *Task) []bool {
	has := make([]bool, len(t.Pieces))
	chain := r.chain[:0]
	for _, l := range r.chain {
		if l.piece < 0 {
			chain = append(chain, l)
			continue
		}
		if !t.full(l.piece) {
			continue
		}
		if w := t.Pieces[l.piece].Ways; !w.has(l.way) {
			l.way = w.only()
		}
		chain = append(chain, l)
		has[l.piece] = true
	}
	order := r.order[:0]
	for _, p := range r.order {
		if r.mixed || !t.full(p) {
			order = append(order, p)
			has[p] = true
		}
	}
	r.chain, r.order = chain, order
	return has
}

// tuckByLength puts a narrow piece before the first that is shorter.
func (r *Recipe) tuckByLength(t *Task, p int32) {
	n := t.Pieces[p].Shape.Length()
	at := slices.IndexFunc(r.order, func(q int32) bool { return t.Pieces[q].Shape.Length() < n })
	if at < 0 {
		at = len(r.order)
	}
	r.order = slices.Insert(r.order, at, p)
}

// relink takes a piece out of the chain and puts it back where it loses least.
func (r *Recipe) relink(t *Task, p int32) {
	at := slices.IndexFunc(r.chain, func(l link) bool { return l.piece == p })
	r.chain = slices.Delete(r.chain, at, at+1)
	r.link(t, p)
}

// link puts a full-width piece into the chain where it loses least.
func (r *Recipe) link(t *Task, p int32) {
	t.Memory.work += int64(workLink * (len(r.chain) + 1))
	best, at, way := float32(0), -1, int8(0)
	for k := 0; k <= len(r.chain); k++ {
		before, after := t.before(r.chain, k), t.after(r.chain, k)
		here := loss(before, after)
		for w := range int8(2) {
			if !t.Pieces[p].Ways.has(w) {
				continue
			}
			if d := loss(before, t.rear(link{p, w})) + loss(t.front(link{p, w}), after) - here; at < 0 || d < best {
				best, at, way = d, k, w
			}
		}
	}
	r.chain = slices.Insert(r.chain, at, link{p, way})
}

// front and rear give the ends of a link that face ahead and back, each as if
// turned to face ahead.
func (t *Task) front(l link) *band.End {
	if e := &t.Pieces[l.piece].Shape.ends; l.way == 0 {
		return &e.Ahead
	} else {
		return &e.Back
	}
}

func (t *Task) rear(l link) *band.End { return t.front(link{l.piece, 1 - l.way}) }

// before and after give the ends that border position i of a chain, nil
// outside it.
func (t *Task) before(chain []link, i int) *band.End {
	if i == 0 {
		return nil
	}
	return t.front(chain[i-1])
}

func (t *Task) after(chain []link, i int) *band.End {
	if i == len(chain) {
		return nil
	}
	return t.rear(chain[i])
}

// loss gives the length lost where two ends meet; nil stands for the outside.
func loss(a, b *band.End) float32 {
	switch {
	case a == nil && b == nil:
		return 0
	case a == nil:
		return b.Most()
	case b == nil:
		return a.Most()
	}
	return a.Meet(b)
}
