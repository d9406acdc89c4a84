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
	plan      string
	out       string
	templates []string
	paper     string
	dxf       dxfOptions
}

func newDrawCommand(s stream) *cobra.Command {
	o := drawOptions{paper: "a4"}
	c := &cobra.Command{
		Use:   "draw PLAN -o DIR",
		Short: "Draw the sheets of a plan.json again",
		Long: `Draw checks a plan.json anew and writes it and all its sheets into a folder: the
same bytes that plan wrote, as long as the plan has not been edited. PLAN may be
"-" for standard input.

With --template, a ply (P03, or 3) or a piece (P03-S02) is drawn at 1:1 too, on as
many sheets of paper as it takes, to be laid together. Name several by giving the
option again.`,
		Example: `  stripwright draw out/hatch/plan.json -o out/again
  stripwright draw out/hatch/plan.json -o out/again --template P03 --template P01-S02 --paper letter`,
		Args: arguments("PLAN"),
		RunE: func(c *cobra.Command, args []string) error {
			o.plan = args[0]
			return runDraw(c.Context(), s, o)
		},
	}
	outFlag(c.Flags(), &o.out)
	o.dxf.flags(c)
	c.Flags().StringArrayVar(&o.templates, "template", nil, "draw a ply or a piece at 1:1 too, as P03 or P03-S02")
	c.Flags().Var(onceChoice(&o.paper, "a4", "letter"), "paper", "paper of the templates")
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
	p = o.dxf.of(way.Checked(p))
	files, err := way.Sheets(p)
	if err != nil {
		return fmt.Errorf("%s: %w", o.plan, err)
	}
	drawn, err := way.Templates(p, o.templates, o.paper)
	if err != nil {
		return mistake("stripwright draw: --template %s", err)
	}
	files = append(files, drawn...)
	if err := writeFolder(o.out, files); err != nil {
		return err
	}
	if _, err := fmt.Fprint(s.out, s.painted(list.Summary(p), check.Sound(p.Checks))); err != nil {
		return err
	}
	return verdict(p)
}
