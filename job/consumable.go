package job

import (
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"stripwright/geometry"
	"stripwright/geometry/length"
	"stripwright/laminate"
)

// kindsOfConsumable lists them for messages.
var kindsOfConsumable = []string{laminate.PeelPly, laminate.FlowMedia, laminate.Film, laminate.Sealant, laminate.Tube, laminate.Other}

// Margins from the net edge where a job states none, and pleats of the bag:
// common practice, no source. Peel ply, film and tape lie outside of the trim
// allowance by so much, flow media stops short of the net edge.
const (
	peelPlyPast    = 50.0
	flowMediaShort = 20.0
	sealantPast    = 100.0
	filmPast       = 50.0 // past the sealant tape
	usualPleats    = 4
	usualPleatMM   = 50.0
)

// consumables reads what is used up under the bag, by name.
func (r *reading) consumables(top block) {
	n := top.value("consumables")
	if n == nil {
		return
	}
	var blocks []block
	for _, named := range r.named(n, "consumables", "consumable") {
		b, ok := r.block(named.value, named.key, "consumable "+named.key.Value, consumableKeys)
		if !ok {
			continue
		}
		blocks = append(blocks, b)
		r.job.Consumables = append(r.job.Consumables, r.consumable(b, named.key.Value))
	}
	if len(blocks) == len(r.job.Consumables) {
		r.bag(blocks)
	}
}

func (r *reading) consumable(b block, name string) laminate.Consumable {
	c := laminate.Consumable{Name: name, Kind: r.consumableKind(b, name), Layers: 1}
	if n := b.value("layers"); n != nil {
		c.Layers, _ = r.count(n, "layers", 1, 20)
	}
	c.MarginMM = r.lengthFigure(b, "margin", limits{-2000, 5000})
	c.UptakeGSM = r.uptake(b, &c)
	c.Pleats = r.pleats(b)
	c.PleatMM = r.lengthFigure(b, "pleat", limits{1, 1000})
	c.LengthMM = r.lengthFigure(b, "length", limits{10, 1e6})
	if n := b.value("width"); n != nil {
		c.WidthMM = r.snapped(n, "width", limits{5, 20000})
	}
	if n := b.value("sold_by"); n != nil {
		c.SoldByMM = r.snapped(n, "sold_by", limits{1, 1e6})
	}
	if n := b.value("on_hand"); n != nil {
		c.OnHandMM = r.snapped(n, "on_hand", limits{0, 1e6})
	}
	c.SparePercent = r.figure(b, "spare", percents)
	if !b.has("spare") {
		c.SparePercent = laminate.Figure{Value: r.job.Order.SparePercent, Basis: laminate.Assumed, From: "spare of the cloth"}
	}
	r.consumablePrice(b, &c)
	r.fitting(b, &c)
	return c
}

// consumableKind reads what a consumable does; its name may say so.
func (r *reading) consumableKind(b block, name string) string {
	if n := b.value("kind"); n != nil {
		kind, _ := r.choice(n, "kind", kindsOfConsumable...)
		return kind
	}
	if slices.Contains(kindsOfConsumable, strings.ToLower(name)) {
		return strings.ToLower(name)
	}
	cure := "write kind: " + strings.Join(kindsOfConsumable, ", ")
	if near := length.Nearest(strings.ToLower(name), kindsOfConsumable); near != "" {
		cure = "write kind: " + near + "?"
	}
	b.need("kind", cure)
	return ""
}

// uptake reads the resin that a consumable takes up: as it is known, or from a
// piece weighed dry and wet.
func (r *reading) uptake(b block, c *laminate.Consumable) laminate.Figure {
	stated := r.figure(b, "uptake", r.arealWeights())
	n := b.value("test")
	if n == nil {
		return stated
	}
	t, ok := r.block(n, b.keys["test"], "test", testKeys)
	if !ok {
		return stated
	}
	u := laminate.Uptake{Consumable: c.Name, AreaMM2: r.pieceArea(t, "the piece that was weighed")}
	if n := t.need("dry", "write what the piece weighed dry: dry: 12 g"); n != nil {
		v, _ := r.measured(n, "dry", pieceMasses)
		u.DryG = geometry.Snap(v)
	}
	if n := t.need("wet", "write what it weighed after the infusion: wet: 28 g"); n != nil {
		v, ok := r.measured(n, "wet", pieceMasses)
		if u.WetG = geometry.Snap(v); ok && u.WetG < u.DryG {
			r.refuse(n, "wet", "correct one of them", "the piece weighs less wet than dry")
		}
	}
	if u.AreaMM2 <= 0 || u.WetG < u.DryG {
		return stated
	}
	r.job.Uptakes = append(r.job.Uptakes, u)
	tested := toNano(float64((u.WetG-u.DryG)*1e6) / u.AreaMM2)
	if stated.Known() {
		r.note(b.keys["test"], "test", "%s: the test gives an uptake of %s, the job states %s, which is taken", c.Name, length.Weight(tested), length.Weight(stated.Value))
		return stated
	}
	return laminate.Figure{Value: tested, Basis: laminate.Computed, From: "a piece weighed dry and wet"}
}

// snapped reads a length and puts it on the grid of a plan's lengths.
func (r *reading) snapped(n *yaml.Node, rule string, l limits) float64 {
	mm, _ := r.lengthIn(n, rule, l)
	return geometry.Snap(mm)
}

// pleats reads a number of pleats.
func (r *reading) pleats(b block) laminate.Figure {
	n := b.value("pleats")
	if n == nil {
		return laminate.Figure{}
	}
	v, ok := r.count(n, "pleats", 0, 1000)
	if !ok {
		return laminate.Figure{}
	}
	return given(float64(v))
}

// consumablePrice reads a price per length of roll.
func (r *reading) consumablePrice(b block, c *laminate.Consumable) {
	n := b.value("price")
	if n == nil {
		return
	}
	var roll laminate.Roll
	roll.Remnant = true // may be free
	r.price(n, &roll)
	c.PricePerMetre, c.HasPrice = toNano(roll.PricePerMetre), roll.HasPrice
	if c.WidthMM == 0 && !b.has("width") && c.Kind != laminate.Sealant && c.Kind != laminate.Tube {
		r.refuse(n, "price", "write width:, the width that is sold", "the price is per metre of roll, and %s has no width", c.Name)
	}
}

// fitting refuses keys that say nothing for the kind, and asks for what is
// missing.
func (r *reading) fitting(b block, c *laminate.Consumable) {
	useless := map[string][]string{
		laminate.PeelPly:   {"pleats", "pleat", "length"},
		laminate.FlowMedia: {"pleats", "pleat", "length"},
		laminate.Film:      {"length"},
		laminate.Sealant:   {"uptake", "test", "width", "layers"},
		laminate.Tube:      {"uptake", "test", "width", "margin", "pleats", "pleat"},
		laminate.Other:     {"pleats", "pleat", "length"},
	}
	for _, key := range useless[c.Kind] {
		if at := b.keys[key]; at != nil {
			r.refuse(at, key, "take it out", "%s says nothing for a %s", key, c.Kind)
		}
	}
	area := c.Kind != laminate.Sealant && c.Kind != laminate.Tube
	if area && c.Kind != "" && c.WidthMM == 0 && !b.has("width") {
		for _, key := range []string{"sold_by", "on_hand"} {
			if at := b.keys[key]; at != nil {
				r.refuse(at, key, "write width:, the width that is sold", "%s is a length of roll, and %s has no width", key, c.Name)
			}
		}
	}
	switch c.Kind {
	case laminate.Tube:
		b.need("length", "write how much is laid: length: 4 m")
	case laminate.PeelPly, laminate.FlowMedia, laminate.Other:
		if !b.has("uptake") && !b.has("test") && r.job.Resin != nil {
			r.note(b.at, "uptake", "no uptake is written for %s: the resin it takes up is not in the sum; weigh a piece dry and after an infusion, and write test: {size: [200, 200], dry: 12 g, wet: 28 g}", c.Name)
		}
	}
}
