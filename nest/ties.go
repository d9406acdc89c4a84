package nest

import (
	"cmp"
	"encoding/binary"
	"math"
	"slices"

	"stripwright/geometry/band"
	"stripwright/nest/roll"
)

// settleTies chooses among layouts of the same cost and pieces: plies that are
// cut alike exchange their phases where that makes the least stagger larger,
// and of pieces with the same outline the one that is laid first is cut first.
func (p *planner) settleTies(a *answer) {
	m := newModel(p.job, p.cloths, p.bases, a.choice)
	m.exchangePhases(a.placed)
	for g := range m.groups {
		m.inLayupOrder(g, a.placed)
	}
}

// mostAlike bounds the plies that are looked at in pairs.
const mostAlike = 400

// exchangePhases lets plies that are cut alike exchange phases as long as the
// least stagger grows, or fewer pairs of plies are as near as that.
func (m *model) exchangePhases(a *placed) {
	const rounds = 8
	phases := slices.Clone(a.phases)
	owner := make([]int, len(phases)) // whose pieces a ply gets
	for i := range owner {
		owner[i] = i
	}
	pairs := m.alike()
	now := m.standing(phases)
	for range rounds {
		before := now
		for _, x := range pairs {
			i, k := x[0], x[1]
			if then, ok := m.exchanged(phases, i, k, now); ok {
				now = then
				owner[i], owner[k] = owner[k], owner[i]
			}
		}
		if now == before {
			break
		}
	}
	a.phases = phases
	m.handOver(a, owner)
}

// exchanged exchanges the phases of two plies if that is for the better.
func (m *model) exchanged(phases []int64, i, k int, now standing) (standing, bool) {
	if phases[i] == phases[k] || now.pairs == 0 {
		return now, false
	}
	_, had := m.nearest(phases, now.least, i, k)
	phases[i], phases[k] = phases[k], phases[i]
	nearer, has := m.nearest(phases, now.least, i, k)
	if w := m.problem.Web; !nearer && has < had && w.Clear(i, phases[i], phases) && w.Clear(k, phases[k], phases) {
		if now.pairs -= 2 * (had - has); now.pairs == 0 {
			now = m.standing(phases)
		}
		return now, true
	}
	phases[i], phases[k] = phases[k], phases[i]
	return now, false
}

// nearest says whether joints of the plies come nearer to others than least, and
// how many come as near.
func (m *model) nearest(phases []int64, least int64, plies ...int) (nearer bool, count int) {
	for _, i := range plies {
		for _, d := range m.problem.Web.Distances(i, phases) {
			nearer = nearer || d < least
			if d == least {
				count++
			}
		}
	}
	return nearer, count
}

// alike lists the pairs of plies whose pieces are the same at the same phase.
func (m *model) alike() [][2]int {
	n := len(m.classes)
	if n > mostAlike {
		return nil
	}
	var out [][2]int
	for i := range n {
		for k := i + 1; k < n; k++ {
			x, y := &m.job.Plies[i], &m.job.Plies[k]
			if m.classes[i] == m.classes[k] && m.problem.Group[i] == m.problem.Group[k] && x.FaceDown == y.FaceDown && x.Reversed() == y.Reversed() {
				out = append(out, [2]int{i, k})
			}
		}
	}
	return out
}

// standing is how near joints of conflicting plies come, in µm, and how often
// they come so near, every pair of plies counted from both.
type standing struct {
	least int64
	pairs int
}

func (m *model) standing(phases []int64) standing {
	s := standing{least: math.MaxInt64}
	for i := range phases {
		for _, d := range m.problem.Web.Distances(i, phases) {
			switch {
			case d < s.least:
				s.least, s.pairs = d, 1
			case d == s.least:
				s.pairs++
			}
		}
	}
	return s
}

// handOver gives the pieces of every ply's owner to the ply.
func (m *model) handOver(a *placed, owner []int) {
	taker := make([]int, len(owner))
	for i, o := range owner {
		taker[o] = i
	}
	for g := range a.pieces {
		refs := slices.Clone(a.pieces[g])
		for n := range refs {
			refs[n].ply = taker[refs[n].ply]
		}
		a.pieces[g] = refs
	}
}

// inLayupOrder hands the places of pieces with the same outline to them in the
// order in which they are laid.
func (m *model) inLayupOrder(g int, a *placed) {
	places, refs := a.layouts[g].Places, slices.Clone(a.pieces[g])
	same := map[string][]int{}
	var keys []string
	for n, ref := range refs {
		key := m.outlineKey(ref, a.phases)
		if same[key] == nil {
			keys = append(keys, key)
		}
		same[key] = append(same[key], n)
	}
	for _, key := range keys {
		at := same[key]
		laid := make([]pieceRef, len(at))
		for k, n := range at {
			laid[k] = a.pieces[g][n]
		}
		slices.SortFunc(laid, func(x, y pieceRef) int { return cmp.Or(cmp.Compare(x.ply, y.ply), cmp.Compare(x.piece, y.piece)) })
		slices.SortFunc(at, func(x, y int) int { return comparePlaces(places[x], places[y]) })
		for k, n := range at {
			refs[n] = laid[k]
		}
	}
	a.pieces[g] = refs
}

// comparePlaces ranks places as they are cut.
func comparePlaces(a, b roll.Place) int {
	return cmp.Or(cmp.Compare(a.Roll, b.Roll), cmp.Compare(a.U, b.U), cmp.Compare(a.V, b.V))
}

// outlineKey tells outlines apart as they are cut: equal keys may take each
// other's place on the roll.
func (m *model) outlineKey(ref pieceRef, phases []int64) string {
	p := &m.job.Plies[ref.ply]
	d := m.classes[ref.ply].Divide(phases[ref.ply])
	src := m.cut(d, ref.piece)
	key := []byte{0, 0}
	if p.FaceDown {
		key[0] = 1
	}
	if p.Reversed() {
		key[1] = 1
	}
	for _, r := range src.Rings() {
		key = append(key, '|')
		for _, q := range startedLowest(r) {
			key = binary.AppendVarint(binary.AppendVarint(key, q.X-src.MinX), q.Y-src.MinY)
		}
	}
	return string(key)
}

// startedLowest gives a ring from its lowest vertex on, the leftmost of several.
func startedLowest(r band.Ring) band.Ring {
	low := 0
	for i, p := range r {
		if p.Y < r[low].Y || p.Y == r[low].Y && p.X < r[low].X {
			low = i
		}
	}
	return append(slices.Clone(r[low:]), r[:low]...)
}
