package job

import (
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the messages that the wrong jobs give now")

// Every wrong job of testdata/wrong gives the messages in the text file beside
// it, word for word. A message names line, rule and cure.
func TestMessages(t *testing.T) {
	paths, err := filepath.Glob("testdata/wrong/*.yaml")
	if err != nil || len(paths) < 25 {
		t.Fatalf("%d wrong jobs, %v", len(paths), err)
	}
	for _, path := range paths {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		_, problems := Parse(filepath.Base(path), data, func(string) ([]byte, error) { return nil, fs.ErrNotExist })
		if len(problems) == 0 {
			t.Errorf("%s is read without a problem", path)
			continue
		}
		var says strings.Builder
		for _, p := range problems {
			says.WriteString(p.Error() + "\n")
			if p.Rule == "" || p.Text == "" || p.Cure == "" || strings.HasSuffix(p.Text, ".") || strings.Contains(p.Error(), "\n") || strings.Contains(p.Error(), "%!") {
				t.Errorf("%s: a message without rule, text or cure, or in more than a line: %q", path, p)
			}
		}
		golden := strings.TrimSuffix(path, ".yaml") + ".txt"
		if *update {
			if err := os.WriteFile(golden, []byte(says.String()), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(golden)
		if err != nil {
			t.Fatal(err)
		}
		if says.String() != string(want) {
			t.Errorf("%s says\n%s\nwant\n%s", path, says.String(), want)
		}
	}
}
