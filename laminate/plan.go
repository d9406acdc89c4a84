package laminate

import "stripwright/geometry"

// Format and version of plan.json, and the program version written into it.
const (
	PlanFormat  = "stripwright-plan"
	PlanVersion = 1
	Program     = "stripwright 0.1.0"
)

// Plan is the whole of what is cut and laid, in the form of plan.json: see
// package planfile for the codec and schema. Coordinates are mm on the 0.001
// grid, angles degrees in (-90, 90].
type Plan struct {
	Format      string        `json:"format"`
	Version     int           `json:"version"`
	Program     string        `json:"program"`
	Title       string        `json:"title"`
	Job         FileRef       `json:"job"`
	Drawings    []FileRef     `json:"drawings"`
	Seed        int64         `json:"seed"`
	Effort      string        `json:"effort"`
	Stopped     bool          `json:"stopped,omitempty"` // the search was cancelled; sound, perhaps not the least
	Units       string        `json:"units"`
	Part        PlanPart      `json:"part"`
	Rules       PlanRules     `json:"rules"`
	Fabrics     []PlanFabric  `json:"fabrics"`
	Plies       []PlanPly     `json:"plies"`
	Rolls       []PlanRoll    `json:"rolls"`
	Cost        []Cost        `json:"cost"`
	Lengths     []RollLength  `json:"lengths"`
	Checks      []CheckResult `json:"checks"`
	Quantities  []PlyQuantity `json:"quantities"`
	Resin       *Resin        `json:"resin,omitempty"`
	Consumables []Consumable  `json:"consumables,omitempty"`
	Cores       []Core        `json:"cores,omitempty"`
	Measured    *Measured     `json:"measured,omitempty"`
	Uptakes     []Uptake      `json:"uptakes,omitempty"`
	Fibres      []FibreKind   `json:"fibres,omitempty"` // the job's own, before those of the library
	Resins      []ResinKind   `json:"resins,omitempty"`
	DXF         *DXF          `json:"dxf,omitempty"`
	Notes       []Note        `json:"notes"`
}

// PlanPart is the part as planned.
type PlanPart struct {
	Name      string          `json:"name"`
	DrawnFrom string          `json:"drawn_from"`
	ZeroDeg   float64         `json:"zero_deg"`
	LoadDeg   *float64        `json:"load_deg"`
	TrimMM    float64         `json:"trim_mm"`
	Net       geometry.Region `json:"net"`
	Blank     geometry.Region `json:"blank"`
	Corners   []Corner        `json:"corners"`
}

// Corner is a named corner or mark of the net edge; "A" is the datum, further
// letters follow anticlockwise.
type Corner struct {
	Name string     `json:"name"`
	At   [2]float64 `json:"at"`
}

// PlanRules are the joint rules that the plan was made under.
type PlanRules struct {
	LayingToleranceMM float64         `json:"laying_tolerance_mm"`
	NarrowestMM       float64         `json:"narrowest_mm"`
	MaxGapMM          *float64        `json:"max_gap_mm"`
	CuttingGapMM      float64         `json:"cutting_gap_mm"`
	TableMM           *float64        `json:"table_mm"`
	SparePercent      float64         `json:"spare_percent"`
	SoldByMM          float64         `json:"sold_by_mm"`
	Ends              string          `json:"ends,omitempty"` // StraightEnds, or "" for ends cut to shape
	KeepClear         []PlanKeepClear `json:"keep_clear"`
}

// StraightEnds: each piece is the oblong about its strip, along the roll, and what
// reaches beyond the blank is trimmed on the tool.
const StraightEnds = "straight"

// PlanKeepClear is a region without joints; Angles empty: for plies at any
// angle. It is the region asked for, without the laying tolerance.
type PlanKeepClear struct {
	Region geometry.Region `json:"region"`
	Angles []float64       `json:"angles"`
}

// PlanFabric is a fabric with the joint rule in force for it.
type PlanFabric struct {
	Name         string   `json:"name"`
	WeightGSM    float64  `json:"weight_gsm"`
	Fibre        string   `json:"fibre"`
	DensityGCM3  Figure   `json:"density_gcm3,omitzero"` // of the fibre
	Form         string   `json:"form,omitempty"`
	FibreVolume  Figure   `json:"fibre_volume,omitzero"`
	Elastic      *Elastic `json:"elastic,omitempty"`
	Layers       []Layer  `json:"layers"`
	FaceIs       string   `json:"face_is"`
	Turn         bool     `json:"turn"`
	StaggerMM    float64  `json:"stagger_mm"`
	PliesBetween int      `json:"plies_between"`
}

// Faces of a ply.
const (
	FaceUp   = "up"
	FaceDown = "down"
)

// PlanPly is one ply with its strips and joints, in the part frame.
type PlanPly struct {
	Ply      int             `json:"ply"`
	Fabric   string          `json:"fabric"`
	AngleDeg float64         `json:"angle_deg"`
	Reversed bool            `json:"reversed,omitempty"` // the roll's free end lies towards angle + 180°; matters for cloth that may not be turned
	Face     string          `json:"face"`
	Outline  string          `json:"outline,omitempty"` // name of an outline of its own
	Blank    geometry.Region `json:"blank"`
	Strips   []Strip         `json:"strips"`
	Joints   []Joint         `json:"joints"`
}

// Strip is one piece of cloth as it lies in the part. Width is its extent
// across the roll direction. Ids run P03-S01, P03-S02, … in laying order, from
// the lowest y of the ply frame up.
type Strip struct {
	ID      string          `json:"id"`
	Shape   geometry.Region `json:"shape"`
	WidthMM float64         `json:"width_mm"`
}

// Kinds of joint.
const (
	SideJoint = "side"
	EndJoint  = "end"
)

// Joint is a straight butt between two strips of one ply, within its blank.
// From and To run along the roll direction (side joint), x rising in the ply
// frame. Between names the strip below and the strip above in the ply frame.
type Joint struct {
	Kind    string     `json:"kind"`
	From    [2]float64 `json:"from"`
	To      [2]float64 `json:"to"`
	Between [2]string  `json:"between"`
}

// PlanRoll is one roll, or one more copy of it, with its pieces. Rolls of no
// pieces are not listed.
type PlanRoll struct {
	Roll          string    `json:"roll"` // the job's id, exactly
	Copy          int       `json:"copy"` // 1 … count
	Fabric        string    `json:"fabric"`
	WidthMM       float64   `json:"width_mm"`
	UsableWidthMM float64   `json:"usable_width_mm"`
	StockLengthMM *float64  `json:"stock_length_mm"` // nil: as long as needed
	Remnant       bool      `json:"remnant,omitempty"`
	PricePerMetre float64   `json:"price_per_metre,omitempty"` // meaningful where HasPrice
	HasPrice      bool      `json:"has_price,omitempty"`
	UsedLengthMM  float64   `json:"used_length_mm"` // from the free end to the last cut
	CrossCuts     []float64 `json:"cross_cuts"`     // clear cuts across the roll that break it into table lengths, without 0 and the end
	Pieces        []Piece   `json:"pieces"`
}

// Piece is a strip as it is cut: its outline in the roll frame. Mirrored pieces
// belong to plies laid face down; Turned is 0 or 180, after the mirror.
type Piece struct {
	ID       string          `json:"id"`
	Shape    geometry.Region `json:"shape"`
	Turned   int             `json:"turned"`
	Mirrored bool            `json:"mirrored"`
	CutOrder int             `json:"cut_order"` // 1, 2, … on this roll
}

// Measures of cost and states of proof.
const (
	ByLength  = "length"   // mm of roll
	ByPrice   = "price"    // sum of mm of roll × price per metre; divide by 1000 for money
	ByLastCut = "last_cut" // mm to the last cut, rolls laid end to end in list order

	Optimal  = "optimal"  // used equals a proved bound
	Feasible = "feasible" // sound, perhaps not the least
)

// Cost is what a fabric takes, by its measure, beside the proved least and what
// simple shop practice would take.
type Cost struct {
	Fabric   string  `json:"fabric"`
	Measure  string  `json:"measure"`
	Used     float64 `json:"used"`
	Bound    float64 `json:"bound"`
	Gap      float64 `json:"gap"` // (used - bound) / bound
	Proof    Proof   `json:"proof"`
	Practice float64 `json:"practice"`
	Status   string  `json:"status"`

	// BoundHere is the proved least with the joints where they are: what lies
	// between it and Bound is due to the joints. 0: not worked out, or Used meets
	// Bound.
	BoundHere float64 `json:"bound_here,omitempty"`
}

// Proof names the lower bound that holds and the data it can be worked out from
// again: the blank area of the fabric's plies in mm² and the least cost of a mm²
// of roll ("area"); for the others the least length of roll in mm, for "chord"
// with the number of steps of its dual feasible function (none: chords with their
// gaps end to end), for "strips", "straight ends", "interlock", "openings" and
// "across" with the area in mm² that no plan fills.
type Proof struct {
	Bound    string  `json:"bound"`
	AreaMM2  float64 `json:"area_mm2"`
	PerMM2   float64 `json:"per_mm2"`
	LengthMM float64 `json:"length_mm,omitempty"`
	WasteMM2 float64 `json:"waste_mm2,omitempty"`
	Steps    int     `json:"steps,omitempty"`
}

// RollLength is the roll length of one fabric and roll width.
type RollLength struct {
	Fabric  string  `json:"fabric"`
	WidthMM float64 `json:"width_mm"`
	UsedMM  float64 `json:"used_mm"`
	ToBuyMM float64 `json:"to_buy_mm"` // with spare, rounded up to what is sold, stock of stated length taken off
}

// Warning opens the text of a rule that is kept but has something to be thought
// about before cutting.
const Warning = "WARNING: "

// CheckResult is the verdict on one rule: how many things were looked at and
// the worst of them.
type CheckResult struct {
	Rule    string `json:"rule"`
	Pass    bool   `json:"pass"`
	Counted int    `json:"counted"`
	Worst   *Worst `json:"worst"`
	Text    string `json:"text"` // what a laminator acts on; for a fault, with what is needed
}

// Worst is the worst place found under a rule.
type Worst struct {
	ValueMM float64    `json:"value_mm"`
	Plies   []int      `json:"plies"`
	At      [2]float64 `json:"at"` // part frame, or roll frame for rules of the roll
	Piece   string     `json:"piece,omitempty"`
}

// PlyQuantity is what one ply weighs dry.
type PlyQuantity struct {
	Ply     int     `json:"ply"`
	AreaMM2 float64 `json:"area_mm2"` // blank
	DryG    float64 `json:"dry_g"`
}
