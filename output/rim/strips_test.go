package rim

import (
	"math"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"

	"stripwright/laminate"
	"stripwright/output/internal/handmade"
	"stripwright/output/layup"
	"stripwright/output/page"
	"stripwright/output/sheet"
)

var plans = map[string]func() laminate.Plan{
	"hatch": handmade.Hatch, "disc": handmade.Disc, "inch": handmade.Inch, "batten": handmade.Batten,
	"tape": func() laminate.Plan { return handmade.Plate(4, 1500, 700, 60) },
}

// All stretches together are as long as the outline (measured by orb), each ends
// where the next begins, and the pieces of each leave nothing out.
func TestPiecesCoverTheEdge(t *testing.T) {
	for name, plan := range plans {
		p := plan()
		line := layup.NetLine(p.Part)
		ring := append(orb.Ring{}, p.Part.Net.Outer...)
		ring = append(ring, ring[0])
		total := 0.0
		stretches := line.Stretches()
		for i, s := range stretches {
			total += s.Long
			next := stretches[(i+1)%len(stretches)]
			if end := s.Points[len(s.Points)-1]; planar.Distance(end, next.Points[0]) > 1e-6 {
				t.Errorf("%s: %s ends at %v, %s begins at %v", name, s.Name(), end, next.Name(), next.Points[0])
			}
			if long := planar.Length(orb.LineString(s.Points)); math.Abs(long-s.Long) > 1e-6 {
				t.Errorf("%s: %s is %v long, its points %v", name, s.Name(), s.Long, long)
			}
			at := 0.0
			for _, one := range pieces(p, line, s) {
				if one.from != at || one.to <= one.from || one.to-one.from > longest+1e-9 {
					t.Errorf("%s: piece %d of %s runs from %v to %v after %v", name, one.number, s.Name(), one.from, one.to, at)
				}
				at = one.to
			}
			if at != s.Long {
				t.Errorf("%s: the pieces of %s end at %v of %v", name, s.Name(), at, s.Long)
			}
		}
		if want := planar.Length(ring); math.Abs(total-want) > 1e-6 {
			t.Errorf("%s: stretches %v mm, the outline %v mm", name, total, want)
		}
	}
}

// Every joint that meets the part has both its ticks, each at the place that the
// sheets measure.
func TestEveryJointHasItsTicks(t *testing.T) {
	for name, plan := range plans {
		p := plan()
		line := layup.NetLine(p.Part)
		names := map[string]int{}
		for _, s := range line.Stretches() {
			for _, one := range pieces(p, line, s) {
				for _, tick := range one.ticks {
					for _, words := range strings.Split(tick.words, ", ") {
						names[words]++
					}
				}
			}
			for _, tick := range line.Ticks(p, s) {
				m := layup.Measure(p)[tick.Ply-1].Joints[tick.Joint-1]
				at := between(s.Points, 0, tick.AlongMM)
				end := at[len(at)-1]
				if planar.Distance(end, m.Ends[0].At) > 1e-6 && planar.Distance(end, m.Ends[1].At) > 1e-6 {
					t.Errorf("%s: ply %d J%d at %v of %s is not where it is measured", name, tick.Ply, tick.Joint, tick.AlongMM, s.Name())
				}
			}
		}
		for i, measured := range layup.Measure(p) {
			for _, m := range measured.Joints {
				want := 2
				if m.InTrim {
					want = 0
				}
				if words := sheet.Number(float64(i+1), 0) + " " + m.Name; names[words] != want {
					t.Errorf("%s: %q stands on %d ticks, want %d", name, words, names[words], want)
				}
			}
		}
	}
}

// No tick runs through the words of another, and no words lie over others.
func TestTicksKeepClearOfWords(t *testing.T) {
	for name, plan := range plans {
		p := plan()
		line := layup.NetLine(p.Part)
		for _, s := range line.Stretches() {
			for _, one := range pieces(p, line, s) {
				for i, a := range one.ticks {
					for k, b := range one.ticks {
						from, to := b.along+0.8, b.along+0.9+b.wide()
						if i != k && a.lane >= b.lane && a.along > from && a.along < to {
							t.Errorf("%s %s: the tick of %s runs through %s", name, s.Name(), a.words, b.words)
						}
						if i != k && a.lane == b.lane && a.along <= b.along && a.along+0.9+a.wide() > b.along {
							t.Errorf("%s %s: %s runs into %s", name, s.Name(), a.words, b.words)
						}
					}
				}
			}
		}
	}
}

// All strips are on the paper, with the bars to check on every page.
func TestStripsStayOnThePaper(t *testing.T) {
	for name, plan := range plans {
		p := plan()
		for _, size := range []page.Size{page.A4, page.Letter} {
			for i, s := range Strips(p, layup.NetLine(p.Part), handmade.Hash, size) {
				if s.Box.Max != (orb.Point{size.High, size.Wide}) {
					t.Errorf("%s: a page of %v", name, s.Box)
				}
				words := ""
				for _, l := range s.Layers {
					for _, shape := range l.Shapes {
						for _, line := range shape.Lines {
							for _, q := range line.Points {
								if q[0] < 4 || q[1] < 4 || q[0] > size.High-4 || q[1] > size.Wide-4 {
									t.Fatalf("%s %s page %d: a line runs to %v", name, size.Name, i+1, q)
								}
							}
						}
					}
					for _, text := range l.Texts {
						words += text.Words + "\n"
						if b := text.Bounds(); b.Min[0] < 3 || b.Max[0] > size.High-3 || b.Min[1] < 3 {
							t.Errorf("%s %s page %d: %q leaves the page", name, size.Name, i+1, text.Words)
						}
					}
				}
				if !strings.Contains(words, "100 mm") || !strings.Contains(words, "4 in") {
					t.Errorf("%s page %d: no bars", name, i+1)
				}
			}
		}
	}
}

// A line beside the net edge, as for marks outside the sealant: a 45° joint's tick
// moves by as much as the line lies outside (geometry).
func TestAnotherLine(t *testing.T) {
	p := laminate.Plan{Plies: []laminate.PlanPly{{Ply: 1, Joints: []laminate.Joint{{From: [2]float64{300, 0}, To: [2]float64{700, 400}}}}}}
	out := orb.Ring{{-100, -100}, {1100, -100}, {1100, 500}, {-100, 500}}
	corners := []laminate.Corner{{Name: "A", At: [2]float64{-100, -100}}, {Name: "B", At: [2]float64{1100, -100}}, {Name: "C", At: [2]float64{1100, 500}}, {Name: "D", At: [2]float64{-100, 500}}}
	line := layup.LineAlong("100 mm outside", out, corners)
	ticks := line.Ticks(p, line.Stretches()[0])
	if len(ticks) != 1 || math.Abs(ticks[0].AlongMM-300) > 1e-9 { // 300 along the net edge, - 100 of the joint + 100 of the corner
		t.Errorf("ticks %v, want one at 300", ticks)
	}
	if got := line.Ticks(p, line.Stretches()[2]); len(got) != 1 || math.Abs(got[0].AlongMM-(1200-900)) > 1e-9 {
		t.Errorf("upper ticks %v, want one at 300 from C", got)
	}
}
