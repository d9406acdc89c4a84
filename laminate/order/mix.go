package order

import (
	"math"

	"stripwright/geometry"
	"stripwright/laminate"
)

// Mixed is a mass of mixed resin as resin (A) and hardener (B), and how it is
// parted into batches.
type Mixed struct {
	Ratio   string  `json:"ratio"` // in words: "100 : 30 by weight"
	A       Part    `json:"a"`
	B       Part    `json:"b"`
	LimitG  float64 `json:"batch_limit_g,omitempty"` // 0: not stated
	Batches int     `json:"batches"`                 // equal ones, 1 where no limit is stated
	BatchG  float64 `json:"batch_g"`
	EachA   Part    `json:"batch_a"`
	EachB   Part    `json:"batch_b"`
}

// Part is a mass, and a volume where the density is stated.
type Part struct {
	G  float64 `json:"g"`
	ML float64 `json:"ml,omitempty"`
}

// mostBatches is how many batches are told apart: more come of no job.
const mostBatches = 100000

// mixed parts a mass into resin and hardener, and into equal batches no larger
// than stated.
func mixed(r *laminate.Resin, total float64) *Mixed {
	x := r.Mix
	if x == nil || !(x.PartsA > 0) || !(x.PartsB > 0) {
		return nil
	}
	a, b, by := x.PartsA, x.PartsB, "by weight"
	if x.ByVolume {
		if !(x.DensityAGCM3 > 0) || !(x.DensityBGCM3 > 0) {
			return nil
		}
		a, b, by = float64(a*x.DensityAGCM3), float64(b*x.DensityBGCM3), "by volume"
	}
	m := &Mixed{Ratio: plain(x.PartsA) + " : " + plain(x.PartsB) + " " + by, LimitG: r.BatchG, Batches: 1}
	if n := math.Ceil(total/r.BatchG - 1e-9); r.BatchG > 0 && n > 1 && n <= mostBatches {
		m.Batches = int(n)
	}
	m.BatchG = geometry.Snap(total / float64(m.Batches))
	share := a / (a + b)
	m.A, m.B = parts(x, total, share)
	m.EachA, m.EachB = parts(x, total/float64(m.Batches), share)
	return m
}

// parts gives the two parts of a mass, with volumes where densities are stated.
func parts(x *laminate.Mix, total, share float64) (a, b Part) {
	a.G = geometry.Snap(float64(total * share))
	b.G = geometry.Snap(float64(total * (1 - share)))
	if x.DensityAGCM3 > 0 && x.DensityBGCM3 > 0 {
		a.ML = geometry.Snap(float64(total*share) / x.DensityAGCM3)
		b.ML = geometry.Snap(float64(total*(1-share)) / x.DensityBGCM3)
	}
	return a, b
}

// packs rounds a mass up to whole packs of a size, 0: any mass.
func packs(g, size float64) float64 {
	if g <= 0 {
		return 0
	}
	if size <= 0 {
		return g
	}
	return float64(math.Ceil(g/size-1e-9) * size)
}
