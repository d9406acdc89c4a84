package order

import (
	"math"
	"sort"

	"stripwright/geometry"
	"stripwright/laminate"
)

// Fill gives the plan with Lengths and Quantities worked out from its rolls and
// plies; spare and the length cloth is sold by are the job's. Lengths come in
// the order of the plan's fabrics, wider rolls first; quantities in that of its
// plies.
func Fill(p laminate.Plan, j laminate.Job) laminate.Plan {
	p.Lengths = lengths(p, j.Order)
	p.Quantities = quantities(p)
	return p
}

// cloth is one fabric in one roll width.
type cloth struct {
	fabric string
	width  geometry.Micrometre
}

// lengths sums the rolls of each cloth in use.
func lengths(p laminate.Plan, o laminate.Order) []laminate.RollLength {
	used, bought := map[cloth]geometry.Micrometre{}, map[cloth]geometry.Micrometre{}
	var order []cloth
	for _, r := range p.Rolls {
		c := cloth{r.Fabric, geometry.Micrometres(r.WidthMM)}
		if _, ok := used[c]; !ok {
			order = append(order, c)
		}
		n := geometry.Micrometres(r.UsedLengthMM)
		used[c] += n
		if r.StockLengthMM == nil {
			bought[c] += n
		}
	}
	sortCloth(order, p.Fabrics)
	out := make([]laminate.RollLength, 0, len(order))
	for _, c := range order {
		out = append(out, laminate.RollLength{
			Fabric: c.fabric, WidthMM: c.width.MM(), UsedMM: used[c].MM(), ToBuyMM: ToBuy(bought[c].MM(), o),
		})
	}
	return out
}

// OnHand gives how much of a length, in mm, is cut from rolls of a stated length:
// it is used and need not be bought.
func OnHand(p laminate.Plan, l laminate.RollLength) float64 {
	sum := geometry.Micrometre(0)
	for _, r := range p.Rolls {
		if r.Fabric == l.Fabric && geometry.Micrometres(r.WidthMM) == geometry.Micrometres(l.WidthMM) && r.StockLengthMM != nil {
			sum += geometry.Micrometres(r.UsedLengthMM)
		}
	}
	return sum.MM()
}

// sortCloth puts cloth in the order of the fabrics, wider rolls first.
func sortCloth(cs []cloth, fabrics []laminate.PlanFabric) {
	place := map[string]int{}
	for i, f := range fabrics {
		place[f.Name] = i - len(fabrics) // below zero, before what is not listed
	}
	sort.SliceStable(cs, func(i, j int) bool {
		if a, b := place[cs[i].fabric], place[cs[j].fabric]; a != b {
			return a < b
		}
		if cs[i].fabric != cs[j].fabric {
			return cs[i].fabric < cs[j].fabric
		}
		return cs[i].width > cs[j].width
	})
}

// ToBuy gives the length to buy, in mm, for a length that is needed: with
// spare, then up to the next whole multiple of what cloth is sold by. It is
// worked out in whole micrometres, so that 10 m with 10 % spare are 11 m and not
// a hair more.
func ToBuy(needed float64, o laminate.Order) float64 {
	n := geometry.Micrometres(float64(needed * (1 + o.SparePercent/100)))
	by := geometry.Micrometres(o.SoldByMM)
	if by <= 0 || n <= 0 {
		return math.Max(n.MM(), 0)
	}
	return ((n + by - 1) / by * by).MM()
}

// quantities gives the blank area and the dry weight of each ply.
func quantities(p laminate.Plan) []laminate.PlyQuantity {
	weight := map[string]float64{}
	for _, f := range p.Fabrics {
		weight[f.Name] = f.WeightGSM
	}
	out := make([]laminate.PlyQuantity, 0, len(p.Plies))
	for _, y := range p.Plies {
		area := y.Blank.Area()
		out = append(out, laminate.PlyQuantity{
			Ply:     y.Ply,
			AreaMM2: geometry.Snap(area),
			DryG:    geometry.Snap(float64(area/1e6) * weight[y.Fabric]),
		})
	}
	return out
}
