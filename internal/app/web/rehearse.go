package web

import (
	"bytes"
	"encoding/json"
	"net/http"
	"os"
	"path/filepath"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
	"jarmark/internal/law/label"
)

// Rehearsal are the questions a maker asks first: the kitchen's form, its labels
// one by one (on the first batch of the folder, or the sample), and a sheet of
// them. Asked while nobody waits, they have the tables read, and the code made
// ready, by the time the maker asks. Nothing of them is written.
func Rehearsal(dir, token string) (out []*http.Request) {
	text, err := os.ReadFile(filepath.Join(dir, store.KitchenName))
	if err != nil {
		text = job.SampleKitchen().Data
	}
	ask := func(method, address string, v any) {
		body, _ := json.Marshal(v) // strings alone: cannot fail
		r, err := http.NewRequest(method, "http://localhost"+address, bytes.NewReader(body))
		if err != nil {
			return // our own addresses
		}
		r.Header.Set("Content-Type", jsonType)
		r.Header.Set(tokenHeader, token)
		out = append(out, r)
	}
	ask(http.MethodGet, "/kitchen", nil)
	for _, piece := range label.Pieces {
		ask(http.MethodPost, "/do/look", lookAsk{File: store.KitchenName, Text: string(text), Pieces: []string{string(piece)}})
	}
	ask(http.MethodPost, "/do/print", printAsk{File: store.KitchenName, Text: string(text), Pieces: []string{string(label.Wrap)}})
	return out
}
