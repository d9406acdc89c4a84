package length

import "strings"

// Unit is a unit of length: the unit of bare numbers in a job, or that of a
// drawing. The zero Unit stands for none.
type Unit string

// Units of length.
const (
	Millimetre Unit = "mm"
	Centimetre Unit = "cm"
	Metre      Unit = "m"
	Inch       Unit = "in"
	Foot       Unit = "ft"
	Yard       Unit = "yd"
)

// Units lists the units of length, the short spelling of each.
func Units() []string { return []string{"mm", "cm", "m", "in", "ft", "yd"} }

// MM gives the millimetres in one unit, exactly: an inch is 25.4 mm by the
// international yard and pound agreement of 1959 (trade tables, recomputed). 0
// for no unit.
func (u Unit) MM() float64 {
	if num, den := u.factor(); den != 0 {
		return float64(num) / float64(den)
	}
	return 0
}

// Metric says whether the unit is mm, cm or m.
func (u Unit) Metric() bool { return u == Millimetre || u == Centimetre || u == Metre }

// factor gives the millimetres in one unit as a quotient.
func (u Unit) factor() (num, den int64) {
	switch u {
	case Millimetre:
		return 1, 1
	case Centimetre:
		return 10, 1
	case Metre:
		return 1000, 1
	case Inch:
		return 254, 10
	case Foot:
		return 3048, 10
	case Yard:
		return 9144, 10
	}
	return 0, 0
}

// ParseUnit reads the name or the sign of a unit of length: "mm", "metres",
// `"`, "ft.", "Yards".
func ParseUnit(text string) (Unit, error) {
	word := strings.ToLower(typed(text))
	if u := unitOf(word); u != "" {
		return u, nil
	}
	near := Nearest(word, unitWords)
	if near == "" {
		return "", refuse("use mm, cm, m, in, ft or yd", "%q is no unit of length", text)
	}
	return "", refuse("did you mean "+string(unitOf(near))+"?", "%q is no unit of length", text)
}

var unitWords = []string{
	"mm", "cm", "m", "in", "ft", "yd", "inch", "inches", "foot", "feet", "yard", "yards",
	"metre", "metres", "meter", "meters", "millimetre", "millimetres", "millimeter", "millimeters",
	"centimetre", "centimetres", "centimeter", "centimeters",
}

func unitOf(word string) Unit {
	switch strings.TrimSuffix(word, ".") {
	case "mm", "millimetre", "millimetres", "millimeter", "millimeters":
		return Millimetre
	case "cm", "centimetre", "centimetres", "centimeter", "centimeters":
		return Centimetre
	case "m", "metre", "metres", "meter", "meters":
		return Metre
	case "in", "ins", "inch", "inches", `"`, "''":
		return Inch
	case "ft", "foot", "feet", "'":
		return Foot
	case "yd", "yds", "yard", "yards":
		return Yard
	}
	return ""
}
