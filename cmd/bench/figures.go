package main

import (
	"context"
	"fmt"
	"io"
	"math"
	"slices"
	"time"

	"stripwright/cmd/way"
	"stripwright/laminate"
	"stripwright/laminate/order"
	"stripwright/nest"
)

// result is a job of the folder with what became of it.
type result struct {
	entry
	outcome
	job laminate.Job
}

// planned says whether the job has a plan.
func (r result) planned() bool { return r.used > 0 }

// weighed says whether the job counts among those whose best known result lies
// above the bound known for it: the rest have nothing to be gained.
func (r result) weighed() bool { return r.planned() && r.known.best > r.known.bound+0.01 }

// usual says whether the job has 8 to 12 plies, as most parts do.
func (r result) usual() bool { return r.planned() && len(r.job.Plies) >= 8 && len(r.job.Plies) <= 12 }

// figure is one line of what is to be reached.
type figure struct {
	name, got, reach string
	met              bool
}

// figures prints what the folder's jobs come to beside what is to be reached.
func figures(ctx context.Context, w io.Writer, results []result) {
	lines := quality(results)
	lines = append(lines, speed(ctx, results)...)
	fmt.Fprintf(w, "\n%-58s %24s  %s\n", "figure", "measured", "reach")
	for _, f := range lines {
		missed := ""
		if !f.met {
			missed = "  MISSED"
		}
		fmt.Fprintf(w, "%-58s %24s  %s%s\n", f.name, f.got, f.reach, missed)
	}
}

// leastGain is the gain against the best known from which it counts.
const leastGain = 0.0005

// quality compares the plans with their bounds and the best known.
func quality(results []result) []figure {
	var ratios, gains, gaps, worst []float64
	optimal, plans := 0, 0
	for _, r := range results {
		if !r.planned() {
			continue
		}
		plans++
		worst = append(worst, r.gap())
		if r.gap() < 1e-9 {
			optimal++
		}
		if r.known.best > 0 {
			ratios = append(ratios, r.used/r.known.best)
		}
		if r.weighed() {
			gain := r.used / r.known.best
			if gain > 1-leastGain && gain < 1 {
				gain = 1
			}
			gains, gaps = append(gains, gain), append(gaps, r.gap())
		}
	}
	var out []figure
	if len(ratios) > 0 {
		most := slices.Max(ratios)
		out = append(out, figure{"worst job against its best known", fmt.Sprintf("%.4f", most), "1.002 at most", most <= 1.002})
	}
	if len(gains) > 0 {
		average, middle := mean(gains), median(gaps)
		out = append(out,
			figure{fmt.Sprintf("mean against best known, %d jobs with a known gap", len(gains)), fmt.Sprintf("%.4f", average), "0.998 at most", average <= 0.998},
			figure{"median gap to the bound of these jobs", percent(middle), "1.00% at most", middle <= 0.01})
	}
	if len(worst) > 0 {
		most := slices.Max(worst)
		out = append(out, figure{"widest gap to the bound of any job", percent(most), "6.00% at most", most <= 0.06})
	}
	return append(out, figure{"plans proved optimal", fmt.Sprintf("%d of %d", optimal, plans), "-", true})
}

// speed times the efforts on parts of the usual number of plies, and the
// largest job whole and in parts.
func speed(ctx context.Context, results []result) []figure {
	var normal, quick time.Duration
	var large *result
	for k, r := range results {
		if r.usual() {
			normal = max(normal, r.nested)
			quick = max(quick, timed(ctx, r.job, laminate.Quick))
		}
		if r.planned() && len(r.job.Plies) >= 100 && (large == nil || len(r.job.Plies) > len(large.job.Plies)) {
			large = &results[k]
		}
	}
	out := []figure{
		{"slowest job of 8 to 12 plies, quick", short(quick), "0.1 s at most", quick <= 100*time.Millisecond},
		{"slowest job of 8 to 12 plies, normal", short(normal), "1 s at most", normal <= time.Second},
	}
	if large == nil {
		return out
	}
	whole, memory := planned(ctx, large.job)
	n := growth(ctx, large.job)
	return append(out,
		figure{fmt.Sprintf("%s: %d plies planned and checked", large.name, len(large.job.Plies)), short(whole), "1.5 s at most", whole <= 1500*time.Millisecond},
		figure{large.name + ": above its bound", percent(large.gap()), "0.50% at most", large.gap() <= 0.005},
		figure{large.name + ": memory", fmt.Sprintf("%d MiB", memory>>20), "500 MiB at most", memory <= 500<<20},
		figure{"time against plies from 25 to 400, exponent", fmt.Sprintf("%.2f", n), "1.2 at most", n <= 1.2})
}

// planned plans and checks a job, and gives the time it took and the most memory
// in use, in bytes: no drawings.
func planned(ctx context.Context, j laminate.Job) (time.Duration, uint64) {
	peak := watchMemory()
	start := time.Now()
	if p, err := way.Nested(ctx, j, nest.Settings{}); err == nil {
		way.Checked(order.Fill(p, j))
	}
	return time.Since(start), peak()
}

// timed plans a job with an effort and gives the time it took.
func timed(ctx context.Context, j laminate.Job, effort string) time.Duration {
	start := time.Now()
	_, _ = way.Nested(ctx, j, nest.Settings{Effort: effort})
	return time.Since(start)
}

// growth gives the exponent by which the time of planning grows with the plies
// of a part: the slope of a straight line through the logarithms, for the job's
// schedule begun or repeated to 25, 50, 100, 200 and 400 plies.
func growth(ctx context.Context, j laminate.Job) float64 {
	var xs, ys []float64
	for n := 25; n <= 400; n *= 2 {
		took := timed(ctx, repeated(j, n), "")
		xs, ys = append(xs, math.Log(float64(n))), append(ys, math.Log(took.Seconds()))
	}
	return slope(xs, ys)
}

// repeated gives the job with n plies: its schedule over and over.
func repeated(j laminate.Job, n int) laminate.Job {
	plies := make([]laminate.Ply, n)
	for i := range plies {
		plies[i] = j.Plies[i%len(j.Plies)]
		plies[i].Number = i + 1
	}
	j.Plies = plies
	return j
}

// slope gives that of the line of least squares through points.
func slope(xs, ys []float64) float64 {
	x, y := mean(xs), mean(ys)
	var up, along float64
	for i := range xs {
		up += float64((xs[i] - x) * (ys[i] - y))
		along += float64((xs[i] - x) * (xs[i] - x))
	}
	return up / along
}

func mean(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	return sum / float64(len(v))
}

// median gives the middle value, the mean of the two for an even number.
func median(v []float64) float64 {
	v = slices.Sorted(slices.Values(v))
	return (v[(len(v)-1)/2] + v[len(v)/2]) / 2
}
