package pdf_test

import (
	"bytes"
	"compress/zlib"
	"encoding/xml"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// objects is a PDF read back, object by object, without the writer.
type objects struct {
	t    *testing.T
	file []byte
	by   map[int]string // what stands between "N 0 obj" and "endobj", streams unpacked
	data map[int]string
}

var (
	objectAt  = regexp.MustCompile(`(?s)(\d+) 0 obj\n(.*?)\nendobj\n`)
	reference = regexp.MustCompile(`^(\d+) 0 R`)
)

func readObjects(t *testing.T, file []byte) *objects {
	t.Helper()
	o := &objects{t: t, file: file, by: map[int]string{}, data: map[int]string{}}
	for _, m := range objectAt.FindAllSubmatch(file, -1) {
		n, _ := strconv.Atoi(string(m[1]))
		dict, stream, is := bytes.Cut(m[2], []byte("stream\n"))
		o.by[n] = string(dict)
		if !is {
			continue
		}
		stream, whole := bytes.CutSuffix(stream, []byte("\nendstream"))
		if long, _ := strconv.Atoi(strings.TrimSpace(after(string(dict), "/Length"))); !whole || long != len(stream) {
			t.Errorf("object %d: a stream of %d bytes says %d (6.1.7)", n, len(stream), long)
		}
		if strings.Contains(string(dict), "/FlateDecode") {
			z, err := zlib.NewReader(bytes.NewReader(stream))
			if err != nil {
				t.Fatal(err)
			}
			if stream, err = io.ReadAll(z); err != nil {
				t.Fatal(err)
			}
		}
		o.data[n] = string(stream)
	}
	return o
}

// after gives the plain value behind a key: a number, a name, a string, a reference.
func after(dict, key string) string {
	for rest := dict; ; {
		_, found, ok := strings.Cut(rest, key)
		if !ok {
			return ""
		}
		rest = found
		if r := strings.TrimLeft(found, " \n"); r != found || strings.HasPrefix(found, "/") || strings.HasPrefix(found, "(") || strings.HasPrefix(found, "[") {
			end := strings.IndexAny(r[min(1, len(r)):], "/\n>[]")
			switch {
			case strings.HasPrefix(r, "("):
				for end = 0; r[end] != ')' || r[end-1] == '\\'; {
					end++
				}
			case strings.HasPrefix(r, "["):
				end = strings.IndexByte(r, ']')
			}
			return r[:end+1]
		}
	}
}

// follow gives the number of the object a key leads to.
func (o *objects) follow(dict, key string) int {
	o.t.Helper()
	m := reference.FindStringSubmatch(after(dict, key))
	if m == nil {
		o.t.Fatalf("%s leads nowhere in %s", key, dict)
	}
	n, _ := strconv.Atoi(m[1])
	if _, ok := o.by[n]; !ok {
		o.t.Fatalf("%s leads to object %d, which is none", key, n)
	}
	return n
}

// catalog and info are the two dictionaries the trailer leads to.
func (o *objects) catalog() string { return o.by[o.follow(o.trailer(), "/Root")] }
func (o *objects) info() string    { return o.by[o.follow(o.trailer(), "/Info")] }
func (o *objects) trailer() string {
	return string(o.file[bytes.LastIndex(o.file, []byte("trailer")):])
}

// pages are the dictionaries of the pages, in order.
func (o *objects) pages() (out []string) {
	for _, m := range regexp.MustCompile(`(\d+) 0 R`).FindAllStringSubmatch(after(o.by[o.follow(o.catalog(), "/Pages")], "/Kids"), -1) {
		n, _ := strconv.Atoi(m[1])
		out = append(out, o.by[n])
	}
	return out
}

// says gives the texts of an XMP packet by the local name of their elements.
func (o *objects) says() map[string]string {
	o.t.Helper()
	n := o.follow(o.catalog(), "/Metadata")
	if d := o.by[n]; !strings.Contains(d, "/Type /Metadata /Subtype /XML") || strings.Contains(d, "Filter") {
		o.t.Errorf("metadata: %s", d)
	}
	out := map[string]string{}
	dec, name := xml.NewDecoder(strings.NewReader(o.data[n])), ""
	for {
		tok, err := dec.Token()
		if err == io.EOF {
			return out
		}
		if err != nil {
			o.t.Fatalf("XMP: %v", err)
		}
		switch tok := tok.(type) {
		case xml.StartElement:
			if tok.Name.Space != "http://www.w3.org/1999/02/22-rdf-syntax-ns#" {
				name = tok.Name.Space + tok.Name.Local
			}
		case xml.CharData:
			if s := strings.TrimSpace(string(tok)); s != "" {
				out[name] += s
			}
		}
	}
}
