package planfile

import (
	"fmt"
	"math"
	"strconv"
)

// largestFigure bounds what is written and read: far beyond it a float64 does
// not hold a thousandth.
const largestFigure = 1e12

// number writes a figure with so many decimals at most, without exponent,
// trailing zeros or minus zero.
func (e *encoder) number(v float64, places int) {
	if math.IsNaN(v) || math.Abs(v) > largestFigure {
		e.fail(fmt.Sprintf("%v is no figure for a plan", v))
		return
	}
	if places == defaultPlaces {
		e.thousandths(int64(math.Round(float64(v * 1000))))
		return
	}
	start := len(e.out)
	e.out = strconv.AppendFloat(e.out, v, 'f', places, 64)
	n := len(e.out)
	for e.out[n-1] == '0' {
		n--
	}
	if e.out[n-1] == '.' {
		n--
	}
	e.out = e.out[:n]
	if string(e.out[start:]) == "-0" {
		e.out = append(e.out[:start], '0')
	}
}

func (e *encoder) thousandths(n int64) {
	if n < 0 {
		e.out = append(e.out, '-')
		n = -n
	}
	e.out = strconv.AppendInt(e.out, n/1000, 10)
	rest := n % 1000
	if rest == 0 {
		return
	}
	e.out = append(e.out, '.', byte('0'+rest/100))
	if rest %= 100; rest == 0 {
		return
	}
	e.out = append(e.out, byte('0'+rest/10))
	if rest %= 10; rest != 0 {
		e.out = append(e.out, byte('0'+rest))
	}
}
