package layup

import (
	"cmp"
	"math"
	"slices"

	"github.com/paulmach/orb"

	"stripwright/laminate/content"
	"stripwright/output/sheet"
)

// zoneSpot finds room for a box of height h and width ratio × h inside a zone, h
// at most most and not less than least: its middle and h, or 0 where there is no
// room. Of equal heights the one with clearly most room beside it is taken, else
// the one nearest the middle.
func zoneSpot(z content.Zone, ratio, most, least float64) (at orb.Point, h float64) {
	low, high := zoneHeights(z)
	chords := func(y float64) [][2]float64 { return zoneChords(z, y) }
	for h = math.Min(most, 0.9*(high-low)); h >= least && h > 0; h *= 0.8 {
		best := 0.0
		for i := range 15 {
			y := low + float64((high-low)*float64(fromMiddle(i))/16)
			if y-float64(h/2) < low || y+float64(h/2) > high {
				continue
			}
			if from, to := sheet.Widest(chords, y-float64(h/2), y+float64(h/2)); to-from >= ratio*h && to-from > 1.05*best {
				best, at = to-from, orb.Point{(from + to) / 2, y}
			}
		}
		if best > 0 {
			return at, h
		}
	}
	return at, 0
}

// fromMiddle goes from 8 outwards: 8, 7, 9, 6, 10, ….
func fromMiddle(i int) int {
	if i%2 == 0 {
		return 8 + i/2
	}
	return 8 - (i+1)/2
}

// zoneInside gives a point inside a zone: the middle of its largest field.
func zoneInside(z content.Zone) orb.Point {
	var at orb.Point
	large := 0.0
	for _, f := range z.Fields {
		if a := f.AreaMM2(); a > large {
			large = a
			at = orb.Point{(f.LeftLow + f.LeftHigh + f.RightLow + f.RightHigh) / 4, (f.Low + f.High) / 2}
		}
	}
	return at
}

func zoneHeights(z content.Zone) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, f := range z.Fields {
		low, high = math.Min(low, f.Low), math.Max(high, f.High)
	}
	return low, high
}

// zoneChords gives the stretches of a line of constant y inside a zone.
func zoneChords(z content.Zone, y float64) [][2]float64 {
	var out [][2]float64
	for _, f := range z.Fields {
		if y < f.Low || y >= f.High {
			continue
		}
		up := (y - f.Low) / (f.High - f.Low)
		out = append(out, [2]float64{
			f.LeftLow + float64((f.LeftHigh-f.LeftLow)*up), f.RightLow + float64((f.RightHigh-f.RightLow)*up),
		})
	}
	slices.SortFunc(out, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	return out
}
