package order

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/geometry/grow"
	"stripwright/geometry/length"
	"stripwright/laminate"
)

// Supply is one consumable as it is laid, with the figures that it stands on.
type Supply struct {
	Name      string          `json:"name"`
	Kind      string          `json:"kind"`
	Layers    int             `json:"layers"`
	MarginMM  laminate.Figure `json:"margin_mm,omitzero"`
	Pleats    laminate.Figure `json:"pleats,omitzero"`
	PleatMM   laminate.Figure `json:"pleat_mm,omitzero"`
	UptakeGSM laminate.Figure `json:"uptake_gsm,omitzero"`
	AreaMM2   float64         `json:"area_mm2,omitempty"` // of all layers
	LengthMM  laminate.Figure `json:"length_mm,omitzero"` // of tape or tube, or of the lanes of all layers
	WidthMM   float64         `json:"width_mm,omitempty"` // of the roll, 0: by area
	Lanes     int             `json:"lanes,omitempty"`    // side by side in a layer
	Along     string          `json:"along,omitempty"`    // "x" or "y" of the part, which way lanes run
}

// supply works out one consumable from the outline.
func (o *Order) supply(p laminate.Plan, c laminate.Consumable) Supply {
	s := Supply{Name: c.Name, Kind: c.Kind, Layers: max(1, c.Layers), MarginMM: c.MarginMM, Pleats: c.Pleats, PleatMM: c.PleatMM, UptakeGSM: c.UptakeGSM, WidthMM: c.WidthMM}
	if c.LengthMM.Known() {
		s.LengthMM = c.LengthMM
		s.LengthMM.Value = float64(s.LengthMM.Value * float64(s.Layers))
		return s
	}
	pleats := float64(c.Pleats.Value * c.PleatMM.Value)
	margin := c.MarginMM.Value
	if c.Kind == laminate.Film {
		margin += float64(pleats / 4)
	}
	rings, err := grown(p.Part.Net, margin)
	if err != nil {
		o.miss(c.Name + " cannot be worked out: " + err.Error())
		return s
	}
	if c.Kind == laminate.Sealant {
		long := float64(2 * pleats)
		for _, r := range rings {
			long += girth(r)
		}
		s.LengthMM = laminate.Figure{Value: geometry.Snap(long), Basis: laminate.Computed, From: "round the outline at the margin, 2 x pleat for each pleat"}
		return s
	}
	s.cover(rings)
	return s
}

// cover works out area and lanes over rings.
func (s *Supply) cover(rings []orb.Ring) {
	for _, r := range rings {
		s.AreaMM2 += geometry.Region{Outer: r}.Area()
	}
	s.AreaMM2 = geometry.Snap(float64(s.AreaMM2 * float64(s.Layers)))
	s.Along = "x"
	long, n := lanes(rings, s.WidthMM)
	if l, k := lanes(turned(rings), s.WidthMM); better(l, k, long, n) {
		long, n, s.Along = l, k, "y"
	}
	if n == 0 {
		s.Along = ""
		return
	}
	s.Lanes = n
	s.LengthMM = laminate.Figure{Value: geometry.Snap(float64(long * float64(s.Layers))), Basis: laminate.Computed, From: "lanes over the outline at the margin"}
}

// fewerLanes is how much shorter the roll must be to be worth more lanes, each of
// which is one more edge to lay.
const fewerLanes = 0.75

// better says whether lanes one way are better than those the other way: fewer of
// them, unless that takes much more of the roll.
func better(long float64, n int, other float64, k int) bool {
	switch {
	case n == 0 || k == 0:
		return n > 0
	case n == k:
		return long < other
	case n < k:
		return long*fewerLanes <= other
	}
	return long < other*fewerLanes
}

// grown gives the outer edge of a net outline moved by a margin, outward or, below
// zero, inward, when it may fall in several or vanish.
func grown(net geometry.Region, margin float64) ([]orb.Ring, error) {
	if net.Empty() {
		return nil, errNoOutline
	}
	outer := geometry.Region{Outer: net.Outer}.Oriented()
	if margin >= 0 {
		g, err := grow.Blank(outer, margin, grow.Mitred)
		return []orb.Ring{g.Outer}, err
	}
	b := net.Bounds()
	room := 10 - margin
	field := geometry.Region{
		Outer: orb.Ring{{b.Min[0] - room, b.Min[1] - room}, {b.Max[0] + room, b.Min[1] - room}, {b.Max[0] + room, b.Max[1] + room}, {b.Min[0] - room, b.Max[1] + room}},
		Holes: []orb.Ring{outer.Outer},
	}.Oriented()
	g, err := grow.Blank(field, -margin, grow.Mitred)
	return g.Holes, err
}

var errNoOutline = errors.New("the part has no outline")

// girth gives the length of a ring in mm.
func girth(r orb.Ring) float64 {
	sum := 0.0
	for i, p := range r {
		q := r[(i+1)%len(r)]
		sum += math.Hypot(q[0]-p[0], q[1]-p[1])
	}
	return sum
}

// item gives the line of the order for a consumable.
func (s Supply) item(c laminate.Consumable) Item {
	i := Item{
		Kind: ConsumableItem, Name: s.Name, What: s.words(), WidthMM: s.WidthMM, Basis: laminate.Computed, SparePercent: c.SparePercent,
		Assumed: assumed(
			named{s.MarginMM, "margin " + both(s.MarginMM.Value)},
			named{s.Pleats, plain(s.Pleats.Value) + " pleats"}, named{s.PleatMM, "pleats " + both(s.PleatMM.Value) + " high"},
			named{c.SparePercent, "spare " + plain(c.SparePercent.Value) + " %"},
		),
	}
	if !s.LengthMM.Known() {
		i.Net, i.SoldBy, i.OnHand = amount(s.AreaMM2/1e6, Squares), amount(0, Squares), amount(0, Squares)
		i.ToBuy = atLeast(float64(s.AreaMM2*(1+c.SparePercent.Value/100))/1e6, Squares)
		return i
	}
	i.Basis = s.LengthMM.Basis
	i.Net, i.SoldBy, i.OnHand = amount(s.LengthMM.Value/1000, Metres), amount(c.SoldByMM/1000, Metres), amount(c.OnHandMM/1000, Metres)
	need := float64(s.LengthMM.Value*(1+c.SparePercent.Value/100)) - c.OnHandMM
	i.ToBuy = atLeast(ToBuy(need, laminate.Order{SoldByMM: c.SoldByMM})/1000, Metres)
	return i.priced(c.PricePerMetre, c.HasPrice)
}

// both prints a length in mm and in inches.
func both(mm float64) string { return length.MM(mm) + " (" + length.Inches(mm) + ")" }

// words tells what a consumable is and how it is laid.
func (s Supply) words() string {
	var words []string
	if !strings.EqualFold(s.Name, s.Kind) {
		words = append(words, s.Kind)
	}
	if s.Layers > 1 {
		words = append(words, strconv.Itoa(s.Layers)+" layers")
	}
	switch {
	case s.Lanes > 1:
		words = append(words, strconv.Itoa(s.Lanes)+" lanes side by side along "+s.Along)
	case s.Lanes == 1:
		words = append(words, "one length along "+s.Along)
	}
	return strings.Join(words, ", ")
}

func trimmed(s string) string { return strings.Join(strings.Fields(s), " ") }
