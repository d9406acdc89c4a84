package order

import (
	"math"
	"slices"
	"strconv"

	"stripwright/geometry"
	"stripwright/geometry/length"
	"stripwright/laminate"
	"stripwright/laminate/content"
)

// Resin is the resin that is mixed, line by line.
type Resin struct {
	Name         string          `json:"name"`
	DensityGCM3  laminate.Figure `json:"density_gcm3"`
	Lines        []Line          `json:"lines"`
	NetG         float64         `json:"net_g"` // of all lines
	SparePercent laminate.Figure `json:"spare_percent"`
	SpareG       float64         `json:"spare_g"`
	TotalG       float64         `json:"total_g"` // to mix
	Mix          *Mixed          `json:"mix"`     // nil: the ratio is not stated
	Whole        bool            `json:"whole"`   // nothing of it is missing

	assumed []string // what the lines rest on
}

// Line is what one thing holds of the resin.
type Line struct {
	What    string          `json:"what"`
	AreaMM2 float64         `json:"area_mm2,omitempty"` // 0: not by area
	GSM     laminate.Figure `json:"gsm,omitzero"`       // per m² of that area, layers and faces together
	MassG   laminate.Figure `json:"mass_g"`
}

// resin works out the resin and its items.
func (o *Order) resin(p laminate.Plan) {
	if p.Resin == nil {
		return
	}
	r := &Resin{Name: p.Resin.Name, DensityGCM3: content.ResinDensity(p), SparePercent: p.Resin.SparePercent, Lines: []Line{}, Whole: true}
	o.Resin = r
	o.inPlies(p)
	o.takenUp(p)
	if l := p.Resin.LinesAndPotG; l.Known() {
		r.Lines = append(r.Lines, Line{What: "feed lines and pot", MassG: l})
	}
	for _, l := range r.Lines {
		r.NetG += l.MassG.Value
	}
	r.SpareG = geometry.Snap(float64(r.NetG*r.SparePercent.Value) / 100)
	r.NetG = geometry.Snap(r.NetG)
	r.TotalG = geometry.Snap(r.NetG + r.SpareG)
	r.Mix = mixed(p.Resin, r.TotalG)
	if r.Mix == nil {
		o.miss("resin and hardener cannot be told apart: write mix: under resin:, from the data sheet")
	}
	o.resinItems(p.Resin)
}

// miss adds a sentence once; what is missing from the resin leaves it not whole.
func (o *Order) miss(sentence string) {
	if !slices.Contains(o.Missing, sentence) {
		o.Missing = append(o.Missing, sentence)
	}
}

func (o *Order) missResin(sentence string) {
	o.miss(sentence)
	o.Resin.Whole = false
}

// inPlies adds what the plies of each fabric hold, over their whole blanks.
func (o *Order) inPlies(p laminate.Plan) {
	for _, f := range p.Fabrics {
		c := content.ClothOf(p, f)
		area, laid, used := 0.0, 0.0, false
		for _, y := range p.Plies {
			if y.Fabric == f.Name {
				a := y.Blank.Area()
				area, laid, used = area+a, laid+float64(a*content.Laps(y)), true
			}
		}
		if !used {
			continue
		}
		if !c.Weighed() {
			o.missResin("the resin in the plies of " + f.Name + " is not in the sum")
			for _, m := range c.Missing {
				o.missResin(m)
			}
			continue
		}
		o.Resin.assumed = append(o.Resin.assumed, assumed(
			named{c.DensityGCM3, "fibre density " + plain(c.DensityGCM3.Value) + " g/cm3 of " + f.Name},
			named{c.FibreVolume, "fibre " + percent(c.FibreVolume.Value) + " by volume in " + f.Name},
		)...)
		basis := laminate.Figure{Value: c.ResinGSM.Value, Basis: laminate.Computed, From: "fibre " + percent(c.FibreVolume.Value) + " by volume, " + basisWords(c.FibreVolume)}
		o.Resin.Lines = append(o.Resin.Lines, line("plies of "+f.Name, laid, basis))
	}
}

// takenUp adds what consumables and cores hold.
func (o *Order) takenUp(p laminate.Plan) {
	for i, c := range p.Consumables {
		s := o.Supplies[i]
		switch {
		case c.UptakeGSM.Known():
			o.Resin.Lines = append(o.Resin.Lines, line(c.Name, s.AreaMM2, c.UptakeGSM))
		case c.Kind == laminate.PeelPly || c.Kind == laminate.FlowMedia || c.Kind == laminate.Other:
			o.missResin("the resin that " + c.Name + " takes up is not in the sum: write uptake: or test: for it")
		}
	}
	for i, c := range p.Cores {
		if !c.UptakeGSM.Known() {
			o.missResin("the resin that core " + c.Name + " takes up is not in the sum: write uptake: for it")
			continue
		}
		both := c.UptakeGSM
		both.Value *= 2
		o.Resin.Lines = append(o.Resin.Lines, line("core "+c.Name+", both faces", o.Cores[i].AreaMM2, both))
	}
}

// line gives what an area holds at so many g/m²; the mass is as sure as those.
func line(what string, area float64, gsm laminate.Figure) Line {
	gsm.Value = settled(gsm.Value)
	mass := laminate.Figure{Value: geometry.Snap(float64(area*gsm.Value) / 1e6), Basis: laminate.Computed, From: basisWords(gsm)}
	return Line{What: what, AreaMM2: geometry.Snap(area), GSM: gsm, MassG: mass}
}

// basisWords tells what a figure stands on: "assumed: infused glass cloth".
func basisWords(f laminate.Figure) string {
	if f.From == "" {
		return f.Basis
	}
	return f.Basis + ": " + f.From
}

// resinItems adds resin and hardener to the order, or the mixed resin where the
// ratio is not stated. What is on hand, what it is sold by and the price per
// kilogram are those of both together.
func (o *Order) resinItems(r *laminate.Resin) {
	rest := append([]string{}, o.Resin.assumed...)
	rest = append(rest, o.assumedOfResin()...)
	bought := packs(o.Resin.TotalG-r.OnHandG, r.SoldByG)
	item := func(kind, name, what string, share float64) Item {
		if !o.Resin.Whole {
			what += ", at least"
		}
		i := Item{
			Kind: kind, Name: name, What: what, Net: amount(float64(o.Resin.NetG*share)/1000, Kilos), Basis: laminate.Computed,
			SparePercent: o.Resin.SparePercent, OnHand: amount(float64(r.OnHandG*share)/1000, Kilos), SoldBy: amount(float64(r.SoldByG*share)/1000, Kilos),
			ToBuy: atLeast(float64(bought*share)/1000, Kilos), Assumed: rest,
		}
		return i.priced(r.PricePerKG, r.HasPrice)
	}
	if m := o.Resin.Mix; m != nil && m.A.G+m.B.G > 0 {
		share := m.A.G / (m.A.G + m.B.G)
		o.Items = append(o.Items, item(ResinItem, r.Name, "resin (A), "+m.Ratio, share), item(HardenerItem, r.Name, "hardener (B), "+m.Ratio, 1-share))
		return
	}
	o.Items = append(o.Items, item(ResinItem, r.Name, "resin and hardener together", 1))
}

// assumedOfResin lists what the sum of the resin rests on.
func (o *Order) assumedOfResin() []string {
	out := assumed(named{o.Resin.DensityGCM3, "resin density " + plain(o.Resin.DensityGCM3.Value) + " g/cm3"})
	for _, l := range o.Resin.Lines {
		out = append(out, assumed(named{l.GSM, l.What + " " + length.Weight(l.GSM.Value)})...)
		if l.AreaMM2 == 0 {
			out = append(out, assumed(named{l.MassG, l.What + " " + plain(l.MassG.Value) + " g"})...)
		}
	}
	return append(out, assumed(named{o.Resin.SparePercent, "spare " + plain(o.Resin.SparePercent.Value) + " %"})...)
}

func percent(share float64) string {
	return strconv.FormatFloat(math.Round(float64(share*1000))/10, 'f', -1, 64) + " %"
}

// plain prints a figure to a thousandth, without zeros at the end.
func plain(v float64) string {
	return strconv.FormatFloat(math.Round(float64(v*1000))/1000+0, 'f', -1, 64)
}
