// Package stripwright_test holds what concerns the repository as a whole.
package stripwright_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const module = "stripwright/"

// rooms lists, for each room, the rooms it may import from; it may always
// import from itself. A package belongs to the room with the longest name that
// it lies in.
var rooms = map[string][]string{
	"geometry":       {},
	"laminate":       {"geometry"},
	"laminate/check": {"laminate", "geometry"},
	"job":            {"laminate", "geometry"},
	"nest":           {"laminate", "geometry"},
	"output":         {"laminate", "geometry"},
	"cmd":            {"laminate/check", "job", "nest", "output", "laminate", "geometry"},
}

// barred lists what a package must do without although its room may have it.
var barred = []struct{ from, to, why string }{
	{"laminate/check", "geometry/band", "the check shares no code with the planning"},
	{"laminate/check", "geometry/grow", "the check shares no code with the planning"},
	{"geometry", "github.com/spf13/cobra", "only cmd knows the command line"},
	{"laminate", "github.com/spf13/cobra", "only cmd knows the command line"},
	{"job", "github.com/spf13/cobra", "only cmd knows the command line"},
	{"nest", "github.com/spf13/cobra", "only cmd knows the command line"},
	{"output", "github.com/spf13/cobra", "only cmd knows the command line"},
	{"laminate", "github.com/tdewolff/canvas", "drawing is for output"},
	{"job", "github.com/tdewolff/canvas", "drawing is for output"},
	{"nest", "github.com/tdewolff/canvas", "drawing is for output"},
	{"cmd", "github.com/tdewolff/canvas", "drawing is for output"},
}

// roomOf gives the room of a package path without the module's name, "" for
// none.
func roomOf(pkg string) string {
	for dir := pkg; dir != "."; dir = path.Dir(dir) {
		if _, ok := rooms[dir]; ok {
			return dir
		}
	}
	return ""
}

func inside(pkg, dir string) bool { return pkg == dir || strings.HasPrefix(pkg, dir+"/") }

// fault says what is wrong with a package's import, "" for nothing.
func fault(pkg, imported string) string {
	own, ours := strings.CutPrefix(imported, module)
	for _, b := range barred {
		if inside(pkg, b.from) && inside(own, b.to) {
			return b.why
		}
	}
	if !ours {
		return ""
	}
	from, to := roomOf(pkg), roomOf(own)
	switch {
	case from == "":
		return "the package lies in no room"
	case from == "geometry" && pkg == "geometry":
		return "geometry stands on its own"
	case from != to && !slices.Contains(rooms[from], to):
		return from + " may not import from " + to
	}
	return ""
}

// Imports run upward only: geometry, laminate, then job, nest, check and output
// beside one another, then cmd. Tests may look farther.
func TestImportDirection(t *testing.T) {
	seen := map[string]bool{}
	err := filepath.WalkDir(".", func(file string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "testdata" || d.Name() == "out" || strings.HasPrefix(d.Name(), ".") && d.Name() != ".") {
			return filepath.SkipDir
		}
		if filepath.Ext(file) != ".go" || strings.HasSuffix(file, "_test.go") {
			return nil
		}
		pkg := path.Dir(filepath.ToSlash(file))
		seen[roomOf(pkg)] = true
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, i := range f.Imports {
			imported, err := strconv.Unquote(i.Path.Value)
			if err != nil {
				return err
			}
			if why := fault(pkg, imported); why != "" {
				t.Errorf("%s imports %s: %s", file, imported, why)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for room := range rooms {
		if !seen[room] {
			t.Errorf("room %s holds no package: has it moved?", room)
		}
	}
}

// The rule itself can fail.
func TestFault(t *testing.T) {
	for _, c := range []struct {
		pkg, imported string
		bad           bool
	}{
		{"geometry/band", "stripwright/geometry", false},
		{"geometry", "stripwright/geometry/band", true},
		{"geometry/drawing", "stripwright/laminate", true},
		{"laminate/order", "stripwright/laminate", false},
		{"laminate/order", "stripwright/laminate/check", true},
		{"laminate/check", "stripwright/laminate/planfile", false},
		{"laminate/check", "stripwright/geometry/band", true},
		{"laminate/check", "stripwright/geometry/grow", true},
		{"nest/stagger", "stripwright/nest/layout", false},
		{"nest/stagger", "stripwright/job", true},
		{"job", "stripwright/nest", true},
		{"output/svg", "stripwright/laminate/check", true},
		{"output", "github.com/spf13/cobra", true},
		{"cmd/stripwright", "github.com/spf13/cobra", false},
		{"cmd/bench", "stripwright/output/list", false},
		{"nest/roll", "github.com/tdewolff/canvas/renderers", true},
		{"testdata/outside", "stripwright/nest", true},
	} {
		if why := fault(c.pkg, c.imported); (why != "") != c.bad {
			t.Errorf("%s importing %s: %q", c.pkg, c.imported, why)
		}
	}
}
