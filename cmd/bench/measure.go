package main

import (
	"context"
	"errors"
	"fmt"
	"time"

	"stripwright/cmd/way"
	"stripwright/job"
	"stripwright/laminate"
	"stripwright/laminate/check"
	"stripwright/laminate/order"
	"stripwright/nest"
)

// outcome is what became of a job.
type outcome struct {
	refusal *nest.Refusal
	sound   bool
	faults  []string
	plan    laminate.Plan
	pieces  int
	used    float64 // over all fabrics
	bound   float64
	done    float64 // by shop practice
	nested  time.Duration
	checked time.Duration
	drawn   time.Duration
	memory  uint64 // most in use at a time, bytes; 0 when not looked at
}

// gap is how far above the bound the result lies.
func (o outcome) gap() float64 {
	if o.bound == 0 {
		return 0
	}
	return o.used/o.bound - 1
}

// read gives the job of a file; an error holds all its problems.
func read(path, effort string) (laminate.Job, error) {
	j, problems := job.Read(path)
	var errs []error
	for _, p := range problems {
		errs = append(errs, p)
	}
	if effort != "" {
		j.Search.Effort = effort
	}
	return j, errors.Join(errs...)
}

// measure plans, checks and draws a job; a refusal is an outcome, not an error.
func measure(ctx context.Context, j laminate.Job) (outcome, error) {
	var o outcome
	start := time.Now()
	p, err := way.Nested(ctx, j, nest.Settings{})
	o.nested = time.Since(start)
	if errors.As(err, &o.refusal) {
		return o, nil
	}
	if err != nil {
		return o, err
	}
	p = order.Fill(p, j)
	start = time.Now()
	p = way.Checked(p)
	o.checked = time.Since(start)
	start = time.Now()
	if _, err := way.Sheets(p); err != nil {
		return o, err
	}
	o.drawn = time.Since(start)
	return o.sum(p), nil
}

// sum adds up a plan.
func (o outcome) sum(p laminate.Plan) outcome {
	o.plan, o.sound = p, check.Sound(p.Checks)
	for _, c := range p.Checks {
		if !c.Pass {
			o.faults = append(o.faults, fmt.Sprintf("%s: %s", c.Rule, c.Text))
		}
	}
	for _, c := range p.Cost {
		o.used, o.bound, o.done = o.used+c.Used, o.bound+c.Bound, o.done+c.Practice
	}
	for _, r := range p.Rolls {
		o.pieces += len(r.Pieces)
	}
	return o
}
