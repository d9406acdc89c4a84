package sheet

import (
	"errors"
	"math"
	"strconv"
)

// ErrNumber is returned for a scene with a coordinate that is no number or
// absurdly far off: such a sheet is not written.
var ErrNumber = errors.New("a coordinate is not a number, or farther than 1000 km")

// farMM is beyond any cloth: 1000 km.
const farMM = 1e9

// Drawable says whether a coordinate can be written.
func Drawable(v float64) bool { return math.Abs(v) < farMM } // false for NaN

// AppendMM appends a coordinate to 0.001 mm without zeros at the end; 0 for one
// that cannot be drawn (see Drawable).
func AppendMM(b []byte, v float64) []byte {
	if !Drawable(v) {
		return append(b, '0')
	}
	return AppendThousandths(b, int64(math.Round(v*1000)))
}

// AppendThousandths appends a count of 0.001 mm as mm, without zeros at the
// end.
func AppendThousandths(b []byte, n int64) []byte {
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	b = strconv.AppendInt(b, n/1000, 10)
	frac := n % 1000
	if frac == 0 {
		return b
	}
	b = append(b, '.', byte('0'+frac/100))
	if frac%100 == 0 {
		return b
	}
	b = append(b, byte('0'+frac/10%10))
	if frac%10 == 0 {
		return b
	}
	return append(b, byte('0'+frac%10))
}
