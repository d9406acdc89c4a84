package planfile

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"strconv"

	"stripwright/laminate"
)

// largestFile is the most bytes that are read as a plan, and mostProblems how
// many problems are named before reading stops.
const (
	largestFile  = 256 << 20
	mostProblems = 20
)

// Decode reads a plan. It gives the plan, the places of fields it does not know
// (each kind once, the first place and how many more), and Problems when the
// file is not a whole plan of the version known: another format or version, a
// field missing, double or of the wrong kind, a figure out of reason, bytes that
// are no JSON, anything after the plan. Names are held to their case.
func Decode(data []byte) (laminate.Plan, []string, error) {
	if len(data) > largestFile {
		return laminate.Plan{}, nil, Problems{{1, "plan", fmt.Sprintf("the file has %d MiB; no plan has more than %d", len(data)>>20, largestFile>>20)}}
	}
	d := &decoder{data: data, dec: json.NewDecoder(bytes.NewReader(data)), unknown: map[string]int{}}
	d.dec.UseNumber()
	var p laminate.Plan
	d.read(reflect.ValueOf(&p).Elem())
	if other := d.otherFormat(p); other != nil {
		return laminate.Plan{}, nil, other
	}
	if len(d.problems) > 0 {
		return laminate.Plan{}, d.strangers(), d.problems
	}
	return p, d.strangers(), nil
}

// decoder walks the tokens of a file along the types of the model.
type decoder struct {
	data     []byte
	dec      *json.Decoder
	path     []step
	problems Problems
	stopped  bool // nothing more can be read
	order    []string
	unknown  map[string]int // by place without numbers
	first    []string       // first place of each
}

// otherFormat tells a file that is no plan, or a plan of another version: then
// nothing else that was found is worth saying.
func (d *decoder) otherFormat(p laminate.Plan) error {
	switch {
	case len(d.problems) == 1 && d.stopped && p.Format == "":
		return d.problems
	case p.Format != laminate.PlanFormat:
		return Problems{{1, "format", fmt.Sprintf("is %q; a plan file says %q: is this another file?", p.Format, laminate.PlanFormat)}}
	case p.Version != laminate.PlanVersion && p.Version != 0:
		return Problems{{1, "version", fmt.Sprintf("is %d; this program reads version %d: use the program that wrote the plan, or plan again", p.Version, laminate.PlanVersion)}}
	}
	return nil
}

// token gives the next token; nil and false when there is none.
func (d *decoder) token() (json.Token, bool) {
	if d.stopped {
		return nil, false
	}
	t, err := d.dec.Token()
	if err != nil {
		d.broken(err)
		return nil, false
	}
	return t, true
}

// read reads the whole file into the plan.
func (d *decoder) read(plan reflect.Value) {
	t, ok := d.token()
	if !ok {
		return
	}
	d.value(t, plan)
	if d.stopped {
		return
	}
	if _, err := d.dec.Token(); !errors.Is(err, io.EOF) {
		d.problem("something stands after the end of the plan")
	}
}

// value reads a value that starts with token t.
func (d *decoder) value(t json.Token, v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		if d.opens(t, '{', "a block {…}") {
			d.object(v)
		}
	case reflect.Slice:
		if d.opens(t, '[', "a list […]") {
			d.list(v)
		}
	case reflect.Array:
		if d.opens(t, '[', fmt.Sprintf("a list of %d", v.Len())) {
			d.array(v)
		}
	case reflect.Pointer:
		if t != nil {
			v.Set(reflect.New(v.Type().Elem()))
			d.value(t, v.Elem())
		}
	default:
		d.scalar(t, v)
	}
}

// opens says whether t opens what is wanted; else it is skipped.
func (d *decoder) opens(t json.Token, want json.Delim, words string) bool {
	if t == want {
		return true
	}
	d.problem("want %s, found %s", words, kindOf(t))
	d.skip(t)
	return false
}

func kindOf(t json.Token) string {
	switch t := t.(type) {
	case json.Delim:
		if t == '{' {
			return "a block"
		}
		return "a list"
	case json.Number:
		return "the number " + shortened(t.String())
	case string:
		return "the text " + strconv.Quote(shortened(t))
	case bool:
		return strconv.FormatBool(t)
	}
	return "null"
}

func shortened(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}

// skip passes over the rest of a value that starts with t.
func (d *decoder) skip(t json.Token) {
	depth := 0
	for {
		if c, ok := t.(json.Delim); ok {
			if c == '{' || c == '[' {
				depth++
			} else {
				depth--
			}
		}
		if depth == 0 {
			return
		}
		var ok bool
		if t, ok = d.token(); !ok {
			return
		}
	}
}

// object reads the fields of a struct up to its end.
func (d *decoder) object(v reflect.Value) {
	f := formOf(v.Type())
	var seen uint64 // by place in the form, which has fewer than 64 fields
	for !d.stopped && d.dec.More() {
		t, ok := d.token()
		if !ok {
			return
		}
		name, _ := t.(string)
		d.path = append(d.path, step{name: name})
		d.field(v, f, name, &seen)
		d.path = d.path[:len(d.path)-1]
	}
	if _, ok := d.token(); !ok {
		return
	}
	for i, e := range f.fields {
		if seen&(1<<i) == 0 && !e.omit {
			d.path = append(d.path, step{name: e.name})
			d.problem("is missing")
			d.path = d.path[:len(d.path)-1]
		}
	}
}

func (d *decoder) field(v reflect.Value, f *form, name string, seen *uint64) {
	i, known := f.byName[name]
	if !known {
		d.stranger()
	} else if *seen&(1<<i) != 0 {
		d.problem("stands twice in one block")
	}
	t, ok := d.token()
	if !ok {
		return
	}
	if !known {
		d.skip(t)
		return
	}
	*seen |= 1 << i
	d.value(t, v.Field(f.fields[i].index))
}

// list reads a slice up to its end; an empty one is not nil.
func (d *decoder) list(v reflect.Value) {
	v.Set(reflect.MakeSlice(v.Type(), 0, 4))
	for !d.stopped && d.dec.More() {
		t, ok := d.token()
		if !ok {
			return
		}
		n := v.Len()
		v.Grow(1)
		v.SetLen(n + 1)
		v.Index(n).SetZero()
		d.path = append(d.path, step{index: n})
		d.value(t, v.Index(n))
		d.path = d.path[:len(d.path)-1]
	}
	d.token()
}

// array reads a list of fixed length up to its end.
func (d *decoder) array(v reflect.Value) {
	n := 0
	for !d.stopped && d.dec.More() {
		t, ok := d.token()
		if !ok {
			return
		}
		d.path = append(d.path, step{index: n})
		if n < v.Len() {
			d.value(t, v.Index(n))
		} else {
			d.skip(t)
		}
		d.path = d.path[:len(d.path)-1]
		n++
	}
	if _, ok := d.token(); ok && n != v.Len() {
		d.problem("want %d values, found %d", v.Len(), n)
	}
}
