package roll

import (
	"math/rand/v2"
	"slices"
)

// Vary changes a recipe a little: the place of one or two pieces, or a run of
// the chain. Changes of the chain that lose more than slack, in µm, are passed
// over.
func (r *Recipe) Vary(t *Task, slack float64, rng *rand.Rand) {
	m, n := len(r.chain), len(r.order)
	switch {
	case m > 1 && (n < 2 || rng.IntN(3) == 0):
		if t.ends() {
			r.shuffleChain(rng)
			return
		}
		for range 40 {
			if r.varyChain(t, float32(slack), rng) {
				return
			}
		}
	case n > 1:
		exchangeOrMove(r.order, rng)
	}
}

// exchangeOrMove exchanges two pieces of an order, or moves one.
func exchangeOrMove[T any](order []T, rng *rand.Rand) {
	i, j := rng.IntN(len(order)), rng.IntN(len(order))
	if rng.IntN(2) == 0 {
		order[i], order[j] = order[j], order[i]
		return
	}
	move(order, i, j)
}

// move takes element i out and puts it at position j.
func move[T any](order []T, i, j int) {
	p := order[i]
	if i < j {
		copy(order[i:j], order[i+1:j+1])
	} else {
		copy(order[j+1:i+1], order[j:i])
	}
	order[j] = p
}

// shuffleChain changes which pieces come early, whatever it loses: where rolls
// end that decides which pieces share one.
func (r *Recipe) shuffleChain(rng *rand.Rand) { exchangeOrMove(r.chain, rng) }

// varyChain turns a run of the chain end for end, or moves a short one; false
// when that would lose more than slack.
func (r *Recipe) varyChain(t *Task, slack float32, rng *rand.Rand) bool {
	n := len(r.chain)
	i, j := rng.IntN(n), rng.IntN(n+1)
	if rng.IntN(2) == 0 {
		if i > j {
			i, j = j, i
		}
		return r.turnRun(t, i, j, slack)
	}
	return r.moveRun(t, i, min(n, i+1+rng.IntN(3)), j, slack, rng.IntN(2) == 0)
}

// turnRun turns links i…j-1 end for end.
func (r *Recipe) turnRun(t *Task, i, j int, slack float32) bool {
	if i == j || i == 0 && j == len(r.chain) || !r.turnable(t, i, j) {
		return false
	}
	c := r.chain
	before, after := t.before(c, i), t.after(c, j)
	now := loss(before, t.rear(c[i])) + loss(t.front(c[j-1]), after)
	if loss(before, t.front(c[j-1]))+loss(t.rear(c[i]), after) > now+slack {
		return false
	}
	reverse(c[i:j])
	return true
}

func (r *Recipe) turnable(t *Task, i, j int) bool {
	return !slices.ContainsFunc(r.chain[i:j], func(l link) bool { return t.Pieces[l.piece].Ways != Either })
}

// moveRun moves links i…j-1 to position k of the chain, turned or not.
func (r *Recipe) moveRun(t *Task, i, j, k int, slack float32, turned bool) bool {
	if i <= k && k <= j || turned && !r.turnable(t, i, j) {
		return false
	}
	c := r.chain
	before, after := t.before(c, i), t.after(c, j)
	first, last := t.rear(c[i]), t.front(c[j-1])
	d := loss(before, after) - loss(before, first) - loss(last, after)
	if turned {
		first, last = last, first
	}
	before, after = t.before(c, k), t.after(c, k)
	if d += loss(before, first) + loss(last, after) - loss(before, after); d > slack {
		return false
	}
	if turned {
		reverse(c[i:j])
	}
	if k > j {
		rotate(c[i:k], j-i)
	} else {
		rotate(c[k:j], i-k)
	}
	return true
}

// rotate brings the element at position n to the front.
func rotate[T any](s []T, n int) {
	slices.Reverse(s[:n])
	slices.Reverse(s[n:])
	slices.Reverse(s)
}
