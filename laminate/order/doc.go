// Package order sums up what a plan takes: the roll length of each fabric and
// width, what of it has to be bought, and what each ply weighs dry.
//
// # Words
//
// Used is what is cut off the rolls, from the free end to the last cut. On hand
// is a roll with a stated length: what is cut from it need not be bought. A roll
// as long as needed is bought. Spare is a share of what is bought, added before
// rounding up to the length that cloth is sold by.
//
// Fill returns a new plan; nothing that it is given is altered. Figures are
// rounded to 0.001, the grid of a plan file.
//
// The package lays out nothing and judges nothing. Resin and consumables are
// not in it yet.
package order
