package main

import (
	"context"
	"fmt"
	"io"
	"math"
	"runtime"
	"runtime/debug"
	"slices"
	"strings"
	"time"
)

// table measures the jobs one after the other and prints a line for each.
func table(ctx context.Context, w io.Writer, jobs []entry, effort string) int {
	fmt.Fprintf(w, "%-24s %12s %12s %7s %12s %7s %7s %7s %8s %8s %8s %7s\n",
		"job", "used", "bound", "gap", "practice", "saved", "/best", "pieces", "nest", "check", "draw", "memory")
	code := 0
	var results []result
	for _, e := range jobs {
		line, r, bad := row(ctx, e, effort)
		fmt.Fprintf(w, "%-24s %s\n", e.name, line)
		if bad {
			code = 1
		}
		results = append(results, r)
	}
	overall(w, results)
	if effort == "" {
		figures(ctx, w, results)
	}
	return code
}

// overall says how the jobs came out together.
func overall(w io.Writer, results []result) {
	var gaps, ratios, saved []float64
	for _, r := range results {
		if !r.planned() {
			continue
		}
		gaps, saved = append(gaps, r.gap()), append(saved, 1-r.used/r.done)
		if r.known.best > 0 {
			ratios = append(ratios, r.used/r.known.best)
		}
	}
	fmt.Fprintf(w, "\n%d jobs planned; gap to the bound %s; saved against practice %s; against the best known %s\n",
		len(gaps), spread(gaps, percent), spread(saved, percent), spread(ratios, func(v float64) string { return fmt.Sprintf("%.4f", v) }))
}

// row measures one job; bad says that it did not come out as it must.
func row(ctx context.Context, e entry, effort string) (line string, o result, bad bool) {
	o.entry = e
	j, err := read(e.path, effort)
	if err != nil {
		return "not read: " + strings.ReplaceAll(err.Error(), "\n", "; "), o, true
	}
	o.job = j
	peak := watchMemory()
	o.outcome, err = measure(ctx, j)
	o.memory = peak()
	switch {
	case err != nil:
		return "failed: " + err.Error(), o, true
	case o.refusal != nil:
		want := e.known.infeasible && math.Abs(o.refusal.LargestStaggerMM-e.known.stagger) < 0.01
		return fmt.Sprintf("refused: largest stagger %.3f mm, expected %v", o.refusal.LargestStaggerMM, e.known.stagger), o, !want
	}
	ratio := "-"
	if e.known.best > 0 {
		ratio = fmt.Sprintf("%.4f", o.used/e.known.best)
	}
	line = fmt.Sprintf("%12.2f %12.2f %7s %12.2f %7s %7s %7d %8s %8s %8s %7s", o.used, o.bound, percent(o.gap()),
		o.done, percent(1-o.used/o.done), ratio, o.pieces, short(o.nested), short(o.checked), short(o.drawn), fmt.Sprintf("%dM", o.memory>>20))
	if !o.sound {
		line += "\n  NOT SOUND: " + strings.Join(o.faults, "\n    ")
	}
	return line, o, !o.sound || e.known.infeasible
}

func percent(v float64) string { return fmt.Sprintf("%.2f%%", v*100) }

func short(d time.Duration) string { return fmt.Sprintf("%.3fs", d.Seconds()) }

// spread gives the median and the extremes.
func spread(v []float64, show func(float64) string) string {
	if len(v) == 0 {
		return "-"
	}
	return fmt.Sprintf("median %s (%s to %s)", show(median(v)), show(slices.Min(v)), show(slices.Max(v)))
}

// watchMemory looks at the memory in use, ten times a second, until the
// function it gives is called, which tells the most seen.
func watchMemory() func() uint64 {
	debug.FreeOSMemory()
	stop, most := make(chan struct{}), make(chan uint64)
	go func() {
		var top uint64
		look := func() {
			var m runtime.MemStats
			runtime.ReadMemStats(&m)
			top = max(top, m.Sys-m.HeapReleased)
		}
		tick := time.NewTicker(100 * time.Millisecond)
		defer tick.Stop()
		for {
			look()
			select {
			case <-stop:
				look()
				most <- top
				return
			case <-tick.C:
			}
		}
	}()
	return func() uint64 {
		close(stop)
		return <-most
	}
}
