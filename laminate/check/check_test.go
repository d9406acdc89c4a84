package check

import (
	"testing"

	"stripwright/laminate"
)

func TestGoodPlanIsSound(t *testing.T) {
	rs := Plan(lshape(t))
	if len(rs) != 13 {
		t.Errorf("%d rules judged, want 13", len(rs))
	}
	for _, r := range rs {
		if !r.Pass {
			t.Errorf("%s: %s %+v", r.Rule, r.Text, r.Worst)
		} else {
			t.Logf("%s (%d): %s", r.Rule, r.Counted, r.Text)
		}
	}
	if !Sound(rs) {
		t.Error("not sound")
	}
}

func TestNothingIsNotSound(t *testing.T) {
	if Sound(nil) || Sound(Plan(laminate.Plan{})) {
		t.Error("an empty plan is sound")
	}
}
