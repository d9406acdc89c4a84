package planfile

import (
	"reflect"
	"strconv"
	"strings"
	"sync"

	"stripwright/geometry"
)

// Decimals of a figure: three for lengths and areas, nine for angles and areal
// weights (a thousandth of a degree is 0.09 mm at 5 m), fifteen for a price per
// mm².
const (
	defaultPlaces = 3
	finePlaces    = 9
	finestPlaces  = 15
)

// placesOf gives the decimals of a field by its name in the file.
func placesOf(name string) int {
	switch {
	case name == "per_mm2":
		return finestPlaces
	case strings.HasSuffix(name, "_deg"), name == "angles", name == "weight_gsm", name == "gap", name == "spare_percent":
		return finePlaces
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
		f.fields = append(f.fields, field{name, i, rest == "omitempty", placesOf(name)})
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
