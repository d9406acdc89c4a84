package content

import (
	"strconv"
	"strings"

	"stripwright/laminate"
	"stripwright/laminate/material"
)

// Cloth is one fabric in its resin. Thickness and weight of resin are those of a
// ply of it; they are zero where Missing says what is not known.
type Cloth struct {
	Fabric      string
	WeightGSM   float64
	Fibre       string
	Form        string
	DensityGCM3 laminate.Figure
	FibreVolume laminate.Figure // share 0…1
	Band        Span            // of the share of fibre
	BandFrom    string          // what the spread stands on, "" for none
	FibreMass   float64         // share 0…1, 0: resin density not known
	ThicknessMM Span
	ResinGSM    Span
	Unusual     string   // how a stated share of fibre stands beside the usual, "" where it is near it
	Missing     []string // what is to be written, in sentences
}

// Thick says whether the thickness is known, Weighed whether the weight of resin
// is.
func (c Cloth) Thick() bool { return c.ThicknessMM.Value > 0 }

// Weighed says whether the resin in it is known.
func (c Cloth) Weighed() bool { return c.FibreMass > 0 }

// Carbon says whether the fibre is carbon of any kind.
func (c Cloth) Carbon() bool { return strings.HasPrefix(strings.ToLower(c.Fibre), "carbon") }

// Library gives the library with a plan's own kinds.
func Library(p laminate.Plan) material.Library { return material.Generic().With(p.Fibres, p.Resins) }

// ResinDensity gives the density of a plan's resin: as stated, or of its kind in
// the library; unknown otherwise.
func ResinDensity(p laminate.Plan) laminate.Figure {
	if p.Resin == nil {
		return laminate.Figure{}
	}
	if p.Resin.DensityGCM3.Known() {
		return within(p.Resin.DensityGCM3, leastDensity, mostDensity)
	}
	kind, _ := Library(p).Resin(p.Resin.Name)
	return within(kind.DensityGCM3, leastDensity, mostDensity)
}

// Figures beyond these are those of no laminate: a plan may have been edited by
// hand. They count as unknown.
const (
	leastDensity = 0.3 // g/cm³
	mostDensity  = 25.0
	leastShare   = 0.03 // of fibre, by volume or mass
	mostShare    = 0.97
)

// within gives a figure that is within reason, else an unknown one.
func within(f laminate.Figure, low, high float64) laminate.Figure {
	if !(f.Value >= low && f.Value <= high) {
		return laminate.Figure{}
	}
	return f
}

// ClothOf works out a fabric of a plan.
func ClothOf(p laminate.Plan, f laminate.PlanFabric) Cloth {
	c := Cloth{Fabric: f.Name, WeightGSM: f.WeightGSM, Fibre: f.Fibre, Form: f.Form, DensityGCM3: f.DensityGCM3}
	library := Library(p)
	if !c.DensityGCM3.Known() {
		kind, _ := library.Fibre(f.Fibre)
		c.DensityGCM3 = kind.DensityGCM3
	}
	c.DensityGCM3 = within(c.DensityGCM3, leastDensity, mostDensity)
	if !c.DensityGCM3.Known() {
		c.ask("thickness cannot be worked out: write density: for fabric " + f.Name)
	}
	if !(c.WeightGSM > 0) {
		c.ask("thickness cannot be worked out: the areal weight of fabric " + f.Name + " must be above 0")
	}
	c.share(p, f, library)
	c.compare(library)
	c.work(ResinDensity(p))
	return c
}

// farShare is how far beyond the usual span a share of fibre may lie before the
// report says so.
const farShare = 0.05

// compare sets a stated share of fibre beside the usual one of its form and
// fibre.
func (c *Cloth) compare(library material.Library) {
	usual, low, high := library.FibreVolume(c.Form, c.Fibre)
	v := c.FibreVolume
	if !usual.Known() || !v.Known() || v.Basis == laminate.Assumed {
		return
	}
	than := ""
	switch {
	case v.Value > high+farShare:
		than = "more"
	case v.Value < low-farShare:
		than = "less"
	default:
		return
	}
	c.Unusual = percent(v.Value) + " fibre by volume in " + c.Fabric + " is " + than + " than usual (" + usual.From + ")"
}

func (c *Cloth) ask(words string) { c.Missing = append(c.Missing, words) }

// share finds the share of fibre and its spread.
func (c *Cloth) share(p laminate.Plan, f laminate.PlanFabric, library material.Library) {
	r := p.Resin
	stated := f.FibreVolume
	switch {
	case stated.Known():
	case r != nil && r.FibreMass.Known():
		if c.sound(r.FibreMass) {
			c.ofMass(r.FibreMass, ResinDensity(p), r.BandPoints)
		}
		return
	case r != nil:
		stated = r.FibreVolume
	}
	if stated.Known() && !c.sound(stated) {
		return
	}
	c.FibreVolume = stated
	if c.FibreVolume.Known() {
		c.Band = exact(c.FibreVolume.Value)
		if r != nil {
			c.spread(r.BandPoints)
		}
		return
	}
	usual, low, high := library.FibreVolume(f.Form, f.Fibre)
	if !usual.Known() {
		c.ask("thickness cannot be worked out: write fibre_volume: for fabric " + f.Name + ", or under resin:")
		return
	}
	c.FibreVolume = usual
	c.Band = Span{usual.Value, low, high}
	c.BandFrom = "usual span"
	if r != nil {
		c.spread(r.BandPoints)
	}
}

// sound asks for another share of fibre where the stated one is out of reason.
func (c *Cloth) sound(share laminate.Figure) bool {
	if within(share, leastShare, mostShare).Known() {
		return true
	}
	c.ask("thickness cannot be worked out: a fibre content of " + percent(share.Value) + " in " + c.Fabric + " is out of reason")
	return false
}

// spread takes the stated band in place of any other.
func (c *Cloth) spread(points laminate.Figure) {
	if points = within(points, 0, 100); !points.Known() {
		return
	}
	v := c.FibreVolume.Value
	c.Band = Span{v, max(v-points.Value/100, leastShare), min(v+points.Value/100, mostShare)}
	c.BandFrom = bandWords(points)
}

func bandWords(points laminate.Figure) string {
	return points.Basis + ": " + strconv.FormatFloat(points.Value, 'f', -1, 64) + " points either way"
}

// ofMass turns a stated share of mass into one of volume: both densities are
// needed.
func (c *Cloth) ofMass(mass, resin, points laminate.Figure) {
	if !c.DensityGCM3.Known() {
		return // asked for already
	}
	if !resin.Known() {
		c.ask("fibre content by mass needs the resin's density: write density: under resin:")
		return
	}
	volume := func(m float64) float64 { return VolumeOfMass(m, c.DensityGCM3.Value, resin.Value) }
	c.FibreVolume = laminate.Figure{Value: volume(mass.Value), Basis: laminate.Computed, From: "fibre mass " + percent(mass.Value) + ", " + mass.Basis}
	c.Band = exact(c.FibreVolume.Value)
	if points = within(points, 0, 100); points.Known() {
		low, high := max(mass.Value-points.Value/100, leastShare), min(mass.Value+points.Value/100, mostShare)
		c.Band = Span{mass.Value, low, high}.mapped(volume)
		c.BandFrom = bandWords(points)
	}
}

func percent(share float64) string { return strconv.FormatFloat(100*share, 'f', 1, 64) + " %" }

// work reckons thickness and resin of what is known.
func (c *Cloth) work(resin laminate.Figure) {
	fibre := c.DensityGCM3.Value
	if !c.DensityGCM3.Known() || !c.FibreVolume.Known() || !(c.WeightGSM > 0) {
		return
	}
	c.ThicknessMM = c.Band.mapped(func(vf float64) float64 { return Thickness(c.WeightGSM, fibre, vf) })
	if !resin.Known() {
		return
	}
	c.FibreMass = MassOfVolume(c.FibreVolume.Value, fibre, resin.Value)
	c.ResinGSM = c.Band.mapped(func(vf float64) float64 { return ResinHeld(c.WeightGSM, fibre, resin.Value, vf) })
}
