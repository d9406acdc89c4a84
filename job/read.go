package job

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"gopkg.in/yaml.v3"

	"stripwright/geometry"
	"stripwright/geometry/length"
	"stripwright/laminate"
	"stripwright/laminate/material"
)

// Read reads a job file and the drawings beside it. With problems the Job is
// empty; a Job comes without problems only.
func Read(path string) (laminate.Job, []Problem) {
	data, err := readFile(path)
	if err != nil {
		return laminate.Job{}, []Problem{{File: path, Rule: "file", Text: reason(err), Cure: "check the name of the job file"}}
	}
	folder := filepath.Dir(path)
	return Parse(path, data, func(name string) ([]byte, error) {
		return readFile(filepath.Join(folder, filepath.FromSlash(name)))
	})
}

// Parse reads the text of a job file. Name is the file's name in problems; in
// the Job it stands without its folder. Drawings are asked for by open, under
// the name that the job gives, with "/" between folders: never a name that
// leads out of the job's folder.
func Parse(name string, data []byte, open func(name string) ([]byte, error)) (laminate.Job, []Problem) {
	r := &reading{jobName: name, open: open, units: length.Millimetre, drawings: map[string][]byte{}}
	r.job.File = fileRef(name, data)
	if root := r.tree(data); root != nil {
		r.whole(root)
	}
	if len(r.problems) > 0 {
		return laminate.Job{}, r.sorted()
	}
	r.job.Notes = r.notes
	return r.job, nil
}

// reading is the state of reading one job file.
type reading struct {
	jobName  string // in problems
	open     func(string) ([]byte, error)
	units    length.Unit
	problems []Problem
	notes    []laminate.Note
	drawings map[string][]byte // by the name the job gives
	job      laminate.Job

	partDrawing *drawn                                // nil: the outline is written in the job
	place       func(geometry.Region) geometry.Region // drawing to part frame
	inDrawing   geometry.Region                       // net edge before it is placed
	outlines    map[string]outline                    // patches by name
	outlineSeen []string                              // their names, in the order of the file
	fabricNodes map[string]*yaml.Node
	widthNodes  map[string][]*yaml.Node // by fabric, as its rolls
	plyNodes    []*yaml.Node            // where each ply of the schedule stands
	drawnFrom   *yaml.Node              // nil when not stated
	narrowest   *yaml.Node              // nil when not stated
	partNode    *yaml.Node
	library     material.Library     // with the job's own fibres and resins
	cores       map[string]namedCore // by name
	coreNodes   []*yaml.Node         // their names, in the order of the file
}

// mostFile is the largest file that is read, 64 MiB.
const mostFile = 64 << 20

func readFile(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	if info, err := f.Stat(); err != nil {
		return nil, err
	} else if info.IsDir() {
		return nil, errFolder
	}
	data, err := io.ReadAll(io.LimitReader(f, mostFile+1))
	if err == nil && len(data) > mostFile {
		return nil, errLarge
	}
	return data, err
}

var (
	errFolder = errors.New("this is a folder, not a file")
	errLarge  = fmt.Errorf("the file is larger than %d MB", mostFile>>20)
)

// reason gives an error of the file system in plain words, without the path.
func reason(err error) string {
	var path *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "there is no such file"
	case errors.Is(err, fs.ErrPermission):
		return "the file may not be read"
	case errors.As(err, &path):
		return "the file cannot be read: " + path.Err.Error()
	}
	return strings.TrimSpace(err.Error())
}

func fileRef(name string, data []byte) laminate.FileRef {
	sum := sha256.Sum256(data)
	return laminate.FileRef{Name: lastName(name), SHA256: hex.EncodeToString(sum[:])}
}

// lastName gives a file's name without its folders, whichever way they are
// written.
func lastName(name string) string {
	return name[strings.LastIndexAny(name, `/\`)+1:]
}
