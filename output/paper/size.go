package paper

// Size is a size of paper in mm, upright. Name is how files are called after it.
type Size struct {
	Name       string
	Wide, High float64
}

// Sizes of paper: ISO 216 A4, and US Letter, 8 1/2 by 11 in.
var (
	A4     = Size{"a4", 210, 297}
	Letter = Size{"letter", 215.9, 279.4}
)

// Measures of every page in mm.
const (
	Margin    = 10.0
	footHigh  = 23.0 // title block
	stampHigh = 20.0
)

// Heights of lettering in mm: capitals.
const (
	titleHigh = 7.5
	headHigh  = 3.2
	bodyHigh  = 2.6
	smallHigh = 2.0

	rowHigh = 5.8 // of a table
)

// Inner gives the width between the margins.
func (s Size) Inner() float64 { return s.Wide - 2*Margin }
