package planfile

import (
	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

func ptr(v float64) *float64 { return &v }

func given(v float64) laminate.Figure { return laminate.Figure{Value: v, Basis: laminate.Given} }

func assumed(v float64, from string) laminate.Figure {
	return laminate.Figure{Value: v, Basis: laminate.Assumed, From: from}
}

func computed(v float64, from string) laminate.Figure {
	return laminate.Figure{Value: v, Basis: laminate.Computed, From: from}
}

func rectangle(x0, y0, x1, y1 float64) geometry.Region {
	return geometry.Region{Outer: orb.Ring{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}, Holes: []orb.Ring{}}
}

// sample is a plan in which every field is set.
func sample() laminate.Plan {
	frame := rectangle(0, 0, 600, 400)
	frame.Holes = []orb.Ring{{{100, 100}, {100, 200}, {200, 200}, {200, 100}}, {{300, 100}, {300, 200}, {400.5, 200.125}}}
	return laminate.Plan{
		Format: laminate.PlanFormat, Version: laminate.PlanVersion, Program: laminate.Program,
		Title: `Hatch "lid" 5° <2>`, Job: laminate.FileRef{Name: "hatch.yaml", SHA256: "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"},
		Drawings: []laminate.FileRef{{Name: "hatch.dxf"}}, Seed: 9007199254740993, Effort: laminate.Normal, Stopped: true, Units: "mm",
		Part: laminate.PlanPart{
			Name: "lid", DrawnFrom: laminate.ToolSide, ZeroDeg: 12.345678901, LoadDeg: ptr(30), TrimMM: 25,
			Net: rectangle(25, 25, 575, 375), Blank: frame, Corners: []laminate.Corner{{Name: "A", At: [2]float64{25, 25}}},
		},
		Rules: laminate.PlanRules{
			LayingToleranceMM: 2, NarrowestMM: 25, MaxGapMM: ptr(2), CuttingGapMM: 3, TableMM: ptr(6000), SparePercent: 10, SoldByMM: 1000,
			KeepClear: []laminate.PlanKeepClear{{Region: rectangle(5, 5, 10, 10), Angles: []float64{0, -17.123456789}}},
		},
		Fabrics: []laminate.PlanFabric{{
			Name: "biax450", WeightGSM: 423.821837, Fibre: "e-glass",
			DensityGCM3: assumed(2.54, "generic e-glass"), Form: laminate.Biaxial, FibreVolume: given(0.523456789),
			Elastic: &laminate.Elastic{E1: 45.6, E2: 12.3, G12: 5.5, Nu12: 0.278901234, Alpha1: -0.5, Alpha2: 22.5}, Layers: []laminate.Layer{{AngleDeg: 45, WeightGSM: 225}, {AngleDeg: -45}},
			FaceIs: "stitch-loop side", Turn: true, StaggerMM: 50, PliesBetween: 4,
		}},
		Plies: []laminate.PlanPly{{
			Ply: 1, Fabric: "biax450", AngleDeg: -17.123456789, Reversed: true, Face: laminate.FaceDown, Outline: "doubler", Blank: frame,
			Strips: []laminate.Strip{
				{ID: "P01-S01", Shape: rectangle(0, 0, 600, 250), WidthMM: 250},
				{ID: "P01-S02", Shape: rectangle(0, 250, 600, 400), WidthMM: 150.007},
			},
			Joints: []laminate.Joint{{Kind: laminate.SideJoint, From: [2]float64{0, 250}, To: [2]float64{600, 250}, Between: [2]string{"P01-S01", "P01-S02"}}},
		}},
		Rolls: []laminate.PlanRoll{{
			Roll: "B-300", Copy: 1, Fabric: "biax450", WidthMM: 300, UsableWidthMM: 295.275, StockLengthMM: ptr(40000), Remnant: true, PricePerMetre: 2.624671916, HasPrice: true, UsedLengthMM: 1200,
			CrossCuts: []float64{600, 900.5}, Pieces: []laminate.Piece{{ID: "P01-S01", Shape: rectangle(0, 0, 600, 250), Turned: 180, Mirrored: true, CutOrder: 1}},
		}},
		Cost: []laminate.Cost{{
			Fabric: "biax450", Measure: laminate.ByLength, Used: 1200, Bound: 812.733, Gap: 0.476499662, Practice: 1500, Status: laminate.Feasible,
			Proof: laminate.Proof{Bound: "area", AreaMM2: 240000, PerMM2: 0.003386673439},
		}},
		Lengths:    []laminate.RollLength{{Fabric: "biax450", WidthMM: 300, UsedMM: 1200, ToBuyMM: 2000}},
		Checks:     []laminate.CheckResult{{Rule: "coverage", Pass: true, Counted: 1, Worst: &laminate.Worst{ValueMM: -0.5, Plies: []int{1}, At: [2]float64{1, -2}, Piece: "P01-S01"}, Text: "bare"}},
		Quantities: []laminate.PlyQuantity{{Ply: 1, AreaMM2: 240000, DryG: 101.717}},
		Resin: &laminate.Resin{
			Name: "epoxy", DensityGCM3: given(1.123456789), FibreVolume: given(0.52), FibreMass: computed(0.7, "resin ratio 0.43"), BandPoints: assumed(3, "custom"),
			LinesAndPotG: given(350), SparePercent: given(10), BatchG: 2000, SoldByG: 6500, OnHandG: 120.5, PricePerKG: 12.345678901, HasPrice: true,
			Mix: &laminate.Mix{ByVolume: true, PartsA: 100, PartsB: 33.333333333, DensityAGCM3: 1.13, DensityBGCM3: 0.987654321},
		},
		Consumables: []laminate.Consumable{{
			Name: "mesh", Kind: laminate.FlowMedia, MarginMM: given(-20), UptakeGSM: given(400.5), Layers: 1, WidthMM: 1200, Pleats: given(6), PleatMM: given(40),
			LengthMM: computed(1234.5678, "edge"), SoldByMM: 914.4, SparePercent: assumed(10, "custom"), OnHandMM: 500, PricePerMetre: 1.25, HasPrice: true,
		}},
		Cores: []laminate.Core{{
			Name: "foam 15", AfterPly: 1, Outline: "doubler", Blank: frame, ThicknessMM: 15, DensityKGM3: 80.123456789, UptakeGSM: given(300), SheetMM: [2]float64{1200, 600}, OnHand: 2,
			PricePerSheet: 19.9, HasPrice: true,
		}},
		Measured: &laminate.Measured{WeightG: 798, AreaMM2: 92903.04, ThicknessMM: 5.9, ThinnestMM: 5.7, ThickestMM: 6.1, DryG: 555.5, ClothBand: assumed(5, "custom"), ScaleBand: given(0.5)},
		Uptakes:  []laminate.Uptake{{Consumable: "mesh", AreaMM2: 40000, DryG: 12, WetG: 28.001}},
		Notes:    []laminate.Note{{Rule: "assumed", Where: "hatch.yaml:14", Text: "narrowest strip 25 mm"}},
	}
}
