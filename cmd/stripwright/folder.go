package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sort"
	"strings"

	"stripwright/cmd/way"
	"stripwright/output"
)

// contentsFile lists the files of a folder with their SHA-256, one a line, as
// `sha256sum -c` reads it. By it a folder is known to be ours.
const contentsFile = "contents.txt"

// checkFolder refuses a folder that must not be replaced: one that holds what
// stripwright has not written, or has been changed since. A name of "" is no
// folder.
func checkFolder(dir string) error {
	if dir == "" {
		return nil
	}
	if dir == standard {
		return mistake("-o -: a folder is wanted: --json prints the plan")
	}
	info, err := os.Stat(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return mistake("%s", unwritten(dir, err))
	case !info.IsDir():
		return mistake("%s: this is a file: name a folder", dir)
	}
	return checkContents(dir)
}

func checkContents(dir string) error {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return mistake("%s", unwritten(dir, err))
	}
	if len(entries) == 0 {
		return nil
	}
	ours, err := readContents(dir)
	if err != nil {
		return mistake("%s: not written by stripwright: nothing in it is replaced; name another folder", dir)
	}
	for _, e := range entries {
		name := e.Name()
		sum, ok := ours[name]
		switch {
		case name == contentsFile:
		case !ok:
			return mistake("%s: it also holds %q, which stripwright has not written: move that, or name another folder", dir, name)
		case name != way.PlanFile && sum != sumOf(filepath.Join(dir, name)):
			return mistake("%s: %q has been changed since it was written: move it, or name another folder", dir, name)
		}
	}
	return nil
}

// readContents reads the list of a folder that holds a plan.json: SHA-256 by
// name.
func readContents(dir string) (map[string]string, error) {
	plan, err := os.ReadFile(filepath.Join(dir, way.PlanFile))
	if err != nil || !bytes.Contains(plan, []byte(`"stripwright-plan"`)) {
		return nil, errors.New("no plan")
	}
	data, err := os.ReadFile(filepath.Join(dir, contentsFile))
	if err != nil {
		return nil, err
	}
	ours := map[string]string{}
	for line := range strings.Lines(string(data)) {
		if sum, name, ok := strings.Cut(strings.TrimRight(line, "\r\n"), "  "); ok {
			ours[name] = sum
		}
	}
	return ours, nil
}

func sumOf(path string) string {
	data, err := os.ReadFile(path)
	if err != nil {
		return ""
	}
	return hexSum(data)
}

func hexSum(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

func contentsOf(files []output.File) []byte {
	var b bytes.Buffer
	sorted := append([]output.File(nil), files...)
	sort.Slice(sorted, func(i, j int) bool { return sorted[i].Name < sorted[j].Name })
	for _, f := range sorted {
		fmt.Fprintf(&b, "%s  %s\n", hexSum(f.Data), f.Name)
	}
	return b.Bytes()
}

// writeFolder writes the files into a temporary folder beside dir, which takes
// its place when it is whole.
func writeFolder(dir string, files []output.File) error {
	if err := checkFolder(dir); err != nil {
		return err
	}
	dir = filepath.Clean(dir)
	if real, err := filepath.EvalSymlinks(dir); err == nil {
		dir = real
	}
	parent := filepath.Dir(dir)
	if err := os.MkdirAll(parent, 0o755); err != nil {
		return mistake("%s", unwritten(dir, err))
	}
	fresh, err := os.MkdirTemp(parent, ".stripwright-")
	if err != nil {
		return mistake("%s", unwritten(dir, err))
	}
	defer os.RemoveAll(fresh)
	files = append(files[:len(files):len(files)], output.File{Name: contentsFile, Data: contentsOf(files)})
	if err := fill(fresh, files); err != nil {
		return mistake("%s", unwritten(dir, err))
	}
	if err := swap(fresh, dir); err != nil {
		return mistake("%s", unwritten(dir, err))
	}
	return nil
}

func fill(dir string, files []output.File) error {
	if err := os.Chmod(dir, 0o755); err != nil {
		return err
	}
	for _, f := range files {
		if f.Name != filepath.Base(f.Name) || !filepath.IsLocal(f.Name) {
			return fmt.Errorf("%q is no plain file name", f.Name)
		}
		out, err := os.OpenFile(filepath.Join(dir, f.Name), os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
		if err != nil {
			return err
		}
		_, err = out.Write(f.Data)
		if err := errors.Join(err, out.Close()); err != nil {
			return err
		}
	}
	return nil
}

// swap puts a whole folder in the place of dir; when that fails, what was there
// is put back.
func swap(fresh, dir string) error {
	old := fresh + "-old"
	if err := os.Rename(dir, old); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	if err := os.Rename(fresh, dir); err != nil {
		return errors.Join(err, ignoreMissing(os.Rename(old, dir)))
	}
	return os.RemoveAll(old)
}

func ignoreMissing(err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return err
}

// unwritten says in one line why something cannot be written.
func unwritten(name string, err error) string {
	var path *fs.PathError
	if errors.As(err, &path) {
		err = path.Err
	}
	return fmt.Sprintf("%s: cannot be written: %v", name, err)
}
