package laminate

import (
	"math"

	"stripwright/geometry"
)

// Job is what the shop asks for, read and found complete. Plies are expanded
// (times) and numbered from the tool up, starting at 1; regions are snapped
// and lie in the part frame: mirrored when the drawing was made from the tool
// side, then turned by -zero.
type Job struct {
	Title       string
	Units       string // unit of bare numbers and of print: "mm", "cm", "m", "in", "ft", "yd"
	File        FileRef
	Drawings    []FileRef
	Part        Part
	Fabrics     []Fabric
	Plies       []Ply
	Rules       Rules
	Order       Order
	Resin       *Resin // nil: not stated
	Consumables []Consumable
	Cores       []Core    // by AfterPly, in the order of the schedule
	Measured    *Measured // nil: not stated
	Uptakes     []Uptake
	Fibres      []FibreKind // the job's own, before those of the library
	Resins      []ResinKind
	DXF         *DXF    // nil: R12, our layer names
	TableMM     float64 // longest stretch of cloth on the cutting table, 0: no limit
	Search      Search
	Notes       []Note // what was assumed or understood, to be printed
}

// FileRef names a file that a job was read from, without its folder, and the
// SHA-256 of its bytes in hexadecimal.
type FileRef struct {
	Name   string `json:"name"`
	SHA256 string `json:"sha256"`
}

// Note is one thing that a person should know: its rule name, where it comes
// from ("hatch.yaml:14") and a sentence.
type Note struct {
	Rule  string `json:"rule"`
	Where string `json:"where"`
	Text  string `json:"text"`
}

// Sides a part may be drawn from.
const (
	LayingSide = "laying side"
	ToolSide   = "tool side"
)

// Part is the finished part and the blank that its plies must cover.
type Part struct {
	Name      string
	DrawnFrom string // LayingSide or ToolSide
	ZeroDeg   float64
	LoadDeg   *float64 // main load direction, nil when not stated
	TrimMM    float64
	Net       geometry.Region // finished edge
	Blank     geometry.Region // net grown by the trim allowance
}

// Fabric is one cloth with the rolls it is cut from. StaggerMM and PliesBetween
// hold the rule in force: the fabric's own where it has one, else the job's.
type Fabric struct {
	Name         string
	WeightGSM    float64
	Fibre        string
	DensityGCM3  Figure   // of the fibre; unknown when neither given nor in the table
	Form         string   // how its fibre lies: Unidirectional …, "" when not stated
	FibreVolume  Figure   // of its plies, share of volume 0…1; unknown: the resin's, or by form
	Elastic      *Elastic // of one layer, nil: generic data of the fibre
	FaceIs       string   // the face in words, "" when not needed
	Layers       []Layer  // stitched layers from the face to the back, nil: one layer
	Turn         bool     // a piece may be turned end for end on the roll
	StaggerMM    float64
	PliesBetween int
	Rolls        []Roll
}

// Layer is one stitched layer of a fabric: its angle to the roll direction and
// its areal weight, 0 when the layers share the fabric's weight equally.
type Layer struct {
	AngleDeg  float64 `json:"angle_deg"`
	WeightGSM float64 `json:"weight_gsm,omitempty"`
}

// Roll is a kind of roll in stock or for sale; Count equal rolls of it exist.
type Roll struct {
	ID            string
	WidthMM       float64
	BadEdgeMM     float64 // not usable, at each edge
	LengthMM      float64 // 0: as long as needed
	Count         int     // at least 1
	PricePerMetre float64 // per metre of roll; meaningful where HasPrice
	HasPrice      bool
	Remnant       bool
}

// UsableMM gives the width between the bad edges.
func (r Roll) UsableMM() float64 { return r.WidthMM - 2*r.BadEdgeMM }

// Endless says whether the roll is as long as needed.
func (r Roll) Endless() bool { return r.LengthMM == 0 }

// Ply is one layer of fabric at one angle.
type Ply struct {
	Number   int     // from the tool, 1 first
	Fabric   string  // name of a Fabric of the job
	Heading  float64 // direction of the roll from its free end, as written, in (-180, 180]
	FaceDown bool
	Outline  string          // name of an outline of its own, "" for the part's blank
	Blank    geometry.Region // what the ply must cover
}

// Angle gives the undirected roll direction.
func (p Ply) Angle() geometry.Angle { return geometry.NewAngle(p.Heading) }

// Reversed says whether the heading runs against Angle: it matters only for
// cloth that may not be turned end for end.
func (p Ply) Reversed() bool {
	return math.Abs(p.Heading-p.Angle().Degrees()) > 90
}

// Rules are the joint rules of a job. What is planned is StaggerMM plus twice
// LayingToleranceMM; the check holds StaggerMM.
type Rules struct {
	StaggerMM         float64
	PliesBetween      int
	NarrowestMM       float64 // narrowest piece across the roll
	CuttingGapMM      float64
	LayingToleranceMM float64
	MaxGapMM          *float64 // widest gap allowed in a butt, nil when not stated
	StraightEnds      bool     // pieces are cut square and trimmed on the tool
	KeepClear         []KeepClear
}

// KeepClear is a region where no side joint may run, of plies at the angles
// given; nil Angles: of any ply. The laying tolerance is not yet in it.
type KeepClear struct {
	Region geometry.Region
	Angles []geometry.Angle
}

// Order says how cloth is bought.
type Order struct {
	SparePercent float64
	SoldByMM     float64 // bought in whole multiples of this length, 0: any length
}

// Efforts of a search: iteration budgets, never clock times.
const (
	Quick    = "quick"
	Normal   = "normal"
	Thorough = "thorough"
)

// Search sets how hard to look for less cloth, and the seed of the search.
type Search struct {
	Effort string
	Seed   int64
}
