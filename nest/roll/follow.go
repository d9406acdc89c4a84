package roll

import (
	"math"
	"math/rand/v2"
)

// Weight is what a recipe comes to: the cost, and how far the pieces reach on
// average, in µm: at equal cost, less is nearer to a lower cost.
type Weight struct {
	Cost  float64
	Reach float64
}

// Follow lays the pieces of a task as a recipe says.
func Follow(t *Task, r *Recipe) (*Layout, error) {
	f := &filler{}
	if left := f.follow(t, r); len(left) > 0 {
		return nil, t.shortage(left)
	}
	l := f.layout()
	l.Recipe = r.Copy()
	return l, nil
}

// Weigh lays the pieces of a task as a recipe says and tells only what that
// comes to; ok is false when the stock does not hold them or the cost is above
// most. The task needs a Memory.
func Weigh(t *Task, r *Recipe, most float64) (w Weight, ok bool) {
	f := &t.Memory.room
	f.most = most
	if left := f.follow(t, r); len(left) > 0 || f.dear() {
		return Weight{}, false
	}
	return Weight{t.cost(f.used()), f.reach()}, true
}

// reach gives how far the pieces that are tucked in reach on average, weighed by
// their heights, with the rolls laid end to end; where rolls end, those of the
// chain count too, so that what moves to an earlier roll is a gain.
func (f *filler) reach() float64 {
	sum, height, start := 0.0, 0.0, 0.0
	add := func(h *laid) {
		sum += float64((start + float64(h.u+h.form.length)) * float64(h.form.height))
		height += float64(h.form.height)
	}
	for _, l := range f.lanes {
		if l.capacity < endless {
			for i := range l.chain {
				add(&l.chain[i])
			}
		}
		for g := range l.gaps {
			for i := range l.gaps[g].held {
				add(&l.gaps[g].held[i])
			}
		}
		start += float64(l.capacity)
	}
	if height == 0 {
		return 0
	}
	return sum / height
}

// follow lays pieces by a recipe on empty lanes and returns those without room.
func (f *filler) follow(t *Task, r *Recipe) []int {
	t.number()
	f.begin(t)
	for _, p := range r.order {
		f.least = min(f.least, int64(t.Pieces[p].Shape.ways[0].longest))
	}
	left := f.chainUp(r.chain)
	f.open()
	return append(left, f.tuck(r.order)...)
}

// dear says whether what is laid on an endless roll already costs more than
// most.
func (f *filler) dear() bool {
	return f.most > 0 && f.task.Measure == Length && len(f.lanes) == 1 && float64(f.lanes[0].end-f.task.Gap) > f.most
}

// begin empties the filler for a task, in the room of earlier ones.
func (f *filler) begin(t *Task) {
	f.task, f.least = t, math.MaxInt64
	f.spare = append(f.spare, f.lanes...)
	f.lanes, f.source = f.lanes[:0], f.source[:0]
}

// Refine lays the pieces of a task as a recipe says, and then searches over the
// order of those that are tucked in.
func Refine(t *Task, r *Recipe, e Effort, seed uint64) (*Layout, error) {
	if t.Memory == nil {
		fresh := *t
		fresh.Memory = &Memory{}
		t = &fresh
	}
	t.number()
	f := &filler{}
	if left := f.follow(t, r); len(left) > 0 {
		return nil, t.shortage(left)
	}
	better := r.Copy()
	better.order = f.search(better.order, e, rand.New(rand.NewPCG(seed, 0x5717)))
	return Follow(t, better)
}
