package waste

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/paulmach/orb"

	"stripwright/laminate"
)

// A roll of 5 m, 3 m of it used, 200 mm wide: the rest is left; beside
// a narrow piece lies an offcut of 80 × 2000 up to the last cut, behind it one of
// 200 × 700: where both meet the larger one is taken.
//
//	200 +--------+.....................|
//	    | full   |  80 × 2000 free     |
//	    |        +----------+..........|
//	    |        |  120 high|          |   700 behind it
//	  0 +--------+----------+----------+
func TestLeftOver(t *testing.T) {
	r := laminate.PlanRoll{Roll: "rest-7", Copy: 1, Fabric: "F", WidthMM: 200, UsableWidthMM: 200, UsedLengthMM: 3000, StockLengthMM: stock(5000),
		Pieces: []laminate.Piece{rectangle(0, 0, 1000, 200), rectangle(1000, 0, 1300, 120)}}
	got := LeftOver(laminate.Plan{Rolls: []laminate.PlanRoll{r}})
	want := []Left{
		{Roll: "rest-7", Copy: 1, Fabric: "F", LengthMM: 2000, WidthMM: 200, FromMM: 3000},
		{Roll: "rest-7", Copy: 1, Fabric: "F", Offcut: true, LengthMM: 2000, WidthMM: 80, FromMM: 1000, AcrossMM: 120},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	// Of 60 mm and more only where the narrowest strip allows.
	p := laminate.Plan{Rolls: []laminate.PlanRoll{r}, Rules: laminate.PlanRules{NarrowestMM: 90}}
	got = LeftOver(p)
	if len(got) != 2 || got[1].LengthMM != 700 || got[1].WidthMM != 200 {
		t.Errorf("with strips of 90 mm and more: %+v", got)
	}
}

// Rests and offcuts of less than the least size are scrap.
func TestLeftOverLeastSize(t *testing.T) {
	for _, c := range []struct {
		stock, free, wide float64
		want              int
	}{
		{1499, 500, 49.9, 0}, {1500, 499.9, 60, 1}, {1499, 500, 50, 1}, {1500, 500, 50, 2},
	} {
		r := laminate.PlanRoll{UsedLengthMM: 1000, StockLengthMM: stock(c.stock), UsableWidthMM: 200, WidthMM: 200, Pieces: []laminate.Piece{
			rectangle(0, 0, 1000-c.free, 200), rectangle(1000-c.free, 0, c.free, 200-c.wide)}}
		if got := LeftOver(laminate.Plan{Rolls: []laminate.PlanRoll{r}}); len(got) != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

// Beyond a slanting end a rectangle begins where the end is past: at 600.
func TestOffcutBesideASlant(t *testing.T) {
	r := laminate.PlanRoll{UsedLengthMM: 2000, UsableWidthMM: 100, WidthMM: 100, Pieces: []laminate.Piece{
		piece(orb.Point{0, 0}, orb.Point{600, 0}, orb.Point{500, 100}, orb.Point{0, 100}), rectangle(1990, 0, 10, 100)}}
	got := LeftOver(laminate.Plan{Rolls: []laminate.PlanRoll{r}})
	if len(got) != 1 || got[0].FromMM != 600 || got[0].LengthMM != 1390 || got[0].WidthMM != 100 {
		t.Errorf("%+v", got)
	}
}
