package stack

import (
	"slices"

	"stripwright/geometry"
)

// balanced looks for cures of a stack that is out of balance: plies turned, a
// mirrored pair of plies turned, one more ply, a mirrored pair more. A mirror
// must stay one.
func (m *mending) balanced() {
	if !m.turnedToBalance() {
		m.addedToBalance()
	}
	m.tried("for balance: each ply and each mirrored pair turned over or by a quarter, one more ply or a mirrored pair at the angles of the schedule and their opposites")
}

// keepBalanced keeps a cure if it balances the stack and leaves a mirror one.
func (m *mending) keepBalanced(words string, plies []Ply, cost int) bool {
	c := Cure{Words: words, Plies: plies, After: Judge(plies), Cost: cost}
	if !c.After.Balanced || m.now.Mirror && !c.After.Mirror {
		return false
	}
	m.out.Balances = append(m.out.Balances, c)
	return true
}

// turnedToBalance turns one ply, or two that lie opposite each other.
func (m *mending) turnedToBalance() bool {
	choices := m.choices(means{faces: true, quarters: true, any: true})
	n := len(choices)
	for i := n - 1; i >= 0; i-- {
		for _, v := range choices[i][1:] {
			plies := slices.Clone(m.plies)
			plies[i] = v.ply
			if len(leaning(Layers(plies))) == 0 && m.keepBalanced(turns(m.plies, plies), plies, v.cost) {
				return true
			}
		}
	}
	for i := 0; i < n/2; i++ {
		for _, v := range choices[i] {
			for _, w := range choices[n-1-i] {
				plies := slices.Clone(m.plies)
				plies[i], plies[n-1-i] = v.ply, w.ply
				if len(leaning(Layers(plies))) == 0 && m.keepBalanced(turns(m.plies, plies), plies, v.cost+w.cost) {
					return true
				}
			}
		}
	}
	return false
}

// addedToBalance adds one ply, or a pair that lies opposite each other, where
// the middle is nearest.
func (m *mending) addedToBalance() {
	angles := slices.Clone(m.angles)
	for _, a := range m.angles {
		if o := geometry.NewAngle(-a.Degrees()); !slices.Contains(angles, o) {
			angles = append(angles, o)
		}
	}
	n := len(m.plies)
	extra := m.extra(angles)
	for _, p := range extra {
		if len(leaning(Layers(append(slices.Clone(m.plies), p)))) > 0 {
			continue
		}
		for at := n; at >= 0; at-- {
			if m.keepBalanced(m.addWords(p, at), slices.Insert(slices.Clone(m.plies), at, p), costOfPly) {
				return
			}
		}
	}
	for _, p := range extra {
		for _, q := range extra {
			if len(leaning(Layers(append(slices.Clone(m.plies), p, q)))) > 0 {
				continue
			}
			for at := n / 2; at >= 0; at-- {
				plies := slices.Insert(slices.Insert(slices.Clone(m.plies), n-at, q), at, p)
				words := m.addWords(p, at) + " and one of " + m.newPly(q) + " " + m.after(n-at)
				if m.keepBalanced(words, plies, 2*costOfPly) {
					return
				}
			}
		}
	}
}
