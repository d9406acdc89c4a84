package stack

import (
	"fmt"
	"slices"
	"strings"
)

// reorder exchanges two plies, moves one, or lays all of them in another order,
// each as it lies.
func (m *mending) reorder() {
	m.tried("every exchange of two plies and every move of one")
	if order, words := m.exchange(); order != nil {
		m.take(words, m.inOrder(order), costOfExchange)
	} else if order, words := m.move(); order != nil {
		m.take(words, m.inOrder(order), costOfExchange)
	} else if !m.patches {
		m.shuffled()
	}
}

// shuffled lays the plies in any order, as they lie; of too many sorts of plies,
// in any order in which whole plies lie opposite each other.
func (m *mending) shuffled() {
	s := sorted(m.choices(means{}))
	order := []int(nil)
	if s.remainders() <= mostRemainders {
		m.tried("every order of the plies as they lie")
		order, _, _ = s.order()
	} else {
		m.tried("every order of the plies as they lie in which each lies opposite a whole ply")
		order = m.pairedOrder()
	}
	if order != nil {
		m.take(m.orderWords(order), m.inOrder(order), moved(order))
	}
}

// turnedAndShuffled lays the plies in any order and turned in any way.
func (m *mending) turnedAndShuffled() {
	if m.patches {
		return
	}
	choices := m.choices(means{faces: true, quarters: true})
	s := sorted(choices)
	if s.remainders() > mostTurnedRemainders {
		m.untried("another order with other faces and quarter turns")
		return
	}
	m.tried("every order of the plies" + turnedToo)
	order, lie, ok := s.order()
	if !ok {
		return
	}
	plies := make([]Ply, len(order))
	for i, k := range order {
		plies[i] = choices[k][lie[i]].ply
	}
	words := m.orderWords(order)
	if t := turns(m.inOrder(order), plies); t != "" {
		words += "; " + t
	}
	m.take(words, plies, moved(order)+len(m.plies))
}

func (m *mending) orderWords(order []int) string {
	var names []string
	for _, k := range order {
		names = append(names, m.called(k))
	}
	return "lay the plies in this order from the tool up: " + strings.Join(names, ", ")
}

// moved counts the plies that do not stay in their place.
func moved(order []int) int {
	n := 0
	for i, k := range order {
		if i != k {
			n++
		}
	}
	return n
}

// called names the ply or core at a place.
func (m *mending) called(i int) string {
	if c := m.plies[i].Core; c != nil {
		return "core " + c.Name
	}
	return number(m.plies[i].Number)
}

func (m *mending) inOrder(order []int) []Ply {
	out := make([]Ply, len(order))
	for i, k := range order {
		out[i] = m.plies[k]
	}
	return out
}

// mirrors says whether the plies in an order are a mirror.
func (m *mending) mirrors(order []int) bool {
	low, high := 0, len(order)-1
	a, b := 0, 0 // layers taken of the lowest and of the highest ply
	for {
		for low < len(order) && a == len(m.laid[order[low]]) {
			low, a = low+1, 0
		}
		for high >= 0 && b == len(m.laid[order[high]]) {
			high, b = high-1, 0
		}
		if low > high || low == high && a+b >= len(m.laid[order[low]]) {
			return true
		}
		up := m.laid[order[high]]
		if m.laid[order[low]][a] != up[len(up)-1-b] {
			return false
		}
		a, b = a+1, b+1
	}
}

// exchange finds two plies to exchange, neighbours first, the uppermost of
// equals.
func (m *mending) exchange() ([]int, string) {
	n := len(m.plies)
	order := counting(n)
	for apart := 1; apart < n; apart++ {
		for i := n - 1 - apart; i >= 0; i-- {
			if m.stays(i) || m.stays(i+apart) {
				continue
			}
			order[i], order[i+apart] = i+apart, i
			if m.mirrors(order) {
				return order, fmt.Sprintf("exchange plies %s and %s", m.called(i), m.called(i+apart))
			}
			order[i], order[i+apart] = i, i+apart
		}
	}
	return nil, ""
}

// move finds one ply to move elsewhere.
func (m *mending) move() ([]int, string) {
	n := len(m.plies)
	for i := n - 1; i >= 0; i-- {
		if m.stays(i) {
			continue
		}
		rest := slices.Delete(counting(n), i, i+1)
		for k := n - 1; k >= 0; k-- {
			order := slices.Insert(slices.Clone(rest), k, i)
			if !m.mirrors(order) {
				continue
			}
			if k == 0 {
				return order, fmt.Sprintf("move ply %s to the tool", m.called(i))
			}
			return order, fmt.Sprintf("move ply %s onto ply %s", m.called(i), m.called(order[k-1]))
		}
	}
	return nil, ""
}

func counting(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

// pairedOrder pairs each ply with one that is its mirror as it lies, and lays the
// pairs from outside in; what has no pair must be one ply, its own mirror, in the
// middle.
func (m *mending) pairedOrder() []int {
	waiting := map[string][]int{} // plies without a pair, by their layers read from above
	partner := make([]int, len(m.plies))
	for i, ids := range m.laid {
		partner[i] = -1
		k := key(ids)
		if w := waiting[k]; len(w) > 0 {
			partner[i], partner[w[0]] = w[0], i
			waiting[k] = w[1:]
			continue
		}
		from := key(inward(ids))
		waiting[from] = append(waiting[from], i)
	}
	var low, middle []int
	for i, p := range partner {
		switch {
		case p < 0:
			middle = append(middle, i)
		case p > i:
			low = append(low, i)
		}
	}
	if len(middle) > 1 || len(middle) == 1 && !reads(m.laid[middle[0]]) {
		return nil
	}
	order := append(slices.Clone(low), middle...)
	for i := len(low) - 1; i >= 0; i-- {
		order = append(order, partner[low[i]])
	}
	return order
}
