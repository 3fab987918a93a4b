package web

import (
	"bytes"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/unit"
)

const testToken = "of-this-run"

const plum = `# my own words
name = "Plum jam"
kind = "jam"
made = 2026-09-05

[[ingredient]]
name = "plums"   # from the hedge
amount = "2 kg"

# weighed twice
[[ingredient]]
name = "sugar"
amount = "1.6 kg"

[process]
method = "boiling water"
minutes = 10

[[fill]]
jar = "8 fl oz"
count = 8
sealed = 8
declared = "9 oz"
`

const thornfield = `name = "Thornfield Lane Preserves"
address = ["14 Thornfield Lane", "Millbrook, OR 97000"]
place = "us"
record_url = "https://thornfield.example/jam"
`

// testDay is the day of every test; the page never reads the clock then.
func testDay() unit.Date { return unit.Date{Year: 2026, Month: 10, Day: 1} }

// kitchenDir is a folder with a kitchen and one batch.
func kitchenDir(t testing.TB) string {
	t.Helper()
	dir := t.TempDir()
	put(t, dir, "kitchen.toml", thornfield)
	put(t, dir, "plum.toml", plum)
	return dir
}

func put(t testing.TB, dir, name, text string) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func get(t testing.TB, dir, name string) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(dir, name))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func newEnv(t testing.TB) *job.Env {
	t.Helper()
	env, found, err := job.NewEnv(nil)
	if err != nil || found.HasErrors() {
		t.Fatal(found, err)
	}
	return env
}

func handlerOf(t testing.TB, dir string) http.Handler {
	t.Helper()
	h, err := New(dir, newEnv(t), Options{Today: testDay, Token: testToken})
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// request is one request as a browser on this machine sends it.
func request(method, path string, body any) *http.Request {
	var r io.Reader
	if body != nil {
		data, _ := json.Marshal(body) // of the test's own values: cannot fail
		r = bytes.NewReader(data)
	}
	q := httptest.NewRequest(method, "http://127.0.0.1:4321"+path, r)
	if body != nil {
		q.Header.Set("Content-Type", jsonType)
		q.Header.Set(tokenHeader, testToken)
		q.Header.Set("Origin", "http://127.0.0.1:4321")
		q.Header.Set("Sec-Fetch-Site", "same-origin")
	}
	return q
}

func do(h http.Handler, q *http.Request) *httptest.ResponseRecorder {
	w := httptest.NewRecorder()
	h.ServeHTTP(w, q)
	return w
}

// call posts a value and decodes the answer; the status must be as wanted.
func call[T any](t testing.TB, h http.Handler, path string, body any, status int) (out T) {
	t.Helper()
	w := do(h, request("POST", path, body))
	if w.Code != status {
		t.Fatalf("POST %s: %d, want %d: %s", path, w.Code, status, w.Body)
	}
	if err := json.Unmarshal(w.Body.Bytes(), &out); err != nil {
		t.Fatalf("POST %s: %v in %s", path, err, w.Body)
	}
	return out
}

func TestPages(t *testing.T) {
	h := handlerOf(t, kitchenDir(t))
	for path, want := range map[string]string{
		"/": "Plum jam", "/new": "What is it called?", "/batch/plum.toml": "from the hedge", "/kitchen": "14 Thornfield Lane",
		"/pack": "Packing list", "/trace": "Who has the jars?", "/trace?lot=nonesuch": "no batch has the lot",
		"/picture/sheet/letter-plain": "<svg", "/picture/design/orchard": "<svg", "/picture/design/orchard?batch=plum.toml": "<svg",
		"/picture/piece/lid": "<svg", "/picture/batch/plum.toml": "<svg", "/static/1/editor.js": "import", "/favicon.ico": "<svg",
	} {
		w := do(h, request("GET", path, nil))
		if w.Code != http.StatusOK || !strings.Contains(w.Body.String(), want) {
			t.Errorf("%s: %d, want %q in\n%.300s", path, w.Code, want, w.Body)
		}
	}
	for _, path := range []string{"/nowhere", "/batch/none.toml", "/batch/kitchen.toml", "/picture/design/none", "/picture/piece/none",
		"/picture/sheet/none", "/picture/what/none", "/static/1/none.js", "/font/1/OFL-fraunces.txt", "/pack/list.doc", "/trace/list.csv?lot=x"} {
		if w := do(h, request("GET", path, nil)); w.Code != http.StatusNotFound {
			t.Errorf("%s: %d, want 404", path, w.Code)
		}
	}
}

// Every field the form offers must be one the readers know: a value set there
// may be wrong, but its key is never unknown.
func TestFormKnowsItsFile(t *testing.T) {
	h := handlerOf(t, kitchenDir(t))
	for file, sections := range map[string][]section{"plum.toml": batchForm, "kitchen.toml": kitchenForm} {
		for _, s := range sections {
			for _, g := range s.Groups {
				for _, f := range g.Fields {
					changes := []change{}
					path := strings.TrimPrefix(g.Table+"."+f.Key, ".")
					if g.Rows {
						changes = append(changes, change{Do: "add", Path: g.Table})
						path = g.Table + "[0]." + f.Key
					}
					text := map[bool]string{true: "", false: "serve = \"toast\"\n"}[file == "kitchen.toml"]
					a := call[lookAnswer](t, h, "/do/look", lookAsk{File: file, Text: text, Changes: append(changes, change{Do: "set", Path: path, Value: "1"})}, 200)
					for _, d := range a.Findings {
						if d.Code == "unknown-key" || d.Code == "edit-refused" {
							t.Errorf("%s %s: %s", file, path, d.Message)
						}
					}
					if !strings.Contains(a.Text, f.Key) {
						t.Errorf("%s %s was not written: %s", file, path, a.Text)
					}
				}
			}
		}
	}
}

func TestNewBatch(t *testing.T) {
	dir := kitchenDir(t)
	h := handlerOf(t, dir)
	post := func(form string) *httptest.ResponseRecorder {
		q := httptest.NewRequest("POST", "http://localhost:4321/new", strings.NewReader(form+"&token="+testToken))
		q.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		q.Header.Set("Origin", "http://localhost:4321")
		return do(h, q)
	}
	for i, want := range []string{"./batch/quince-jelly.toml", "./batch/quince-jelly-2.toml"} {
		if w := post("name=Quince+jelly&kind=jelly&made=2026-10-03"); w.Code != 303 || w.Header().Get("Location") != want {
			t.Fatalf("%d: %d %s", i, w.Code, w.Header().Get("Location"))
		}
	}
	text := get(t, dir, "quince-jelly.toml")
	if !strings.Contains(text, `name = "Quince jelly"`) || !strings.Contains(text, `kind = "jelly"`) || !strings.Contains(text, "made = 2026-10-03") {
		t.Error(text)
	}
	for _, form := range []string{"name=&kind=jam&made=2026-10-03", "name=Plum&kind=jam&made=soon", "name=%F0%9F%8D%93&kind=jam&made=2026-10-03"} {
		if w := post(form); w.Code != 422 || !strings.Contains(w.Body.String(), `aria-invalid="true"`) {
			t.Errorf("%s: %d", form, w.Code)
		}
	}
	if w := post("name=Kitchen&kind=jam&made=2026-10-03"); w.Header().Get("Location") == "./batch/kitchen.toml" || get(t, dir, "kitchen.toml") != thornfield {
		t.Error("a batch named kitchen must not take the kitchen's file")
	}
}

func TestPackAndTraceShowWhereJarsGo(t *testing.T) {
	dir := kitchenDir(t)
	put(t, dir, "plum.toml", plum+"\n[[gift]]\nto = \"Hedy & <b>\"\njars = 2\n[[market]]\nevent = \"Saturday\"\ndate = 2026-10-03\njars = 3\ncame_home = 1\n")
	h := handlerOf(t, dir)
	w := do(h, request("GET", "/pack", nil))
	if !strings.Contains(w.Body.String(), "Hedy &amp; &lt;b&gt;") {
		t.Errorf("the gift is not listed, or not escaped: %s", w.Body)
	}
	lot := call[lookAnswer](t, h, "/do/look", lookAsk{File: "plum.toml", Text: get(t, dir, "plum.toml")}, 200)
	if !strings.Contains(lot.Facts, "8 ×") {
		t.Error(lot.Facts)
	}
	w = do(h, request("GET", "/trace", nil))
	_, after, _ := strings.Cut(w.Body.String(), "./trace?lot=")
	id, _, _ := strings.Cut(after, `"`)
	w = do(h, request("GET", "/trace?lot="+id, nil))
	if !strings.Contains(w.Body.String(), "Hedy") || !strings.Contains(w.Body.String(), "1 came home") {
		t.Errorf("lot %s: %s", id, w.Body)
	}
	for _, path := range []string{"/pack/list.csv", "/pack/list.txt", "/pack/list.pdf", "/trace/list.pdf?lot=" + id} {
		if w := do(h, request("GET", path, nil)); w.Code != 200 || w.Body.Len() < 50 {
			t.Errorf("%s: %d, %d bytes", path, w.Code, w.Body.Len())
		}
	}
}
