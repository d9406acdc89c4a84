// Package layup draws what is laid: a sheet for each ply (Ply) with its strips
// and joints on the part, and one sheet of all joints over each other (Joints).
// It measures where each joint meets the net edge, from named corners, and how
// far the nearest joint below is (Measure).
//
// Sheets lie in the part frame, seen from the laying side, true to scale.
// Measuring here is for people with a tape; whether the plan is sound is the
// check's to say.
package layup
