package practice

import (
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
)

func plies(w, h float64, angles ...float64) []Ply {
	var out []Ply
	for k, a := range angles {
		out = append(out, Ply{Number: k + 1, Angle: geometry.NewAngle(a), Turns: true,
			Blank: geometry.Region{Outer: orb.Ring{{0, 0}, {w, 0}, {w, h}, {0, h}}}})
	}
	return out
}

// By hand: every band of a rectangle is as long as the rectangle, so practice
// takes bands × length for each ply.
func TestPiecesByHand(t *testing.T) {
	cases := []struct {
		name    string
		plies   []Ply
		width   float64
		between int
		step    int
		want    float64
	}{
		// Starts at 0, 200/3 and 400/3: 430 across gives 3 bands each time.
		{"three plies", plies(1000, 430, 0, 0, 0), 200, 2, 3, 9000},
		// 0° bands: 3 and, half a roll higher, 3; 90° bands: 4 and 4.
		{"cross-ply", plies(700, 500, 0, 90, 90, 0), 200, 3, 2, 3*700*2 + 4*500*2},
		{"narrower than the roll", plies(900, 180, 0), 200, 3, 1, 900},
	}
	for _, c := range cases {
		step := Step(c.plies, c.between)
		sum := int64(0)
		for _, p := range Pieces(c.plies, int64(geometry.Micrometres(c.width)), step) {
			sum += p
		}
		if step != c.step || geometry.Micrometre(sum).MM() != c.want {
			t.Errorf("%s: step %d, %g mm; want %d, %g", c.name, step, geometry.Micrometre(sum).MM(), c.step, c.want)
		}
	}
}

// Next fit never looks back: 6 + 6 + 5 + 4 on rolls of 10 begins three rolls.
func TestNextFit(t *testing.T) {
	rolls := []Roll{{10}, {10}, {10}, {10}}
	used, ok := Used([]int64{6, 6, 5, 4}, rolls)
	if !ok || len(used) != 3 || used[0] != 6 || used[1] != 6 || used[2] != 9 {
		t.Errorf("used %v", used)
	}
	if _, ok := Used([]int64{11}, rolls); ok {
		t.Error("a piece longer than every roll was laid")
	}
}
