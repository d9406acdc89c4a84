// Package way is the way of one job through the program: plan, quantities,
// check, and the sheets. The commands share it, so that what one command writes
// another writes again, byte for byte.
//
// It decides nothing itself and knows no command line.
package way
