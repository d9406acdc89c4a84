package stack

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stripwright/geometry"
)

func wordsOf(cures []Cure) []string {
	var out []string
	for _, c := range cures {
		out = append(out, c.Words)
	}
	return out
}

// Stacks whose least cure follows by hand.
func TestMend(t *testing.T) {
	for _, c := range []struct {
		cloth       Cloth
		code, faces string
		first       string
	}{
		{ud, "[0/90]2", "", "exchange plies 3 and 4"},
		{ud, "[0/90]", "", "add one ply of ud at 0° after ply 2"},
		{ud, "[0/0/90]", "", "exchange plies 2 and 3"},
		{ud, "[0_3/90/0_2/45/0_3]", "", "lay ply 7 at 90°"},
		{ud, "[90/0/45/45/0/0/90/0]", "", "move ply 8 onto ply 2"},
		{zeroNine, "[0_2]", "", "lay ply 2 face down"},
		{zeroNine, "[0_6]", "", "lay plies 4-6 face down"},
		{zeroNine, "[0_6]", "uddddd", "lay plies 4 and 5 face up"},
		{zeroNine, "[0_4]", "uddd", "lay ply 3 face up"},
		{biax, "[0]s", "", "turn ply 2 by a quarter, to 90°"},
		{biax, "[0]", "", "add one ply of biax at 0° after ply 1, and turn ply 1 by a quarter, to 90°"},
		{biax, "[0/90]2s", "", "move ply 8 onto ply 4"},
		{triax, "[0/0]", "", ""},
	} {
		plies := of(t, c.cloth, c.code, c.faces)
		m := Mend(plies, []Cloth{c.cloth})
		got := wordsOf(m.Cures)
		if c.first == "" && len(got) > 0 || c.first != "" && (len(got) == 0 || got[0] != c.first) {
			t.Errorf("%s %s: %q, want %q", c.cloth.Name, c.code, got, c.first)
		}
		if len(m.Tried) == 0 {
			t.Errorf("%s %s: nothing is said to have been tried", c.cloth.Name, c.code)
		}
	}
}

// Two triaxial plies: nothing of this cloth mends them, the other hand does.
func TestTriaxialNeedsTheOtherHand(t *testing.T) {
	m := Mend(of(t, triax, "[0_2]", ""), []Cloth{triax})
	if len(m.Cures) > 0 || m.Hand == nil {
		t.Fatalf("%q, %v", wordsOf(m.Cures), m.Hand)
	}
	want := "cut ply 2 from the opposite-hand cloth of triax (triaxial, 0°, -45°, 45° from face to back) and lay it face down at 0°"
	if m.Hand.Words != want {
		t.Errorf("%q", m.Hand.Words)
	}
	if m.Closer == nil || m.Closer.Words != "lay ply 1 face down" {
		t.Errorf("closer %+v", m.Closer)
	}
}

// nine is the panel of two woven faces of 200 g/m² and seven triaxial plies of
// 800 g/m², the upper three of them face down.
func nine(c Cloth) []Ply {
	var out []Ply
	for i := range 9 {
		p := Ply{Number: i + 1, Cloth: c, Down: i > 4 && i < 8}
		if i == 0 || i == 8 {
			p.Cloth = woven
		}
		out = append(out, p)
	}
	return out
}

// The nine-ply panel (common practice, no source): close to symmetric, not
// symmetric, and nothing of this cloth mends it. Which layers and how much is
// worked out by hand: from the tool the layers run w | -+0 ×4 | the middle ply
// -+0 | 0-+ ×3 | w, so that 0° lies opposite 0° but for the middle ply, and
// each +45 opposite +45's place holds -45.
func TestNinePlies(t *testing.T) {
	plies := nine(triax)
	j := Judge(plies)
	if j.Mirror || !j.Couples() || j.Coupling > Near || !j.Balanced {
		t.Fatalf("symmetric %v, coupling %v, balanced %v", j.Mirror, j.Coupling, j.Balanced)
	}
	var odd []string
	for _, o := range j.Odd {
		odd = append(odd, j.Layers[o.Low].name()+" "+j.Layers[o.Low].lie()+" | "+j.Layers[o.High].name()+" "+j.Layers[o.High].lie())
	}
	want := []string{
		"ply 2, layer 3 of its cloth -45° | ply 8, layer 3 of its cloth 45°",
		"ply 2, layer 2 of its cloth 45° | ply 8, layer 2 of its cloth -45°",
		"ply 3, layer 3 of its cloth -45° | ply 7, layer 3 of its cloth 45°",
		"ply 3, layer 2 of its cloth 45° | ply 7, layer 2 of its cloth -45°",
		"ply 4, layer 3 of its cloth -45° | ply 6, layer 3 of its cloth 45°",
		"ply 4, layer 2 of its cloth 45° | ply 6, layer 2 of its cloth -45°",
		"ply 5, layer 3 of its cloth -45° | ply 5, layer 1 of its cloth 0°",
	}
	if !slices.Equal(odd, want) {
		t.Errorf("odd pairs:\n%s", strings.Join(odd, "\n"))
	}
	// B against A and D in one number, summed layer by layer here once more.
	if got, want := j.Coupling, couplingByLayers(j.Layers); math.Abs(got-want) > 1e-12 {
		t.Errorf("coupling %v, summed %v", got, want)
	}
	all := Judge(slices.Concat(plies[:5], of(t, triax, "[0_3]", ""), plies[8:]))
	if all.Coupling < 1.5*j.Coupling {
		t.Errorf("turning over the upper half makes %v of %v", j.Coupling, all.Coupling)
	}
	m := Mend(plies, []Cloth{woven, triax})
	if len(m.Cures) > 0 {
		t.Errorf("mended by %q", wordsOf(m.Cures))
	}
	// Seven are an odd number: the middle one would have to be its own mirror, so
	// the other hand alone does not help. With one ply more or less it does.
	if m.Hand == nil || !strings.Contains(m.Hand.Words, "add one ply of the opposite-hand cloth of triax at 0°, face down, after ply 8") || !strings.Contains(m.Hand.Words, "opposite-hand cloth") {
		t.Errorf("mended by %+v", m.Hand)
	}
	six := slices.Concat(plies[:4], plies[5:])
	if m := Mend(six, []Cloth{woven, triax}); len(m.Cures) > 0 || m.Hand == nil || !strings.Contains(m.Hand.Words, "cut plies 6-8 from the opposite-hand cloth") {
		t.Errorf("six: %q, %+v", wordsOf(m.Cures), m.Hand)
	}
}

// couplingByLayers sums ‖B‖/√(‖A‖‖D‖) pair by pair: two fibres at an angle φ
// have the product cos⁴ φ.
func couplingByLayers(layers []Layer) float64 {
	type fibre struct{ angle, a, b, d float64 }
	var all []fibre
	for _, l := range layers {
		for _, f := range l.Lies {
			t, z := l.ThicknessMM*f.GSM/l.GSM, (l.HighMM+l.LowMM)/2
			second := t * (z*z + l.ThicknessMM*l.ThicknessMM/12)
			all = append(all, fibre{f.Angle.Degrees() * math.Pi / 180, t, t * z, second})
		}
	}
	var a, b, d float64
	for _, f := range all {
		for _, g := range all {
			p := math.Pow(math.Cos(f.angle-g.angle), 4)
			a, b, d = a+f.a*g.a*p, b+f.b*g.b*p, d+f.d*g.d*p
		}
	}
	return math.Sqrt(b) / math.Sqrt(math.Sqrt(a)*math.Sqrt(d))
}

// The sum by lamination parameters is the sum pair by pair.
func TestCouplingTwoWays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plies := slices.DeleteFunc(drawn(t, 1, 8), func(p Ply) bool { return p.Cloth.Form == "mat" })
		if len(plies) == 0 {
			t.Skip()
		}
		layers := Layers(plies)
		if _, got := moments(layers); math.Abs(got-couplingByLayers(layers)) > 1e-7 {
			t.Fatalf("%v and %v", got, couplingByLayers(layers))
		}
	})
}

// What is out of balance is balanced without losing the mirror.
func TestBalance(t *testing.T) {
	for _, c := range []struct {
		cloth Cloth
		code  string
		first string
	}{
		{ud, "[0/45/90]s", "add one ply of ud at -45° after ply 3 and one of ud at -45° after ply 3"},
		{ud, "[0/45/0]", ""},
		{ud, "[0/45]", "add one ply of ud at -45° after ply 2"},
		{biax, "[30]", "add one ply of biax at -30° after ply 1"},
	} {
		m := Mend(of(t, c.cloth, c.code, ""), []Cloth{c.cloth})
		got := wordsOf(m.Balances)
		if c.first != "" && (len(got) == 0 || got[0] != c.first) {
			t.Errorf("%s %s: %q", c.cloth.Name, c.code, got)
		}
	}
}

// The fold against trying everything, on small stacks: it finds a cure where
// there is one, and none cheaper exists.
func TestFoldAgainstTryingAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plies := drawn(t, 1, 5)
		by := means{faces: true, quarters: true, any: rapid.Bool().Draw(t, "any"), hand: rapid.Bool().Draw(t, "hand")}
		m := &mending{plies: plies, ids: names{}}
		choices := m.choices(by)
		best := never
		var try func(i, cost int, ids []int)
		try = func(i, cost int, ids []int) {
			if i == len(choices) {
				if cost < best && reads(ids) {
					best = cost
				}
				return
			}
			for _, v := range choices[i] {
				try(i+1, cost+v.cost, append(slices.Clone(ids), v.ids...))
			}
		}
		try(0, 0, nil)
		chosen, cost, ok := folded(choices)
		if ok != (best < never) || ok && cost != best {
			t.Fatalf("fold finds %v at %d, the least is %d", ok, cost, best)
		}
		if ok && !Judge(pliesOf(chosen)).Mirror {
			t.Fatal("the fold's stack is no mirror")
		}
	})
}

// Orders against the plain sequence.
func TestMirrorsOfAnOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		half := drawn(t, 1, 3)
		plies := slices.Concat(half, mirrored(half))
		if rapid.Bool().Draw(t, "any") {
			plies = drawn(t, 1, 6)
		}
		m := &mending{plies: plies, ids: names{}}
		for _, p := range plies {
			m.laid = append(m.laid, m.ids.of(p))
		}
		order := rapid.Permutation(counting(len(plies))).Draw(t, "order")
		var seq []int
		for _, k := range order {
			seq = append(seq, m.laid[k]...)
		}
		if m.mirrors(order) != reads(seq) {
			t.Fatalf("%v: %v", order, reads(seq))
		}
		if any := m.pairedOrder(); any != nil && !m.mirrors(any) {
			t.Fatalf("order %v is no mirror", any)
		}
	})
}

// Every cure is what it says: a mirror, of the same plies but for what is
// added, and balanced where the stack was told to be.
func TestCuresHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plies := drawn(t, 1, 7)
		m := Mend(plies, []Cloth{plies[0].Cloth, ud})
		for _, c := range m.Cures {
			if !Judge(c.Plies).Mirror || c.Words == "" || len(c.Plies) < len(plies) || len(c.Plies) > len(plies)+1 {
				t.Fatalf("%q: %s", c.Words, directions(Layers(c.Plies)))
			}
		}
		if m.Hand != nil && (!Judge(m.Hand.Plies).Mirror || len(m.Cures) > 0) {
			t.Fatalf("%q", m.Hand.Words)
		}
		for _, c := range m.Balances {
			if j := Judge(c.Plies); !j.Balanced || Judge(plies).Mirror && !j.Mirror {
				t.Fatalf("%q", c.Words)
			}
		}
		if m.Closer != nil && m.Closer.After.Coupling >= Judge(plies).Coupling {
			t.Fatalf("%q is no closer", m.Closer.Words)
		}
	})
}

// The search takes on 200 plies and no more.
func TestMendLarge(t *testing.T) {
	var plies []Ply
	for i := range 200 {
		plies = append(plies, Ply{Number: i + 1, Cloth: zeroNine, Angle: geometry.Angle([]float64{0, 45, 90}[i%3])})
	}
	m := Mend(plies, []Cloth{zeroNine, ud, triax})
	if len(m.Tried) == 0 || len(m.Untried) == 0 {
		t.Errorf("tried %q, untried %q", m.Tried, m.Untried)
	}
	t.Logf("%q", wordsOf(m.Cures))
	if m := Mend(append(plies, plies[0]), nil); len(m.Tried) > 0 || len(m.Untried) == 0 {
		t.Errorf("201 plies: tried %q", m.Tried)
	}
}

func BenchmarkMendNine(b *testing.B) {
	for b.Loop() {
		Mend(nine(triax), []Cloth{woven, triax})
	}
}

func BenchmarkMend200(b *testing.B) {
	var plies []Ply
	for i := range 200 {
		plies = append(plies, Ply{Number: i + 1, Cloth: triax, Angle: geometry.Angle([]float64{0, 45, 90}[i%3])})
	}
	for b.Loop() {
		Mend(plies, []Cloth{triax, woven, ud})
	}
}

// Four sorts of nine plies: the most orders that are searched.
func BenchmarkMendManyOrders(b *testing.B) {
	var plies []Ply
	for i := range 36 {
		plies = append(plies, Ply{Number: i + 1, Cloth: []Cloth{triax, heavy}[i%2], Angle: geometry.Angle([]float64{0, 45}[i/2%2])})
	}
	for b.Loop() {
		Mend(plies, []Cloth{triax, heavy})
	}
}

// What mends a patch leaves the plies of the whole part as they are.
func TestMendPatchKeepsTheRest(t *testing.T) {
	patched := 0
	rapid.Check(t, func(t *rapid.T) {
		half := drawn(t, 1, 3)
		plies := slices.Concat(half, mirrored(half))
		at := rapid.IntRange(0, len(plies)).Draw(t, "at")
		for _, p := range drawn(t, 1, 2) {
			p.Patch = true
			plies = slices.Insert(plies, at, p)
		}
		for i := range plies {
			plies[i].Number = i + 1
		}
		rest := func(all []Ply) (out []Ply) {
			for _, p := range all {
				if !p.Patch && p.Number > 0 {
					out = append(out, p)
				}
			}
			return out
		}
		m := MendPatch(plies, []Cloth{plies[at].Cloth, ud})
		for _, c := range slices.Concat(m.Cures, m.Balances) {
			patched++
			was, now := rest(plies), rest(c.Plies)
			if directions(Layers(was)) != directions(Layers(now)) || len(was) != len(now) || !Judge(now).Mirror {
				t.Fatalf("%q changes the whole part", c.Words)
			}
			for i := range was {
				if was[i].Number != now[i].Number {
					t.Fatalf("%q changes the order of the whole part", c.Words)
				}
			}
		}
	})
	if patched == 0 {
		t.Error("no patch was ever mended")
	}
}

// A patch of [0/90] in the middle of [0/45/-45/90]s, by hand: one more ply at 0
// makes 0 90 0, its own mirror.
func TestMendPatch(t *testing.T) {
	plies := of(t, ud, "[0/45/-45/90/0/90/90/-45/45/0]", "")
	plies[4].Patch, plies[5].Patch = true, true
	m := MendPatch(plies, []Cloth{ud})
	if len(m.Cures) == 0 || m.Cures[0].Words != "add one ply of ud at 0° after ply 6" {
		t.Errorf("%q", wordsOf(m.Cures))
	}
}
