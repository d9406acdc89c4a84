// Stripwright lays strips of cloth out on a part, staggers their joints from
// ply to ply, nests the pieces on the rolls, checks the plan, and draws what
// the shop cuts and lays by.
//
//	stripwright plan JOB -o DIR     everything, from a job file
//	stripwright check PLAN          verdict on a plan.json
//	stripwright draw PLAN -o DIR    the sheets again, from a plan.json
//	stripwright order JOB           cloth to order, weights
//	stripwright outline DRAWING     what is read from a drawing
//	stripwright init [FILE]         a job file to start from
//	stripwright schema              the JSON Schema of plan.json
//
// Results go to standard output, messages to standard error. Exit codes: 0
// done, 1 a check failed or the rules cannot be met, 2 a mistake on the command
// line or in an input.
//
// The folder holds one file per command, which turns options into calls of the
// packages; nothing else in the module knows the command line.
package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"
)

func main() { os.Exit(runMain()) }

func runMain() int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	// The first signal ends the search with the best so far; a second one ends
	// the program.
	context.AfterFunc(ctx, stop)
	return run(ctx, os.Args[1:], stream{os.Stdin, os.Stdout, os.Stderr})
}
