package list

import (
	"math"
	"strconv"

	"stripwright/laminate"
	"stripwright/laminate/order"
)

func inchShop(p laminate.Plan) bool { return p.Units == "in" || p.Units == "ft" || p.Units == "yd" }

// amount prints an amount in both units, that of the shop first.
func (t *orderSheet) amount(a order.Amount) string {
	if a.Unit == order.Kilos {
		return t.mass(float64(a.Value * 1000))
	}
	metric := number(a.Value, 3) + " " + a.Unit
	if a.Unit == a.USUnit {
		return metric
	}
	us := number(a.US, 2) + " " + a.USUnit
	if a.US > 0 && a.US < 0.01 {
		us = number(a.US, 4) + " " + a.USUnit
	}
	if t.inches {
		return us + " (" + metric + ")"
	}
	return metric + " (" + us + ")"
}

// toBuy prints what is to buy: rounded up in both units, but for what is a whole
// number of what is sold.
func (t *orderSheet) toBuy(i order.Item) string {
	a := i.ToBuy
	if i.SoldBy.Value > 0 || a.Unit == a.USUnit {
		return t.amount(a)
	}
	up := func(v, scale float64) float64 { return math.Ceil(float64(v*scale)-1e-6) / scale }
	a.Value, a.US = up(a.Value, 1000), up(a.US, 100)
	return t.amount(a)
}

// some prints an amount, a dash where there is none.
func (t *orderSheet) some(a order.Amount) string {
	if a.Value == 0 {
		return "-"
	}
	return t.amount(a)
}

// mass prints grams, from a kilogram up in kilograms, and ounces, from a pound up
// in pounds.
func (t *orderSheet) mass(g float64) string {
	metric, us := number(g, 0)+" g", number(g/28.349523125, 1)+" oz"
	if g < 100 {
		metric, us = number(g, 1)+" g", number(g/28.349523125, 2)+" oz"
	}
	if g >= 1000 {
		metric = number(g/1000, 3) + " kg"
	}
	if g >= 453.59 {
		us = number(g/453.59237, 2) + " lb"
	}
	if t.inches {
		return us + " (" + metric + ")"
	}
	return metric + " (" + us + ")"
}

// weight prints an areal weight in both units.
func (t *orderSheet) weight(gsm float64) string {
	metric, us := number(gsm, 1)+" g/m2", number(gsm/33.905747, 2)+" oz/yd2"
	if t.inches {
		return us + " (" + metric + ")"
	}
	return metric + " (" + us + ")"
}

// area prints mm² in m², with square feet.
func (t *orderSheet) area(mm2 float64) string {
	metric, us := number(mm2/1e6, 3)+" m2", number(mm2/92903.04, 2)+" ft2"
	if t.inches {
		return us + " (" + metric + ")"
	}
	return metric + " (" + us + ")"
}

// money prints a price to the hundredth; prices of a job are in one currency.
func money(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }
