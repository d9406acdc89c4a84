// Package check tells whether a plan is sound, from the plan alone. It works
// everything out again: which joints the strips make, how far apart they run,
// whether every ply is covered once, whether the pieces on a roll are the
// strips they claim to be. It shares no code with what made the plan, so that
// one mistake cannot pass twice.
//
// # Words
//
// A seam is a butt that the strips of a ply really make; a joint is what the
// plan lists. A run is a length of seam with net part on both sides: only runs
// count for the stagger. A level is a line along which a sweep looks at the
// shapes.
//
// # Rules
//
// numbers, plies, coverage, strips, joints, fibre cut, stagger, keep clear,
// pieces, rolls, table, cost, order: one CheckResult each, in this order. When
// numbers fails, nothing else is judged.
//
// Fibre cut finds no fault: it tells how much of each fabric's fibre its joints
// cut, and opens with a warning where the load is stated and joints run across
// it, through fibre that carries it.
//
// The stagger rule also tells, without finding fault, how often joints of
// different directions cross and where most of them come together through the
// thickness; the latter is looked for on a net of points, so there may be one
// more between them.
//
// # Tolerance
//
// Coordinates of a plan are rounded to 0.001 mm, so a distance of exactly 50 mm
// at 45° may read as 49.9988. Everything is held to 0.005 mm.
//
// # What it does not do
//
// It judges the plan, not the job: a stagger that is too small for the part, or
// a wrong drawing, passes. What simple shop practice would take is not judged:
// it keeps fewer rules, so that a sound plan may take more. Lower bounds other than the area bound are taken as
// claimed and only held against what is used. A sum of money is held
// against the rolls' prices where all of a fabric's rolls carry one.
package check
