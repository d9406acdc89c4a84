package zone

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"github.com/peterstace/simplefeatures/geom"

	"stripwright/geometry"
	"stripwright/laminate"
)

func rectangle(x, y, w, h float64) geometry.Region {
	return geometry.Region{Outer: orb.Ring{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}}
}

func holed(r geometry.Region, hole geometry.Region) geometry.Region {
	r.Holes = append(r.Holes, hole.Outer)
	return r.Oriented()
}

func planOf(net geometry.Region, blanks ...geometry.Region) laminate.Plan {
	p := laminate.Plan{Part: laminate.PlanPart{Net: net}}
	for i, b := range blanks {
		p.Plies = append(p.Plies, laminate.PlanPly{Ply: i + 1, Blank: b})
	}
	return p
}

// Every area by hand.
func TestZonesByHand(t *testing.T) {
	net, blank := rectangle(0, 0, 1000, 600), rectangle(-20, -20, 1040, 640)
	patch := rectangle(100, 100, 200, 150)
	for _, c := range []struct {
		name string
		plan laminate.Plan
		want string
	}{
		{"one zone", planOf(net, blank, blank), "[0 1] 600000"},
		{"a patch", planOf(net, blank, patch, blank), "[0 2] 570000, [0 1 2] 30000"},
		{"two patches that overlap by 100 × 50", planOf(net, blank, patch, rectangle(200, 200, 300, 300)), "[0] 485000, [0 2] 85000, [0 1] 25000, [0 1 2] 5000"},
		{"a patch beyond the edge", planOf(net, blank, rectangle(900, -50, 300, 150)), "[0] 590000, [0 1] 10000"},
		{"a patch wholly outside", planOf(net, blank, rectangle(2000, 0, 300, 150)), "[0] 600000"},
		{"a ply that ends short", planOf(net, blank, rectangle(-20, -20, 520, 640)), "[0 1] 300000, [0] 300000"},
		{"a hole in the part", planOf(holed(net, rectangle(400, 200, 100, 100)), blank, rectangle(350, 150, 100, 100)), "[0] 582500, [0 1] 7500"},
		{"a ring", planOf(net, blank, holed(rectangle(100, 100, 300, 300), rectangle(200, 200, 100, 100))), "[0] 520000, [0 1] 80000"},
		{"no ply", planOf(net), "[] 600000"},
		{"the same edge twice", planOf(net, net, rectangle(0, 0, 1000, 300)), "[0 1] 300000, [0] 300000"},
		{"no part", planOf(geometry.Region{}, blank), ""},
	} {
		got := ""
		for i, z := range Of(c.plan) {
			if i > 0 {
				got += ", "
			}
			got += fmt.Sprintf("%v %.3f", z.Plies, z.AreaMM2)
		}
		if got = strings.ReplaceAll(got, ".000", ""); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// Cores divide the part as plies do.
func TestCores(t *testing.T) {
	p := planOf(rectangle(0, 0, 100, 100), rectangle(-5, -5, 110, 110))
	p.Cores = []laminate.Core{{Blank: rectangle(20, 20, 50, 50)}}
	z := Of(p)
	if len(z) != 2 || z[0].AreaMM2 != 7500 || len(z[0].Cores) != 0 || z[1].AreaMM2 != 2500 || !slices.Equal(z[1].Cores, []int{0}) {
		t.Errorf("%+v", z)
	}
}

// wavy is a closed outline about a centre, of corners at random distances, on
// the grid of 0.001 mm.
func wavy(r *rand.Rand, x, y, radius float64) geometry.Region {
	n := 10 + r.IntN(30)
	var ring orb.Ring
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * (float64(i) + 0.6*r.Float64()) / float64(n))
		d := radius * (0.4 + 0.6*r.Float64())
		ring = append(ring, orb.Point{x + d*c, y + d*s})
	}
	return geometry.Region{Outer: ring}.Snapped()
}

// Areas against an overlay by simplefeatures: for each zone, the net part within
// the outlines that lie there and without the others.
func TestZonesAgainstASecondEngine(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 9))
	for run := range 150 {
		net := wavy(r, 0, 0, 800)
		if run%3 == 0 {
			net = holed(net, wavy(r, 0, 0, 200))
		}
		var blanks []geometry.Region
		for range 1 + r.IntN(4) {
			blanks = append(blanks, wavy(r, 600*(r.Float64()-0.5), 600*(r.Float64()-0.5), 100+400*r.Float64()))
		}
		if run%5 == 0 {
			blanks = append(blanks, blanks[0], net)
		}
		zones, sum := Of(planOf(net, blanks...)), 0.0
		for _, z := range zones {
			want := polygon(net)
			for i, b := range blanks {
				var err error
				if slices.Contains(z.Plies, i) {
					want, err = geom.Intersection(want, polygon(b))
				} else {
					want, err = geom.Difference(want, polygon(b))
				}
				if err != nil {
					t.Fatal(err)
				}
			}
			if math.Abs(want.Area()-z.AreaMM2) > 0.05+float64(len(zones)) {
				t.Errorf("run %d: zone of plies %v: %v mm², want %v", run, z.Plies, z.AreaMM2, want.Area())
			}
			fields := 0.0
			for _, f := range z.Fields {
				fields += f.AreaMM2()
			}
			if math.Abs(fields-z.AreaMM2) > float64(len(zones)) {
				t.Errorf("run %d: fields of %v add up to %v, the zone has %v", run, z.Plies, fields, z.AreaMM2)
			}
			sum += z.AreaMM2
		}
		if math.Abs(sum-net.Area()) > 1e-4 {
			t.Errorf("run %d: zones add up to %v, the part has %v", run, sum, net.Area())
		}
	}
}

func polygon(r geometry.Region) geom.Geometry {
	var rings []geom.LineString
	for _, ring := range r.Rings() {
		var xy []float64
		for i := range len(ring) + 1 {
			p := ring[i%len(ring)]
			xy = append(xy, p[0], p[1])
		}
		rings = append(rings, geom.NewLineString(geom.NewSequence(xy, geom.DimXY)))
	}
	return geom.NewPolygon(rings).AsGeometry()
}

// Moved, turned or mirrored with its plies, a part has the same zones.
func TestZonesFollowThePart(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 9))
	for range 20 {
		net, a, b := wavy(r, 0, 0, 800), wavy(r, 100, 0, 300), wavy(r, 0, 200, 400)
		was := Of(planOf(net, a, b))
		for _, f := range []geometry.Frame{geometry.Turned(30), geometry.Turned(90), geometry.MirrorX()} {
			now := Of(planOf(net.In(f), a.In(f), b.In(f)))
			if len(now) != len(was) {
				t.Fatalf("%d zones, were %d", len(now), len(was))
			}
			for i := range now {
				if math.Abs(now[i].AreaMM2-was[i].AreaMM2) > 10 { // 0.001 mm along 5 m of edge, twice
					t.Errorf("zone %d: %v, was %v", i, now[i].AreaMM2, was[i].AreaMM2)
				}
			}
		}
	}
}

func BenchmarkZonesOfRoundPart(b *testing.B) {
	disc := func(x, y, radius float64) geometry.Region {
		var ring orb.Ring
		for i := range 2000 {
			s, c := math.Sincos(2 * math.Pi * float64(i) / 2000)
			ring = append(ring, orb.Point{x + radius*c, y + radius*s})
		}
		return geometry.Region{Outer: ring}.Snapped()
	}
	p := planOf(disc(0, 0, 900), disc(0, 0, 920), disc(100, 300, 300), disc(-100, 200, 300))
	for b.Loop() {
		Of(p)
	}
}
