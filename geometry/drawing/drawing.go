package drawing

import (
	"stripwright/geometry"
	"stripwright/geometry/drawing/trace"
)

// Options say what the drawing does not say itself, or says wrongly.
type Options struct {
	Layers  []string // take only these layers or groups; none: all that are visible
	Units   string   // "" as the drawing says; or mm, cm, m, in, ft, yd, or 72/in: so many units an inch
	JoinMM  float64  // close gaps up to this many mm; 0: 0.1
	Which   int      // take only this one of several outlines, counted from 1; 0: all
	ChordMM float64  // how far a straight piece may stray from a curve; 0: 0.05
}

// Drawing is what was read. With any problem there are no regions.
type Drawing struct {
	SizeMM   [2]float64        // width and height of the box around the regions
	AreaMM2  float64           // sum of the regions, holes taken off
	Regions  []geometry.Region // largest first, on the micrometre grid
	Layers   []Layer           // all that hold visible lines, taken or not, by name
	Notes    []Note
	Problems []Problem
	UnitFrom string // where the unit comes from: "$INSUNITS 4 (mm)"
}

// Layer is a layer or group of the drawing with the number of closed contours
// that its own lines make.
type Layer struct {
	Name     string `json:"name"`
	Contours int    `json:"contours"`
}

// Note is something that the reader did and the user should know.
type Note = trace.Note

// Problem is something that the reader could not take.
type Problem = trace.Problem
