package job

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Every benchmark job reads without problems, and the list of best known
// results names exactly these jobs.
func TestBenchJobsRead(t *testing.T) {
	paths, err := filepath.Glob("../testdata/bench/*.yaml")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no benchmark jobs: %v", err)
	}
	table, err := os.ReadFile("../testdata/bench/best_known.csv")
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(table)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	listed := map[string]bool{}
	for _, row := range rows[1:] {
		listed[row[0]] = true
	}
	if len(listed) != len(paths) {
		t.Errorf("%d jobs in the list, %d files", len(listed), len(paths))
	}
	for _, path := range paths {
		j, problems := Read(path)
		for _, p := range problems {
			t.Error(p)
		}
		if len(problems) > 0 {
			continue
		}
		if name := strings.TrimSuffix(filepath.Base(path), ".yaml"); !listed[name] {
			t.Errorf("%s is not in the list", name)
		}
		if len(j.Plies) == 0 || j.Part.Blank.Area() <= 0 || j.Rules.StaggerMM <= 0 || len(j.File.SHA256) != 64 {
			t.Errorf("%s: a job without plies, blank, stagger or hash", path)
		}
	}
}

// large writes a job with an outline of so many points and 200 plies.
func large(points int) []byte {
	var b bytes.Buffer
	b.WriteString("units: mm\npart:\n  trim: 0\n  drawn_from: laying side\n  outline: {points: [")
	for i := range points {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(points))
		fmt.Fprintf(&b, "[%.6f, %.6f], ", 1500*c, 1000*s)
	}
	b.WriteString("]}\nfabrics: {F: {weight: 300 g/m2, fibre: carbon, rolls: [{id: A, width: 300}]}}\nschedule:\n")
	for i := range 200 {
		fmt.Fprintf(&b, "  - {fabric: F, angle: %d}\n", []int{0, 45, -45, 90}[i%4])
	}
	b.WriteString("joints: {stagger: 20, plies_between: 4}\n")
	return b.Bytes()
}

func BenchmarkParse(b *testing.B) {
	for _, points := range []int{1000, 100000} {
		data := large(points)
		b.Run(fmt.Sprintf("points=%d", points), func(b *testing.B) {
			for b.Loop() {
				if _, problems := Parse("large.yaml", data, nil); len(problems) > 0 {
					b.Fatal(problems[0])
				}
			}
		})
	}
}
