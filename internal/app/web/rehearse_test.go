package web

import (
	"fmt"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/law/label"
)

// The rehearsal is answered in a folder of any kind, draws every piece and a
// sheet, and writes nothing.
func TestRehearsal(t *testing.T) {
	folders := map[string]func(dir string){
		"an empty folder": func(string) {},
		"the demo":        func(dir string) { must(t, os.CopyFS(dir, os.DirFS("../../../testdata/demo"))) },
		"a kitchen that is none": func(dir string) {
			must(t, os.WriteFile(filepath.Join(dir, "kitchen.toml"), []byte("name = [\xff"), 0o600))
		},
	}
	for name, fill := range folders {
		dir := t.TempDir()
		fill(dir)
		before := all(t, dir)
		env, _, err := job.NewEnv(os.DirFS(dir))
		must(t, err)
		page, err := New(dir, env, Options{Framed: true, Token: testToken})
		must(t, err)
		pieces := 0
		for _, q := range Rehearsal(dir, testToken) {
			w := httptest.NewRecorder()
			page.ServeHTTP(w, q)
			if broken := strings.HasPrefix(name, "a kitchen"); !broken && w.Code != http.StatusOK {
				t.Errorf("%s: %s %s: %d %.300s", name, q.Method, q.URL, w.Code, w.Body)
			}
			if strings.Contains(w.Body.String(), `"svg":"`) {
				pieces++
			}
		}
		if name == "the demo" && pieces < len(label.Pieces)-1 { // no sign is asked of every batch
			t.Errorf("%s: %d pieces drawn", name, pieces)
		}
		if after := all(t, dir); after != before {
			t.Errorf("%s: %s, was %s", name, after, before)
		}
	}
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// all are the files of a folder with what they hold.
func all(t *testing.T, dir string) string {
	t.Helper()
	var b strings.Builder
	must(t, filepath.WalkDir(dir, func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			data, _ := os.ReadFile(name)
			fmt.Fprintf(&b, "%s %d %q\n", name, d.Type(), data)
		}
		return err
	}))
	return b.String()
}
