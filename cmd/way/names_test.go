package way

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"stripwright/laminate"
)

// A file name that Linux, macOS and Windows all take: POSIX.1-2017 §3.282,
// portable filename character set, and one dot before a plain suffix.
var portable = regexp.MustCompile(`^[A-Za-z0-9_-][A-Za-z0-9._-]*\.[a-z]+$`)

// Signs, quotes, commas, slashes and colons in the names of part, fabric and
// roll: plan.json keeps them as they are written, files are legal everywhere.
func TestSpecialNames(t *testing.T) {
	p := planned(t, "job_names_special")
	if p.Title != `Hatch ±45° / Ø8,5 – no: 3; "A,B"` || p.Fabrics[0].Name != "Gewebe 0/90°" || p.Rolls[0].Roll != "P 1.a" {
		t.Errorf("names changed: %q, %q, %q", p.Title, p.Fabrics[0].Name, p.Rolls[0].Roll)
	}
	holdFiles(t, p)
}

// Names that YAML, JSON and spreadsheets like to take for something else.
func TestNamesLikeNumbers(t *testing.T) {
	p := planned(t, "text_ids")
	for i, want := range []string{"on", "1e5", "007", "~x", "1.10"} {
		if p.Fabrics[i].Name != want {
			t.Errorf("fabric %q, want %q", p.Fabrics[i].Name, want)
		}
	}
	holdFiles(t, p)
}

// holdFiles reads every file of a plan as its kind must be readable.
func holdFiles(t *testing.T, p laminate.Plan) {
	t.Helper()
	files, err := Sheets(p)
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, f := range files {
		if !portable.MatchString(f.Name) || seen[strings.ToLower(f.Name)] {
			t.Errorf("file name %q is not portable, or used twice", f.Name)
		}
		seen[strings.ToLower(f.Name)] = true
		switch filepath.Ext(f.Name) {
		case ".json":
			var back struct{ Title string }
			if err := json.Unmarshal(f.Data, &back); err != nil || back.Title != p.Title {
				t.Errorf("%s: %v, title %q", f.Name, err, back.Title)
			}
		case ".svg":
			holdXML(t, f.Name, f.Data)
		case ".dxf":
			holdDXF(t, f.Name, f.Data)
		case ".csv":
			holdCSV(t, f.Name, f.Data, p)
		}
	}
}

func holdXML(t *testing.T, name string, data []byte) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(data))
	for {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			return
		} else if err != nil {
			t.Errorf("%s: %v", name, err)
			return
		}
	}
}

// R12 text is ASCII, and symbol names (here layers, group code 8) are of
// letters, digits, $, _ and - (DXF reference of release 12, from memory).
func holdDXF(t *testing.T, name string, data []byte) {
	t.Helper()
	for i, b := range data {
		if b > 126 || b < 32 && b != '\n' && b != '\r' {
			t.Errorf("%s: byte %#x at %d", name, b, i)
			return
		}
	}
	lines := strings.Split(strings.ReplaceAll(string(data), "\r\n", "\n"), "\n")
	layer := regexp.MustCompile(`^[A-Z0-9$_-]{1,31}$`)
	found := 0
	for i := 0; i+1 < len(lines); i += 2 {
		if strings.TrimSpace(lines[i]) == "8" {
			found++
			if !layer.MatchString(lines[i+1]) {
				t.Errorf("%s: layer %q", name, lines[i+1])
			}
		}
	}
	if found == 0 {
		t.Errorf("%s: nothing on any layer", name)
	}
}

// Every row has all columns, fabrics are told in full, and no cell starts a
// formula or is taken for a number: each name stands behind a word.
func holdCSV(t *testing.T, name string, data []byte, p laminate.Plan) {
	t.Helper()
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	told := name != "left-over.csv" // a fabric may leave nothing over
	if err != nil || len(rows) < 1 || told && len(rows) < 2 {
		t.Errorf("%s: %v, %d rows", name, err, len(rows))
		return
	}
	for _, f := range p.Fabrics {
		found := false
		for _, row := range rows[1:] {
			for _, cell := range row {
				found = found || cell == "fabric "+f.Name
				if strings.HasPrefix(cell, "=") || strings.HasPrefix(cell, "@") || strings.HasPrefix(cell, "+") {
					t.Errorf("%s: cell %q starts a formula", name, cell)
				}
			}
		}
		if told && !found {
			t.Errorf("%s: fabric %q is not told", name, f.Name)
		}
	}
}
