package page

import (
	"math"
	"testing"

	"stripwright/output/sheet"
)

// The bars to check a print: 100 mm, and 4 in of 25.4 mm (exact by definition).
func TestBars(t *testing.T) {
	l := &sheet.Layer{}
	Bars(l, 20, 50)
	var got []float64
	for _, s := range l.Shapes {
		if q := s.Lines[0].Points; len(q) == 2 && q[0][1] == q[1][1] {
			got = append(got, q[1][0]-q[0][0])
		}
	}
	if len(got) != 2 || math.Abs(got[0]-100) > 1e-9 || math.Abs(got[1]-4*25.4) > 1e-9 {
		t.Errorf("bars of %v mm", got)
	}
}
