// Package nest turns a job into a plan: it divides every ply into strips, keeps
// the joints of different plies apart, and lays the pieces of each fabric on
// its rolls with as little cloth as it finds.
//
// The steps, each in a package of its own: layout divides a blank, stagger
// keeps joints apart, search looks for phases, roll lays pieces, bound proves how
// little roll there could be, practice gives the figure of simple shop practice.
// Plan strings them together.
//
// A job whose rules cannot be met, or whose stock does not hold its pieces, is
// answered with a Refusal. The package does not judge its own plan: see
// package check.
package nest
