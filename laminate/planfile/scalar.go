package planfile

import (
	"math"
	"reflect"
	"strconv"
)

// scalar reads a text, a number or a yes and no.
func (d *decoder) scalar(v reflect.Value) {
	c := d.peek()
	switch v.Kind() {
	case reflect.String:
		if c != '"' {
			d.wrong("a text")
			return
		}
		v.SetString(d.quoted())
	case reflect.Bool:
		if c != 't' && c != 'f' {
			d.wrong("true or false")
			return
		}
		v.SetBool(string(d.raw()) == "true")
	case reflect.Float64:
		if !numeric(c) {
			d.wrong("a number")
			return
		}
		d.figure(v)
	default:
		if !numeric(c) {
			d.wrong("a whole number")
			return
		}
		d.whole(v)
	}
}

func numeric(c byte) bool { return c == '-' || c >= '0' && c <= '9' }

func (d *decoder) figure(v reflect.Value) {
	b := d.raw()
	f, ok := short(b)
	if !ok {
		var err error
		if f, err = strconv.ParseFloat(string(b), 64); err != nil {
			f = math.Inf(1)
		}
	}
	if math.Abs(f) > largestFigure {
		d.problem("the number %s is out of reason", shortened(string(b)))
		return
	}
	v.SetFloat(f + 0) // no minus zero
}

// short reads a number of at most fifteen digits without exponent: such a
// number over a power of ten up to 10^15 is one division of two exact values,
// and so rounded as it should be.
func short(b []byte) (float64, bool) {
	if len(b) > 16 {
		return 0, false
	}
	n, places, digits, minus := int64(0), -1, 0, false
	for i, c := range b {
		switch {
		case c >= '0' && c <= '9':
			n, digits = 10*n+int64(c-'0'), digits+1
			if places >= 0 {
				places++
			}
		case c == '.' && places < 0:
			places = 0
		case c == '-' && i == 0:
			minus = true
		default:
			return 0, false
		}
	}
	if digits > 15 {
		return 0, false
	}
	f := float64(n) / tens[max(places, 0)]
	if minus {
		f = -f
	}
	return f, true
}

var tens = [...]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15}

func (d *decoder) whole(v reflect.Value) {
	b := d.raw()
	i, err := strconv.ParseInt(string(b), 10, 64)
	if err != nil {
		f, err := strconv.ParseFloat(string(b), 64) // 3.0 is whole
		if err != nil || f != math.Trunc(f) || math.Abs(f) > largestFigure {
			d.problem("want a whole number within reason, found %s", shortened(string(b)))
			return
		}
		i = int64(f)
	}
	if v.Type() == intType && (i > largestWhole || i < -largestWhole) {
		d.problem("the number %d is out of reason", i)
		return
	}
	v.SetInt(i)
}

// largestWhole bounds counts and numbers, but not the seed.
const largestWhole = 1_000_000_000

var intType = reflect.TypeFor[int]()
