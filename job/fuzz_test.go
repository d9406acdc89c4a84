package job

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"stripwright/laminate"
)

// FuzzParse holds that any text is either a sound job or a list of problems,
// and never both, neither, or a panic.
func FuzzParse(f *testing.F) {
	for _, pattern := range []string{"../testdata/yaml/*.yaml", "testdata/wrong/*.yaml", "../testdata/bench/[jkt]*.yaml"} {
		paths, err := filepath.Glob(pattern)
		if err != nil {
			f.Fatal(err)
		}
		for _, path := range paths {
			data, err := os.ReadFile(path)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(data)
		}
	}
	f.Add([]byte(plain))
	f.Add(Starter())
	f.Add([]byte(supplied))
	f.Add([]byte(strings.Replace(plain, "joints: {", "joints: {keep_clear: [{layer: BOLTS}], ", 1)))
	f.Fuzz(func(t *testing.T, data []byte) {
		j, problems := Parse("fuzz.yaml", data, folder("hatch.dxf", lid))
		for _, p := range problems {
			if p.Rule == "" || p.Text == "" || strings.ContainsAny(p.Error(), "\n") || strings.Contains(p.Error(), "%!") && !strings.Contains(string(data), "%!") || p.Line < 0 || p.Column < 0 {
				t.Errorf("problem %+v", p)
			}
		}
		if len(problems) > 0 {
			if len(j.Plies) > 0 || j.Title != "" {
				t.Error("a job with problems")
			}
			return
		}
		sound(t, j)
	})
}

// sound holds what every job that is read keeps to.
func sound(t *testing.T, j laminate.Job) {
	if len(j.Plies) == 0 || !(j.Rules.StaggerMM > 0) || j.Rules.PliesBetween < 0 || !(j.Part.TrimMM >= 0) || j.Rules.LayingToleranceMM < 0 {
		t.Errorf("no plies, or rules %+v", j.Rules)
	}
	names := map[string]bool{}
	for _, f := range j.Fabrics {
		names[f.Name] = true
		if !(f.WeightGSM >= 10 && f.WeightGSM <= 5000) || !(f.StaggerMM > 0) || f.PliesBetween < 0 || len(f.Rolls) == 0 {
			t.Errorf("fabric %+v", f)
		}
		for _, r := range f.Rolls {
			if r.ID == "" || !(r.UsableMM() >= 5 && r.WidthMM <= 6000) || r.LengthMM < 0 || r.Count < 1 || math.IsNaN(r.PricePerMetre) {
				t.Errorf("roll %+v", r)
			}
		}
	}
	for _, p := range j.Plies {
		if !names[p.Fabric] || !(p.Heading > -180 && p.Heading <= 180) || !(p.Blank.Area() > 0) {
			t.Errorf("ply %+v", p)
		}
	}
	for _, ring := range j.Part.Blank.Rings() {
		for _, p := range ring {
			if math.IsNaN(p[0]) || math.IsInf(p[0], 0) || math.IsNaN(p[1]) || math.IsInf(p[1], 0) {
				t.Errorf("blank %v", ring)
			}
		}
	}
	soundSupplies(t, j)
	for _, n := range j.Notes {
		if n.Rule == "" || n.Text == "" || strings.Contains(n.Text, "%!") {
			t.Errorf("note %+v", n)
		}
	}
}

// soundSupplies holds what the sums of an order need.
func soundSupplies(t *testing.T, j laminate.Job) {
	if s := j.Resin; s != nil {
		if !(s.DensityGCM3.Value >= 0.8 && s.DensityGCM3.Value <= 2.5) || s.FibreVolume.Known() && s.FibreMass.Known() || !(s.SparePercent.Value >= 0) || s.BatchG < 0 {
			t.Errorf("resin %+v", s)
		}
		if m := s.Mix; m != nil && (!(m.PartsA > 0 && m.PartsB > 0) || m.ByVolume && !(m.DensityAGCM3 > 0 && m.DensityBGCM3 > 0)) {
			t.Errorf("mix %+v", m)
		}
	}
	for _, c := range j.Consumables {
		if c.Name == "" || c.Kind == "" || c.Layers < 1 || c.Kind == laminate.Tube && !(c.LengthMM.Value > 0) || c.Kind != laminate.Tube && !c.MarginMM.Known() || c.UptakeGSM.Value < 0 {
			t.Errorf("consumable %+v", c)
		}
	}
	for _, c := range j.Cores {
		if !(c.ThicknessMM > 0 && c.DensityKGM3 > 0) || !(c.Blank.Area() > 0) || c.AfterPly < 0 || c.AfterPly > len(j.Plies) {
			t.Errorf("core %+v", c)
		}
	}
	if m := j.Measured; m != nil && (!(m.WeightG > 0 && m.AreaMM2 > 0 && m.ThicknessMM > 0) || m.ThinnestMM > m.ThickestMM) {
		t.Errorf("measured %+v", m)
	}
}
