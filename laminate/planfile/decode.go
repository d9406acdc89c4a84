package planfile

import (
	"fmt"
	"reflect"

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
	if err := broken(data); err != nil {
		return laminate.Plan{}, nil, err
	}
	d := &decoder{text: text{data: data}, unknown: map[string]int{}}
	var p laminate.Plan
	d.value(reflect.ValueOf(&p).Elem())
	if err := otherFormat(p); err != nil {
		return laminate.Plan{}, nil, err
	}
	if len(d.problems) > 0 {
		return laminate.Plan{}, d.strangers(), d.problems
	}
	return p, d.strangers(), nil
}

// otherFormat tells a file that is no plan, or a plan of another version: then
// nothing else that was found is worth saying.
func otherFormat(p laminate.Plan) error {
	switch {
	case p.Format != laminate.PlanFormat:
		return Problems{{1, "format", fmt.Sprintf("is %q; a plan file says %q: is this another file?", p.Format, laminate.PlanFormat)}}
	case p.Version != laminate.PlanVersion && p.Version != 0:
		return Problems{{1, "version", fmt.Sprintf("is %d; this program reads version %d: use the program that wrote the plan, or plan again", p.Version, laminate.PlanVersion)}}
	}
	return nil
}

// decoder walks a text along the types of the model.
type decoder struct {
	text
	path     []step
	problems Problems
	stopped  bool           // too many problems: the rest is not read
	unknown  map[string]int // by place without numbers
	order    []string       // of unknown
	first    []string       // first place of each
}

// value reads the value that comes next.
func (d *decoder) value(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		if d.opens('{', "a block {…}") {
			d.object(v)
		}
	case reflect.Slice:
		if d.opens('[', "a list […]") {
			d.list(v)
		}
	case reflect.Array:
		if d.opens('[', "a list [ , ]") {
			d.array(v)
		}
	case reflect.Pointer:
		if d.peek() == 'n' {
			d.skip()
			return
		}
		v.Set(reflect.New(v.Type().Elem()))
		d.value(v.Elem())
	default:
		d.scalar(v)
	}
}

// opens says whether the next value opens as wanted, and goes past the opening;
// any other value is named and skipped.
func (d *decoder) opens(want byte, words string) bool {
	if d.peek() == want {
		d.pos++
		return true
	}
	d.wrong(words)
	return false
}

// wrong names the next value as not what is wanted, and skips it.
func (d *decoder) wrong(want string) {
	d.problem("want %s, found %s", want, d.kind())
	d.skip()
}

// object reads the fields of a struct up to its end.
func (d *decoder) object(v reflect.Value) {
	f := formOf(v.Type())
	var seen uint64 // by place in the form, which has fewer than 64 fields
	for !d.stopped && d.more('}') {
		d.field(v, f, &seen)
	}
	for i, e := range f.fields {
		if seen&(1<<i) == 0 && !e.omit {
			d.path = append(d.path, step{name: e.name})
			d.problem("is missing")
			d.path = d.path[:len(d.path)-1]
		}
	}
}

func (d *decoder) field(v reflect.Value, f *form, seen *uint64) {
	name := d.quoted()
	d.colon()
	d.path = append(d.path, step{name: name, named: true})
	defer func() { d.path = d.path[:len(d.path)-1] }()
	i, known := f.byName[name]
	if !known {
		d.stranger()
		d.skip()
		return
	}
	if *seen&(1<<i) != 0 {
		d.problem("stands twice in one block")
	}
	*seen |= 1 << i
	d.value(v.Field(f.fields[i].index))
}

// list reads a slice up to its end; an empty one is not nil.
func (d *decoder) list(v reflect.Value) {
	v.Set(reflect.MakeSlice(v.Type(), 0, 4))
	for !d.stopped && d.more(']') {
		n := v.Len()
		v.Grow(1)
		v.SetLen(n + 1)
		v.Index(n).SetZero()
		d.path = append(d.path, step{index: n})
		d.value(v.Index(n))
		d.path = d.path[:len(d.path)-1]
	}
}

// array reads a list of fixed length up to its end.
func (d *decoder) array(v reflect.Value) {
	n := 0
	for !d.stopped && d.more(']') {
		d.path = append(d.path, step{index: n})
		if n < v.Len() {
			d.value(v.Index(n))
		} else {
			d.skip()
		}
		d.path = d.path[:len(d.path)-1]
		n++
	}
	if n != v.Len() {
		d.problem("want %d values, found %d", v.Len(), n)
	}
}
