// Package paper composes the lay-up book on paper, as pages of A4 or Letter that
// package pdf writes: a cover with verdict and schedule, one section for each
// ply, the rolls to cut, a kit card for each ply, a record to fill in, cautions.
//
// A page is a scene in millimetres of paper from its lower left corner. Every
// page carries the title block; pages of a plan at fault are stamped. Parts too
// long to be read on one page are drawn in stretches that overlap.
//
// Strips are named in full once in the section of a ply, in its list in laying
// order; on the drawing they are named within the ply (S02). The package decides
// nothing: all figures come from the plan and from package layup.
package paper
