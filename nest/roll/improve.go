package roll

import "slices"

// improve shortens a chain by turning runs of it end for end and by moving
// short runs elsewhere, until nothing helps or the moves are used up. It alters
// the chain it is given.
func (g *linkage) improve(chain []link, moves int) []link {
	for better := true; better && moves > 0; {
		better = false
		if g.turn {
			better = g.reverseRuns(chain, &moves)
		}
		var moved bool
		chain, moved = g.moveRuns(chain, &moves)
		better = better || moved
	}
	return chain
}

// joint gives what is lost before position i of a chain: between two pieces,
// or at an outer end.
func (g *linkage) joint(chain []link, i int) float32 {
	switch i {
	case 0:
		return g.ends[chain[0].rear()].Most()
	case len(chain):
		return g.ends[chain[i-1].front()].Most()
	}
	return g.step(chain[i-1], chain[i])
}

// meeting gives what is lost where end a meets end b; -1 stands for the outside.
func (g *linkage) meeting(a, b int32) float32 {
	switch {
	case a < 0:
		return g.ends[b].Most()
	case b < 0:
		return g.ends[a].Most()
	}
	return g.between(a, b)
}

// before and after give the ends that border position i; -1 outside the chain.
func before(chain []link, i int) int32 {
	if i == 0 {
		return -1
	}
	return chain[i-1].front()
}

func after(chain []link, i int) int32 {
	if i == len(chain) {
		return -1
	}
	return chain[i].rear()
}

const tiny = 0.5 // µm: less is no gain

// reverseRuns turns runs i…j-1 of the chain end for end where that helps.
func (g *linkage) reverseRuns(chain []link, moves *int) bool {
	better := false
	for i := 0; i < len(chain); i++ {
		left := g.joint(chain, i)
		for j := i + 1; j <= len(chain) && *moves > 0; j++ {
			*moves--
			if i == 0 && j == len(chain) {
				continue
			}
			now := left + g.joint(chain, j)
			then := g.meeting(before(chain, i), chain[j-1].front()) + g.meeting(chain[i].rear(), after(chain, j))
			if then < now-tiny {
				reverse(chain[i:j])
				left, better = g.joint(chain, i), true
			}
		}
	}
	return better
}

// reverse turns a run end for end.
func reverse(run []link) {
	slices.Reverse(run)
	for k := range run {
		run[k].way = 1 - run[k].way
	}
}

// moveRuns takes runs of one to three pieces out of the chain and puts them
// where they cost least.
func (g *linkage) moveRuns(chain []link, moves *int) ([]link, bool) {
	better := false
	for size := 1; size <= 3; size++ {
		for i := 0; i+size <= len(chain) && len(chain) > size && *moves > 0; i++ {
			if next, ok := g.moveRun(chain, i, size, moves); ok {
				chain, better = next, true
			}
		}
	}
	return chain, better
}

func (g *linkage) moveRun(chain []link, i, size int, moves *int) ([]link, bool) {
	run := slices.Clone(chain[i : i+size])
	freed := g.joint(chain, i) + g.joint(chain, i+size) - g.meeting(before(chain, i), after(chain, i+size))
	rest := slices.Concat(chain[:i], chain[i+size:])
	best, at, turned := float32(-tiny), -1, false
	for k := 0; k <= len(rest); k++ {
		*moves--
		if k == i {
			continue
		}
		a, b, here := before(rest, k), after(rest, k), g.joint(rest, k)
		if d := g.meeting(a, run[0].rear()) + g.meeting(run[size-1].front(), b) - here - freed; d < best {
			best, at, turned = d, k, false
		}
		if !g.turn {
			continue
		}
		if d := g.meeting(a, run[size-1].front()) + g.meeting(run[0].rear(), b) - here - freed; d < best {
			best, at, turned = d, k, true
		}
	}
	if at < 0 {
		return chain, false
	}
	if turned {
		reverse(run)
	}
	return slices.Concat(rest[:at], run, rest[at:]), true
}
