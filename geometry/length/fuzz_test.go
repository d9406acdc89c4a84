package length

import (
	"math"
	"strings"
	"testing"
)

// FuzzParse holds that any text is a finite measure or an *Error, in every
// reader.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"1 1/2 in", `3' 6 1/2"`, "12,5", "0300", "450 g/m²", "3.10/m", "10 %", "45°", "1e5", "nan", "½", "1-1/2''", "−7", "9999999999999999.5 yd", "100\n 0", "2 kg", "1 sq ft", "18/kg", "45 GPa"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		check := func(v float64, err error) {
			if _, ok := err.(*Error); err != nil && !ok {
				t.Errorf("%q gives an error of another kind: %v", s, err)
			}
			if err != nil && strings.ContainsAny(err.Error(), "\r\n") {
				t.Errorf("%q is refused in more than one line: %v", s, err)
			}
			if math.IsNaN(v) || math.IsInf(v, 0) || err != nil && v != 0 {
				t.Errorf("%q gives %v, %v", s, v, err)
			}
		}
		check(Parse(s, Millimetre))
		check(Parse(s, Foot))
		check(ParseWeight(s))
		check(ParseDensity(s))
		check(ParsePrice(s, Metre))
		check(ParsePercent(s))
		check(ParseAngle(s))
		check(ParseMass(s))
		check(ParseArea(s))
		check(ParsePriceOfMass(s))
		check(ParsePlain(s))
		check(ParseModulus(s))
		n, err := ParseCount(s)
		check(float64(n), err)
		if mm, err := Parse(s, Inch); err == nil {
			if back, err := Parse(MM(mm), ""); err != nil || math.Abs(back-mm) > 0.001 {
				t.Errorf("%q is %v mm, printed %q, which reads %v, %v", s, mm, MM(mm), back, err)
			}
		}
	})
}
