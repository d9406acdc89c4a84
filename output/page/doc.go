// Package page holds what all paper has in common: its sizes, margins and
// lettering, the title block at the foot, the stamp of a plan at fault, "page 3
// of 20", and bars to see whether it was printed true to size.
//
// A page is a scene in millimetres of paper from its lower left corner.
package page
