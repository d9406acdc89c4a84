// Package label draws a label for each piece, 24 on an A4 sheet of labels of 70
// by 37 mm: its id, large and as a QR code (ISO/IEC 18004), ply, angle, which side
// is up when it is laid, and which end and edge go towards the datum.
//
// Labels come in the order in which the pieces are cut. A label is stuck on the
// cloth as it lies on the table, face up, its arrow pointing to the roll's free
// end.
package label
