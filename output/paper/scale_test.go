package paper

import (
	"testing"

	"stripwright/output/internal/handmade"
	"stripwright/output/layup"
	"stripwright/output/page"
)

// BenchmarkSheetsScale composes 200 plies of 70 strips each: some 14,000 pieces on
// one roll.
func BenchmarkSheetsScale(b *testing.B) {
	p := handmade.Plate(200, 7000, 7000, 100)
	measured := layup.Measure(p)
	for b.Loop() {
		b.ReportMetric(float64(len(Sheets(p, measured, handmade.Hash, page.A4))), "pages")
	}
}
