package page

// Size is a size of paper in mm. Name is how files are called after it.
type Size struct {
	Name       string
	Wide, High float64
}

// Sizes of paper, upright: ISO 216 A4, and US Letter, 8 1/2 by 11 in.
var (
	A4     = Size{"a4", 210, 297}
	Letter = Size{"letter", 215.9, 279.4}
)

// Measures of every page in mm.
const (
	Margin    = 10.0
	FootHigh  = 23.0 // title block
	StampHigh = 20.0
)

// Heights of lettering in mm: capitals.
const (
	TitleHigh = 7.5
	HeadHigh  = 3.2
	BodyHigh  = 2.6
	SmallHigh = 2.0
)

// Inner gives the width between the margins.
func (s Size) Inner() float64 { return s.Wide - 2*Margin }

// Across gives the paper laid across.
func (s Size) Across() Size { return Size{s.Name, s.High, s.Wide} }
