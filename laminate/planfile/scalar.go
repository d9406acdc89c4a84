package planfile

import (
	"encoding/json"
	"math"
	"reflect"
)

// scalar reads a text, a number or a yes and no.
func (d *decoder) scalar(t json.Token, v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		if s, ok := t.(string); ok {
			v.SetString(s)
			return
		}
		d.wrong(t, "a text")
	case reflect.Bool:
		if b, ok := t.(bool); ok {
			v.SetBool(b)
			return
		}
		d.wrong(t, "true or false")
	case reflect.Float64:
		d.figure(t, v)
	default:
		d.whole(t, v)
	}
}

func (d *decoder) wrong(t json.Token, want string) {
	d.problem("want %s, found %s", want, kindOf(t))
	d.skip(t)
}

func (d *decoder) figure(t json.Token, v reflect.Value) {
	n, ok := t.(json.Number)
	if !ok {
		d.wrong(t, "a number")
		return
	}
	f, err := n.Float64()
	if err != nil || f > largestFigure || f < -largestFigure {
		d.problem("the number %s is out of reason", shortened(n.String()))
		return
	}
	v.SetFloat(f + 0) // no minus zero
}

func (d *decoder) whole(t json.Token, v reflect.Value) {
	n, ok := t.(json.Number)
	if !ok {
		d.wrong(t, "a whole number")
		return
	}
	i, err := n.Int64()
	if err != nil {
		f, err := n.Float64() // 3.0 is whole
		if err != nil || f != math.Trunc(f) || math.Abs(f) > largestFigure {
			d.problem("want a whole number, found %s", shortened(n.String()))
			return
		}
		i = int64(f)
	}
	if v.OverflowInt(i) || v.Type() == intType && (i > largestWhole || i < -largestWhole) {
		d.problem("the number %d is out of reason", i)
		return
	}
	v.SetInt(i)
}

// largestWhole bounds counts and numbers, but not the seed.
const largestWhole = 1_000_000_000

var intType = reflect.TypeFor[int]()
