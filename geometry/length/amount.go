package length

import (
	"math"
	"strings"
)

// ParseDensity reads a density and gives g/cm³: "2.54 g/cm3", "2540 kg/m3". A
// number without a unit is refused. Errors are *Error.
func ParseDensity(text string) (gcm3 float64, err error) {
	n, rest, err := cut(text)
	if err != nil {
		return 0, err
	}
	switch word := weightWord(rest); word {
	case "g/cm3", "g/cc", "kg/l", "g/ml":
		return positive(text, n.value())
	case "kg/m3":
		return positive(text, n.times(1, 1000))
	case "":
		return 0, refuse("write g/cm3 or kg/m3 after it", "density %q has no unit", text)
	}
	return 0, refuse("use g/cm3 or kg/m3", "%q has no known unit of density", text)
}

// currencies are signs that a price may not carry.
const currencies = "€$£¥₹"

// ParsePrice reads a price of roll goods and gives the price per metre of
// roll: "3.10/m", "2.80 /yd", "2.80 per yd", or a bare number per unit of
// bare; with no bare unit a bare number is refused. A price carries no sign of
// a currency: all prices of a job are in the same one. Errors are *Error.
func ParsePrice(text string, bare Unit) (perMetre float64, err error) {
	trimmed := strings.TrimSpace(text)
	if strings.Trim(trimmed, currencies) != trimmed {
		return 0, refuse("leave it off: all prices are in one currency", "%q carries the sign of a currency", text)
	}
	n, rest, err := cut(text)
	if err != nil {
		return 0, err
	}
	unit := bare
	if rest != "" {
		word, slash := strings.CutPrefix(rest, "/")
		if !slash {
			word, slash = strings.CutPrefix(rest, "per ")
		}
		if unit = unitOf(strings.ToLower(strings.TrimSpace(word))); !slash || unit == "" {
			return 0, refuse("write a price per length of roll, like 3.10/m or 2.80/yd", "%q has no known unit of price", text)
		}
	}
	if unit == "" {
		return 0, refuse("write it per metre or per yard of roll, like 3.10/m or 2.80/yd", "price %q does not say per what length", text)
	}
	if n.value() < 0 {
		return 0, refuse("write a price of 0 or more", "price %q is below 0", text)
	}
	num, den := unit.factor()
	return n.times(1000*den, num), nil
}

// ParsePercent reads a percentage: "10 %", "7.5%". A number without the sign
// is refused, as 0.1 may mean a tenth or a thousandth. Errors are *Error.
func ParsePercent(text string) (percent float64, err error) {
	n, rest, err := cut(text)
	switch {
	case err != nil:
		return 0, err
	case rest == "":
		return 0, refuse("write it with the sign, like 10 %", "%q has no percent sign", text)
	case rest != "%" && rest != "percent":
		return 0, refuse("write a percentage, like 10 %", "%q is no percentage", text)
	}
	return n.value(), nil
}

// ParseAngle reads a direction in degrees, within one turn either way: "45",
// "+45", "-135", "22.5°", "45 deg". Errors are *Error.
func ParseAngle(text string) (deg float64, err error) {
	if s := typed(text); strings.HasPrefix(s, "±") || strings.HasPrefix(s, "+-") || strings.HasPrefix(s, "+/-") {
		return 0, refuse("write two plies, one at each angle", "%q is two angles", text)
	}
	n, rest, err := cut(text)
	if err != nil {
		return 0, err
	}
	switch strings.ToLower(rest) {
	case "", "°", "deg", "degree", "degrees":
	case "rad", "radian", "radians", "gon", "grad":
		return 0, refuse("write the angle in degrees", "%q is not in degrees", text)
	default:
		return 0, refuse("write the angle in degrees, like -45", "%q is no angle", text)
	}
	if v := n.value(); math.Abs(v) <= 360 {
		return v + 0, nil
	}
	return 0, refuse("write it between -360 and 360", "angle %q is more than a full turn", text)
}

// ParseCount reads a whole number without a unit: "3", "-1". Errors are *Error.
func ParseCount(text string) (int64, error) {
	n, rest, err := cut(text)
	switch {
	case err != nil:
		return 0, err
	case rest != "":
		return 0, refuse("write a whole number alone", "%q has a unit or a word after the number", text)
	case n.over == 0:
		return 0, refuse("write a whole number of up to 15 digits", "%q has too many digits", text)
	case n.fraction || n.top%n.over != 0:
		return 0, refuse("write a whole number", "%q is not a whole number", text)
	}
	return n.top / n.over, nil
}
