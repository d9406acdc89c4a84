package length

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

func format(v int64) string { return strconv.FormatInt(v, 10) }

// Factors recomputed from 1 oz = 28.349523125 g and 1 yd = 0.9144 m, exact:
// oz/yd² 33.905747, oz/ft² 305.151727, lb/ft² 4882.427636; 17 oz/yd² of cloth
// is 576.4 g/m².
func TestParseWeight(t *testing.T) {
	for text, want := range map[string]float64{
		"450 g/m2": 450, "450 g/m²": 450, "450gsm": 450, "450 GSM": 450, "450 g / m^2": 450, "450 g per m2": 450, "0.45 kg/m2": 450,
		"1 oz/yd2": 33.905747, "1 oz/yd²": 33.905747, "1 oz/sq yd": 33.905747, "1 oz per sq. yd": 33.905747,
		"1 oz/ft2": 305.151727, "1 lb/ft2": 4882.427636, "17 oz/yd2": 576.397699, "1 1/2 oz/ft2": 457.727591, "1½ oz/ft²": 457.727591,
	} {
		if got, err := ParseWeight(text); err != nil || math.Abs(got-want) > 1e-7*want {
			t.Errorf("ParseWeight(%q) = %v, %v, want %v", text, got, err, want)
		}
	}
}

func TestAmountsRefused(t *testing.T) {
	weight := func(s string) error { _, err := ParseWeight(s); return err }
	density := func(s string) error { _, err := ParseDensity(s); return err }
	price := func(s string) error { _, err := ParsePrice(s, ""); return err }
	percent := func(s string) error { _, err := ParsePercent(s); return err }
	angle := func(s string) error { _, err := ParseAngle(s); return err }
	count := func(s string) error { _, err := ParseCount(s); return err }
	for _, c := range []struct {
		parse     func(string) error
		text, say string
	}{
		{weight, "450", "has no unit"}, {weight, "17 oz", "oz/ft2 (chopped-strand mat)"}, {weight, "450 g", "per what area"},
		{weight, "450 g/m3", "did you mean g/m2?"}, {weight, "450 stone", "use g/m2"}, {weight, "0 g/m2", "above 0"}, {weight, "-5 gsm", "above 0"},
		{weight, "0450 g/m2", "zero"}, {weight, "12,5 g/m2", "decimal point"}, {weight, "1/2 kg/m2", "fraction of a metric unit"}, {weight, ".nan", "not a number"},
		{density, "2.54", "has no unit"}, {density, "2.54 g/m2", "use g/cm3"}, {density, "-1 g/cm3", "above 0"}, {density, "x", "number"},
		{price, "€3.10", "currency"}, {price, "3.10", "per what length"}, {price, "3.10 per kg", "like 3.10/m"}, {price, "-1/m", "below 0"}, {price, "3,10/m", "decimal point"},
		{percent, "0.1", "percent sign"}, {percent, "10 %%", "no percentage"}, {percent, "ten %", "number"},
		{angle, "±45", "two angles"}, {angle, "+-45", "two angles"}, {angle, "45 rad", "in degrees"}, {angle, "45 mm", "no angle"}, {angle, "361", "full turn"}, {angle, "nan", "not a number"},
		{count, "3.5", "not a whole number"}, {count, "7/2", "not a whole number"}, {count, "3 mm", "after the number"}, {count, "1e3", "exponent"},
		{count, "1234567890123456", "too many digits"}, {count, "", "nothing"}, {count, "03", "zero"},
	} {
		if err := c.parse(c.text); err == nil || !strings.Contains(err.Error(), c.say) {
			t.Errorf("%q gives %v, want it to say %q", c.text, err, c.say)
		}
	}
}

func TestAmounts(t *testing.T) {
	near := func(what string, got float64, err error, want float64) {
		t.Helper()
		if err != nil || math.Abs(got-want) > 1e-12*math.Max(1, want) {
			t.Errorf("%s = %v, %v, want %v", what, got, err, want)
		}
	}
	for _, s := range []string{"2.54 g/cm3", "2540 kg/m3", "2540 kg/m³", "2.54 g/cm³"} {
		v, err := ParseDensity(s)
		near(s, v, err, 2.54)
	}
	for text, want := range map[string]float64{"3.10/m": 3.1, "3.10 per m": 3.1, "2.80 / yd": 2.8 / 0.9144, "2.80 per yard": 2.8 / 0.9144, "1/ft": 1 / 0.3048} {
		v, err := ParsePrice(text, "")
		near(text, v, err, want)
	}
	v, err := ParsePrice("3.10", Metre)
	near("3.10", v, err, 3.1)
	v, err = ParsePercent("7.5 %")
	near("7.5 %", v, err, 7.5)
	for text, want := range map[string]float64{"45": 45, "+45": 45, "45.0": 45, "225": 225, "-135": -135, "45°": 45, "45º": 45, "−45 deg": -45, "22.5": 22.5, "-0": 0} {
		v, err := ParseAngle(text)
		near(text, v, err, want)
	}
	for text, want := range map[string]int64{"3": 3, "3.0": 3, "0": 0, "-2": -2, "+4": 4} {
		if got, err := ParseCount(text); err != nil || got != want {
			t.Errorf("ParseCount(%q) = %v, %v", text, got, err)
		}
	}
}

// An ounce is 28.349523125 g, a pound 453.59237 g, a foot 304.8 mm, all exact by
// the international agreement of 1959 (from memory).
func TestMassesAndAreas(t *testing.T) {
	mass := func(s string) (float64, error) { return ParseMass(s) }
	for _, c := range []struct {
		parse func(string) (float64, error)
		text  string
		want  float64
	}{
		{mass, "350 g", 350}, {mass, "2.5 kg", 2500}, {mass, "28.1 oz", 28.1 * 28.349523125}, {mass, "5 1/2 lb", 5.5 * 453.59237}, {mass, "0 kg", 0}, {mass, "2 Lbs.", 907.18474},
		{ParseArea, "0.36 m2", 360000}, {ParseArea, "900 cm²", 90000}, {ParseArea, "1 ft2", 92903.04}, {ParseArea, "144 sq in", 92903.04}, {ParseArea, "1 sq. ft", 92903.04},
		{ParseArea, "1 square foot", 92903.04}, {ParseArea, "10 mm^2", 10}, {ParseArea, "1 yd2", 836127.36},
		{ParsePriceOfMass, "18/kg", 18}, {ParsePriceOfMass, "8.20 per lb", 8.2 / 0.45359237}, {ParsePriceOfMass, "0 / kg", 0},
		{ParsePlain, "0.35", 0.35}, {ParsePlain, "-1.5", -1.5}, {ParsePlain, "100", 100},
		{ParseModulus, "45", 45}, {ParseModulus, "3100 MPa", 3.1}, {ParseModulus, "230 GPa", 230},
	} {
		if got, err := c.parse(c.text); err != nil || math.Abs(got-c.want) > 1e-12*math.Max(1, c.want) {
			t.Errorf("%q = %v, %v, want %v", c.text, got, err, c.want)
		}
	}
	for _, c := range []struct {
		parse     func(string) (float64, error)
		text, say string
	}{
		{mass, "350", "has no unit"}, {mass, "350 ml", "use g, kg, oz or lb"}, {mass, "1/2 kg", "fraction of a metric unit"}, {mass, "-1 kg", "below 0"}, {mass, "1,5 kg", "decimal point"},
		{ParseArea, "0.36", "has no unit"}, {ParseArea, "300 mm", "like mm2"}, {ParseArea, "3 g/m2", "use mm2"}, {ParseArea, "0 m2", "above 0"}, {ParseArea, "1/2 m2", "fraction of a metric unit"},
		{ParsePriceOfMass, "18", "per what weight"}, {ParsePriceOfMass, "18/m", "per what weight"}, {ParsePriceOfMass, "£18/kg", "currency"}, {ParsePriceOfMass, "-1/kg", "below 0"},
		{ParsePlain, "3 %", "alone"}, {ParsePlain, "1/3", "is a fraction"}, {ParsePlain, "nan", "not a number"}, {ParsePlain, "1e3", "exponent"},
		{ParseModulus, "5 psi", "GPa or MPa"}, {ParseModulus, "0", "above 0"}, {ParseModulus, "inf", "not a number"},
	} {
		if got, err := c.parse(c.text); err == nil || got != 0 || !strings.Contains(err.Error(), c.say) {
			t.Errorf("%q gives %v, %v, want it to say %q", c.text, got, err, c.say)
		}
	}
}

func TestNearest(t *testing.T) {
	known := []string{"stagger", "plies_between", "narrowest", "keep_clear", "id"}
	for word, want := range map[string]string{
		"stager": "stagger", "stagegr": "stagger", "plies-between": "plies_between", "narowest": "narrowest", "keepclear": "keep_clear",
		"di": "id", "density": "", "x": "", "": "", "ix": "id", strings.Repeat("stagger", 20): "",
	} {
		if got := Nearest(word, known); got != want {
			t.Errorf("Nearest(%q) = %q, want %q", word, got, want)
		}
	}
}
