package planfile

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

// Encode writes a plan as plan.json, ending in a line feed. Format, version and
// program are written as they stand in the plan. Empty lists are written as [],
// never null. A figure that is no number, or so large that it cannot be written
// to the micrometre, is an error that names its place.
func Encode(p laminate.Plan) ([]byte, error) {
	e := &encoder{out: make([]byte, 0, 64<<10)}
	e.value(reflect.ValueOf(p), defaultPlaces, 0)
	if e.err != nil {
		return nil, fmt.Errorf("plan cannot be written: %w", e.err)
	}
	return append(e.out, '\n'), nil
}

// encoder writes values one after the other; path leads to the value at hand.
type encoder struct {
	out  []byte
	path []step
	err  error
}

func (e *encoder) fail(why string) {
	if e.err == nil {
		e.err = fmt.Errorf("%s: %s", place(e.path), why)
	}
}

// value writes any value of a plan: on one line where its type is plain, else
// indented by depth.
func (e *encoder) value(v reflect.Value, places int, depth int) {
	switch v.Kind() {
	case reflect.Struct:
		if r, ok := v.Interface().(geometry.Region); ok {
			e.region(r, depth)
			return
		}
		e.object(v, depth)
	case reflect.Slice:
		e.list(v, places, depth)
	case reflect.Array:
		e.array(v, places)
	case reflect.Pointer:
		if v.IsNil() {
			e.out = append(e.out, "null"...)
			return
		}
		e.value(v.Elem(), places, depth)
	default:
		e.scalar(v, places)
	}
}

func (e *encoder) scalar(v reflect.Value, places int) {
	switch v.Kind() {
	case reflect.Float64:
		e.number(v.Float(), places)
	case reflect.Int, reflect.Int64:
		e.out = strconv.AppendInt(e.out, v.Int(), 10)
	case reflect.Bool:
		e.out = strconv.AppendBool(e.out, v.Bool())
	case reflect.String:
		e.text(v.String())
	default:
		e.fail("a value of kind " + v.Kind().String() + " has no form in a plan")
	}
}

// text writes a string; characters that mean something in HTML stay as they
// are, and bytes that are no text become the replacement character.
func (e *encoder) text(s string) {
	for i := 0; i < len(s); i++ {
		if c := s[i]; c < 0x20 || c >= 0x7f || c == '"' || c == '\\' {
			e.quote(s)
			return
		}
	}
	e.out = append(e.out, '"')
	e.out = append(e.out, s...)
	e.out = append(e.out, '"')
}

// quote writes a string that needs escapes.
func (e *encoder) quote(s string) {
	var b bytes.Buffer
	j := json.NewEncoder(&b)
	j.SetEscapeHTML(false)
	if err := j.Encode(s); err != nil {
		e.fail(err.Error())
	}
	e.out = append(e.out, bytes.TrimSuffix(b.Bytes(), []byte("\n"))...)
}

// object writes a struct, leaving out empty fields marked omitempty.
func (e *encoder) object(v reflect.Value, depth int) {
	form := formOf(v.Type())
	e.out = append(e.out, '{')
	first := true
	for _, f := range form.fields {
		w := v.Field(f.index)
		if f.omit && w.IsZero() {
			continue
		}
		if !first {
			e.out = append(e.out, ',')
		}
		e.gap(form.plain, first, depth+1)
		first = false
		e.out = append(e.out, '"')
		e.out = append(e.out, f.name...)
		e.out = append(e.out, `": `...)
		e.path = append(e.path, step{name: f.name})
		e.value(w, f.places, depth+1)
		e.path = e.path[:len(e.path)-1]
	}
	if !form.plain && !first {
		e.line(depth)
	}
	e.out = append(e.out, '}')
}

// gap goes to the next field: on the same line in a plain struct.
func (e *encoder) gap(plain, first bool, depth int) {
	switch {
	case !plain:
		e.line(depth)
	case !first:
		e.out = append(e.out, ' ')
	}
}

func (e *encoder) line(depth int) {
	e.out = append(e.out, '\n')
	for range depth {
		e.out = append(e.out, ' ', ' ')
	}
}

// list writes a slice: of structs one a line, of anything else on one line.
func (e *encoder) list(v reflect.Value, places, depth int) {
	n := v.Len()
	e.out = append(e.out, '[')
	lines := v.Type().Elem().Kind() == reflect.Struct
	for i := range n {
		if i > 0 {
			e.out = append(e.out, ',')
		}
		e.gap(!lines, i == 0, depth+1)
		e.path = append(e.path, step{index: i})
		e.value(v.Index(i), places, depth+1)
		e.path = e.path[:len(e.path)-1]
	}
	if lines && n > 0 {
		e.line(depth)
	}
	e.out = append(e.out, ']')
}

func (e *encoder) array(v reflect.Value, places int) {
	e.out = append(e.out, '[')
	for i := range v.Len() {
		if i > 0 {
			e.out = append(e.out, ',')
			if v.Index(i).Kind() == reflect.String {
				e.out = append(e.out, ' ')
			}
		}
		e.path = append(e.path, step{index: i})
		e.scalar(v.Index(i), places)
		e.path = e.path[:len(e.path)-1]
	}
	e.out = append(e.out, ']')
}

// region writes rings as lists of [x,y]: on one line without holes, else a ring
// a line.
func (e *encoder) region(r geometry.Region, depth int) {
	e.out = append(e.out, `{"outer": `...)
	e.ring("outer", -1, r.Outer)
	e.out = append(e.out, `, "holes": [`...)
	for i, h := range r.Holes {
		if i > 0 {
			e.out = append(e.out, ',')
		}
		e.line(depth + 1)
		e.ring("holes", i, h)
	}
	if len(r.Holes) > 0 {
		e.line(depth)
	}
	e.out = append(e.out, "]}"...)
}

func (e *encoder) ring(name string, hole int, ring orb.Ring) {
	depth := len(e.path)
	e.path = append(e.path, step{name: name})
	if hole >= 0 {
		e.path = append(e.path, step{index: hole})
	}
	e.out = append(e.out, '[')
	for i, p := range ring {
		if i > 0 {
			e.out = append(e.out, ',')
		}
		e.out = append(e.out, '[')
		e.number(p[0], defaultPlaces)
		e.out = append(e.out, ',')
		e.number(p[1], defaultPlaces)
		e.out = append(e.out, ']')
	}
	e.out = append(e.out, ']')
	e.path = e.path[:depth]
}
