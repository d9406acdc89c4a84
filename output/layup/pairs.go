package layup

import (
	"github.com/paulmach/orb"

	"stripwright/laminate"
)

// Pair is two plies whose joints count against each other, with the nearest of
// them: MM square to the upper ply's joint, At midway between both.
type Pair struct {
	Lower, Upper int // ply numbers
	MM           float64
	At           orb.Point
}

// Pairs lists every two plies with joints side by side that count under the rule
// of plies between, by the upper ply and then from the nearest lower one down.
func Pairs(p laminate.Plan) []Pair {
	rules, runs := rulesOf(p), runsOf(p)
	var out []Pair
	for i := range p.Plies {
		for _, j := range reach(p, rules, i) {
			if pair, ok := nearestPair(betweenOf(p, rules, j, i), runs[i], runs[j]); ok {
				pair.Lower, pair.Upper = p.Plies[j].Ply, p.Plies[i].Ply
				out = append(out, pair)
			}
		}
	}
	return out
}

func nearestPair(b between, upper, lower []run) (best Pair, found bool) {
	for _, a := range upper {
		for _, c := range lower {
			if mm, at, ok := b.apart(a, c); ok && (!found || mm < best.MM) {
				best, found = Pair{MM: mm, At: at}, true
			}
		}
	}
	return best, found
}
