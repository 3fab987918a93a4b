package pdf

import (
	"bytes"
	"compress/zlib"
	"sync"
)

// packers are compressors in waiting: setting one up costs more than packing a
// light page.
var packers = sync.Pool{New: func() any {
	w, err := zlib.NewWriterLevel(nil, zlib.BestSpeed)
	if err != nil {
		panic(err) // the level is a constant of the package
	}
	return w
}}

// deflate appends data to out as FlateDecode reads it (ISO 32000-1, 7.4.4).
func deflate(out, data []byte) ([]byte, error) {
	w := packers.Get().(*zlib.Writer)
	defer packers.Put(w)
	b := bytes.NewBuffer(out)
	w.Reset(b)
	if _, err := w.Write(data); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}
