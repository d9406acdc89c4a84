package order

import (
	"math"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

func moved(r geometry.Region, dx, dy float64) geometry.Region {
	return r.Map(func(p orb.Point) orb.Point { return orb.Point{p[0] + dx, p[1] + dy} })
}

// round is a circle of so many points.
func round(diameter float64, n int) geometry.Region {
	var ring orb.Ring
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		ring = append(ring, orb.Point{diameter / 2 * c, diameter / 2 * s})
	}
	return geometry.Region{Outer: ring}
}

// Tape round a rectangle with a margin m measures 2(L+W) + 8m, and 2np more for n
// pleats of height p (geometry); the bag's girth grows by as much.
func TestTapeAndBag(t *testing.T) {
	p := plate()
	p.Consumables = []laminate.Consumable{
		{Name: "tape", Kind: laminate.Sealant, MarginMM: given(125), Pleats: given(6), PleatMM: given(50), SoldByMM: 15000, SparePercent: given(10)},
		{Name: "film", Kind: laminate.Film, MarginMM: given(175), Pleats: given(6), PleatMM: given(50), Layers: 1, WidthMM: 2000, SparePercent: given(0), SoldByMM: 1000, PricePerMetre: 3, HasPrice: true, OnHandMM: 200},
		{Name: "feed", Kind: laminate.Tube, LengthMM: given(4000), SparePercent: assume(10)},
	}
	o := Of(p)
	holds(t, "tape", o.Supplies[0].LengthMM.Value, 2*(1180+740)+8*125+2*6*50, 0.01)
	holds(t, "film", o.Supplies[1].AreaMM2, (1180+2*250)*(740+2*250), 1)
	tape, film, feed := o.Items[1], o.Items[2], o.Items[3]
	if tape.ToBuy.Value != 15 || film.Net.Value != 1.24 || film.ToBuy.Value != 2 || film.Price != 6 || o.Supplies[1].Along != "y" {
		t.Errorf("tape %+v, film %+v", tape.ToBuy, film)
	}
	if feed.Net.Value != 4 || feed.ToBuy.Value != 4.4 || feed.Basis != laminate.Given || len(feed.Assumed) != 1 {
		t.Errorf("%+v", feed)
	}
}

// An opening is covered, a margin below zero stops short all round, of a round
// part as of a square one, and may leave nothing.
func TestMargins(t *testing.T) {
	frame := rectangle(1000, 600)
	frame.Holes = []orb.Ring{{{200, 200}, {200, 400}, {800, 400}, {800, 200}}}
	for _, c := range []struct {
		name         string
		net          geometry.Region
		margin, want float64
		within       float64
	}{
		{"square", rectangle(1000, 600), 50, 1100 * 700, 1},
		{"far off", moved(rectangle(1000, 600), 5e4, -9e4), 50, 1100 * 700, 1},
		{"opening", frame, 50, 1100 * 700, 1},
		{"short", frame, -20, 960 * 560, 1},
		{"nothing left", rectangle(1000, 600), -300, 0, 0},
		{"round", round(800, 720), 50, math.Pi * 450 * 450, 100},
		{"round short", round(800, 720), -50, math.Pi * 350 * 350, 100},
		{"none", frame, 0, 600000, 0},
	} {
		p := plate()
		p.Part.Net = c.net
		p.Consumables = []laminate.Consumable{{Name: "x", Kind: laminate.Other, MarginMM: given(c.margin), UptakeGSM: given(100), Layers: 2}}
		o := Of(p)
		holds(t, c.name, o.Supplies[0].AreaMM2, 2*c.want, 2*c.within)
		holds(t, c.name+", resin", o.Resin.Lines[1].MassG.Value, 2*c.want/1e4, 2*c.within/1e4+0.001)
	}
	p := plate()
	p.Part.Net = geometry.Region{}
	if o := Of(p); len(o.Missing) != 3 {
		t.Errorf("without an outline: %q", o.Missing)
	}
}

// An L of two arms 300 wide in goods 300 wide: one lane of each arm, whichever
// way; the outline decides, not the box round it.
func TestLanesFollowTheOutline(t *testing.T) {
	l := geometry.Region{Outer: orb.Ring{{0, 0}, {1000, 0}, {1000, 300}, {300, 300}, {300, 900}, {0, 900}}}
	if long, n := lanes(l.Rings(), 300); long != 1000+300+300 || n != 3 {
		t.Errorf("%v mm in %d lanes", long, n)
	}
	if long, n := lanes(turned(l.Rings()), 300); long != 900+300+300+300 || n != 4 {
		t.Errorf("%v mm in %d lanes", long, n)
	}
	for w := 50.0; w < 1000; w *= 1.37 {
		long, n := lanes(l.Rings(), w)
		if long*w < l.Area()-1e-6 || n != int(math.Ceil(900/w)) {
			t.Errorf("%v mm of %v do not cover %v mm²", long, w, l.Area())
		}
	}
	if long, n := lanes(l.Rings(), 1e-9); long != 0 || n != 0 {
		t.Errorf("%v mm in %d lanes of no width", long, n)
	}
}

// A mesh of 580 by 1330 from a roll 1200 wide is one length of 1330, not two of
// 580; a panel of 1050 by 5000 from a roll 1000 wide is not two lengths of 5000.
func TestFewLanesUnlessManySaveMuch(t *testing.T) {
	for _, c := range []struct {
		net         geometry.Region
		width, long float64
		lanes       int
		along       string
	}{
		{rectangle(1330, 580), 1200, 1330, 1, "x"},
		{rectangle(580, 1330), 1200, 1330, 1, "y"},
		{rectangle(1050, 5000), 1000, 5 * 1050, 5, "x"},
		{rectangle(900, 700), 1000, 700, 1, "y"},
	} {
		s := Supply{WidthMM: c.width, Layers: 1}
		s.cover(c.net.Rings())
		if s.LengthMM.Value != c.long || s.Lanes != c.lanes || s.Along != c.along {
			t.Errorf("%v: %+v", c.net, s)
		}
	}
}
