package main

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"stripwright/cmd/way"
	"stripwright/laminate/check"
	"stripwright/output/list"
)

type drawOptions struct {
	plan string
	out  string
}

func newDrawCommand(s stream) *cobra.Command {
	var o drawOptions
	c := &cobra.Command{
		Use:   "draw PLAN -o DIR",
		Short: "Draw the sheets of a plan.json again",
		Long: `Draw checks a plan.json anew and writes it and all its sheets into a folder: the
same bytes that plan wrote, as long as the plan has not been edited. PLAN may be
"-" for standard input.`,
		Example: "  stripwright draw out/hatch/plan.json -o out/again",
		Args:    arguments("PLAN"),
		RunE: func(c *cobra.Command, args []string) error {
			o.plan = args[0]
			return runDraw(c.Context(), s, o)
		},
	}
	outFlag(c.Flags(), &o.out)
	return c
}

func runDraw(_ context.Context, s stream, o drawOptions) error {
	if o.out == "" {
		return mistake("stripwright draw: -o DIR is missing: the folder for the sheets")
	}
	if err := checkFolder(o.out); err != nil {
		return err
	}
	p, err := s.readPlan(o.plan)
	if err != nil {
		return err
	}
	p = way.Checked(p)
	files, err := way.Sheets(p)
	if err != nil {
		return fmt.Errorf("%s: %w", o.plan, err)
	}
	if err := writeFolder(o.out, files); err != nil {
		return err
	}
	if _, err := fmt.Fprint(s.out, s.painted(list.Summary(p), check.Sound(p.Checks))); err != nil {
		return err
	}
	return verdict(p)
}
