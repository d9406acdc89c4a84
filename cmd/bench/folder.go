package main

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// entry is a job of the folder with what is known of it.
type entry struct {
	name  string // without .yaml
	path  string
	known known
}

// known is a line of best_known.csv; zero values are not known.
type known struct {
	infeasible bool
	best       float64
	bound      float64
	practice   float64
	stagger    float64 // of an infeasible job
}

// readFolder lists the jobs of a folder by name.
func readFolder(dir string) ([]entry, error) {
	paths, err := filepath.Glob(filepath.Join(dir, "*.yaml"))
	if err != nil {
		return nil, err
	}
	if len(paths) == 0 {
		return nil, fmt.Errorf("%s: no job files (*.yaml) in it", dir)
	}
	best, err := readKnown(filepath.Join(dir, "best_known.csv"))
	if err != nil {
		return nil, err
	}
	var out []entry
	for _, p := range paths {
		name := strings.TrimSuffix(filepath.Base(p), ".yaml")
		out = append(out, entry{name, p, best[name]})
	}
	return out, nil
}

// readKnown reads best_known.csv by the names of its columns; without the file
// nothing is known.
func readKnown(path string) (map[string]known, error) {
	f, err := os.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		return nil, err
	}
	column := map[string]int{}
	for i, name := range rows[0] {
		column[name] = i
	}
	out := map[string]known{}
	for _, row := range rows[1:] {
		number := func(name string) float64 {
			v, _ := strconv.ParseFloat(row[column[name]], 64)
			return v
		}
		k := known{best: number("best"), bound: number("bound"), practice: number("practice"), infeasible: row[column["status"]] == "infeasible"}
		if k.infeasible {
			k.stagger = largestIn(row[column["note"]])
		}
		out[row[column["job"]]] = k
	}
	return out, nil
}

// largestIn reads the number after "largest stagger" in a note.
func largestIn(note string) float64 {
	_, rest, _ := strings.Cut(note, "largest stagger ")
	number, _, _ := strings.Cut(rest, " ")
	v, _ := strconv.ParseFloat(number, 64)
	return v
}
