package planfile

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/paulmach/orb"

	"stripwright/laminate"
)

func encoded(tb testing.TB, p laminate.Plan) []byte {
	tb.Helper()
	data, err := Encode(p)
	if err != nil {
		tb.Fatal(err)
	}
	return data
}

func TestRoundTrip(t *testing.T) {
	data := encoded(t, sample())
	p, unknown, err := Decode(data)
	if err != nil || len(unknown) > 0 {
		t.Fatal(err, unknown)
	}
	if diff := cmp.Diff(sample(), p); diff != "" {
		t.Errorf("read back (-want +got):\n%s", diff)
	}
	if again := encoded(t, p); !bytes.Equal(data, again) {
		t.Error("written again, the bytes differ")
	}
}

// The standard library's own JSON reader is the second opinion on what was
// written and what is read.
func TestStandardLibraryReadsTheSame(t *testing.T) {
	var p laminate.Plan
	if err := json.Unmarshal(encoded(t, sample()), &p); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(sample(), p); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	plain, err := json.Marshal(sample())
	if err != nil {
		t.Fatal(err)
	}
	q, _, err := Decode(plain)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(sample(), q); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestLayout(t *testing.T) {
	text := string(encoded(t, sample()))
	for _, line := range []string{
		`    "net": {"outer": [[25,25],[575,25],[575,375],[25,375]], "holes": []},`,
		`      [[100,100],[100,200],[200,200],[200,100]],`,
		`      [[300,100],[300,200],[400.5,200.125]]`,
		`        {"id": "P01-S02", "shape": {"outer": [[0,250],[600,250],[600,400],[0,400]], "holes": []}, "width_mm": 150.007}`,
		`        {"kind": "side", "from": [0,250], "to": [600,250], "between": ["P01-S01", "P01-S02"]}`,
		`      "cross_cuts": [600, 900.5],`,
		`  "title": "Hatch \"lid\" 5° <2>",`,
		`  "seed": 9007199254740993,`,
	} {
		if !strings.Contains(text, "\n"+line+"\n") {
			t.Errorf("no line %s\nin %s", line, text)
		}
	}
	if !strings.HasPrefix(text, "{\n  \"format\": \"stripwright-plan\",\n  \"version\": 1,\n") || !strings.HasSuffix(text, "}\n") {
		t.Error("does not start with format and version, or end with a line feed")
	}
}

// An empty plan has lists, not nulls.
func TestEmptyLists(t *testing.T) {
	text := string(encoded(t, laminate.Plan{}))
	for _, f := range []string{"drawings", "plies", "rolls", "cost", "lengths", "checks", "quantities", "notes", "fabrics", "corners", "keep_clear", "holes", "outer"} {
		if !strings.Contains(text, `"`+f+`": []`) {
			t.Errorf("%s is not []", f)
		}
	}
	for _, f := range []string{"load_deg", "max_gap_mm", "table_mm"} {
		if !strings.Contains(text, `"`+f+`": null`) {
			t.Errorf("%s is not null", f)
		}
	}
	if strings.Count(text, "null") != 3 {
		t.Errorf("null elsewhere: %s", text)
	}
}

func TestFigures(t *testing.T) {
	for _, c := range []struct {
		v    float64
		want string
	}{
		{0, "0"}, {math.Copysign(0, -1), "0"}, {-0.0004, "0"}, {0.0005, "0.001"}, {-0.0006, "-0.001"},
		{1.5, "1.5"}, {1.05, "1.05"}, {1.005, "1.005"}, {-12.34, "-12.34"}, {100, "100"}, {0.1 + 0.2, "0.3"},
		{999999.9996, "1000000"}, {112000000.125, "112000000.125"}, {1e12, "1000000000000"},
	} {
		e := &encoder{}
		if e.number(c.v, defaultPlaces); string(e.out) != c.want || e.err != nil {
			t.Errorf("%v: %s, want %s (%v)", c.v, e.out, c.want, e.err)
		}
	}
	for _, c := range []struct {
		v    float64
		want string
	}{{math.Copysign(0, -1), "0"}, {-1e-12, "0"}, {22.5, "22.5"}, {100, "100"}, {-17.1234567894, "-17.123456789"}} {
		e := &encoder{}
		if e.number(c.v, finePlaces); string(e.out) != c.want {
			t.Errorf("%v: %s, want %s", c.v, e.out, c.want)
		}
	}
}

func TestUnwritable(t *testing.T) {
	for _, c := range []struct {
		name, place string
		spoil       func(p *laminate.Plan)
	}{
		{"nan", "plies[0].strips[1].shape.outer: NaN", func(p *laminate.Plan) { p.Plies[0].Strips[1].Shape.Outer[2][0] = math.NaN() }},
		{"inf", "part.blank.holes[1]: +Inf", func(p *laminate.Plan) { p.Part.Blank.Holes[1][0][1] = math.Inf(1) }},
		{"far", "rolls[0].used_length_mm: 1e+13", func(p *laminate.Plan) { p.Rolls[0].UsedLengthMM = 1e13 }},
		{"optional", "rules.table_mm: -Inf", func(p *laminate.Plan) { p.Rules.TableMM = ptr(math.Inf(-1)) }},
		{"joint", "plies[0].joints[0].to[1]: NaN", func(p *laminate.Plan) { p.Plies[0].Joints[0].To[1] = math.NaN() }},
	} {
		p := sample()
		c.spoil(&p)
		if _, err := Encode(p); err == nil || !strings.Contains(err.Error(), c.place) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// spoilt replaces a text that must be there once.
func spoilt(t *testing.T, old, by string) []byte {
	t.Helper()
	text := string(encoded(t, sample()))
	if strings.Count(text, old) == 0 {
		t.Fatalf("no %s in the sample", old)
	}
	return []byte(strings.Replace(text, old, by, 1))
}

func TestRefused(t *testing.T) {
	for _, c := range []struct{ name, old, by, says string }{
		{"another format", `"stripwright-plan"`, `"plan"`, `format: is "plan"`},
		{"another version", `"version": 1`, `"version": 2`, "version: is 2; this program reads version 1"},
		{"no version", `  "version": 1,`, ``, "version: is missing"},
		{"a field gone", `, "width_mm": 150.007`, ``, "plies[0].strips[1].width_mm: is missing"},
		{"a list that is null", `"cross_cuts": [600, 900.5]`, `"cross_cuts": null`, "rolls[0].cross_cuts: want a list […], found null"},
		{"a text for a number", `"copy": 1`, `"copy": "1"`, `rolls[0].copy: want a whole number, found the text "1"`},
		{"half a copy", `"copy": 1`, `"copy": 1.5`, "want a whole number within reason, found 1.5"},
		{"a number for a text", `"face": "down"`, `"face": 1`, "plies[0].face: want a text, found the number 1"},
		{"a number for a yes", `"turn": true`, `"turn": 1`, "fabrics[0].turn: want true or false"},
		{"too large", `"seed": 9007199254740993`, `"seed": 1e400`, "seed: want a whole number"},
		{"out of reason", `"used_length_mm": 1200`, `"used_length_mm": 1e400`, "rolls[0].used_length_mm: the number 1e400 is out of reason"},
		{"too many plies between", `"plies_between": 4`, `"plies_between": 9999999999`, "out of reason"},
		{"twice", `"turn": true`, `"turn": true, "turn": false`, "fabrics[0].turn: stands twice"},
		{"another case", `"turn": true`, `"Turn": true`, "fabrics[0].turn: is missing"},
		{"a block for a list", `"notes": [`, `"notes": {}, "x": [`, "notes: want a list […], found a block"},
		{"not a number", `"used_length_mm": 1200`, `"used_length_mm": NaN`, "no JSON from here on"},
		{"a point of one", `"from": [0,250]`, `"from": [0]`, "plies[0].joints[0].from: want 2 values, found 1"},
		{"a long point", `"from": [0,250]`, `"from": [0,250,3]`, "plies[0].joints[0].from: want 2 values, found 3"},
	} {
		p, _, err := Decode(spoilt(t, c.old, c.by))
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", c.name, err)
		}
		if p.Format != "" {
			t.Errorf("%s: a plan was given beside the error", c.name)
		}
	}
}

func TestProblemHasItsLine(t *testing.T) {
	data := spoilt(t, `"copy": 1`, `"copy": "1"`)
	want := 1 + strings.Count(string(data[:bytes.Index(data, []byte(`"copy"`))]), "\n")
	_, _, err := Decode(data)
	ps, ok := err.(Problems)
	if !ok || len(ps) != 1 || ps[0].Line != want || ps[0].Place != "rolls[0].copy" {
		t.Errorf("%v, want line %d", err, want)
	}
}

func TestAllProblemsAtOnce(t *testing.T) {
	data := bytes.ReplaceAll(encoded(t, sample()), []byte(`"width_mm"`), []byte(`"breadth_mm"`))
	_, unknown, err := Decode(data)
	if got := strings.Count(err.Error(), "is missing"); got != 4 { // two strips, a roll, a length; a consumable may do without
		t.Errorf("%d problems, want 4:\n%v", got, err)
	}
	want := []string{"plies[0].strips[0].breadth_mm (and 1 more)", "rolls[0].breadth_mm", "lengths[0].breadth_mm", "consumables[0].breadth_mm"}
	if diff := cmp.Diff(want, unknown); diff != "" {
		t.Error(diff)
	}
}

func TestUnknownFieldsAreNamed(t *testing.T) {
	data := spoilt(t, `"turn": true`, `"turn": true, "drape": {"a": [1, {"b": null}], "c": "d"}`)
	p, unknown, err := Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff([]string{"fabrics[0].drape"}, unknown); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(sample(), p); diff != "" {
		t.Error(diff)
	}
}

// A plan cut short anywhere is refused, never half read.
func TestCutShort(t *testing.T) {
	data := bytes.TrimSpace(encoded(t, sample()))
	for n := range data {
		if _, _, err := Decode(data[:n]); err == nil {
			t.Fatalf("the first %d bytes of %d are read as a plan", n, len(data))
		}
	}
	if _, _, err := Decode(append(data, "{}"...)); err == nil || !strings.Contains(err.Error(), "after top-level value") {
		t.Errorf("something after the plan: %v", err)
	}
}

func TestHostileFiles(t *testing.T) {
	deep := `{"format": "stripwright-plan", "version": 1, "x": ` + strings.Repeat("[", 1_000_000)
	for _, c := range []struct{ name, data, says string }{
		{"empty", "", "cut short"},
		{"empty names", `{"": {"": 1}, "": [2]}`, "is this another file?"},
		{"not a plan", `{"type": "FeatureCollection", "features": []}`, "is this another file?"},
		{"a list", `[]`, "is this another file?"},
		{"a number", `1`, "is this another file?"},
		{"deep", deep, ""},
		{"many empty strips", `{"format": "stripwright-plan", "version": 1, "plies": [` + strings.Repeat("{},", 100_000) + `{}]}`, "too many problems"},
		{"bytes", "\xff\xfe\x00{", "no JSON from here on"},
	} {
		_, _, err := Decode([]byte(c.data))
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", c.name, err)
		}
		if n := len(err.Error()); n > 10_000 {
			t.Errorf("%s: %d bytes of error", c.name, n)
		}
	}
}

// Encode alters nothing of what it is given.
func TestEncodeLeavesThePlanAlone(t *testing.T) {
	p := sample()
	p.Part.Net.Outer = append(orb.Ring{}, p.Part.Net.Outer...)
	encoded(t, p)
	if diff := cmp.Diff(sample(), p); diff != "" {
		t.Error(diff)
	}
}

func FuzzDecode(f *testing.F) {
	data, err := Encode(sample())
	if err != nil {
		f.Fatal(err)
	}
	f.Add(data)
	f.Add([]byte(`{"format": "stripwright-plan", "version": 1, "plies": [{"ply": 1e0, "strips": null}]}`))
	f.Add([]byte(`{}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, _, err := Decode(data)
		if err != nil {
			return
		}
		once, err := Encode(p)
		if err != nil {
			t.Fatalf("what was read cannot be written: %v", err)
		}
		q, _, err := Decode(once)
		if err != nil {
			t.Fatalf("what was written cannot be read: %v\n%s", err, once)
		}
		if twice, err := Encode(q); err != nil || !bytes.Equal(once, twice) {
			t.Fatalf("written twice, the bytes differ: %v", err)
		}
	})
}
