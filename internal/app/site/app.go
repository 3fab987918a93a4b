// Package site is the page without an install: the same page as `jarmark
// serve`, as a folder of static files. Its program runs in the visitor's
// browser, whose private file system (or a folder picked there) takes the place
// of the disk. cmd/jarmark-page is that program and builds the folder.
package site

import (
	"encoding/json"
	"errors"
	"io"
	"net/http"
	"os"

	"jarmark/internal/app/job"
	"jarmark/internal/app/web"
)

// filesHeader marks a request that brings files in: a form of another site
// cannot send it.
const filesHeader = "X-Jarmark-Files"

// App is the page of a folder as it runs in a browser: what `jarmark serve`
// shows, in a frame, and beside it the ways to take all files out and in.
// The token is that of web.Options.
func App(dir, token string) (http.Handler, error) {
	env, _, err := job.NewEnv(os.DirFS(dir)) // the maker's own designs that are broken are left out
	if err != nil {
		return nil, err
	}
	page, err := web.New(dir, env, web.Options{Framed: true, Token: token})
	if err != nil {
		return nil, err
	}
	mux := http.NewServeMux()
	mux.Handle("/", page)
	mux.HandleFunc("GET /files.zip", func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Type", "application/zip")
		if err := TakeOut(w, os.DirFS(dir)); err != nil {
			panic(http.ErrAbortHandler) // half a zip must not look whole
		}
	})
	mux.HandleFunc("POST /files/{name}", func(w http.ResponseWriter, r *http.Request) { bring(w, r, dir) })
	return mux, nil
}

func bring(w http.ResponseWriter, r *http.Request, dir string) {
	if r.Header.Get(filesHeader) == "" {
		tell(w, http.StatusForbidden, map[string]string{"error": "another site asked"})
		return
	}
	data, err := io.ReadAll(http.MaxBytesReader(w, r.Body, maxBytes))
	if err != nil {
		tell(w, http.StatusRequestEntityTooLarge, map[string]string{"error": "that is too much at once"})
		return
	}
	did, err := BringIn(dir, r.PathValue("name"), data)
	var no *RefusedError
	switch {
	case errors.As(err, &no):
		tell(w, http.StatusUnprocessableEntity, map[string]string{"error": no.What, "hint": no.Hint})
	case err != nil:
		tell(w, http.StatusInternalServerError, map[string]string{"error": err.Error()})
	default:
		tell(w, http.StatusOK, map[string]any{"told": did.String(), "new": did.New})
	}
}

func tell(w http.ResponseWriter, status int, v any) {
	data, _ := json.Marshal(v) // strings alone: cannot fail
	w.Header().Set("Content-Type", "application/json")
	w.Header().Set("Cache-Control", "no-store")
	w.WriteHeader(status)
	_, _ = w.Write(data)
}
