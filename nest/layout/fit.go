package layout

import (
	"cmp"
	"slices"

	"stripwright/geometry/band"
)

// Fit is the ends of all full-width pieces of a division, each list by slant.
type Fit struct{ Ahead, Back []band.End }

func fitOf(list []band.Ends) *Fit {
	f := &Fit{make([]band.End, 0, len(list)), make([]band.End, 0, len(list))}
	for i := range list {
		f.Ahead = append(f.Ahead, list[i].Ahead)
		f.Back = append(f.Back, list[i].Back)
	}
	bySlant := func(a, b band.End) int { return cmp.Compare(a.Slant, b.Slant) }
	slices.SortStableFunc(f.Ahead, bySlant)
	slices.SortStableFunc(f.Back, bySlant)
	return f
}

// Fit gives the ends of all full-width pieces, as cut face up or face down.
func (d *Division) Fit(down bool) *Fit {
	if !down {
		return d.fit[0]
	}
	if d.fit[1] == nil {
		list := make([]band.Ends, len(d.fit[0].Ahead))
		for i := range list {
			list[i] = band.Ends{Ahead: d.fit[0].Ahead[i], Back: d.fit[0].Back[i]}.Mirrored()
		}
		d.fit[1] = fitOf(list)
	}
	return d.fit[1]
}
