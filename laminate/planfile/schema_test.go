package planfile

import (
	"bytes"
	"encoding/json"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"stripwright/laminate"
)

// The schema is judged by a general-purpose library for JSON Schema, draft
// 2020-12.
func compiled(tb testing.TB) *jsonschema.Schema {
	tb.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	if err != nil {
		tb.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.DefaultDraft(jsonschema.Draft2020)
	if err := c.AddResource("plan.schema.json", doc); err != nil {
		tb.Fatal(err)
	}
	s, err := c.Compile("plan.schema.json")
	if err != nil {
		tb.Fatal(err)
	}
	return s
}

func valid(tb testing.TB, s *jsonschema.Schema, data []byte) error {
	tb.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	if err != nil {
		tb.Fatal(err)
	}
	return s.Validate(doc)
}

func TestWhatIsWrittenHoldsTheSchema(t *testing.T) {
	if err := valid(t, compiled(t), encoded(t, sample())); err != nil {
		t.Error(err)
	}
}

// Every field that may not be left out is asked for by both the schema and
// Decode, at every depth.
func TestRequiredFieldsAgree(t *testing.T) {
	s := compiled(t)
	taken := 0
	eachField(t, encoded(t, sample()), func(path string, without []byte, optional bool) {
		taken++
		_, _, err := Decode(without)
		if (err == nil) != optional {
			t.Errorf("without %s Decode says %v", path, err)
		}
		if err := valid(t, s, without); (err == nil) != optional {
			t.Errorf("without %s the schema says %v", path, err)
		}
	})
	if taken < 220 {
		t.Errorf("only %d fields tried", taken)
	}
}

// eachField calls f with the file less one field, for every field of every
// block.
func eachField(t *testing.T, data []byte, f func(path string, without []byte, optional bool)) {
	t.Helper()
	var doc any
	if err := json.Unmarshal(data, &doc); err != nil {
		t.Fatal(err)
	}
	optional := []string{
		"stopped", "reversed", "outline", "remnant", "piece", "price_per_metre", "has_price",
		"fibres", "resins", "resin", "consumables", "cores", "measured", "uptakes", "form", "fibre_volume", "elastic",
		"fibre_mass", "band_points", "lines_and_pot_g", "mix", "by_volume", "density_a_gcm3", "density_b_gcm3", "batch_g", "sold_by_g", "on_hand_g", "price_per_kg",
		"margin_mm", "uptake_gsm", "pleats", "pleat_mm", "length_mm", "on_hand_mm", "on_hand", "price_per_sheet",
	}
	sometimes := []string{ // by the block that they stand in
		".fabrics[].density_gcm3", ".resin.spare_percent", ".consumables[].width_mm", ".consumables[].sold_by_mm", ".consumables[].spare_percent",
		".measured.dry_g", ".measured.thinnest_mm", ".measured.thickest_mm", ".measured.cloth_band_percent", ".measured.scale_band_percent",
	}
	loose := func(path, k string) bool {
		return strings.HasPrefix(path, ".fibres[]") && strings.Count(path, ".") == 1 && k != "name" ||
			strings.HasPrefix(path, ".resins[]") && strings.Count(path, ".") == 1 && k != "name" ||
			k == "from" && path != ".plies[].joints[]"
	}
	var walk func(path string, v any, inLayer bool)
	walk = func(path string, v any, inLayer bool) {
		switch v := v.(type) {
		case map[string]any:
			for _, k := range keysOf(v) {
				held := v[k]
				delete(v, k)
				without, err := json.Marshal(doc)
				if err != nil {
					t.Fatal(err)
				}
				f(path+"."+k, without, slices.Contains(optional, k) || slices.Contains(sometimes, path+"."+k) || loose(path, k) || inLayer && k == "weight_gsm")
				v[k] = held
				walk(path+"."+k, held, k == "layers")
			}
		case []any:
			for _, e := range v {
				walk(path+"[]", e, inLayer)
			}
		}
	}
	walk("", doc, false)
}

func keysOf(m map[string]any) []string {
	var out []string
	for k := range m {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}

// The schema names every field of the model, and no other, each under its
// block; the model and the schema cannot drift apart.
func TestSchemaNamesTheModelsFields(t *testing.T) {
	var doc map[string]any
	if err := json.Unmarshal(Schema(), &doc); err != nil {
		t.Fatal(err)
	}
	seen := 0
	var walk func(at string, node map[string]any, typ reflect.Type)
	walk = func(at string, node map[string]any, typ reflect.Type) {
		node = resolved(doc, node)
		switch typ.Kind() {
		case reflect.Pointer:
			walk(at, node, typ.Elem())
		case reflect.Slice, reflect.Array:
			if items, ok := node["items"].(map[string]any); ok {
				walk(at+"[]", items, typ.Elem())
			} else {
				t.Errorf("%s: the schema has no list", at)
			}
		case reflect.Struct:
			seen++
			props, _ := node["properties"].(map[string]any)
			form := formOf(typ)
			var names, required []string
			for _, f := range form.fields {
				names = append(names, f.name)
				if !f.omit {
					required = append(required, f.name)
				}
				if p, ok := props[f.name].(map[string]any); ok {
					walk(at+"."+f.name, p, typ.Field(f.index).Type)
				}
			}
			slices.Sort(names)
			if got := keysOf(props); !slices.Equal(got, names) {
				t.Errorf("%s: the schema names %v, the model %v", at, got, names)
			}
			var asked []string
			for _, r := range node["required"].([]any) {
				asked = append(asked, r.(string))
			}
			slices.Sort(required)
			slices.Sort(asked)
			if !slices.Equal(asked, required) {
				t.Errorf("%s: the schema requires %v, the model %v", at, asked, required)
			}
		}
	}
	walk("plan", doc, reflect.TypeFor[laminate.Plan]())
	if seen < 20 {
		t.Errorf("only %d blocks compared", seen)
	}
}

// resolved follows a reference, and takes the block out of "a block or null".
func resolved(doc, node map[string]any) map[string]any {
	if ref, ok := node["$ref"].(string); ok {
		defs := doc["$defs"].(map[string]any)
		return resolved(doc, defs[ref[len("#/$defs/"):]].(map[string]any))
	}
	if either, ok := node["anyOf"].([]any); ok {
		return resolved(doc, either[1].(map[string]any))
	}
	return node
}

func TestSchemaRefuses(t *testing.T) {
	s := compiled(t)
	for _, c := range []struct{ name, old, by string }{
		{"another version", `"version": 1`, `"version": 2`},
		{"a face", `"face": "down"`, `"face": "left"`},
		{"a turn", `"turned": 180`, `"turned": 90`},
		{"a kind", `"kind": "side"`, `"kind": "lap"`},
		{"a measure", `"measure": "length"`, `"measure": "time"`},
		{"a status", `"status": "feasible"`, `"status": "best"`},
		{"an angle", `"angle_deg": -17.123456789`, `"angle_deg": -90`},
		{"an id", `"id": "P01-S02"`, `"id": "P1S2"`},
		{"a negative width", `"width_mm": 150.007`, `"width_mm": -150.007`},
		{"a copy", `"copy": 1`, `"copy": 0`},
		{"a null list", `"cross_cuts": [600, 900.5]`, `"cross_cuts": null`},
		{"a point", `"from": [0,250]`, `"from": [0]`},
	} {
		if valid(t, s, spoilt(t, c.old, c.by)) == nil {
			t.Errorf("%s: %s is accepted", c.name, c.by)
		}
	}
}
