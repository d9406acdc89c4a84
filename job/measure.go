package job

import (
	"math"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"stripwright/geometry"
	"stripwright/geometry/length"
	"stripwright/laminate"
)

// measure is a kind of value: how it is read, and what is taken for one, both
// ends included and in words.
type measure struct {
	parse       func(string) (float64, error)
	least, most float64
	taken       string
}

// Values of materials that are taken for one.
var (
	fibreDensities = measure{length.ParseDensity, 0.5, 20, "0.5 to 20 g/cm3"}
	resinDensities = measure{length.ParseDensity, 0.8, 2.5, "0.8 to 2.5 g/cm3"}
	coreDensities  = measure{length.ParseDensity, 0.01, 2, "10 to 2000 kg/m3"}
	fibreVolumes   = measure{share, 0.05, 0.85, "5 to 85 %"}
	fibreMasses    = measure{share, 0.1, 0.95, "10 to 95 %"}
	ratios         = measure{length.ParsePlain, 0.05, 10, "0.05 to 10 g of resin for each g of fibre"}
	points         = measure{length.ParsePercent, 0, 20, "0 to 20 %, counted in points of the fibre fraction"}
	percents       = measure{length.ParsePercent, 0, 200, "0 to 200 %"}
	bands          = measure{length.ParsePercent, 0, 50, "0 to 50 %"}
	heldMasses     = measure{length.ParseMass, 0, 1e6, "0 to 1000 kg"}
	batches        = measure{length.ParseMass, 10, 1e6, "10 g to 1000 kg"}
	panelMasses    = measure{length.ParseMass, 0.1, 1e8, "0.1 g to 100 t"}
	pieceMasses    = measure{length.ParseMass, 0.01, 1e6, "0.01 g to 1000 kg"}
	areas          = measure{length.ParseArea, 100, 1e9, "1 cm2 to 1000 m2"}
	mixParts       = measure{length.ParsePlain, 0.001, 1e6, "0.001 to 1000000"}
	kiloPrices     = measure{length.ParsePriceOfMass, 0, 1e6, "0 to 1000000"}
	sheetPrices    = measure{length.ParsePlain, 0, 1e6, "0 to 1000000 for a sheet"}
	moduli         = measure{length.ParseModulus, 0.01, 2000, "0.01 to 2000 GPa"}
	poissonRatios  = measure{length.ParsePlain, -1, 2, "-1 to 2"}
	expansions     = measure{length.ParsePlain, -100, 500, "-100 to 500 millionths per kelvin"}
)

// share reads a percentage as a part of one.
func share(s string) (float64, error) {
	v, err := length.ParsePercent(s)
	if err != nil && length.Bare(s) {
		return 0, &length.Error{Text: strconv.Quote(s) + " has no percent sign", Cure: "write it in percent, like 52 %"}
	}
	return v / 100, err
}

// measured reads a value and holds it to what is taken for one.
func (r *reading) measured(n *yaml.Node, rule string, m measure) (float64, bool) {
	v, ok := number(r, n, rule, m.parse)
	if ok && (v < m.least || v > m.most) {
		r.refuse(n, rule, "check the number and its unit", "%s %s is out of reason: %s is taken", rule, strings.TrimSpace(n.Value), m.taken)
		return 0, false
	}
	return toNano(v), ok
}

// toNano rounds to nine decimals, as a plan's figures are written, so that a plan
// is the same before and after it lies in a file.
func toNano(v float64) float64 { return math.Round(float64(v*1e9)) / 1e9 }

// figure reads a value that may be left out: given, or unknown.
func (r *reading) figure(b block, key string, m measure) laminate.Figure {
	n := b.value(key)
	if n == nil {
		return laminate.Figure{}
	}
	v, ok := r.measured(n, key, m)
	if !ok {
		return laminate.Figure{}
	}
	return given(v)
}

// lengthFigure reads a length that may be left out.
func (r *reading) lengthFigure(b block, key string, l limits) laminate.Figure {
	n := b.value(key)
	if n == nil {
		return laminate.Figure{}
	}
	mm, ok := r.lengthIn(n, key, l)
	if !ok {
		return laminate.Figure{}
	}
	return given(geometry.Snap(mm))
}

// arealWeights is what is taken for the resin that cloth, film or a core's face
// takes up. A bare number is g/m² in a metric job.
func (r *reading) arealWeights() measure {
	parse := func(s string) (float64, error) {
		if r.units.Metric() && length.Bare(s) {
			s += " g/m2"
		}
		return length.ParseWeight(s)
	}
	return measure{parse, 1, 20000, "1 to 20000 g/m2"}
}

// otherwise gives a stated figure, or what is assumed in its place, which is
// noted at the block in the words given.
func (r *reading) otherwise(b block, key string, f laminate.Figure, v float64, from, words string, args ...any) laminate.Figure {
	if f.Known() || b.has(key) {
		return f
	}
	r.assume(b.at, key, words, args...)
	return laminate.Figure{Value: v, Basis: laminate.Assumed, From: from}
}

// given makes a figure of what is written in the job.
func given(v float64) laminate.Figure { return laminate.Figure{Value: v, Basis: laminate.Given} }

// spoken gives a length that the job does not state: in mm, in an inch shop in
// inches as well.
func (r *reading) spoken(mm float64) string {
	if r.units.Metric() {
		return length.MM(mm)
	}
	return length.Inches(mm) + " (" + length.MM(mm) + ")"
}

// atMostOne refuses a second one of several keys in a block; the first is
// given, "" for none.
func (r *reading) atMostOne(b block, keys ...string) string {
	found := ""
	for _, k := range keys {
		switch {
		case !b.has(k):
		case found == "":
			found = k
		default:
			r.refuse(b.keys[k], ruleTwice, "keep one of them", "%s has both %s and %s", b.what, found, k)
		}
	}
	return found
}
