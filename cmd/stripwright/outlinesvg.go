package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"stripwright/geometry/drawing"
	"stripwright/output/outline"
	"stripwright/output/svg"
)

// The last line of a drawing holds the SHA-256 of all before it: by it a file is
// known to be ours and unchanged, and may be replaced.
const (
	sealOpen  = "<!-- stripwright outline, SHA-256 of all above: "
	sealClose = " -->\n"
)

func sealed(data []byte) []byte {
	return fmt.Appendf(data[:len(data):len(data)], "%s%s%s", sealOpen, hexSum(data), sealClose)
}

func sealHolds(data []byte) bool {
	i := bytes.LastIndex(data, []byte(sealOpen))
	return i >= 0 && bytes.Equal(data, sealed(data[:i]))
}

// outlineDrawing draws what was read.
func outlineDrawing(o outlineOptions, d drawing.Drawing, clears []outline.Clear) ([]byte, error) {
	r := outline.Reading{File: filepath.Base(o.file), Layers: o.layers, Drawing: d, Clear: clears}
	if o.file == standard {
		r.File = "standard input"
	}
	if o.which != nil {
		r.Which = *o.which
	}
	data, err := svg.Write(outline.Scene(r))
	if err != nil {
		return nil, mistake("%s: %v: it cannot be drawn; give --units, or move the drawing to its origin", o.file, err)
	}
	return sealed(data), nil
}

// checkDrawing refuses a file that must not be replaced: one that stripwright
// outline has not written, or that has been changed since.
func checkDrawing(name string) error {
	data, err := os.ReadFile(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return mistake("%s", unwritten(name, err))
	case !sealHolds(data):
		return mistake("%s: it exists already and is no drawing by stripwright outline, or was changed since: name another file", name)
	}
	return nil
}

// writeDrawing writes beside the file first, so that no half of a drawing is
// left, then puts the whole in its place.
func writeDrawing(name string, data []byte) error {
	if err := checkDrawing(name); err != nil {
		return err
	}
	if real, err := filepath.EvalSymlinks(name); err == nil {
		name = real
	}
	f, err := os.CreateTemp(filepath.Dir(name), ".stripwright-")
	if err != nil {
		return mistake("%s", unwritten(name, err))
	}
	defer os.Remove(f.Name())
	_, err = f.Write(data)
	if err := errors.Join(err, f.Chmod(0o644), f.Close()); err != nil {
		return mistake("%s", unwritten(name, err))
	}
	if err := os.Rename(f.Name(), name); err != nil {
		return mistake("%s", unwritten(name, err))
	}
	return nil
}
