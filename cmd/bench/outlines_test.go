package main

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/paulmach/orb"
)

// vertices is how many an outline may have that is planned whole in a second.
const vertices = 100_000

// outlineJob has eight plies of one fabric; %s is the drawing, %g the trim.
const outlineJob = `units: mm
part: {outline: %s, trim: %g, drawn_from: laying side}
fabrics:
  F: {weight: 300 g/m2, fibre: carbon, rolls: [{id: A, width: 600}]}
schedule:
  - {fabric: F, angle: 0}
  - {fabric: F, angle: 45}
  - {fabric: F, angle: -45}
  - {fabric: F, angle: 90}
  - {fabric: F, angle: 90}
  - {fabric: F, angle: -45}
  - {fabric: F, angle: 45}
  - {fabric: F, angle: 0}
joints: {stagger: 30, plies_between: 4}
`

// around gives an outline of points at a distance of 1 from the centre, or near
// it, made 3 m long and 2 m wide.
func around(distance func(a float64) float64) []orb.Ring {
	r := make(orb.Ring, vertices)
	for i := range r {
		a := 2 * math.Pi * float64(i) / vertices
		s, c := math.Sincos(a)
		r[i] = orb.Point{1500 * c * distance(a), 1000 * s * distance(a)}
	}
	return []orb.Ring{r}
}

// comb is a plate whose upper edge, turned by some degrees, has teeth.
func comb(tooth, degrees float64) []orb.Ring {
	r := orb.Ring{{0, 0}, {2500, 0}}
	for i := vertices/4 - 2; i >= 0; i-- {
		x := 0.1 * float64(i)
		r = append(r, orb.Point{x + 0.1, 1000}, orb.Point{x + 0.1, 1000 + tooth}, orb.Point{x + 0.05, 1000 + tooth}, orb.Point{x + 0.05, 1000})
	}
	s, c := math.Sincos(degrees * math.Pi / 180)
	for i, p := range r {
		r[i] = orb.Point{c*p[0] - s*p[1], s*p[0] + c*p[1]}
	}
	return []orb.Ring{r}
}

// perforated is a plate with so many five-sided holes.
func perforated(columns, rows int) []orb.Ring {
	out := []orb.Ring{{{0, 0}, {3000, 0}, {3000, 2000}, {0, 2000}}}
	for i := range columns * rows {
		x, y := (float64(i%columns)+0.5)*3000/float64(columns), (float64(i/columns)+0.5)*2000/float64(rows)
		var hole orb.Ring
		for k := range 5 {
			s, c := math.Sincos(2 * math.Pi * float64(k) / 5)
			hole = append(hole, orb.Point{x + 3*c, y + 3*s})
		}
		out = append(out, hole)
	}
	return out
}

// writeOutline writes a drawing and a job beside it, and gives the job's path.
func writeOutline(dir string, rings []orb.Ring, trim float64) (string, error) {
	var b bytes.Buffer
	b.WriteString("0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n")
	for _, r := range rings {
		fmt.Fprintf(&b, "0\nLWPOLYLINE\n8\nPART\n90\n%d\n70\n1\n", len(r))
		for _, p := range r {
			fmt.Fprintf(&b, "10\n%.4f\n20\n%.4f\n", p[0], p[1])
		}
	}
	b.WriteString("0\nENDSEC\n0\nEOF\n")
	if err := os.WriteFile(filepath.Join(dir, "part.dxf"), b.Bytes(), 0o600); err != nil {
		return "", err
	}
	path := filepath.Join(dir, "part.yaml")
	return path, os.WriteFile(path, fmt.Appendf(nil, outlineJob, "part.dxf", trim), 0o600)
}

// Drawn outlines of 100,000 points, from the job file to the sheets. Time is
// shown for each step, memory as the most that was taken from the system.
func BenchmarkOutline(b *testing.B) {
	for _, c := range []struct {
		name  string
		rings []orb.Ring
		trim  float64
	}{
		{"circle", around(func(float64) float64 { return 1 }), 0},
		{"circle, trimmed", around(func(float64) float64 { return 1 }), 25},
		{"wavy", around(wave), 0},
		{"wavy, trimmed", around(wave), 25},
		{"comb, trimmed", comb(3, 0), 25},
		{"comb at 20°, trimmed", comb(3, 20), 25},
		{"deep comb at 20°, trimmed", comb(500, 20), 25},
		{"9,800 holes, closed by the trim", perforated(140, 70), 25},
		{"9,800 holes", perforated(140, 70), 0},
	} {
		b.Run(c.name, func(b *testing.B) {
			path, err := writeOutline(b.TempDir(), c.rings, c.trim)
			if err != nil {
				b.Fatal(err)
			}
			planOutline(b, path)
		})
	}
}

// wave is an edge that runs in and out 40 times, with a finer wave on it.
func wave(a float64) float64 { return 1 + 0.02*math.Sin(40*a) + 0.003*math.Sin(900*a) }

func planOutline(b *testing.B, path string) {
	b.ReportAllocs()
	runtime.GC()
	var took time.Duration
	var sum outcome
	for b.Loop() {
		start := time.Now()
		j, err := read(path, "")
		took += time.Since(start)
		if err != nil && strings.Contains(err.Error(), "teeth far finer than the allowance") {
			continue // refused in a sentence; how soon is what is measured
		}
		if err != nil {
			b.Fatal(err)
		}
		o, err := measure(context.Background(), j)
		if err != nil || o.refusal == nil && !o.sound {
			b.Fatal(err, o.faults)
		}
		sum.nested, sum.checked, sum.drawn = sum.nested+o.nested, sum.checked+o.checked, sum.drawn+o.drawn
	}
	for _, step := range []struct {
		name string
		took time.Duration
	}{{"read", took}, {"plan", sum.nested}, {"check", sum.checked}, {"draw", sum.drawn}} {
		b.ReportMetric(float64(step.took.Milliseconds())/float64(b.N), step.name+"-ms")
	}
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	b.ReportMetric(float64(m.Sys)/(1<<20), "MiB-system")
}
