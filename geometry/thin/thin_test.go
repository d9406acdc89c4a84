package thin

import (
	"math"
	"slices"
	"testing"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"
	"github.com/paulmach/orb/simplify"
)

// thinned gives the numbers of the vertices of a line that stay.
func thinned(line orb.LineString, most float64) []int {
	kept := []int{0, len(line) - 1}
	Run(0, len(line)-1, most, func(a, b, i int) float64 {
		return planar.DistanceFromSegment(line[a], line[b], line[i])
	}, func(i int) { kept = append(kept, i) })
	slices.Sort(kept)
	return kept
}

// wave is a line of n points that swings by so many mm.
func wave(n int, swing float64) orb.LineString {
	var line orb.LineString
	for i := range n {
		x := float64(i) * 0.1
		line = append(line, orb.Point{x, swing * math.Sin(x/7) * math.Cos(x/31)})
	}
	return line
}

// comb is a line of so many square teeth.
func comb(teeth int) orb.LineString {
	var line orb.LineString
	for i := range teeth {
		x := float64(i)
		line = append(line, orb.Point{x, 0}, orb.Point{x, 3}, orb.Point{x + 0.5, 3}, orb.Point{x + 0.5, 0})
	}
	return line
}

// A library from outside keeps the same vertices of a curve.
func TestRunAgainstLibrary(t *testing.T) {
	for _, most := range []float64{0.01, 0.3, 4} {
		line := wave(4000, 20)
		kept := thinned(line, most)
		want := simplify.DouglasPeucker(most).LineString(line.Clone())
		if len(kept) != len(want) || len(kept) < 10 {
			t.Fatalf("within %g mm: %d vertices stay, the library keeps %d", most, len(kept), len(want))
		}
		for k, i := range kept {
			if line[i] != want[k] {
				t.Fatalf("within %g mm: vertex %d is %v, the library has %v", most, k, line[i], want[k])
			}
		}
	}
}

// However deep it goes, no vertex is left further off than allowed.
func TestRunKeepsWithin(t *testing.T) {
	for name, line := range map[string]orb.LineString{"wave": wave(5000, 2), "comb": comb(2000), "two points": wave(2, 1)} {
		kept := thinned(line, 0.5)
		for k := 1; k < len(kept); k++ {
			for i := kept[k-1]; i <= kept[k]; i++ {
				if d := planar.DistanceFromSegment(line[kept[k-1]], line[kept[k]], line[i]); d > 0.5 {
					t.Fatalf("%s: vertex %d is left out %g mm off", name, i, d)
				}
			}
		}
	}
}

// A comb costs about as much for each of its points as a curve.
func BenchmarkRun(b *testing.B) {
	for _, c := range []struct {
		name string
		line orb.LineString
	}{{"wave", wave(100_000, 20)}, {"comb", comb(25_000)}} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				thinned(c.line, 0.02)
			}
		})
	}
}
