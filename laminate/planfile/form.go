package planfile

import (
	"reflect"
	"strconv"
	"strings"
	"sync"

	"stripwright/geometry"
)

// Decimals of a figure: three for lengths, areas and masses, nine for angles (a
// thousandth of a degree is 0.09 mm at 5 m) and for what a job states in another
// unit: areal weights, densities, fractions, prices; fifteen for a price per mm².
const (
	defaultPlaces = 3
	finePlaces    = 9
	finestPlaces  = 15
)

// placesOf gives the decimals of a field by its name in the file.
func placesOf(name string) int {
	switch name {
	case "per_mm2":
		return finestPlaces
	case "angles", "gap", "spare_percent", "value", "nu12", "parts_a", "parts_b":
		return finePlaces
	}
	for _, unit := range []string{"_deg", "_gsm", "_gcm3", "_kgm3", "_gpa", "_per_k", "_per_kg", "_per_metre", "_per_sheet"} {
		if strings.HasSuffix(name, unit) {
			return finePlaces
		}
	}
	return defaultPlaces
}

// form is how a struct of the model stands in a file.
type form struct {
	fields []field
	byName map[string]int
	plain  bool // small enough for one line: no lists of structs within
}

// field is one named value of a struct.
type field struct {
	name   string
	index  int
	omit   bool // left out when empty, and not required
	places int
}

// forms keeps the form of each type; it changes no result.
var forms sync.Map

func formOf(t reflect.Type) *form {
	if f, ok := forms.Load(t); ok {
		return f.(*form)
	}
	f := &form{byName: map[string]int{}, plain: true}
	for i := range t.NumField() {
		name, rest, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		if name == "" || name == "-" {
			continue
		}
		f.byName[name] = len(f.fields)
		f.fields = append(f.fields, field{name, i, rest == "omitempty" || rest == "omitzero", placesOf(name)})
		f.plain = f.plain && plain(t.Field(i).Type)
	}
	kept, _ := forms.LoadOrStore(t, f)
	return kept.(*form)
}

// plain says whether a value of the type fits on a line.
func plain(t reflect.Type) bool {
	switch t.Kind() {
	case reflect.Struct:
		return t == regionType || formOf(t).plain
	case reflect.Slice, reflect.Array:
		return t.Elem().Kind() != reflect.Struct && plain(t.Elem())
	case reflect.Pointer:
		return plain(t.Elem())
	}
	return true
}

var regionType = reflect.TypeFor[geometry.Region]()

// step is one step of the way to a value: a field or a place in a list.
type step struct {
	name  string
	index int
	named bool // a field as read, which may have the empty name
}

// place prints a way: plies[2].strips[0].width_mm.
func place(path []step) string {
	var b strings.Builder
	for _, s := range path {
		if s.name == "" && !s.named {
			b.WriteString("[" + strconv.Itoa(s.index) + "]")
			continue
		}
		if b.Len() > 0 {
			b.WriteByte('.')
		}
		b.WriteString(shortened(s.name))
	}
	if b.Len() == 0 {
		return "plan"
	}
	return b.String()
}
