//go:build !js

package main

import (
	"bytes"
	"compress/gzip"
	"path"
	"sync"

	"github.com/andybalholm/brotli"
)

// Brotli's qualities (RFC 7932 has no levels; these are the library's, as the
// reference encoder numbers them).
const (
	best = 11
	fast = 5
)

// compressed gives .br and .gz files beside those that shrink.
func compressed(files map[string][]byte, quick bool) (map[string][]byte, error) {
	quality, level := best, gzip.BestCompression
	if quick {
		quality, level = fast, gzip.BestSpeed
	}
	out := map[string][]byte{}
	var mu sync.Mutex
	var all sync.WaitGroup
	var fault error
	for name, data := range files {
		if path.Ext(name) == ".txt" {
			continue
		}
		all.Go(func() {
			var br, gz bytes.Buffer
			b := brotli.NewWriterOptions(&br, brotli.WriterOptions{Quality: quality, LGWin: 24})
			g, err := gzip.NewWriterLevel(&gz, level)
			for _, step := range []func() error{
				func() error { _, err := b.Write(data); return err }, b.Close,
				func() error { _, err := g.Write(data); return err }, func() error { return g.Close() },
			} {
				if err == nil {
					err = step()
				}
			}
			mu.Lock()
			defer mu.Unlock()
			if err != nil {
				fault = err
			}
			out[name+".br"], out[name+".gz"] = br.Bytes(), gz.Bytes()
		})
	}
	all.Wait()
	return out, fault
}
