// Bench plans every job of a folder and prints a table: what each takes beside
// its bound, shop practice and the best known, and how long planning, checking
// and drawing took; then the figures that all of them come to beside what is to
// be reached.
//
//	go run ./cmd/bench testdata/bench
//
// Times and memory are those of the run and differ from run to run; everything
// else is the same every time. A file best_known.csv in the folder gives the
// best known results. The exit code is 1 when a plan fails its check or a
// refusal is not what was expected, 2 when the folder cannot be read.
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"os/signal"
)

func main() {
	effort := flag.String("effort", "", "quick, normal or thorough, in place of each job's own")
	flag.Usage = func() {
		fmt.Fprintln(os.Stderr, "usage: bench [-effort quick|normal|thorough] DIR")
		flag.PrintDefaults()
	}
	flag.Parse()
	if flag.NArg() != 1 {
		flag.Usage()
		os.Exit(2)
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	jobs, err := readFolder(flag.Arg(0))
	if err != nil {
		fmt.Fprintln(os.Stderr, "bench:", err)
		os.Exit(2)
	}
	os.Exit(table(ctx, os.Stdout, jobs, *effort))
}
