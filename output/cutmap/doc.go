// Package cutmap draws what is cut: one map for each roll, or for each table
// length of it where clear cuts break it up, once for people (People) and once
// for a cutter (Cutter), and the pieces one by one (Pieces).
//
// Everything lies in the roll frame, the fabric's face up: a cut map never
// carries the part's 0° arrow, the datum corner or "seen from above", so that
// nobody takes it for a lay-up sheet. A cut that two pieces share is drawn
// once.
//
// Layers of a cutter's map: TEXT, MARK, NOTCH, GRAIN, ROLL, DATUM, SCALE and
// CUT, marks before cuts and inner cuts before outer ones. In a plan that
// failed its check the cuts lie on layer DO-NOT-CUT instead of CUT, so that a
// cutter set to cut layer CUT does nothing.
package cutmap
