package code

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// angles writes plies as in a table: "0 45 -45 90".
func angles(plies []Ply) string {
	var words []string
	for _, p := range plies {
		w := fmt.Sprint(p.Angle)
		if p.Woven {
			w += "f"
		}
		words = append(words, w)
	}
	return strings.Join(words, " ")
}

// The codes of the standard: ASTM D6507 as described in US Army TM
// 1-1500-204-23-11 §5-7 (rules seen, the expansions worked out from them by
// hand); the ASCII underscore from memory.
func TestStandardCodes(t *testing.T) {
	for _, c := range []struct{ code, plies string }{
		{"[0/±45/90]s", "0 45 -45 90 90 -45 45 0"},
		{"[±45]2s", "45 -45 45 -45 -45 45 -45 45"},
		{"[0/90]2", "0 90 0 90"},
		{"[0/90̅]s", "0 90 0"},
		{"[(0/90)2/45]s", "0 90 0 90 45 45 90 0 90 0"},
		{"[0_2/90]s", "0 0 90 90 0 0"},
		{"[∓30/0]T", "-30 30 0"},
		{"[0/60/−60]s", "0 60 -60 -60 60 0"},
		{"[0/45/90]s", "0 45 90 90 45 0"},
	} {
		got, err := Parse(c.code)
		if err != nil {
			t.Errorf("%s: %v", c.code, err)
			continue
		}
		if a := angles(got.Plies()); a != c.plies {
			t.Errorf("%s: %s, want %s", c.code, a, c.plies)
		}
	}
}

// Other spellings of the same; the expansions are worked out by hand.
func TestSpellings(t *testing.T) {
	for _, c := range []struct{ code, plies, ascii string }{
		{"[0/+-45/90]s", "0 45 -45 90 90 -45 45 0", "[0/+-45/90]s"},
		{"[ 0 / +/-45 / 90 ] S", "0 45 -45 90 90 -45 45 0", "[0/+-45/90]s"},
		{"[0/+45/-45/90]_s", "0 45 -45 90 90 -45 45 0", "[0/45/-45/90]s"},
		{"[-+30/0]", "-30 30 0", "[-+30/0]"},
		{"[-/+30/0]T", "-30 30 0", "[-+30/0]T"},
		{"[±45]₂ₛ", "45 -45 45 -45 -45 45 -45 45", "[+-45]2s"},
		{"[±45]_{2s}", "45 -45 45 -45 -45 45 -45 45", "[+-45]2s"},
		{"[0₂/90]ₛ", "0 0 90 90 0 0", "[0_2/90]s"},
		{"[0_{2}/90]_S", "0 0 90 90 0 0", "[0_2/90]s"},
		{"[0°₂/90°]s", "0 0 90 90 0 0", "[0_2/90]s"},
		{"[0/90~]s", "0 90 0", "[0/90~]s"},
		{"[0/9̅0̅]s", "0 90 0", "[0/90~]s"},
		{"[0/90̄]s", "0 90 0", "[0/90~]s"},
		{"[45f/0f]s", "45f 0f 0f 45f", "[45f/0f]s"},
		{"[45w/0_2w/90f_2]", "45f 0f 0f 90f 90f", "[45f/0f_2/90f_2]"},
		{"[0f2]", "0f 0f", "[0f_2]"},
		{"[0_f/45_{f}]", "0f 45f", "[0f/45f]"},
		{"[(0/90)_2/45~]s", "0 90 0 90 45 90 0 90 0", "[(0/90)2/45~]s"},
		{"[0/(45/90)s]", "0 45 90 90 45", "[0/(45/90)s]"},
		{"[0/(45/90~)s]", "0 45 90 45", "[0/(45/90~)s]"},
		{"[(±45)2/0]", "45 -45 45 -45 0", "[(+-45)2/0]"},
		{"[22.5/-67.5]2T", "22.5 -67.5 22.5 -67.5", "[22.5/-67.5]2T"},
		{"[11.25/26.565/52/120]", "11.25 26.565 52 120", "[11.25/26.565/52/120]"},
		{"[105.0/-22.520]", "105 -22.52", "[105.0/-22.520]"},
		{"[((0/90)2/45)2s]", "0 90 0 90 45 0 90 0 90 45 45 90 0 90 0 45 90 0 90 0", "[((0/90)2/45)2s]"},
		{"[90/-90/180]", "90 -90 180", "[90/-90/180]"},
		{"[-0]", "0", "[0]"},
	} {
		got, err := Parse(c.code)
		if err != nil {
			t.Errorf("%s: %v", c.code, err)
			continue
		}
		if a := angles(got.Plies()); a != c.plies {
			t.Errorf("%s: %s, want %s", c.code, a, c.plies)
		}
		if a := got.String(); a != c.ascii {
			t.Errorf("%s: written %s, want %s", c.code, a, c.ascii)
		}
	}
}

// What can be read in two ways is refused with both.
func TestAmbiguous(t *testing.T) {
	for _, c := range []struct{ code, says, cure string }{
		{"[0/902]", "902 may be 90° twice, or 902°", "write 90_2 or -178"},
		{"[02/90]s", "02 may be 0° twice, or 2°", "write 0_2 or 2"},
		{"[0/302/90]", "302 may be 30° twice, or 302°", "write 30_2 or -58"},
		{"[105]", "105 may be 10° 5 times, or 105°", "write 10_5 or 105.0"},
		{"[9012]", "9012 may be 90° 12 times, or 9012°", "write 90_12 or 12"},
		{"[22.52/0]", "22.52 may be 22.5° twice, or 22.52°", "write 22.5_2 or 22.520"},
		{"[45.02]", "45.02 may be 45.0° twice, or 45.02°", "write 45.0_2 or 45.020"},
		{"[0/±452]", "452 may be 45° twice, or 452°", "write ±45_2 or ±92"},
		{"[±45_2]", "±45_2 may be the pair twice, or each angle twice", "write (±45)_2 or 45_2/-45_2"},
		{"[∓30₃]", "∓30_3 may be the pair 3 times, or each angle 3 times", "write (∓30)_3 or -30_3/30_3"},
		{"[0/90]s2", "s2 may repeat the list and then mirror it, or mirror it and then repeat it", "write ]2s to repeat and then mirror, or [(…)s]2"},
		{"[45,-45]", "a comma may part two plies or two layers of one stitched ply", "write / between plies"},
		{"[45, -45]s", "a comma may part two plies or two layers of one stitched ply", "layers: [45, -45]"},
		{"[22,5/0]", "a comma may part two plies or be a decimal comma", "a point: 22.5"},
		{"[90 2/0]", "a blank between two numbers may part two plies or stand before a repeat", "(90/2), or _ before a repeat (90_2)"},
		{"[(0/90) 2/0]", "a blank between a bracket and a number may part two plies", ")2"},
		{"[±45f]", "±45f may be one woven ply or two", "write 45f for one ply with its roll at 45°, or 45f/-45f for two"},
		{"[∓45f]", "∓45f may be one woven ply or two", "-45f/45f for two"},
		{"[(±45)f/0f]", "f after a bracket may mean one woven ply or that every ply in it is woven", "[0f/90f]"},
		{"[0/90]f", "f after a bracket may mean one woven ply", "[0f/90f]"},
		{"[0/90~]2s", "may have one middle ply, or one in each", "write [(0/90)_1/0/90~]s or [(0/90~)s]2"},
		{"[0/90̅_2]s", "a bar marks one middle ply", "over one ply"},
		{"[±45̅]s", "a bar marks one middle ply", "over one ply"},
	} {
		refused(t, c.code, c.says, c.cure)
	}
}

// Mistakes get one sentence with a cure.
func TestMistakes(t *testing.T) {
	for _, c := range []struct{ code, says, cure string }{
		{"", "square brackets", "[0/90]s"},
		{"0/90", "square brackets", "[0/90]s"},
		{"(0/90)s", "square brackets", "[0/90]s"},
		{"[]", "nothing between the brackets", "at least one angle"},
		{"[0/90", "not closed", "close it"},
		{"[(0/90]s", "closes another bracket", "close it with \")\""},
		{"[0/90)s", "closes another bracket", "close it with \"]\""},
		{"[0//90]", "an angle is missing before \"/\"", "take the / out"},
		{"[0/90/]", "an angle is missing before \"]\"", "take the / out"},
		{"[0+45-45]", "a slash is missing", "write / between"},
		{"[0/ab]", "\"a\" is no angle", "[0/45/90]"},
		{"[0/--45]", "one sign too many", "write ±45"},
		{"[0/±-45]", "one sign too many", "write ±45"},
		{"[0/200]", "200 is no direction", "-180 to 180"},
		{"[0/1.2.3]", "\"1.2.3\" is no angle", "one number"},
		{"[0/90]q", "cannot follow the brackets", "]2s"},
		{"[0/90]sT", "not understood", "T for a total one"},
		{"[0/90]0s", "\"0\" is no repeat", "from 1 to 2000"},
		{"[0_0/90]", "\"0\" is no repeat", "from 1 to 2000"},
		{"[0_/90]", "\"\" is no repeat", "from 1 to 2000"},
		{"[0/90]99999", "is no repeat", "from 1 to 2000"},
		{"[(0_2000)2000]", "more than 2000 plies", "check the repeats"},
		{"[0_1001]s", "more than 2000 plies", "check the repeats"},
		{"[0~/90]s", "over the last ply", "middle ply last"},
		{"[0/90~]", "this list is not mirrored", "take the bar off"},
		{"[0/(45/90~)]s", "this list is not mirrored", "take the bar off"},
		{"[(0/90)T/0]", "a group cannot be total", "T after the last"},
		{"[0/{90}]", "cannot open a group", "( ) round"},
		{"[0/nan]", "\"n\" is no angle", "[0/45/90]"},
		{strings.Repeat("[", 5000), "longer than 1000", "several lines"},
		{"[" + strings.Repeat("(", 500), "more than 12 deep", "fewer groups"},
	} {
		refused(t, c.code, c.says, c.cure)
	}
}

func refused(t *testing.T, code, says, cure string) {
	t.Helper()
	got, err := Parse(code)
	var e *Error
	if !errors.As(err, &e) {
		t.Errorf("%.40s: read as %s (%s), want a refusal", code, got, angles(got.Plies()))
		return
	}
	if !strings.Contains(e.Text, says) || !strings.Contains(e.Cure, cure) {
		t.Errorf("%.40s: %v\nwant %q and %q", code, e, says, cure)
	}
	if e.At < 1 || e.At > len([]rune(code))+1 || strings.ContainsAny(e.Text+e.Cure, "\n") {
		t.Errorf("%.40s: at %d: %q", code, e.At, e.Text)
	}
}

// A code written from plies is read as those plies again; so is the code of
// any sound code.
func TestRoundTrip(t *testing.T) {
	one := rapid.Custom(func(t *rapid.T) Ply {
		a := rapid.OneOf(
			rapid.SampledFrom([]float64{0, 45, -45, 90, 30, -30, 22.5, 105, 22.52, 150}),
			rapid.Map(rapid.IntRange(-1800, 1800), func(n int) float64 { return float64(n) / 10 }),
		).Draw(t, "angle")
		return Ply{a, rapid.SampledFrom([]bool{false, false, true}).Draw(t, "woven")}
	})
	rapid.Check(t, func(t *rapid.T) {
		half := rapid.SliceOfN(one, 1, 8).Draw(t, "plies")
		plies := half
		for range rapid.IntRange(0, 2).Draw(t, "more") {
			plies = append(plies, half...)
		}
		if rapid.Bool().Draw(t, "mirrored") {
			for i := len(plies) - 1 - rapid.IntRange(0, 1).Draw(t, "odd"); i >= 0; i-- {
				plies = append(plies, plies[i])
			}
		}
		text := Write(plies).String()
		got, err := Parse(text)
		if err != nil {
			t.Fatalf("%s is written %s: %v", angles(plies), text, err)
		}
		if angles(got.Plies()) != angles(plies) {
			t.Fatalf("%s is written %s and read %s", angles(plies), text, angles(got.Plies()))
		}
		if got.String() != text {
			t.Fatalf("%s is written %s", text, got)
		}
	})
}

// Short codes for what is laid in practice.
func TestWrite(t *testing.T) {
	for _, c := range []struct{ from, to string }{
		{"[0/45/-45/90/90/-45/45/0]", "[0/+-45/90]s"},
		{"[0/90/0/90]", "[0/90]2T"},
		{"[0/90/0]", "[0/90~]s"},
		{"[45/-45/45/-45/-45/45/-45/45]", "[+-45]2s"},
		{"[0/0/0/0]", "[0_4]T"},
		{"[0/0/90/90/0/0]", "[0_2/90]s"},
		{"[-30/30/0]", "[-+30/0]T"},
		{"[45/-45/45/-45/0]", "[(+-45)2/0]T"},
		{"[45f/0f/0f/45f]", "[45f/0f]s"},
	} {
		got, err := Parse(c.from)
		if err != nil {
			t.Fatal(err)
		}
		if w := Write(got.Plies()).String(); w != c.to {
			t.Errorf("%s is written %s, want %s", c.from, w, c.to)
		}
	}
}

func TestWords(t *testing.T) {
	for _, c := range []struct{ code, words string }{
		{"[0/±45/90]s", "8 plies from the tool up: 0°, 45°, -45°, 90° twice, -45°, 45°, 0°"},
		{"[22.5f]", "1 ply: woven at 22.5°"},
		{"[0_3/90]", "4 plies from the tool up: 0° 3 times, 90°"},
		{"[0/90]30T", "60 plies from the tool up: " + strings.Repeat("0°, 90°, ", 12) + "and 36 more"},
	} {
		got, err := Parse(c.code)
		if err != nil {
			t.Fatal(err)
		}
		if w := got.Words(); w != c.words {
			t.Errorf("%s: %s", c.code, w)
		}
	}
}

// No input makes the reader fail other than by its own error, and what it
// reads it can write.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"[0/±45/90]s", "[(0/90)2/45~]s", "[0_2/90̅]ₛ", "[45f_2/0w]_{2s}", "[902]", "[+/-45]s2", "[22,5]", "[((0)2)3s]"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		c, err := Parse(s)
		if err != nil {
			var e *Error
			if !errors.As(err, &e) || e.Text == "" || e.Cure == "" {
				t.Fatalf("%q: %v", s, err)
			}
			return
		}
		plies := c.Plies()
		if len(plies) == 0 || len(plies) > mostPlies {
			t.Fatalf("%q: %d plies", s, len(plies))
		}
		for _, text := range []string{c.String(), Write(plies).String()} {
			again, err := Parse(text)
			if err != nil && len([]rune(text)) <= mostLetter {
				t.Fatalf("%q is written %q: %v", s, text, err)
			}
			if err == nil && angles(again.Plies()) != angles(plies) {
				t.Fatalf("%q is written %q and read as other plies", s, text)
			}
		}
	})
}
