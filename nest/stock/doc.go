// Package stock fills finite rolls with pieces of full width, which is to say
// lengths: which pieces come from which roll, so that with the rolls laid end
// to end, in the order given, the last cut comes early.
//
// What is lost is what remains at the end of each closed roll, one that is
// followed by another; on the last roll nothing is. So
//
//	place of the last cut = all lengths + the waste of the closed rolls
//
// and where all rolls are equal, the least place has the least number of rolls
// (the cutting-stock problem).
//
// Fill begins with the rolls filled one after the other as far as they go, and
// with patterns that are good for all pieces together (the linear programme of
// Gilmore and Gomory 1961, columns found by a knapsack). Then it goes through
// the ways to complete roll after roll (Martello and Toth 1990; Korf 2002),
// waste after waste, until the least is proved or the steps are used up.
//
// The package knows no shapes: interlocking ends and narrow pieces are the
// caller's. Lengths are whole numbers of any unit.
package stock
