package order

import (
	"math"

	"stripwright/geometry"
	"stripwright/geometry/length"
	"stripwright/laminate"
)

// Boards are the sheets that one core is laid of.
type Boards struct {
	Name        string          `json:"name"`
	AfterPly    int             `json:"after_ply"` // lies on this ply, 0: on the tool
	Outline     string          `json:"outline,omitempty"`
	ThicknessMM float64         `json:"thickness_mm"`
	AreaMM2     float64         `json:"area_mm2"` // of its blank
	MassG       float64         `json:"mass_g"`   // of its blank, dry
	SheetMM     [2]float64      `json:"sheet_mm"` // 0, 0: not stated
	Sheets      laminate.Figure `json:"sheets,omitzero"`
	ByArea      int             `json:"least_by_area,omitempty"` // no plan needs fewer
	Along       string          `json:"along,omitempty"`         // "x" or "y" of the part, which way the first side of a sheet lies
}

// boards counts the sheets of a core: straight rows over its real outline, the
// sheets one way or the other, whichever takes fewer. Offcuts are not used
// again, so fewer may do.
func boards(c laminate.Core) Boards {
	b := Boards{
		Name: c.Name, AfterPly: c.AfterPly, Outline: c.Outline, ThicknessMM: c.ThicknessMM, SheetMM: c.SheetMM, AreaMM2: geometry.Snap(c.Blank.Area()),
		MassG: geometry.Snap(float64(float64(c.Blank.Area()*c.ThicknessMM)*c.DensityKGM3) / 1e6),
	}
	long, wide := c.SheetMM[0], c.SheetMM[1]
	if !(long >= 1) || !(wide >= 1) || c.Blank.Empty() {
		return b
	}
	rings := c.Blank.Rings()
	n := 0
	for _, t := range []struct {
		along string
		count int
	}{
		{"x", sheets(rings, long, wide)}, {"y", sheets(rings, wide, long)},
		{"y", sheets(turned(rings), long, wide)}, {"x", sheets(turned(rings), wide, long)},
	} {
		if t.count > 0 && (n == 0 || t.count < n) {
			n, b.Along = t.count, t.along
		}
	}
	if n == 0 {
		return b
	}
	b.ByArea = int(math.Ceil(float64(b.AreaMM2/float64(long*wide)) - 1e-9))
	b.Sheets = laminate.Figure{Value: float64(n), Basis: laminate.Computed, From: "straight rows, offcuts not used again"}
	return b
}

// coreItems adds the cores to the order, each kind once.
func (o *Order) coreItems(p laminate.Plan) {
	place := map[string]int{}
	for k, b := range o.Cores {
		c := p.Cores[k]
		if at, ok := place[b.Name]; ok {
			i := &o.Items[at]
			each, has := i.PriceEach, i.HasPrice
			i.Net = amount(i.Net.Value+net(b), i.Net.Unit)
			i.ToBuy = atLeast(max(i.Net.Value-i.OnHand.Value, 0), i.Net.Unit)
			*i = i.priced(each, has)
			continue
		}
		place[b.Name] = len(o.Items)
		i := Item{Kind: CoreItem, Name: b.Name, What: length.MM(b.ThicknessMM) + ", " + plain(c.DensityKGM3) + " kg/m3", Basis: laminate.Computed, Assumed: []string{}}
		unit := Squares
		if b.Sheets.Known() {
			unit = Sheets
			i.What += ", " + plain(b.SheetMM[0]) + " x " + length.MM(b.SheetMM[1])
		}
		i.SparePercent = laminate.Figure{Value: 0, Basis: laminate.Assumed, From: "no spare is kept of core"}
		i.Net = amount(net(b), unit)
		i.OnHand, i.SoldBy = amount(0, unit), amount(0, unit)
		if unit == Sheets {
			i.OnHand = amount(float64(c.OnHand), unit)
		}
		i.ToBuy = atLeast(max(i.Net.Value-i.OnHand.Value, 0), unit)
		o.Items = append(o.Items, i.priced(c.PricePerSheet, c.HasPrice))
	}
}

// net gives the sheets of a core, or its area in m² where no size is stated.
func net(b Boards) float64 {
	if b.Sheets.Known() {
		return b.Sheets.Value
	}
	return b.AreaMM2 / 1e6
}
