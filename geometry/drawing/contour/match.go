package contour

import (
	"cmp"
	"math"
	"slices"

	"github.com/paulmach/orb"
)

// match joins ends: first those in one place, then the narrowest gaps.
func (j *joiner) match() {
	j.mate, j.branched = make([]int, 2*len(j.lines)), map[int]bool{}
	for i := range j.mate {
		j.mate[i] = -1
	}
	var single []int
	for _, meeting := range j.meetings() {
		switch n := len(meeting); {
		case n == 1:
			single = append(single, meeting[0])
		case n%2 == 1:
			j.out.Branches = append(j.out.Branches, j.at(meeting[0]))
			for _, end := range meeting {
				j.branched[end] = true
			}
		default:
			j.pairRound(meeting)
		}
	}
	j.matchGaps(single)
}

// meetings groups the ends that lie within a hundredth of one another.
func (j *joiner) meetings() [][]int {
	places := map[cell][]int{} // meetings by the cell of their first end
	var out [][]int
	for end := range j.mate {
		p := j.at(end)
		home, found := cellOf(p, same), false
		looked := 0
	search:
		for _, near := range home.around() {
			for _, m := range places[near] {
				if looked++; looked > mostLooked {
					break search
				}
				if apart(j.at(out[m][0]), p) <= same {
					out[m], found = append(out[m], end), true
					break search
				}
			}
		}
		if !found {
			places[home] = append(places[home], len(out))
			out = append(out, []int{end})
		}
	}
	return out
}

// pairRound joins the ends that meet in one place two by two, neighbours in the
// order of their directions, so that no two contours cross there.
func (j *joiner) pairRound(meeting []int) {
	if len(meeting) > 2 {
		slices.SortStableFunc(meeting, func(a, b int) int { return cmp.Compare(j.direction(a), j.direction(b)) })
	}
	for i := 0; i < len(meeting); i += 2 {
		j.join(meeting[i], meeting[i+1])
	}
}

// direction gives the angle in which a line leaves its end.
func (j *joiner) direction(end int) float64 {
	p, q := j.at(end), j.inward(end)
	return math.Atan2(q[1]-p[1], q[0]-p[0])
}

func (j *joiner) join(a, b int) { j.mate[a], j.mate[b] = b, a }

// pair is two ends that might be joined.
type pair struct {
	a, b int
	gap  float64
}

// matchGaps joins ends across gaps up to the limit, the narrowest first.
func (j *joiner) matchGaps(ends []int) {
	places := map[cell][]int{}
	var pairs []pair
	reach := j.limit + 1e-6 // so that a stated tenth is a tenth after rounding
	for _, end := range ends {
		home, looked := cellOf(j.at(end), reach), 0
		for _, near := range home.around() {
			for _, other := range places[near] {
				gap := apart(j.at(end), j.at(other))
				if looked++; looked <= mostLooked && gap <= reach && !j.short(end, other) {
					pairs = append(pairs, pair{other, end, gap})
				}
			}
		}
		places[home] = append(places[home], end)
	}
	slices.SortStableFunc(pairs, func(p, q pair) int { return cmp.Compare(p.gap, q.gap) })
	for _, p := range pairs {
		if j.mate[p.a] >= 0 || j.mate[p.b] >= 0 {
			continue
		}
		j.join(p.a, p.b)
		if p.gap > same+1e-6 {
			j.out.Gaps = append(j.out.Gaps, Gap{j.at(p.a), j.at(p.b), p.gap})
		}
	}
}

// short says whether two ends are those of one straight piece, which must not
// be bent to a ring.
func (j *joiner) short(a, b int) bool { return a/2 == b/2 && len(j.lines[a/2]) == 2 }

// meet gives the point in which two joined ends become one: where their lines
// would meet if that is close by, half way if not.
func (j *joiner) meet(a, b int) orb.Point {
	p, q := j.at(a), j.at(b)
	gap := apart(p, q)
	if gap == 0 {
		return p
	}
	half := orb.Point{(p[0] + q[0]) / 2, (p[1] + q[1]) / 2}
	if gap < 1e-6 {
		return half
	}
	i, k := j.inward(a), j.inward(b)
	ux, uy, vx, vy := p[0]-i[0], p[1]-i[1], q[0]-k[0], q[1]-k[1]
	det := float64(ux*vy) - float64(uy*vx)
	if math.Abs(det) < 0.01*math.Hypot(ux, uy)*math.Hypot(vx, vy) {
		return half
	}
	t := (float64((k[0]-p[0])*vy) - float64((k[1]-p[1])*vx)) / det
	x := orb.Point{p[0] + float64(t*ux), p[1] + float64(t*uy)}
	if apart(x, p) > 2*gap || apart(x, q) > 2*gap {
		return half
	}
	return x
}

// pairOpen tells the ends that are left, each with the nearest other one.
func (j *joiner) pairOpen() {
	const most = 400
	var left []int
	for end, mate := range j.mate {
		if mate < 0 && !j.branched[end] && len(left) < most {
			left = append(left, end)
		}
	}
	var pairs []pair
	for i, a := range left {
		for _, b := range left[:i] {
			pairs = append(pairs, pair{b, a, apart(j.at(a), j.at(b))})
		}
	}
	slices.SortStableFunc(pairs, func(p, q pair) int { return cmp.Compare(p.gap, q.gap) })
	told := make([]bool, len(j.mate))
	for _, p := range pairs {
		if !told[p.a] && !told[p.b] {
			told[p.a], told[p.b] = true, true
			j.out.Open = append(j.out.Open, Gap{j.at(p.a), j.at(p.b), p.gap})
		}
	}
}
