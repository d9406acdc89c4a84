package layout

import (
	"cmp"
	"slices"

	"stripwright/geometry/band"
)

// Fit is the ends of all full-width pieces of a division, each list by slant.
type Fit struct{ Ahead, Back []band.End }

func fitOf(list []band.Ends) *Fit {
	f := &Fit{}
	for i := range list {
		f.Ahead = append(f.Ahead, list[i].Ahead)
		f.Back = append(f.Back, list[i].Back)
	}
	bySlant := func(a, b band.End) int { return cmp.Compare(a.Slant, b.Slant) }
	slices.SortStableFunc(f.Ahead, bySlant)
	slices.SortStableFunc(f.Back, bySlant)
	return f
}
