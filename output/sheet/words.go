package sheet

import (
	"math"
	"strconv"

	"stripwright/geometry/length"
)

// Tape prints a length to 0.1 mm: "600 mm"; in a job in inches or feet also by
// the tape's fractions: "23 5/8 in (600 mm)".
func Tape(mm float64, units string) string { return inWords(TapeFigure(mm, units)) }

// TapeFigure prints the same in two parts: the figure to be read first, and what
// stands small beside it, in a job in mm nothing.
func TapeFigure(mm float64, units string) (figure, beside string) {
	return figures(mm, 0.1, units)
}

// MarkMM is how finely a length is given that a laminator or cutter marks with a
// tape measure.
const MarkMM = 0.5

// Mark prints a length that is marked with a tape measure: to MarkMM, in a job in
// inches or feet to the tape's fraction first.
func Mark(mm float64, units string) string { return inWords(MarkFigure(mm, units)) }

// MarkFigure prints the same in two parts.
func MarkFigure(mm float64, units string) (figure, beside string) {
	return figures(mm, MarkMM, units)
}

// MarkWords says how finely marks are given.
func MarkWords(units string) string {
	if inches(units) {
		return "to the nearest 1/32 in"
	}
	return "to the nearest " + length.MM(MarkMM)
}

func figures(mm, step float64, units string) (figure, beside string) {
	text := length.MM(math.Round(math.Round(mm/step)*step*10) / 10)
	if !inches(units) {
		return text, ""
	}
	return length.Inches(mm), text
}

func inWords(figure, beside string) string {
	if beside == "" {
		return figure
	}
	return figure + " (" + beside + ")"
}

// MetreMark prints a running length along a roll: "12.5 m", "12.5 m (492 1/8 in)".
func MetreMark(mm float64, units string) string {
	text := strconv.FormatFloat(math.Round(mm)/1000, 'f', -1, 64) + " m"
	if !inches(units) {
		return text
	}
	return text + " (" + length.Inches(mm) + ")"
}

// Size prints a size in mm and in inches, whatever the unit of the job.
func Size(w, h float64) string {
	return trimmed(w, 1) + " x " + trimmed(h, 1) + " mm (" + trimmed(w/25.4, 2) + " x " + trimmed(h/25.4, 2) + " in)"
}

func inches(units string) bool { return units == "in" || units == "ft" || units == "yd" }

// Degrees prints an angle with its sign: "0°", "+45°", "-45°", "90°".
func Degrees(deg float64) string {
	text := trimmed(deg, 3) + "°"
	if deg > 0 && deg != 90 {
		return "+" + text
	}
	return text
}

// trimmed prints a number with at most so many decimals, no zeros at the end.
func trimmed(v float64, decimals int) string {
	scale := math.Pow10(decimals)
	r := math.Round(v*scale) / scale
	return strconv.FormatFloat(r+0, 'f', -1, 64)
}

// Number prints a number with at most so many decimals, without zeros at the
// end.
func Number(v float64, decimals int) string { return trimmed(v, decimals) }
