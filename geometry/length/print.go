package length

import (
	"math"
	"strconv"
)

// MM prints a length in millimetres to 0.001 mm, without zeros at the end:
// "1370 mm", "12.5 mm".
func MM(mm float64) string { return trimmed(mm, 3) + " mm" }

// Inches prints a length given in millimetres in inches, to the nearest 1/32
// as on a tape measure, so at most 0.4 mm off: "53 15/16 in", "5/8 in". Where
// the size decides something, print MM beside it.
func Inches(mm float64) string {
	parts := int64(math.Round(float64(math.Abs(mm) * 320 / 254)))
	sign := ""
	if mm < 0 && parts > 0 {
		sign = "-"
	}
	whole, part, under := parts/32, parts%32, int64(32)
	for part != 0 && part%2 == 0 {
		part, under = part/2, under/2
	}
	fraction := strconv.FormatInt(part, 10) + "/" + strconv.FormatInt(under, 10)
	switch {
	case part == 0:
		return sign + strconv.FormatInt(whole, 10) + " in"
	case whole == 0:
		return sign + fraction + " in"
	}
	return sign + strconv.FormatInt(whole, 10) + " " + fraction + " in"
}

// In prints a length given in millimetres in a unit: mm to 0.001, cm to
// 0.0001, m to 0.000001, yd to 0.001; inches and feet both as Inches.
func In(mm float64, u Unit) string {
	switch u {
	case Centimetre:
		return trimmed(mm/10, 4) + " cm"
	case Metre:
		return trimmed(mm/1000, 6) + " m"
	case Inch, Foot:
		return Inches(mm)
	case Yard:
		return trimmed(mm/914.4, 3) + " yd"
	}
	return MM(mm)
}

// Weight prints an areal weight in g/m²: "450 g/m2", "576.4 g/m2".
func Weight(gsm float64) string { return trimmed(gsm, 1) + " g/m2" }

// trimmed prints v with at most so many decimals, without zeros at the end.
func trimmed(v float64, decimals int) string {
	scale := math.Pow10(decimals)
	r := math.Round(float64(v*scale)) / scale
	return strconv.FormatFloat(r+0, 'f', -1, 64)
}
