package measured

import (
	"fmt"
	"math"
	"strconv"

	"stripwright/laminate"
	"stripwright/laminate/content"
)

// Void is an estimate of voids, percent of the volume.
type Void struct {
	Percent float64
	Causes  []Cause // of the spread, one at a time
	OneLow  float64 // least and most of them
	OneHigh float64
	Low     float64 // all at once
	High    float64
}

// Cause is one figure that may be off, with what the estimate runs through.
type Cause struct {
	Words     string // "cloth ±5 % (assumed)"
	Low, High float64
}

// Trusted says whether the estimate means anything: its span, all causes at
// once, stays above 0 and is not wider than the estimate.
func (v Void) Trusted() bool { return v.Low > 0 && v.High-v.Low <= v.Percent }

// Figures that a panel is judged by where the job states no others.
const (
	clothBand = 5.0 // percent that cloth may weigh more or less (common practice, no source)
	caliperMM = 0.1 // by which a thickness may be off (common practice, no source)
)

// weights are what goes into a judgement: g/m² and mm.
type weights struct{ fibre, panel, thick float64 }

// bench is what was put on the scale, and how far each figure may be off.
type bench struct {
	at       weights
	low      weights
	high     weights
	volume   float64 // mm of solid fibre for each g/m² of it
	resin    float64 // density, 0: not known
	weighed  bool
	ofCloth  string // the causes in words, "" for none
	ofThick  string
	ofWeight string
}

func newBench(m laminate.Measured, s content.Sums, mm2, resin float64) bench {
	b := bench{resin: resin, volume: s.FibreMM3 / s.FibreG / 1e6}
	panel := m.WeightG / m.AreaMM2 * 1e6
	b.at = weights{s.FibreG / mm2 * 1e6, panel, m.ThicknessMM}
	b.low, b.high = b.at, b.at
	cloth, what := figureOr(m.ClothBand, clothBand), "cloth"
	scale := m.ScaleBand
	if m.DryG > 0 {
		b.weighed = true
		b.at.fibre = m.DryG / m.AreaMM2 * 1e6
		cloth, what = scale, "fibre weighed dry"
	}
	b.low.fibre, b.high.fibre, b.ofCloth = around(b.at.fibre, cloth, what)
	b.low.panel, b.high.panel, b.ofWeight = around(panel, scale, "weight of the panel")
	b.low.thick, b.high.thick, b.ofThick = readings(m)
	return b
}

func figureOr(f laminate.Figure, usual float64) laminate.Figure {
	if f.Known() {
		return f
	}
	return laminate.Figure{Value: usual, Basis: laminate.Assumed}
}

// around gives a figure some percent less and more, and the cause in words, ""
// where there is none.
func around(v float64, percent laminate.Figure, what string) (low, high float64, words string) {
	if !percent.Known() || percent.Value == 0 {
		return v, v, ""
	}
	f := percent.Value / 100
	return v * (1 - f), v * (1 + f), what + " ±" + strconv.FormatFloat(percent.Value, 'f', -1, 64) + " % (" + percent.Basis + ")"
}

// readings gives the least and greatest thickness.
func readings(m laminate.Measured) (low, high float64, words string) {
	if m.ThinnestMM > 0 && m.ThickestMM >= m.ThinnestMM {
		low, high = math.Min(m.ThinnestMM, m.ThicknessMM), math.Max(m.ThickestMM, m.ThicknessMM)
		return low, high, fmt.Sprintf("thickness %s to %s mm (given)", decimal(low), decimal(high))
	}
	low, high = math.Max(m.ThicknessMM-caliperMM, m.ThicknessMM/2), m.ThicknessMM+caliperMM
	return low, high, fmt.Sprintf("thickness %s to %s mm (±%v mm assumed)", decimal(low), decimal(high), caliperMM)
}

func decimal(v float64) string {
	return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64)
}

// corners lists the weights with every figure at either end.
func (b bench) corners() []weights {
	var out []weights
	for _, f := range []float64{b.low.fibre, b.high.fibre} {
		for _, p := range []float64{b.low.panel, b.high.panel} {
			for _, t := range []float64{b.low.thick, b.high.thick} {
				out = append(out, weights{f, p, t})
			}
		}
	}
	return out
}

// span gives a figure with the least and most over all corners.
func (b bench) span(f func(weights) float64) content.Span {
	s := content.Span{Value: f(b.at), Low: math.Inf(1), High: math.Inf(-1)}
	for _, c := range append(b.corners(), b.at) {
		s.Low, s.High = math.Min(s.Low, f(c)), math.Max(s.High, f(c))
	}
	return s
}

func (b bench) fibreVolume(w weights) float64 { return w.fibre * b.volume / w.thick }

// voids gives the percent of voids of these weights.
func (b bench) voids(w weights) float64 {
	fibre := 100 * w.fibre / w.panel
	solid := SolidDensity(100-fibre, b.resin, fibre, 1/(1000*b.volume))
	return VoidPercent(solid, w.panel/(1000*w.thick))
}

// void estimates the voids with what each cause does to them.
func (b bench) void() *Void {
	all := b.span(b.voids)
	v := &Void{Percent: all.Value, Low: all.Low, High: all.High, OneLow: all.Value, OneHigh: all.Value}
	one := func(words string, low, high weights) {
		if words == "" {
			return
		}
		c := Cause{words, math.Min(b.voids(low), b.voids(high)), math.Max(b.voids(low), b.voids(high))}
		v.Causes = append(v.Causes, c)
		v.OneLow, v.OneHigh = math.Min(v.OneLow, c.Low), math.Max(v.OneHigh, c.High)
	}
	one(b.ofCloth, weights{b.low.fibre, b.at.panel, b.at.thick}, weights{b.high.fibre, b.at.panel, b.at.thick})
	one(b.ofThick, weights{b.at.fibre, b.at.panel, b.low.thick}, weights{b.at.fibre, b.at.panel, b.high.thick})
	one(b.ofWeight, weights{b.at.fibre, b.low.panel, b.at.thick}, weights{b.at.fibre, b.high.panel, b.at.thick})
	return v
}
