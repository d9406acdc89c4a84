package layup

import (
	"math"

	"stripwright/output/sheet"
)

// Line widths and dashes are in units of the layout: times k they are mm.

// directionPen gives the pen of a ply direction, never by colour alone: 0°
// solid, 90° dashes, +45° dash-dot, -45° dots and wide, any other long dashes
// with two dots.
func directionPen(deg, k float64) sheet.Pen {
	dash := func(d ...float64) (out [6]float64) {
		for i, v := range d {
			out[i] = v * k
		}
		return out
	}
	near := func(to float64) bool { return math.Abs(deg-to) < 0.5 }
	switch {
	case near(0):
		return sheet.Pen{Ink: "#0072B2", Width: 0.5 * k}
	case near(90):
		return sheet.Pen{Ink: "#D55E00", Width: 0.5 * k, Dash: dash(3, 1.5)}
	case near(45):
		return sheet.Pen{Ink: "#009E73", Width: 0.5 * k, Dash: dash(4, 1, 0.6, 1)}
	case near(-45):
		return sheet.Pen{Ink: "#CC79A7", Width: 0.9 * k, Dash: dash(0.9, 1.3)}
	}
	return sheet.Pen{Ink: "#3D2B8C", Width: 0.5 * k, Dash: dash(6, 1, 0.6, 1, 0.6, 1)}
}

// Pens of a lay-up sheet.

// jointPen is the thickest, but for strips too narrow to bear it.
func jointPen(k, narrowestMM float64) sheet.Pen {
	return sheet.Solid(sheet.Black, math.Max(0.65*k, math.Min(0.9*k, 0.2*narrowestMM)))
}

func netPen(k float64) sheet.Pen { return sheet.Solid(sheet.Black, 0.45*k) }

func blankPen(k float64) sheet.Pen {
	return sheet.Pen{Ink: sheet.Grey, Width: 0.35 * k, Dash: [6]float64{2.4 * k, 1.2 * k}}
}

func earlierPen(k float64) sheet.Pen {
	return sheet.Pen{Ink: sheet.Grey, Width: 0.3 * k, Dash: [6]float64{0.4 * k, 1 * k}}
}
