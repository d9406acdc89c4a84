package bound

import (
	"slices"
	"testing"

	"stripwright/geometry"
)

// Ten plies 180 across, kept 25 apart in fours on a roll of 100: 18 strips of 6 m
// would hold their area, but edge strips of a, 25+a, 50+a, 75+a and what remains
// of 80 (or 180) never fill whole strips. By hand: the widest edge strip, 75+a,
// would need 25-a beside it, which only strips a make up, for a 12.5 or 6.25;
// then 105-a, of 92.5 or 98.75, finds nothing. Nineteen strips do (plies at 0,
// 25, 50 and 75).
func TestStripsOfBatten(t *testing.T) {
	b := Least(task(plate(6000, 180), 100, 25, 3, make([]geometry.Angle, 10)...), 0)
	if b.Kind != Strips || b.Length != um(114000) {
		t.Errorf("%s bound of %d µm, want strips of 19 × 6 m", b.Kind, b.Length)
	}
	// Kept 20 apart they are not settled, and kept 25 apart on 200 across the joints
	// at a and a+100 leave whole strips: no more than area is proved.
	for _, k := range []*Task{
		task(plate(6000, 180), 100, 20, 3, make([]geometry.Angle, 10)...),
		task(plate(6000, 200), 100, 25, 3, make([]geometry.Angle, 10)...),
	} {
		if b := Least(k, 0); b.Kind == Strips {
			t.Errorf("strips prove %d µm of what is not settled or fits", b.Length)
		}
	}
}

// Every number and every order tried one by one, each packed by trying all rows.
func TestStripsAgainstAll(t *testing.T) {
	proved, held := 0, 0
	for _, width := range []int64{12, 18, 20, 24} {
		for _, n := range []int64{2, 3, 4} {
			if width%n != 0 {
				continue
			}
			d := width / n
			for across := width + d; across < 2*width+d; across++ {
				for plies := int(n); plies <= 7; plies++ {
					p := &tight{long: 1, across: across, width: width, stagger: d, left: strides, count: make([]int, n)}
					for i := range plies {
						p.count[i%int(n)]++
					}
					rows := (across*int64(plies) + width - 1) / width
					p.slack = rows*width - across*int64(plies)
					want := !anyFits(p, rows)
					if got := p.impossible(); got != want {
						t.Fatalf("%d plies %d across on %d, %d apart: impossible %v, by trying all %v", plies, across, width, d, got, want)
					}
					if want {
						proved++
					} else {
						held++
					}
				}
			}
		}
	}
	if proved < 20 || held < 20 {
		t.Errorf("%d impossible, %d possible: the test is too weak", proved, held)
	}
}

func anyFits(p *tight, rows int64) bool {
	for a := range p.stagger {
		for _, count := range orders(p.count) {
			var widths []int64
			for k, n := range count {
				phase := a + int64(k)*p.stagger
				for range n {
					for y := int64(0); y < p.across; {
						top := min(p.across, y+p.width)
						if y == 0 && phase > 0 {
							top = phase
						}
						widths = append(widths, top-y)
						y = top
					}
				}
			}
			slices.Sort(widths)
			slices.Reverse(widths)
			if fits(widths, make([]int64, rows), p.width) {
				return true
			}
		}
	}
	return false
}

// fits tries every row for every strip.
func fits(widths, rows []int64, width int64) bool {
	if len(widths) == 0 {
		return true
	}
	for r := range rows {
		if rows[r]+widths[0] > width || slices.Contains(rows[:r], rows[r]) {
			continue
		}
		rows[r] += widths[0]
		if fits(widths[1:], rows, width) {
			return true
		}
		rows[r] -= widths[0]
	}
	return false
}
