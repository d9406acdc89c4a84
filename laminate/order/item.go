package order

import (
	"math"

	"stripwright/laminate"
)

// Units of what is bought, with those of an inch shop beside them.
const (
	Metres  = "m"      // beside it yd
	Kilos   = "kg"     // beside it lb
	Squares = "m2"     // beside it yd2
	Sheets  = "sheets" // in both
)

// in gives the unit of an inch shop, and how many of it make one: a yard is
// 0.9144 m, a pound 0.45359237 kg, both exact.
func in(unit string) (us string, each float64) {
	switch unit {
	case Metres:
		return "yd", 1 / 0.9144
	case Kilos:
		return "lb", 1 / 0.45359237
	case Squares:
		return "yd2", 1 / (0.9144 * 0.9144)
	}
	return unit, 1
}

// Amount is so much of something, in the unit of a metric shop and in that of an
// inch shop.
type Amount struct {
	Value  float64 `json:"value"`
	Unit   string  `json:"unit"`
	US     float64 `json:"us_value"`
	USUnit string  `json:"us_unit"`
}

// fine gives how finely amounts of a unit are kept: metres to a tenth of a
// millimetre, so that feet and yards of them are exact, others to a thousandth.
func fine(unit string) float64 {
	if unit == Metres {
		return 1e4
	}
	return 1e3
}

// usFine is how finely amounts of the inch unit are kept.
const usFine = 1e4

// amount gives v of a unit, rounded.
func amount(v float64, unit string) Amount { return rounded(v, unit, math.Round) }

// atLeast is amount rounded up, in both units: what is bought is never less than
// what is needed.
func atLeast(v float64, unit string) Amount {
	return rounded(v, unit, func(n float64) float64 { return math.Ceil(n - 1e-6) })
}

func rounded(v float64, unit string, to func(float64) float64) Amount {
	us, each := in(unit)
	v = to(float64(v*fine(unit)))/fine(unit) + 0
	return Amount{v, unit, to(float64(float64(v*each)*usFine))/usFine + 0, us}
}

// Kinds of item.
const (
	ClothItem      = "cloth"
	ResinItem      = "resin"
	HardenerItem   = "hardener"
	ConsumableItem = "consumable"
	CoreItem       = "core"
)

// Item is one line of an order: something that is bought under one name.
type Item struct {
	Kind         string          `json:"kind"`
	Name         string          `json:"name"`
	What         string          `json:"what"` // what it is, in words: "300 g/m2 e-glass", "peel ply"
	WidthMM      float64         `json:"width_mm"`
	Net          Amount          `json:"net"`
	Basis        string          `json:"basis"` // of Net
	SparePercent laminate.Figure `json:"spare_percent"`
	SoldBy       Amount          `json:"sold_by"` // in whole multiples of it, 0: any amount
	OnHand       Amount          `json:"on_hand"`
	ToBuy        Amount          `json:"to_buy"`
	PriceEach    float64         `json:"price_each,omitempty"` // per unit of ToBuy
	Price        float64         `json:"price,omitempty"`
	HasPrice     bool            `json:"has_price"`
	Assumed      []string        `json:"assumed"` // what the amount rests on and nobody stated
}

// priced gives the item with the price of what is to buy.
func (i Item) priced(each float64, has bool) Item {
	if has {
		i.PriceEach, i.HasPrice = each, true
		i.Price = math.Round(float64(float64(i.ToBuy.Value*each)*100)) / 100
	}
	return i
}

// PriceEachUS gives the price per inch unit of ToBuy.
func (i Item) PriceEachUS() float64 {
	_, each := in(i.ToBuy.Unit)
	return i.PriceEach / each
}

// assumed lists in words what of some figures is assumed.
func assumed(figures ...named) []string {
	out := []string{}
	for _, n := range figures {
		if n.figure.Basis != laminate.Assumed {
			continue
		}
		words := n.words
		if n.figure.From != "" {
			words += " (" + n.figure.From + ")"
		}
		out = append(out, words)
	}
	return out
}

// named is a figure with what is said of it.
type named struct {
	figure laminate.Figure
	words  string
}
