package site

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"html/template"
	"io/fs"
	"maps"
	"slices"
	texttemplate "text/template"

	"jarmark/internal/app/job"
	"jarmark/templates"
)

// Policy is the content security policy of the outer page: what comes from
// the site itself, and the program.
const Policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data:; font-src 'self'; " +
	"connect-src 'self'; worker-src 'self'; frame-src 'self'; manifest-src 'self'; form-action 'none'; base-uri 'none'"

// Program is what the Go toolchain gives for the site.
type Program struct {
	Wasm     []byte // the program, GOOS=js GOARCH=wasm
	Exec     []byte // wasm_exec.js of that toolchain
	Licences []byte // that of the toolchain's files; may be empty
}

// Files are all files of the site by name, uncompressed. They hold the program
// and an invented sample: nothing of any maker.
func Files(p Program) (map[string][]byte, error) {
	if !bytes.HasPrefix(p.Wasm, []byte("\x00asm")) {
		return nil, errors.New("that is no WebAssembly program")
	}
	sample, err := sample()
	if err != nil {
		return nil, err
	}
	program := "jarmark-" + mark(p.Wasm) + ".wasm"
	out := map[string][]byte{program: p.Wasm, "wasm_exec.js": p.Exec, "sample.svg": sample}
	if len(p.Licences) > 0 {
		out["go-licence.txt"] = p.Licences
	}
	if out["icon.svg"], err = fs.ReadFile(templates.FS, "web/static/icon.svg"); err != nil {
		return nil, err
	}
	entries, err := fs.ReadDir(templates.Site, "site")
	if err != nil {
		return nil, err
	}
	for _, e := range entries {
		if out[e.Name()], err = fs.ReadFile(templates.Site, "site/"+e.Name()); err != nil {
			return nil, err
		}
	}
	return out, fillIn(out, program)
}

// fillIn completes the two files that name others, and the version of all.
func fillIn(files map[string][]byte, program string) error {
	names := slices.Sorted(maps.Keys(files))
	sum, shell := sha256.New(), []string{"./"}
	for _, name := range names {
		fmt.Fprintf(sum, "%s %d\n%s", name, len(files[name]), files[name])
		if name != program && name != "index.html" && name != "sw.js" && name != "go-licence.txt" {
			shell = append(shell, name)
		}
	}
	list, err := json.Marshal(shell)
	if err != nil {
		return err
	}
	data := map[string]string{"Version": hex.EncodeToString(sum.Sum(nil)[:6]), "Program": program, "Policy": Policy, "Shell": string(list)}
	page, err := template.New("index").Parse(string(files["index.html"]))
	if err != nil {
		return err
	}
	worker, err := texttemplate.New("sw").Parse(string(files["sw.js"]))
	if err != nil {
		return err
	}
	var html, js bytes.Buffer
	if err := errors.Join(page.Execute(&html, data), worker.Execute(&js, data)); err != nil {
		return err
	}
	files["index.html"], files["sw.js"] = html.Bytes(), js.Bytes()
	return nil
}

// sample is the label shown until the program is there.
func sample() ([]byte, error) {
	env, _, err := job.NewEnv(nil)
	if err != nil {
		return nil, err
	}
	svg, found := env.DesignPicture(env.Sample(), "", job.Choices{})
	if svg == nil {
		return nil, fmt.Errorf("the sample label cannot be drawn: %v", found)
	}
	return svg, nil
}

func mark(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:8])
}
