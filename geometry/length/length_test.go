package length

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Factors: 1 in = 25.4 mm, 1 ft = 0.3048 m, 1 yd = 0.9144 m (international
// yard and pound agreement of 1959; from memory, recomputed). Every value is
// the float64 nearest to the decimal written here: one rounding.
func TestParse(t *testing.T) {
	for text, want := range map[string]float64{
		"1370": 1370, "12.5": 12.5, "+5": 5, "-5": -5, "0": 0, "-0": 0, "0.5": 0.5, ".5": 0.5, "5.": 5,
		"12.5 mm": 12.5, "12.5mm": 12.5, "40 m": 40000, "3.7 cm": 37, "1 M": 1000, "2 metres": 2000,
		"1 in": 25.4, "1 1/2 in": 38.1, "1-1/2 in": 38.1, "1½ in": 38.1, `5/8"`: 15.875, "5/8″": 15.875, "0.3 in": 7.62,
		"50 in": 1270, "46 in.": 1168.4, "3 ft": 914.4, "3'": 914.4, "2 yd": 1828.8, "1/2 yd": 457.2,
		`3' 6 1/2"`: 1079.5, `3'6"`: 1066.8, `3'-6 1/2"`: 1079.5, "3 ft 6 in": 1066.8, "3' 6": 1066.8, `-3' 6"`: -1066.8, `-0' 6"`: -152.4,
		"3’ 6 1/2”": 1079.5, `3' 6-1/2"`: 1079.5, "−45": -45, "1\u00a0370": -1, "123.45678901234567": 123.45678901234567,
		"1 1/2''": 38.1, "  7 mm ": 7, "1/3 in": 25.4 / 3,
	} {
		got, err := Parse(text, Millimetre)
		if want == -1 {
			if err == nil {
				t.Errorf("Parse(%q) = %v, want a refusal", text, got)
			}
			continue
		}
		if err != nil || got != want || math.Signbit(got) != (want < 0) {
			t.Errorf("Parse(%q) = %v, %v, want %v", text, got, err, want)
		}
	}
}

func TestParseBare(t *testing.T) {
	for _, c := range []struct {
		text string
		bare Unit
		want float64
	}{
		{"2", Inch, 50.8}, {"5/8", Inch, 15.875}, {"1 1/2", Foot, 457.2}, {"2", Metre, 2000}, {"2 mm", Inch, 2}, {"29", Inch, 736.6},
	} {
		if got, err := Parse(c.text, c.bare); err != nil || got != c.want {
			t.Errorf("Parse(%q, %s) = %v, %v, want %v", c.text, c.bare, got, err, c.want)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for text, say := range map[string]string{
		"":               "nothing is written",
		"  ":             "nothing is written",
		"nan":            "not a number",
		".nan":           "not a number",
		"-.inf":          "not a number",
		"Infinity":       "not a number",
		"0300":           "without the zero in front: 300",
		"00.5":           "without the zero in front: 0.5",
		"12,5":           "decimal point, 12.5,",
		"1,200.5":        "decimal point",
		"1,2,3":          "decimal point",
		"1_000":          "underscore",
		"1e5":            "exponent",
		"1E-3 mm":        "exponent",
		"0x1F":           "not a decimal number",
		"0o17":           "not a decimal number",
		"1.2.3":          "two decimal points",
		"1 200":          "two numbers",
		"5-3":            "two numbers",
		"1 5/4 in":       "fraction of 1 or more",
		"5/0 in":         "no fraction",
		"5/8 mm":         "fraction of a metric unit",
		"5/8":            "like 5/8 in",
		"1.5 1/2 in":     "two numbers",
		"1.5/2 in":       "no fraction",
		"5 inchs":        "did you mean in?",
		"5 mn":           "did you mean mm?",
		"5 furlongs":     "use mm, cm, m, in, ft or yd",
		"mm":             "does not start with a number",
		"--5":            "does not start with a number",
		"99999999999":    "longer than 10 km",
		"11 km":          "no unit of length",
		`3' 14"`:         "a foot or more",
		`3" 6'`:          "not one length",
		"3 m 6 cm":       "not one length",
		"5 m2":           "not one length",
		"3' +6":          "not one length",
		"1'200":          "a foot or more",
		"five":           "does not start with a number",
		"5 mm mm":        "no unit of length",
		"९":              "does not start with a number",
		"1/2/3 in":       "no unit of length",
		"1 1/2 1/2 in":   "no unit of length",
		"1\n5":           "5",
		"100\n 0":        `"100\n 0"`,
		"1" + zeros(400): "too many for a measure",
	} {
		got, err := Parse(text, Millimetre)
		var e *Error
		if !errors.As(err, &e) || !strings.Contains(err.Error(), say) {
			t.Errorf("Parse(%q) = %v, %v, want it to say %q", text, got, err, say)
		} else if strings.ContainsAny(err.Error(), "\r\n") || e.Cure == "" || strings.HasSuffix(e.Text, ".") {
			t.Errorf("Parse(%q): text %q, cure %q", text, e.Text, e.Cure)
		}
	}
	if _, err := Parse("5", ""); err == nil {
		t.Error("a bare number passed without a bare unit")
	}
}

func zeros(n int) string { return strings.Repeat("0", n) }

// Any multiple of 1/64 in or of 0.001 mm comes back as the nearest float64 of
// its exact value, whichever way it is written.
func TestParseExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole, part := rapid.Int64Range(0, 5000).Draw(t, "whole"), rapid.Int64Range(1, 63).Draw(t, "part")
		text := format(whole) + " " + format(part) + "/64 in"
		got, err := Parse(text, Millimetre)
		if want := float64((whole*64+part)*254) / 640; err != nil || got != want {
			t.Fatalf("Parse(%q) = %v, %v, want %v", text, got, err, want)
		}
		whole %= 1000
		decimals := format(whole) + "." + format(1000 + part)[1:]
		inMM, err1 := Parse(decimals, Millimetre)
		inM, err2 := Parse("0."+format(1000 + whole)[1:]+format(1000 + part)[1:]+" m", Inch)
		if err1 != nil || err2 != nil || inMM != inM {
			t.Fatalf("%v mm is read as %v, in m as %v", decimals, inMM, inM)
		}
	})
}

// What is printed reads back: MM within half a micrometre, Inches within half
// of 1/32 in.
func TestPrintedReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := rapid.Float64Range(-1e6, 1e6).Draw(t, "mm")
		for _, c := range []struct {
			text string
			off  float64
		}{{MM(mm), 0.0005}, {Inches(mm), 25.4 / 64}, {In(mm, Centimetre), 0.0005}, {In(mm, Metre), 0.0005}, {In(mm, Yard), 0.4573}} {
			got, err := Parse(c.text, "")
			if err != nil || math.Abs(got-mm) > c.off+1e-9 {
				t.Fatalf("%v is printed %q, which reads %v, %v", mm, c.text, got, err)
			}
		}
	})
}

func TestPrint(t *testing.T) {
	for _, c := range [][2]string{
		{MM(1370), "1370 mm"}, {MM(12.5), "12.5 mm"}, {MM(49.9988), "49.999 mm"}, {MM(-0.0001), "0 mm"}, {MM(38.099999999999994), "38.1 mm"},
		{Inches(1370), "53 15/16 in"}, {Inches(15.875), "5/8 in"}, {Inches(0), "0 in"}, {Inches(1168.4), "46 in"}, {Inches(-38.1), "-1 1/2 in"}, {Inches(0.1), "0 in"},
		{In(1828.8, Yard), "2 yd"}, {In(500, Metre), "0.5 m"}, {In(914.4, Foot), "36 in"}, {In(7, Millimetre), "7 mm"}, {In(25, Centimetre), "2.5 cm"},
		{Weight(576.3977), "576.4 g/m2"}, {Weight(450), "450 g/m2"},
	} {
		if c[0] != c[1] {
			t.Errorf("printed %q, want %q", c[0], c[1])
		}
	}
}

func TestUnits(t *testing.T) {
	for _, word := range Units() {
		u, err := ParseUnit(word)
		if err != nil || string(u) != word || u.MM() <= 0 {
			t.Errorf("unit %q is read as %q, %v", word, u, err)
		}
	}
	if Unit("").MM() != 0 || Unit("stone").MM() != 0 {
		t.Error("an unknown unit has a length")
	}
	if !Metre.Metric() || Yard.Metric() {
		t.Error("metric units mixed up")
	}
}

func TestBare(t *testing.T) {
	for text, want := range map[string]bool{"450": true, "5/8": true, "450 g/m2": false, "x": false, "12,5": false} {
		if Bare(text) != want {
			t.Errorf("Bare(%q) = %v", text, !want)
		}
	}
}
