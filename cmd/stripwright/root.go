package main

import (
	"context"
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"stripwright/laminate"
)

// Exit codes.
const (
	exitDone    = 0
	exitFault   = 1 // a check failed, or the rules cannot be met
	exitMistake = 2 // on the command line or in an input
)

// stream is where a command reads and writes.
type stream struct {
	in       io.Reader
	out, err io.Writer
}

// fault ends a command with exit code 1; its text may be empty when all has
// been said.
type fault struct{ text string }

func (f fault) Error() string { return f.text }

// mistakes ends a command with exit code 2, one line each.
type mistakes []string

func (m mistakes) Error() string {
	if len(m) == 0 {
		return "mistake"
	}
	return m[0]
}

func mistake(format string, args ...any) error { return mistakes{fmt.Sprintf(format, args...)} }

// run carries out a command line and gives the exit code.
func run(ctx context.Context, args []string, s stream) int {
	root := newRootCommand(s)
	if err := looseDash(root, args); err != nil {
		return report(s, err)
	}
	root.SetArgs(args)
	return report(s, root.ExecuteContext(ctx))
}

// report prints an error, a line for each problem.
func report(s stream, err error) int {
	var f fault
	var m mistakes
	switch {
	case err == nil:
		return exitDone
	case errors.As(err, &f):
		if f.text != "" {
			fmt.Fprintln(s.err, f.text)
		}
		return exitFault
	case errors.As(err, &m):
		for _, line := range m {
			fmt.Fprintln(s.err, line)
		}
	default:
		fmt.Fprintln(s.err, "stripwright:", err)
	}
	return exitMistake
}

func newRootCommand(s stream) *cobra.Command {
	c := &cobra.Command{
		Use:   "stripwright",
		Short: "Lay strips of cloth out on a part, stagger their joints, nest them on the rolls",
		Long: `Stripwright lays strips of cloth out on a part, staggers their joints from ply
to ply, nests the pieces on the rolls, checks the plan with code of its own,
and draws what the shop cuts and lays by.

Exit codes: 0 done; 1 a check failed or the rules cannot be met; 2 a mistake on
the command line or in an input.`,
		Example: `  stripwright init hatch.yaml
  stripwright plan hatch.yaml -o out/hatch
  stripwright check out/hatch/plan.json`,
		Version:                    laminate.Program,
		SuggestionsMinimumDistance: 2,
		SilenceErrors:              true,
		SilenceUsage:               true,
		Args:                       cobra.ArbitraryArgs,
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) > 0 {
				return unknownCommand(c, args[0])
			}
			return c.Help()
		},
	}
	c.SetVersionTemplate("{{.Version}}\n")
	c.SetIn(s.in)
	c.SetOut(s.out)
	c.SetErr(s.err)
	c.SetFlagErrorFunc(flagMistake)
	c.AddCommand(
		newPlanCommand(s), newCheckCommand(s), newDrawCommand(s), newOrderCommand(s),
		newOutlineCommand(s), newInitCommand(s), newSchemaCommand(s), newVersionCommand(s),
	)
	return c
}

func unknownCommand(c *cobra.Command, name string) error {
	for _, near := range c.SuggestionsFor(name) {
		return mistake("stripwright: there is no command %q: did you mean %q?", name, near)
	}
	return mistake("stripwright: there is no command %q: stripwright --help lists them", name)
}

func newVersionCommand(s stream) *cobra.Command {
	return &cobra.Command{
		Use:   "version",
		Short: "Print the version",
		Args:  arguments(),
		RunE: func(*cobra.Command, []string) error {
			_, err := fmt.Fprintln(s.out, laminate.Program)
			return err
		},
	}
}
