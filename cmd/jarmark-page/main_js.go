// The program of the static site: it runs in a worker of the browser and
// answers the page's requests as `jarmark serve` does. The worker (see
// templates/site/worker.js) gives it files and hands it requests.

package main

import (
	"bytes"
	"context"
	"encoding/json"
	"net/http"
	"os"
	"runtime/debug"
	"syscall/js"

	"jarmark/internal/app/job"
	"jarmark/internal/app/site"
)

// main expects the folder and the token as arguments.
func main() {
	debug.SetGCPercent(200) // memory is given back when the tab closes
	dir, token := os.Args[1], os.Args[2]
	if _, _, err := job.NewEnv(nil); err != nil { // while the folder is being read
		panic(err)
	}
	p := &program{dir: dir, token: token}
	js.Global().Call("jarmarkReady", map[string]any{
		"serve":    js.FuncOf(p.serve),
		"renew":    js.FuncOf(func(js.Value, []js.Value) any { p.page = nil; return nil }),
		"rehearse": js.FuncOf(p.rehearse),
	})
	select {}
}

// program is the page of the folder that is mounted.
type program struct {
	dir, token string
	page       http.Handler // nil: the folder is another, or none was asked for yet
	before     rehearsal
}

func (p *program) handler() (http.Handler, error) {
	if p.page == nil {
		page, err := site.App(p.dir, p.token)
		if err != nil {
			return nil, err
		}
		p.page = page
	}
	return p.page, nil
}

// serve answers one request: method, address, headers as JSON, body, and the
// sink of the answer. It gives the function that ends the wait for it.
func (p *program) serve(_ js.Value, args []js.Value) any {
	ctx, cancel := context.WithCancel(context.Background())
	var stop js.Func
	stop = js.FuncOf(func(js.Value, []js.Value) any { cancel(); return nil })
	body := make([]byte, args[3].Length())
	js.CopyBytesToGo(body, args[3])
	var headers [][2]string
	_ = json.Unmarshal([]byte(args[2].String()), &headers) // the worker's own: what is wrong is left out
	method, address, sink := args[0].String(), args[1].String(), args[4]
	go func() {
		defer stop.Release()
		defer cancel()
		p.answer(ctx, method, address, headers, body, &answer{sink: sink, header: http.Header{}})
	}()
	return stop
}

func (p *program) answer(ctx context.Context, method, address string, headers [][2]string, body []byte, w *answer) {
	r, err := http.NewRequestWithContext(ctx, method, "http://localhost"+address, bytes.NewReader(body))
	if err != nil {
		defer w.end()
		http.Error(w, err.Error(), http.StatusBadRequest)
		return
	}
	for _, h := range headers {
		r.Header.Add(h[0], h[1])
	}
	p.answered(w, r)
}

func (p *program) answered(w ending, r *http.Request) {
	defer w.end()
	h, err := p.handler()
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	h.ServeHTTP(w, r)
}

// ending is where an answer goes; end closes it, and takes up a fault.
type ending interface {
	http.ResponseWriter
	end()
}

// answer hands what a handler writes to the worker.
type answer struct {
	sink   js.Value
	header http.Header
	wrote  bool
}

func (a *answer) Header() http.Header { return a.header }
func (a *answer) Flush()              {}

func (a *answer) WriteHeader(status int) {
	if a.wrote {
		return
	}
	a.wrote = true
	pairs := [][2]string{}
	for name, values := range a.header {
		for _, v := range values {
			pairs = append(pairs, [2]string{name, v})
		}
	}
	data, _ := json.Marshal(pairs) // strings alone: cannot fail
	a.sink.Call("head", status, string(data))
}

func (a *answer) Write(p []byte) (int, error) {
	a.WriteHeader(http.StatusOK)
	piece := js.Global().Get("Uint8Array").New(len(p))
	js.CopyBytesToJS(piece, p)
	a.sink.Call("piece", piece)
	return len(p), nil
}

// end closes the answer. A fault of the program breaks it off, as net/http
// does, and the next request is answered as before.
func (a *answer) end() {
	if fault := recover(); fault != nil {
		if fault != http.ErrAbortHandler {
			println("jarmark:", string(debug.Stack()))
		}
		a.sink.Call("broken")
		return
	}
	a.WriteHeader(http.StatusOK)
	a.sink.Call("end")
}
