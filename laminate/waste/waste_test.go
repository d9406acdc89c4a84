package waste

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

func piece(points ...orb.Point) laminate.Piece {
	return laminate.Piece{Shape: geometry.Region{Outer: points}}
}

func rectangle(u, v, w, h float64) laminate.Piece {
	return piece(orb.Point{u, v}, orb.Point{u + w, v}, orb.Point{u + w, v + h}, orb.Point{u, v + h})
}

func stock(v float64) *float64 { return &v }

// handmade is a roll of 100 mm, 90 of them usable, 1000 mm used:
//
//	90 +-------+    +--------+  +------+......|
//	   |  A     \    \   B   |  |  D   |      |     A, B slant by 45°, 30 mm apart
//	   |         \    \  +-+ |  +------+......|     B has a hole of 20 × 30
//	   |          \    \ +-+ |  |  C       |  |     C is 60 high, D 30
//	 0 +-----------+    +----+  +----------+--+
func handmade() laminate.PlanRoll {
	b := piece(orb.Point{420, 0}, orb.Point{700, 0}, orb.Point{700, 90}, orb.Point{330, 90})
	b.Shape.Holes = []orb.Ring{{{600, 30}, {600, 60}, {620, 60}, {620, 30}}}
	return laminate.PlanRoll{Roll: "R", Copy: 1, Fabric: "F", WidthMM: 100, UsableWidthMM: 90, UsedLengthMM: 1000, Pieces: []laminate.Piece{
		piece(orb.Point{0, 0}, orb.Point{390, 0}, orb.Point{300, 90}, orb.Point{0, 90}),
		b, rectangle(710, 0, 280, 60), rectangle(710, 60, 100, 30),
	}}
}

// Every figure by hand: between A and B 30 × 90; in B 20 × 30; between B and the
// narrow pieces 10 × 90; behind C 10 × 60 and behind D 190 × 30 up to the last
// cut; bad edges 10 × 1000.
func TestWasteByHand(t *testing.T) {
	p := laminate.Plan{Rolls: []laminate.PlanRoll{handmade()}}
	want := [kinds]float64{Ends: 2700, Openings: 600, Beside: 900, Cuts: 600 + 5700, BadEdges: 10000}
	got := Of(p)
	if len(got) != 1 || got[0].TotalMM != 1000 || got[0].Lost != want {
		t.Errorf("%+v, want %v", got, want)
	}
	// With a cutting gap of 4 mm, 4 × 90 of each stretch between two pieces.
	p.Rules.CuttingGapMM = 4
	want[Ends], want[Beside], want[Gaps] = 2700-360, 900-360, 720
	if got := Of(p); got[0].Lost != want {
		t.Errorf("with a gap: %v, want %v", got[0].Lost, want)
	}
	if c := got[0]; c.Percent(2700) != 2.7 || c.LengthMM(2700) != 27 {
		t.Errorf("2700 mm² of 100 mm roll are %v %% and %v mm", c.Percent(2700), c.LengthMM(2700))
	}
}

// A gap that tapers from 0 to 20 mm over a height of 90: of a cutting gap of 5
// mm, the lowest quarter is not filled: 67.5 × 5 + 22.5 × 5 / 2.
func TestTaperingGap(t *testing.T) {
	f := free{v0: 0, v1: 90, r1: 20}
	if got, want := f.within(5), 67.5*5+22.5*5/2; math.Abs(got-want) > 1e-9 {
		t.Errorf("%v, want %v", got, want)
	}
	if got := f.within(30); got != f.area() || got != 900 {
		t.Errorf("all of it is %v, want 900", got)
	}
}

// Where the place of the last cut counts, the rests of the rolls before the
// last one and those of no piece are lost too: 500 of the first, 2000 of one
// that is not listed.
func TestEarlierRolls(t *testing.T) {
	a, b := handmade(), handmade()
	a.StockLengthMM, b.StockLengthMM = stock(1500), stock(3000)
	p := laminate.Plan{Rolls: []laminate.PlanRoll{a, b}, Cost: []laminate.Cost{{Fabric: "F", Measure: laminate.ByLastCut, Used: 1500 + 2000 + 1000}}}
	got := Of(p)
	if len(got) != 1 || got[0].TotalMM != 4500 || got[0].Lost[Earlier] != 250000 {
		t.Errorf("%+v", got)
	}
	holdSum(t, got[0])
}

// holdSum says that the shares of a cloth add up to all of it, to 0.1 mm of
// roll.
func holdSum(t *testing.T, c Cloth) {
	t.Helper()
	sum := c.LaidMM2
	for k, v := range c.Lost {
		if v < -0.1*c.WidthMM {
			t.Errorf("kind %d: %v mm² are less than none", k, v)
		}
		sum += v
	}
	if off := c.LengthMM(sum) - c.TotalMM; math.Abs(off) > 0.1 {
		t.Errorf("the shares of %v mm of %s add up to %v mm more", c.TotalMM, c.Fabric, off)
	}
}

// Plans of random pieces: the shares add up, and are those of a second, simple
// computation, which samples heights.
func TestWasteAgainstSampling(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 11))
	for range 60 {
		r := randomRoll(rng)
		p := laminate.Plan{Rolls: []laminate.PlanRoll{r}, Rules: laminate.PlanRules{CuttingGapMM: float64(rng.IntN(2) * 6)}}
		got := Of(p)[0]
		holdSum(t, got)
		want := sampled(r, p.Rules.CuttingGapMM)
		for k := range got.Lost {
			if math.Abs(got.Lost[k]-want[k]) > 0.003*float64(r.UsedLengthMM*r.WidthMM) {
				t.Errorf("kind %d: %v mm², by sampling %v of %v", k, got.Lost[k], want[k], r.UsedLengthMM*r.WidthMM)
			}
		}
	}
}

// randomRoll lays pieces one behind the other, of full width with jagged ends
// or two abreast, some with a hole, on the grid of a plan.
func randomRoll(rng *rand.Rand) laminate.PlanRoll {
	const width = 120.0
	r := laminate.PlanRoll{Fabric: "F", WidthMM: width + 2, UsableWidthMM: width}
	u := 0.0
	for range 2 + rng.IntN(6) {
		if rng.IntN(3) > 0 {
			r.Pieces = append(r.Pieces, jagged(rng, u, 0, width))
		} else {
			v := geometry.Snap(20 + 80*rng.Float64())
			r.Pieces = append(r.Pieces, jagged(rng, u, 0, v), jagged(rng, u, v, width))
		}
		u += 400
	}
	for _, p := range r.Pieces {
		r.UsedLengthMM = max(r.UsedLengthMM, p.Shape.Bounds().Max[0])
	}
	return r
}

func jagged(rng *rand.Rand, u, v0, v1 float64) laminate.Piece {
	at := func(lo, hi float64) float64 { return geometry.Snap(lo + (hi-lo)*rng.Float64()) }
	heights := []float64{v0, v1}
	for range rng.IntN(4) {
		heights = append(heights, at(v0, v1))
	}
	slices.Sort(heights)
	heights = slices.Compact(heights)
	var right, left []orb.Point
	for _, v := range heights {
		right, left = append(right, orb.Point{at(u+300, u+400), v}), append(left, orb.Point{at(u, u+100), v})
	}
	slices.Reverse(left)
	p := piece(append(right, left...)...)
	if rng.IntN(3) == 0 {
		m := (v0 + v1) / 2
		p.Shape.Holes = []orb.Ring{{{u + 200, m - 5}, {u + 190, m}, {u + 200, m + 5}, {u + 230, m}}}
	}
	return p
}

// sampled cuts a roll at many heights into stretches of material and of nothing.
func sampled(r laminate.PlanRoll, gap float64) [kinds]float64 {
	type run struct {
		from, to float64
		piece    int
	}
	var out [kinds]float64
	const n = 4000
	high := r.UsableWidthMM / n
	for k := range n {
		v := (float64(k) + 0.5) * high
		runs := []run{{0, 0, -1}, {r.UsedLengthMM, r.UsedLengthMM, -1}}
		for i, p := range r.Pieces {
			var us []float64
			for _, ring := range p.Shape.Rings() {
				for j, a := range ring {
					if b := ring[(j+1)%len(ring)]; (a[1] < v) != (b[1] < v) {
						us = append(us, a[0]+(b[0]-a[0])*(v-a[1])/(b[1]-a[1]))
					}
				}
			}
			slices.Sort(us)
			for j := 0; j+1 < len(us); j += 2 {
				runs = append(runs, run{us[j], us[j+1], i})
			}
		}
		slices.SortFunc(runs, func(a, b run) int {
			if a.from != b.from {
				return int(math.Copysign(1, a.from-b.from))
			}
			return int(math.Copysign(1, a.to-b.to))
		})
		for j := 0; j+1 < len(runs); j++ {
			a, b := runs[j], runs[j+1]
			free := b.from - a.to
			narrow := func(i int) bool { _, h := r.Pieces[i].Shape.Size(); return h < r.UsableWidthMM-0.01 }
			switch {
			case a.piece < 0 || b.piece < 0:
				out[Cuts] += free * high
			case a.piece == b.piece:
				out[Openings] += free * high
			default:
				kind := Ends
				if narrow(a.piece) || narrow(b.piece) {
					kind = Beside
				}
				out[Gaps] += min(free, gap) * high
				out[kind] += (free - min(free, gap)) * high
			}
		}
	}
	out[BadEdges] = (r.WidthMM - r.UsableWidthMM) * r.UsedLengthMM
	return out
}
