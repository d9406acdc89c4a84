package geometry

import "math"

// Micrometre is a length in whole micrometres. Decisions on stagger, width and
// roll length are made on it, never on float64.
type Micrometre int64

// Micrometres rounds a length in millimetres to the nearest whole micrometre.
func Micrometres(mm float64) Micrometre { return Micrometre(math.Round(float64(mm * 1000))) }

// MM gives the length in millimetres.
func (m Micrometre) MM() float64 { return float64(m) / 1000 }

// Snap rounds a length in millimetres to the micrometre grid.
func Snap(mm float64) float64 { return Micrometres(mm).MM() }
