package main

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"stripwright/cmd/way"
	"stripwright/laminate"
	"stripwright/laminate/check"
	"stripwright/nest"
	"stripwright/output/list"
)

type planOptions struct {
	job    string
	out    string
	json   bool
	effort string
	seed   *int64
	dxf    dxfOptions
}

func newPlanCommand(s stream) *cobra.Command {
	var o planOptions
	c := &cobra.Command{
		Use:   "plan JOB",
		Short: "Plan a job and write everything the shop cuts and lays by",
		Long: `Plan reads a job file and the drawing beside it, lays out strips, staggers their
joints, nests the pieces on the rolls, checks the plan with separate code and
prints a summary, the verdict first. With -o it writes plan.json and all sheets
into a folder; without it nothing is written.

A folder is replaced only when it was written by stripwright and nothing in it
has been added or changed since. JOB may be "-" for standard input; drawings
then lie in the current folder.

Interrupted, it goes on with the best plan found so far and says so.`,
		Example: "  stripwright plan hatch.yaml -o out/hatch\n  stripwright plan hatch.yaml --json --effort thorough",
		Args:    arguments("JOB"),
		RunE: func(c *cobra.Command, args []string) error {
			o.job = args[0]
			return runPlan(c.Context(), s, o)
		},
	}
	outFlag(c.Flags(), &o.out)
	c.Flags().BoolVar(&o.json, "json", false, "print plan.json in place of the summary")
	searchFlags(c, &o.effort, &o.seed)
	o.dxf.flags(c)
	return c
}

// dxfOptions say how drawings for a cutter are written.
type dxfOptions struct{ release, layers string }

func (o *dxfOptions) flags(c *cobra.Command) {
	c.Flags().Var(onceChoice(&o.release, laminate.R12, laminate.R2000), "dxf", "release of the DXF drawings, in place of the job's own")
	c.Flags().Var(onceChoice(&o.layers, numbered), "dxf-layers", "layer numbers as in ASTM D6673, in place of the job's own names")
}

// numbered asks for layer numbers.
const numbered = "d6673"

func (o dxfOptions) of(p laminate.Plan) laminate.Plan {
	p.DXF = p.DXF.With(o.release, o.layers == numbered)
	return p
}

// searchFlags adds the options of the search.
func searchFlags(c *cobra.Command, effort *string, seed **int64) {
	c.Flags().Var(onceChoice(effort, laminate.Quick, laminate.Normal, laminate.Thorough), "effort", "how long to look for less cloth, in place of the job's own")
	c.Flags().Var(onceWhole(seed, 0), "seed", "seed of the search, in place of the job's own")
}

func runPlan(ctx context.Context, s stream, o planOptions) error {
	if err := checkFolder(o.out); err != nil {
		return err
	}
	p, err := s.planJob(ctx, o.job, o.effort, o.seed)
	if err != nil {
		return err
	}
	p = o.dxf.of(p)
	files, err := way.Sheets(p)
	if err != nil {
		return fmt.Errorf("%s: %w", o.job, err)
	}
	if o.out != "" {
		if err := writeFolder(o.out, files); err != nil {
			return err
		}
	}
	if o.json {
		_, err = s.out.Write(files[0].Data)
	} else {
		_, err = fmt.Fprint(s.out, s.painted(list.Summary(p), check.Sound(p.Checks)))
	}
	if err != nil {
		return err
	}
	return verdict(p)
}

// planJob reads and plans a job.
func (s stream) planJob(ctx context.Context, name, effort string, seed *int64) (laminate.Plan, error) {
	j, err := s.readJob(name)
	if err != nil {
		return laminate.Plan{}, err
	}
	if effort != "" {
		j.Search.Effort = effort
	}
	if seed != nil {
		j.Search.Seed = *seed
	}
	shown := s.progress()
	p, err := way.Plan(ctx, j, nest.Settings{Progress: shown.show})
	shown.clear()
	return p, refused(name, err)
}

// verdict is the fault of a plan that fails its check; the sheets say the rest.
func verdict(p laminate.Plan) error {
	if check.Sound(p.Checks) {
		return nil
	}
	return fault{"the plan fails its check: every sheet is stamped with what is wrong"}
}
