package length

import "strings"

// Areal weights in g/m² of one unit, as quotients: an ounce is 28.349523125 g,
// a pound 453.59237 g, a yard 0.9144 m, a foot 0.3048 m, all exact. The
// quotients are exact to the last digit: oz/yd² 28.349523125 / 0.9144².
const (
	ozPerYd2 = 28.349523125 / (0.9144 * 0.9144) // 33.905747…
	ozPerFt2 = 28.349523125 / (0.3048 * 0.3048) // 305.151727…
	lbPerFt2 = 453.59237 / (0.3048 * 0.3048)    // 4882.427636…
)

// ParseWeight reads an areal weight and gives g/m²: "450 g/m2", "450 gsm",
// "0.45 kg/m²", "17 oz/yd2", "1 1/2 oz/ft2", "0.3 lb/ft2". A number without a
// unit is refused, as is a plain "oz": it is per square yard for cloth and per
// square foot for mat. Errors are *Error.
func ParseWeight(text string) (gsm float64, err error) {
	n, rest, err := cut(text)
	if err != nil {
		return 0, err
	}
	metric := false
	switch word := weightWord(rest); word {
	case "g/m2", "gsm", "g/sqm":
		gsm, metric = n.value(), true
	case "kg/m2", "kg/sqm":
		gsm, metric = n.times(1000, 1), true
	case "oz/yd2", "oz/sqyd":
		gsm = float64(n.value() * ozPerYd2)
	case "oz/ft2", "oz/sqft":
		gsm = float64(n.value() * ozPerFt2)
	case "lb/ft2", "lb/sqft":
		gsm = float64(n.value() * lbPerFt2)
	default:
		return 0, noWeight(text, word)
	}
	if n.fraction && metric {
		return 0, refuse("write it with a decimal point", "%q is a fraction of a metric unit", text)
	}
	return positive(text, gsm)
}

// weightWord spells a unit without blanks, capitals and the ways to write a
// square: "oz / sq yd", "oz per yd^2".
func weightWord(rest string) string {
	w := strings.ReplaceAll(strings.ToLower(rest), " per ", "/")
	return strings.NewReplacer(" ", "", ".", "", "^", "").Replace(w)
}

var weightWords = []string{"g/m2", "gsm", "kg/m2", "oz/yd2", "oz/ft2", "lb/ft2"}

func noWeight(text, word string) error {
	switch word {
	case "":
		return refuse("write g/m2, kg/m2, oz/yd2, oz/ft2 or lb/ft2 after it", "areal weight %q has no unit", text)
	case "oz", "ozs", "ounce", "ounces":
		return refuse("write oz/yd2 (most cloth) or oz/ft2 (chopped-strand mat)", "areal weight %q does not say per what area", text)
	case "g", "kg", "lb", "grams":
		return refuse("write g/m2, kg/m2 or lb/ft2", "areal weight %q does not say per what area", text)
	}
	if near := Nearest(word, weightWords); near != "" {
		return refuse("did you mean "+near+"?", "%q has no known unit of areal weight", text)
	}
	return refuse("use g/m2, kg/m2, oz/yd2, oz/ft2 or lb/ft2", "%q has no known unit of areal weight", text)
}

func positive(text string, v float64) (float64, error) {
	if v <= 0 {
		return 0, refuse("write a number above 0", "%q is not above 0", text)
	}
	return v, nil
}
