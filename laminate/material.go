package laminate

import "stripwright/geometry"

// Forms of cloth: how its fibre lies.
const (
	Unidirectional = "unidirectional" // one direction, along the roll
	Woven          = "woven"          // warp along the roll, weft across it
	Biaxial        = "biaxial"        // two stitched layers
	Triaxial       = "triaxial"       // three stitched layers
	Quadraxial     = "quadraxial"     // four stitched layers
	Mat            = "mat"            // no direction
)

// Elastic are the constants of one layer with its fibre along direction 1:
// moduli in GPa, thermal expansion in 1e-6/K.
type Elastic struct {
	E1     float64 `json:"e1_gpa"`
	E2     float64 `json:"e2_gpa"`
	G12    float64 `json:"g12_gpa"`
	Nu12   float64 `json:"nu12"`
	Alpha1 float64 `json:"alpha1_1e6_per_k"`
	Alpha2 float64 `json:"alpha2_1e6_per_k"`
}

// Resin is the resin of the laminate and how it is mixed. Mass of fibre and
// resin follow from FibreVolume, or from a fabric's own.
type Resin struct {
	Name         string  `json:"name"`
	DensityGCM3  Figure  `json:"density_gcm3"`
	FibreVolume  Figure  `json:"fibre_volume,omitzero"`    // share of the laminate's volume, 0…1, for fabrics without their own; unknown: by form of cloth
	FibreMass    Figure  `json:"fibre_mass,omitzero"`      // share of the laminate's mass, 0…1, in place of FibreVolume
	BandPoints   Figure  `json:"band_points,omitzero"`     // the fibre fraction may be so many points (0.01) off either way
	LinesAndPotG Figure  `json:"lines_and_pot_g,omitzero"` // g held by feed lines, catch pot and buckets
	SparePercent Figure  `json:"spare_percent,omitzero"`
	Mix          *Mix    `json:"mix,omitempty"`
	BatchG       float64 `json:"batch_g,omitempty"`   // largest batch to mix at once in g, 0: not stated
	SoldByG      float64 `json:"sold_by_g,omitempty"` // resin and hardener together are bought in whole multiples of it, 0: any mass
	OnHandG      float64 `json:"on_hand_g,omitempty"` // of both together
	PricePerKG   float64 `json:"price_per_kg,omitempty"`
	HasPrice     bool    `json:"has_price,omitempty"`
}

// Mix is how many parts of hardener go to how many parts of resin, by weight or
// by volume; by volume the densities are needed.
type Mix struct {
	ByVolume     bool    `json:"by_volume,omitempty"`
	PartsA       float64 `json:"parts_a"`
	PartsB       float64 `json:"parts_b"`
	DensityAGCM3 float64 `json:"density_a_gcm3,omitempty"`
	DensityBGCM3 float64 `json:"density_b_gcm3,omitempty"`
}

// Kinds of consumable, by what it does under the bag.
const (
	PeelPly   = "peel ply"   // runs past the trim line
	FlowMedia = "flow media" // stops short of the trim line
	Film      = "film"       // the bag, with pleats
	Sealant   = "sealant tape"
	Tube      = "tube"
	Other     = "other" // as an area with a margin
)

// Consumable is one thing used up in an infusion. A margin is measured from the
// net edge, outward; one below zero stops short of it.
type Consumable struct {
	Name          string  `json:"name"`
	Kind          string  `json:"kind"`
	MarginMM      Figure  `json:"margin_mm,omitzero"`
	UptakeGSM     Figure  `json:"uptake_gsm,omitzero"` // resin taken up, g/m² of the consumable
	Layers        int     `json:"layers"`              // at least 1
	WidthMM       float64 `json:"width_mm,omitempty"`  // roll width as sold, 0: by area
	Pleats        Figure  `json:"pleats,omitzero"`     // number of pleats of the film
	PleatMM       Figure  `json:"pleat_mm,omitzero"`   // height of a pleat
	LengthMM      Figure  `json:"length_mm,omitzero"`  // of tube, or of tape where stated; unknown: worked out
	SoldByMM      float64 `json:"sold_by_mm,omitempty"`
	SparePercent  Figure  `json:"spare_percent,omitzero"`
	OnHandMM      float64 `json:"on_hand_mm,omitempty"`
	PricePerMetre float64 `json:"price_per_metre,omitempty"`
	HasPrice      bool    `json:"has_price,omitempty"`
}

// Core is a sandwich core: a sheet that lies in the stack between plies of cloth.
// It is no ply: it is neither cut into strips nor counted between joints.
type Core struct {
	Name          string          `json:"name"`
	AfterPly      int             `json:"after_ply"`         // lies on this ply, 0: on the tool
	Outline       string          `json:"outline,omitempty"` // name of an outline of its own, "" for the part's blank
	Blank         geometry.Region `json:"blank"`             // what it must cover, in the part frame
	ThicknessMM   float64         `json:"thickness_mm"`
	DensityKGM3   float64         `json:"density_kgm3"`
	UptakeGSM     Figure          `json:"uptake_gsm,omitzero"` // resin taken up by each of its two faces
	SheetMM       [2]float64      `json:"sheet_mm"`            // size of a sheet as sold, 0: not stated
	OnHand        int             `json:"on_hand,omitempty"`   // sheets on the shelf
	PricePerSheet float64         `json:"price_per_sheet,omitempty"`
	HasPrice      bool            `json:"has_price,omitempty"`
}

// Measured is what was weighed and measured on a finished panel or test piece.
type Measured struct {
	WeightG     float64 `json:"weight_g"`
	AreaMM2     float64 `json:"area_mm2"`
	ThicknessMM float64 `json:"thickness_mm"`
	ThinnestMM  float64 `json:"thinnest_mm,omitempty"` // least and greatest reading, 0: not stated
	ThickestMM  float64 `json:"thickest_mm,omitempty"`
	DryG        float64 `json:"dry_g,omitempty"`             // fibre in it, weighed dry; 0: from areal weights
	ClothBand   Figure  `json:"cloth_band_percent,omitzero"` // cloth may weigh so many percent more or less than stated
	ScaleBand   Figure  `json:"scale_band_percent,omitzero"` // the same of the panel's weight
}

// Uptake is a test of what a consumable holds: one piece weighed dry, and wet
// after an infusion.
type Uptake struct {
	Consumable string  `json:"consumable"`
	AreaMM2    float64 `json:"area_mm2"`
	DryG       float64 `json:"dry_g"`
	WetG       float64 `json:"wet_g"`
}
