package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"stripwright/job"
	"stripwright/laminate"
	"stripwright/laminate/planfile"
)

// standard is the name that stands for standard input or output.
const standard = "-"

// mostInput is the largest input that is read, 256 MiB.
const mostInput = 256 << 20

// readInput reads a file, or standard input for "-".
func (s stream) readInput(name string) ([]byte, error) {
	in := s.in
	if name != standard {
		f, err := os.Open(name)
		if err != nil {
			return nil, mistake("%s", unread(name, err))
		}
		defer f.Close()
		if info, err := f.Stat(); err == nil && info.IsDir() {
			return nil, mistake("%s: this is a folder: name a file in it", name)
		}
		in = f
	}
	data, err := io.ReadAll(io.LimitReader(in, mostInput+1))
	switch {
	case err != nil:
		return nil, mistake("%s", unread(name, err))
	case len(data) > mostInput:
		return nil, mistake("%s: larger than %d MB: nothing of that size is read", name, mostInput>>20)
	}
	return data, nil
}

// unread says in one line why a file cannot be read.
func unread(name string, err error) string {
	var path *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist) && strings.ContainsAny(name, "*?["):
		return fmt.Sprintf("%s: there is no such file: no name matches the pattern", name)
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Sprintf("%s: there is no such file", name)
	case errors.Is(err, fs.ErrPermission):
		return fmt.Sprintf("%s: may not be read", name)
	case errors.As(err, &path):
		err = path.Err
	}
	return fmt.Sprintf("%s: cannot be read: %v", name, err)
}

// readJob reads a job file, or standard input for "-", whose drawings then lie
// in the current folder.
func (s stream) readJob(name string) (laminate.Job, error) {
	data, err := s.readInput(name)
	if err != nil {
		return laminate.Job{}, err
	}
	folder := filepath.Dir(name)
	if name == standard {
		name, folder = "standard input", "."
	}
	j, problems := job.Parse(name, data, func(drawing string) ([]byte, error) {
		return os.ReadFile(filepath.Join(folder, filepath.FromSlash(drawing)))
	})
	if len(problems) == 0 {
		return j, nil
	}
	var m mistakes
	for _, p := range problems {
		m = append(m, p.Error())
	}
	return j, m
}

// readPlan reads a plan.json and tells of fields it does not know.
func (s stream) readPlan(name string) (laminate.Plan, error) {
	data, err := s.readInput(name)
	if err != nil {
		return laminate.Plan{}, err
	}
	p, unknown, err := planfile.Decode(data)
	if err != nil {
		return laminate.Plan{}, mistake("%s: %v", name, err)
	}
	for _, field := range unknown {
		fmt.Fprintf(s.err, "%s: note: field %s is not known here and is left out\n", name, field)
	}
	return p, nil
}
