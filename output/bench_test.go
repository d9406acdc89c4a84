package output

import (
	"testing"

	"stripwright/output/internal/handmade"
)

// BenchmarkFilesScale draws 200 plies of 70 strips each: some 14,000 pieces on
// one roll.
func BenchmarkFilesScale(b *testing.B) {
	p := handmade.Plate(200, 7000, 7000, 100)
	b.ReportAllocs()
	for b.Loop() {
		files, err := Files(p, handmade.Hash)
		if err != nil {
			b.Fatal(err)
		}
		bytes := 0
		for _, f := range files {
			bytes += len(f.Data)
		}
		b.ReportMetric(float64(bytes)/1e6, "MB")
	}
}

// BenchmarkFilesHatch draws the hatch lid: seven plies.
func BenchmarkFilesHatch(b *testing.B) {
	p := handmade.Hatch()
	for b.Loop() {
		if _, err := Files(p, handmade.Hash); err != nil {
			b.Fatal(err)
		}
	}
}
