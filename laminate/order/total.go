package order

import (
	"math"

	"stripwright/geometry"
	"stripwright/geometry/length"
	"stripwright/laminate"
)

// Order is all that a plan needs on the shelf, and what of it is to be bought.
type Order struct {
	Title    string   `json:"title"`
	Part     string   `json:"part"`
	Items    []Item   `json:"items"` // cloth, resin, consumables, cores
	Resin    *Resin   `json:"resin"` // nil: the job says nothing of resin
	Supplies []Supply `json:"consumables"`
	Cores    []Boards `json:"cores"`
	Kits     []Kit    `json:"plies"`
	Price    float64  `json:"price,omitempty"` // of all items that have one
	Unpriced []string `json:"unpriced"`        // items to buy without a price, where others have one
	Missing  []string `json:"missing"`         // what is not in the sums, and what to write for it
}

// Kit is what lies ready for one ply.
type Kit struct {
	Ply       int     `json:"ply"`
	Fabric    string  `json:"fabric"`
	Pieces    int     `json:"pieces"`
	LongestMM float64 `json:"longest_mm"` // piece, along its roll
	AreaMM2   float64 `json:"area_mm2"`   // blank
	DryG      float64 `json:"dry_g"`
	DryOz     float64 `json:"dry_oz"`
}

// Of works out the order of a plan from the plan alone. Lists are never nil.
func Of(p laminate.Plan) Order {
	o := Order{Title: p.Title, Part: p.Part.Name, Supplies: []Supply{}, Cores: []Boards{}, Unpriced: []string{}, Missing: []string{}}
	o.Items = clothItems(p)
	for _, c := range p.Consumables {
		o.Supplies = append(o.Supplies, o.supply(p, c))
	}
	for _, c := range p.Cores {
		o.Cores = append(o.Cores, boards(c))
	}
	o.resin(p)
	for i, s := range o.Supplies {
		o.Items = append(o.Items, s.item(p.Consumables[i]))
	}
	o.coreItems(p)
	o.Kits = kits(p)
	o.sum()
	return o
}

// sum adds up prices.
func (o *Order) sum() {
	for _, i := range o.Items {
		o.Price += i.Price
	}
	o.Price = geometry.Snap(o.Price)
	for _, i := range o.Items {
		if o.Price > 0 && !i.HasPrice && i.ToBuy.Value > 0 {
			o.Unpriced = append(o.Unpriced, i.Name)
		}
	}
}

// clothItems lists each fabric and roll width.
func clothItems(p laminate.Plan) []Item {
	items := make([]Item, 0, len(p.Lengths))
	for _, l := range p.Lengths {
		i := Item{
			Kind: ClothItem, Name: l.Fabric, WidthMM: l.WidthMM, Net: amount(l.UsedMM/1000, Metres), Basis: laminate.Computed,
			SparePercent: laminate.Figure{Value: p.Rules.SparePercent, Basis: laminate.Given}, SoldBy: amount(p.Rules.SoldByMM/1000, Metres),
			OnHand: amount(OnHand(p, l)/1000, Metres), ToBuy: atLeast(l.ToBuyMM/1000, Metres), Assumed: []string{},
		}
		for _, f := range p.Fabrics {
			if f.Name == l.Fabric {
				i.What = trimmed(length.Weight(f.WeightGSM) + " " + f.Fibre + " " + f.Form)
			}
		}
		items = append(items, i.priced(rollPrice(p, l)))
	}
	return items
}

// rollPrice gives the price per metre of the rolls to buy of a fabric and width;
// the dearest where several are used.
func rollPrice(p laminate.Plan, l laminate.RollLength) (each float64, has bool) {
	for _, r := range p.Rolls {
		if r.Fabric == l.Fabric && r.WidthMM == l.WidthMM && r.StockLengthMM == nil && r.HasPrice {
			each, has = max(each, settled(r.PricePerMetre)), true
		}
	}
	return each, has
}

// settled rounds to a millionth: figures of a plan may be off by a billionth when
// they come from a file.
func settled(v float64) float64 { return math.Round(float64(v*1e6)) / 1e6 }

// kits lists what lies ready for each ply.
func kits(p laminate.Plan) []Kit {
	count, longest := map[string]int{}, map[string]float64{}
	for _, r := range p.Rolls {
		for _, piece := range r.Pieces {
			w, _ := piece.Shape.Size()
			count[piece.ID]++
			longest[piece.ID] = max(longest[piece.ID], w)
		}
	}
	out := make([]Kit, 0, len(p.Quantities))
	for _, q := range p.Quantities {
		k := Kit{Ply: q.Ply, AreaMM2: q.AreaMM2, DryG: q.DryG, DryOz: geometry.Snap(q.DryG / 28.349523125)}
		for _, y := range p.Plies {
			if y.Ply != q.Ply {
				continue
			}
			k.Fabric = y.Fabric
			for _, s := range y.Strips {
				k.Pieces += count[s.ID]
				k.LongestMM = geometry.Snap(max(k.LongestMM, longest[s.ID]))
			}
		}
		out = append(out, k)
	}
	return out
}
