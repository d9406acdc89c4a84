package check

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/laminate"
)

// Plans that no program made: judged to the end, and found unsound.
func TestHostilePlans(t *testing.T) {
	for name, spoil := range map[string]func(p *laminate.Plan){
		"the same strip many times": func(p *laminate.Plan) {
			y := &p.Plies[0]
			for i := range 3000 {
				s := y.Strips[0]
				s.ID = fmt.Sprintf("P01-S%d", i+10)
				y.Strips = append(y.Strips, s)
			}
		},
		"the same piece many times": func(p *laminate.Plan) {
			p.Rules.CuttingGapMM = 5
			r := &p.Rolls[0]
			for range 3000 {
				r.Pieces = append(r.Pieces, r.Pieces[0])
			}
		},
		"a comb of an outline": func(p *laminate.Plan) {
			var ring orb.Ring
			for i := range 2000 {
				ring = append(ring, orb.Point{float64(i), float64(i%2) * 700})
			}
			p.Plies[0].Strips[0].Shape.Outer = append(ring, orb.Point{2000, -1}, orb.Point{0, -1})
		},
		"a star of crossing edges": func(p *laminate.Plan) {
			var ring orb.Ring
			for i := range 999 {
				s, c := math.Sincos(2 * math.Pi * float64(i*400%999) / 999)
				ring = append(ring, orb.Point{500 + 300*c, 500 + 300*s})
			}
			p.Part.Net.Outer = ring
		},
		"all on one line": func(p *laminate.Plan) {
			for i := range p.Plies {
				p.Plies[i].AngleDeg = 0
			}
		},
		"no plies":   func(p *laminate.Plan) { p.Plies = nil },
		"no rolls":   func(p *laminate.Plan) { p.Rolls = nil },
		"no fabrics": func(p *laminate.Plan) { p.Fabrics = nil },
		"no strips":  func(p *laminate.Plan) { p.Plies[0].Strips = nil },
		"a point far out": func(p *laminate.Plan) {
			p.Plies[0].Strips[0].Shape.Outer[0] = orb.Point{-999999, 999999}
		},
	} {
		t.Run(name, func(t *testing.T) {
			p := copyOf(t, lshape(t))
			spoil(&p)
			rs := Plan(p)
			if Sound(rs) {
				t.Error("found sound")
			}
			for _, r := range rs {
				if n := len(r.Text); n > 2000 {
					t.Errorf("%s: %d bytes of text", r.Rule, n)
				}
				if !r.Pass && (r.Worst == nil || !strings.HasPrefix(r.Text, "DO NOT")) {
					t.Errorf("%s: %q, worst %v", r.Rule, r.Text, r.Worst)
				}
			}
		})
	}
}

// A sweep that would need more work than any cloth is given up, and said.
func TestTooIntricate(t *testing.T) {
	var edges []edge
	for i := range 1000 { // every edge is met by every level
		edges = append(edges, addEdges(nil, shape{{{float64(i), float64(i) * 1e-3}, {float64(i) + 0.5, 1e5 + float64(i)}}}, 0)...)
	}
	nothing := func([]int32) (kind, int32, int32) { return sound, 0, 0 }
	for limit, want := range map[int]bool{10_000: false, work: true} {
		s := &sweeper{judge: nothing, limit: limit, in: make([]bool, 1), open: map[troubleKey]stretch{}}
		for i := range edges {
			s.edges = append(s.edges, &edges[i])
		}
		if got := s.run(levelsOf(edges)); got != want {
			t.Errorf("limit %d: to the end %v, want %v after %d", limit, got, want, s.looked)
		}
	}
	f := &finding{rule: RuleCoverage, opening: doNotCut}
	tooIntricate(f, 3, region(box4(0, 0, 1, 1)))
	if r := f.result(); r.Pass || !strings.Contains(r.Text, "ply 3: the outlines are too intricate") {
		t.Error(r.Text)
	}
}
