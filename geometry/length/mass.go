package length

import "strings"

// Masses in g and areas in mm² of one unit: an ounce is 28.349523125 g, a pound
// 453.59237 g, an inch 25.4 mm, all exact.
const (
	gPerOz = 28.349523125
	gPerLb = 453.59237
)

// ParseMass reads a mass and gives grams: "350 g", "2.5 kg", "28.1 oz",
// "5 1/2 lb". A number without a unit is refused. Errors are *Error.
func ParseMass(text string) (g float64, err error) {
	n, rest, err := cut(text)
	if err != nil {
		return 0, err
	}
	metric := false
	switch word := massWord(rest); word {
	case "g":
		g, metric = n.value(), true
	case "kg":
		g, metric = n.times(1000, 1), true
	case "oz":
		g = float64(n.value() * gPerOz)
	case "lb":
		g = float64(n.value() * gPerLb)
	case "":
		return 0, refuse("write g, kg, oz or lb after it", "mass %q has no unit", text)
	default:
		return 0, refuse("use g, kg, oz or lb", "%q has no known unit of mass", text)
	}
	switch {
	case n.fraction && metric:
		return 0, refuse("write it with a decimal point", "%q is a fraction of a metric unit", text)
	case g < 0:
		return 0, refuse("write a mass of 0 or more", "mass %q is below 0", text)
	}
	return g + 0, nil
}

// massWord gives the short spelling of a unit of mass, what is none as it is.
func massWord(rest string) string {
	switch w := strings.TrimSuffix(strings.ToLower(rest), "."); w {
	case "g", "gr", "gram", "grams", "gramme", "grammes":
		return "g"
	case "kg", "kgs", "kilo", "kilos", "kilogram", "kilograms":
		return "kg"
	case "oz", "ozs", "ounce", "ounces":
		return "oz"
	case "lb", "lbs", "pound", "pounds":
		return "lb"
	default:
		return w
	}
}

// ParseArea reads an area and gives mm²: "0.36 m2", "900 cm²", "1 ft2",
// "144 sq in". A number without a unit is refused. Errors are *Error.
func ParseArea(text string) (mm2 float64, err error) {
	n, rest, err := cut(text)
	if err != nil {
		return 0, err
	}
	word := weightWord(rest)
	if w, square := strings.CutPrefix(word, "sq"); square {
		word = strings.TrimPrefix(w, "uare") + "2"
	}
	name, square := strings.CutSuffix(word, "2")
	unit := unitOf(name)
	switch {
	case word == "":
		return 0, refuse("write mm2, cm2, m2, in2, ft2 or yd2 after it", "area %q has no unit", text)
	case !square && unitOf(word) != "":
		return 0, refuse("write the square of the unit, like "+word+"2", "area %q is a length", text)
	case unit == "":
		return 0, refuse("use mm2, cm2, m2, in2, ft2 or yd2", "%q has no known unit of area", text)
	case n.fraction && unit.Metric():
		return 0, refuse("write it with a decimal point", "%q is a fraction of a metric unit", text)
	}
	num, den := unit.factor()
	return positive(text, n.times(num*num, den*den))
}

// ParsePriceOfMass reads a price of what is sold by weight and gives the price
// per kilogram: "18/kg", "8.20 per lb". Without a unit it is refused. It carries
// no sign of a currency: all prices of a job are in the same one. Errors are
// *Error.
func ParsePriceOfMass(text string) (perKG float64, err error) {
	trimmed := strings.TrimSpace(text)
	if strings.Trim(trimmed, currencies) != trimmed {
		return 0, refuse("leave it off: all prices are in one currency", "%q carries the sign of a currency", text)
	}
	n, rest, err := cut(text)
	if err != nil {
		return 0, err
	}
	word, per := strings.CutPrefix(rest, "/")
	if !per {
		word, per = strings.CutPrefix(rest, "per ")
	}
	unit := massWord(strings.TrimSpace(word))
	switch {
	case !per || unit != "kg" && unit != "lb":
		return 0, refuse("write it per kilogram or per pound, like 18/kg or 8/lb", "price %q does not say per what weight", text)
	case n.value() < 0:
		return 0, refuse("write a price of 0 or more", "price %q is below 0", text)
	case unit == "lb":
		return float64(n.value() * 1000 / gPerLb), nil
	}
	return n.value(), nil
}

// ParsePlain reads a number that has no unit: a ratio, parts to mix. Errors are
// *Error.
func ParsePlain(text string) (float64, error) {
	n, rest, err := cut(text)
	switch {
	case err != nil:
		return 0, err
	case rest != "":
		return 0, refuse("write the number alone", "%q has a unit or a word after the number", text)
	case n.fraction:
		return 0, refuse("write it with a decimal point", "%q is a fraction", text)
	}
	return n.value() + 0, nil
}

// ParseModulus reads a modulus and gives GPa: "45", "45 GPa", "3100 MPa". A
// number without a unit is in GPa. Errors are *Error.
func ParseModulus(text string) (gpa float64, err error) {
	n, rest, err := cut(text)
	if err != nil {
		return 0, err
	}
	switch strings.ToLower(rest) {
	case "", "gpa":
		gpa = n.value()
	case "mpa":
		gpa = n.times(1, 1000)
	default:
		return 0, refuse("write it in GPa or MPa (1 msi is 6.895 GPa)", "modulus %q is in no known unit", text)
	}
	return positive(text, gpa)
}
