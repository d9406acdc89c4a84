package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"

	"github.com/spf13/cobra"

	"stripwright/job"
)

type initOptions struct{ file string }

func newInitCommand(s stream) *cobra.Command {
	o := initOptions{file: "job.yaml"}
	return &cobra.Command{
		Use:   "init [FILE]",
		Short: "Write a commented job file to start from",
		Long: `Init writes a job file with every key explained, which plan accepts as it is.
FILE is job.yaml when not given, "-" for standard output. A file that exists is
left alone.`,
		Example: "  stripwright init hatch.yaml",
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return nil
			}
			return arguments("FILE")(c, args)
		},
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) > 0 {
				o.file = args[0]
			}
			return runInit(c.Context(), s, o)
		},
	}
}

func runInit(_ context.Context, s stream, o initOptions) error {
	if o.file == standard {
		_, err := s.out.Write(job.Starter())
		return err
	}
	f, err := os.OpenFile(o.file, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	switch {
	case errors.Is(err, fs.ErrExist):
		return mistake("%s: it exists already: name another file", o.file)
	case err != nil:
		return mistake("%s", unwritten(o.file, err))
	}
	_, err = f.Write(job.Starter())
	if err := errors.Join(err, f.Close()); err != nil {
		return mistake("%s", unwritten(o.file, err))
	}
	_, err = fmt.Fprintf(s.out, "%s written: edit it, then: stripwright plan %s -o out\n", o.file, o.file)
	return err
}
