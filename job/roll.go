package job

import (
	"strings"

	"gopkg.in/yaml.v3"

	"stripwright/geometry/length"
	"stripwright/laminate"
)

// Widths of a roll that are taken for one.
var rollWidths = limits{5, 6000}

// rolls reads the rolls of one fabric.
func (r *reading) rolls(n *yaml.Node, fabric string) []laminate.Roll {
	items, ok := r.list(n, "rolls", "[{id: A, width: 300}]")
	if !ok {
		return nil
	}
	seen := map[string]*yaml.Node{}
	var out []laminate.Roll
	var edges, bare []string
	for _, item := range items {
		b, ok := r.block(item, item, "roll", rollKeys)
		if !ok {
			continue
		}
		roll := r.roll(b)
		if at := b.value("id"); at != nil && roll.ID != "" {
			if first := seen[roll.ID]; first != nil {
				r.refuse(at, "id", "give each roll its own id, or write count: for equal rolls", "roll %q of %s stands twice, first in line %d", roll.ID, fabric, first.Line)
			}
			seen[roll.ID] = at
		}
		if !b.has("price") {
			bare = append(bare, roll.ID)
		}
		if !b.has("bad_edge") {
			edges = append(edges, roll.ID)
		}
		r.widthNodes[fabric] = append(r.widthNodes[fabric], b.value("width"))
		out = append(out, roll)
	}
	if len(edges) > 0 {
		r.assume(n, "bad_edge", "no bad edge on rolls of %s: %s", fabric, strings.Join(edges, ", "))
	}
	r.allPriced(n, fabric, out, bare)
	return out
}

func (r *reading) roll(b block) laminate.Roll {
	roll := laminate.Roll{Count: 1}
	if n := b.need("id", "write what is on its label: id: B-300"); n != nil {
		roll.ID, _ = r.name(n, "id", mostName)
	}
	if n := b.need("width", "write its width as measured: width: 300"); n != nil {
		roll.WidthMM, _ = r.lengthIn(n, "width", rollWidths)
	}
	if n := b.value("bad_edge"); n != nil {
		roll.BadEdgeMM, _ = r.lengthIn(n, "bad_edge", limits{0, 500})
		if u := roll.UsableMM(); roll.WidthMM > 0 && u < rollWidths.least {
			r.refuse(n, "bad_edge", "write the bad width at one edge", "two bad edges of %s leave %s of the roll's %s",
				length.MM(roll.BadEdgeMM), length.MM(max(u, 0)), length.MM(roll.WidthMM))
		}
	}
	r.stock(b, &roll)
	if n := b.value("price"); n != nil {
		r.price(n, &roll)
	}
	return roll
}

// stock reads how much there is of a roll.
func (r *reading) stock(b block, roll *laminate.Roll) {
	if n := b.value("length"); n != nil {
		roll.LengthMM, _ = r.lengthIn(n, "length", limits{50, length.MostMM})
	}
	if n := b.value("count"); n != nil {
		roll.Count, _ = r.count(n, "count", 1, 10000)
		if roll.Count > 1 && !b.has("length") {
			r.note(n, "count", "roll %s has no length, so as much as is needed is taken from it: its count is not used", roll.ID)
			roll.Count = 1
		}
	}
	if n := b.value("remnant"); n != nil {
		roll.Remnant, _ = r.truth(n, "remnant")
		if roll.Remnant && !b.has("length") {
			r.refuse(n, "remnant", "write the length that is left: length: 4.2 m", "remnant %s has no length", roll.ID)
		}
	}
}

// price reads a price per metre of roll. A remnant may cost nothing.
func (r *reading) price(n *yaml.Node, roll *laminate.Roll) {
	bare := length.Metre
	if !r.units.Metric() {
		bare = "" // per metre or per yard: not guessed at
	}
	v, ok := number(r, n, "price", func(s string) (float64, error) { return length.ParsePrice(s, bare) })
	switch {
	case !ok:
	case v == 0 && !roll.Remnant:
		r.refuse(n, "price", "write its price per metre, or leave all prices out", "a price of 0 would make the roll free")
	case v > 1e6:
		r.refuse(n, "price", "check the number", "price %s is out of reason", n.Value)
	default:
		roll.PricePerMetre, roll.HasPrice = v, true
	}
}

// allPriced refuses a fabric of which some rolls have a price and some not: the
// least cost is then unknown. Bare are the rolls without one.
func (r *reading) allPriced(n *yaml.Node, fabric string, rolls []laminate.Roll, bare []string) {
	dearest, priced := 0.0, len(rolls) > 0
	for _, roll := range rolls {
		priced = priced && roll.HasPrice
		dearest = max(dearest, roll.PricePerMetre)
	}
	if priced && dearest == 0 {
		r.refuse(n, "price", "leave the prices out: the least length is then looked for", "all rolls of %s are free", fabric)
	}
	if len(bare) > 0 && len(bare) < len(rolls) {
		r.refuse(n, "price", "write a price for each roll of the fabric, or for none", "rolls of %s without a price: %s; the others have one", fabric, strings.Join(bare, ", "))
	}
}
