package code

import (
	"slices"
	"strconv"
	"strings"
)

// String writes a code in ASCII: [0_2/+-45/90~]s.
func (c Code) String() string {
	return "[" + spell(c.Terms) + "]" + repeatAfter(c.Times, c.Mirrored, c.Total)
}

func repeatAfter(times int, mirrored, total bool) string {
	text := ""
	if times > 1 {
		text = strconv.Itoa(times)
	}
	switch {
	case mirrored:
		text += "s"
	case total:
		text += "T"
	}
	return text
}

func spell(terms []Term) string {
	words := make([]string, len(terms))
	for i, t := range terms {
		words[i] = t.spelt()
	}
	return strings.Join(words, "/")
}

func (t Term) spelt() string {
	if t.Group != nil {
		return "(" + spell(t.Group) + ")" + repeatAfter(t.Times, t.Mirrored, false)
	}
	text := map[Pair]string{PlusMinus: "+-", MinusPlus: "-+"}[t.Pair] + digits(t.Angle)
	if t.Woven {
		text += "f"
	}
	if t.Middle {
		text += "~"
	}
	if t.Times > 1 {
		text += "_" + strconv.Itoa(t.Times)
	}
	return text
}

// Write gives a short code that makes these plies: mirrored where they are,
// else repeated where they are. Nothing is written for no plies.
func Write(plies []Ply) Code {
	n := len(plies)
	half := (n + 1) / 2
	switch {
	case n == 0:
		return Code{Times: 1}
	case alike(plies):
		return Code{Terms: terms(plies), Times: 1, Total: true}
	case isMirrored(plies) && n%2 == 0:
		p, times := repeated(plies[:half])
		return Code{Terms: terms(p), Times: times, Mirrored: true}
	case isMirrored(plies):
		middle := Term{Angle: plies[half-1].Angle, Woven: plies[half-1].Woven, Middle: true, Times: 1}
		return Code{Terms: append(terms(plies[:half-1]), middle), Times: 1, Mirrored: true}
	}
	p, times := repeated(plies)
	return Code{Terms: terms(p), Times: times, Total: true}
}

func alike(plies []Ply) bool {
	return !slices.ContainsFunc(plies, func(p Ply) bool { return p != plies[0] })
}

func isMirrored(plies []Ply) bool {
	for i, p := range plies {
		if p != plies[len(plies)-1-i] {
			return false
		}
	}
	return true
}

// repeated gives the shortest list of at least two plies that makes these when
// laid several times.
func repeated(plies []Ply) (once []Ply, times int) {
	n := len(plies)
	for l := 2; l <= n/2; l++ {
		if n%l != 0 {
			continue
		}
		same := true
		for i := l; i < n && same; i++ {
			same = plies[i] == plies[i-l]
		}
		if same {
			return plies[:l], n / l
		}
	}
	return plies, 1
}

// terms writes a list: equal plies in a row as one, pairs with one sign.
func terms(plies []Ply) []Term {
	var out []Term
	for i := 0; i < len(plies); {
		if n := pairs(plies[i:]); n > 0 {
			t := pairOf(plies[i])
			if n > 1 {
				t = Term{Group: []Term{t}, Times: n}
			}
			out = append(out, t)
			i += 2 * n
			continue
		}
		n := run(plies[i:])
		out = append(out, Term{Angle: plies[i].Angle, Woven: plies[i].Woven, Times: n})
		i += n
	}
	return out
}

// run counts how many plies from the first are equal to it.
func run(plies []Ply) int {
	n := 1
	for n < len(plies) && plies[n] == plies[0] {
		n++
	}
	return n
}

// pairs counts how often the list begins with the same pair of opposite angles.
func pairs(plies []Ply) int {
	a := plies[0].Angle
	if a == 0 || a == 90 || a == -90 || plies[0].Woven {
		return 0
	}
	n := 0
	for 2*n+1 < len(plies) && plies[2*n] == plies[0] && plies[2*n+1] == (Ply{opposite(a), false}) {
		n++
	}
	if n > 0 && 2*n+1 < len(plies) && plies[2*n] == plies[2*n+1] && plies[2*n-1] == plies[2*n] {
		n-- // leave the run that begins inside the last pair whole
	}
	return n
}

func pairOf(first Ply) Term {
	if first.Angle < 0 {
		return Term{Angle: -first.Angle, Pair: MinusPlus, Times: 1}
	}
	return Term{Angle: first.Angle, Pair: PlusMinus, Times: 1}
}
