//go:build !js

package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"jarmark/internal/draw/face"
)

// cuts are lines of the standard library that keep in the program what it
// never calls, each with what stands there instead in the browser's program.
var cuts = []struct{ file, line, instead, what string }{
	// Where text/template calls a method by its name: because of this one line
	// the linker keeps every exported method of every type. Our pages call none
	// (TestPagesCallNoMethods): an eighth smaller to load, and sooner started.
	{"text/template/exec.go", "method := ptr.MethodByName(fieldName)", "method := (reflect.Value{})", "an eighth"},
	// The letters of every script of the world, which a pattern may name: ours name
	// letters of any script (TestPatternsNameNoScript).
	{"regexp/syntax/parse.go", "if t := unicode.Scripts[name]; t != nil {\n\t\treturn t, unicode.FoldScript[name], +1\n\t}", "", "a hundredth"},
}

// stubs are packages of the standard library that others import and nothing in
// the browser's program calls, each with what stands in their place.
var stubs = []struct{ dir, text, what string }{
	// fpdf can write its templates to a file; no page does.
	{"encoding/gob", `package gob

import (
	"errors"
	"io"
)

var errLeftOut = errors.New("encoding/gob is left out of the browser's program")

type (
	Encoder    struct{}
	Decoder    struct{}
	GobEncoder interface{ GobEncode() ([]byte, error) }
	GobDecoder interface{ GobDecode([]byte) error }
)

func NewEncoder(io.Writer) *Encoder { return &Encoder{} }
func NewDecoder(io.Reader) *Decoder { return &Decoder{} }
func Register(any)                  {}
func (*Encoder) Encode(any) error   { return errLeftOut }
func (*Decoder) Decode(any) error   { return errLeftOut }
`, "a two hundredth"},
	// fpdf can read GIF pictures; it is given none.
	{"image/gif", `package gif

import (
	"errors"
	"image"
	"io"
)

var errLeftOut = errors.New("image/gif is left out of the browser's program")

func Decode(io.Reader) (image.Image, error) { return nil, errLeftOut }
`, "a three hundredth"},
	// Connections in cipher, with all their keys and certificates: the browser keeps
	// them.
	{"crypto/tls", `package tls

import (
	"context"
	"errors"
	"net"
)

var errLeftOut = errors.New("crypto/tls is left out of the browser's program")

const (
	VersionTLS10, VersionTLS11, VersionTLS12, VersionTLS13 = 0x0301, 0x0302, 0x0303, 0x0304
	TLS_ECDHE_RSA_WITH_AES_128_GCM_SHA256                  = 0xc02f
	TLS_ECDHE_ECDSA_WITH_AES_128_GCM_SHA256                = 0xc02b
)

type (
	ClientHelloInfo struct {
		ServerName      string
		SupportedProtos []string
		Conn            net.Conn
	}
	Certificate struct {
		Certificate [][]byte
		PrivateKey  any
	}
	ClientSessionCache any
	Config             struct {
		Certificates       []Certificate
		GetCertificate     func(*ClientHelloInfo) (*Certificate, error)
		GetConfigForClient func(*ClientHelloInfo) (*Config, error)
		RootCAs            any
		NextProtos         []string
		ServerName         string
		InsecureSkipVerify bool
		PreferServerCipherSuites bool
		CipherSuites       []uint16
		MinVersion         uint16
		MaxVersion         uint16
		ClientSessionCache ClientSessionCache

		EncryptedClientHelloConfigList []byte
	}
	ConnectionState struct {
		Version, CipherSuite       uint16
		HandshakeComplete          bool
		DidResume                  bool
		NegotiatedProtocol         string
		NegotiatedProtocolIsMutual bool
		ServerName                 string
	}
	Conn              struct{ net.Conn }
	Dialer            struct {
		NetDialer *net.Dialer
		Config    *Config
	}
	RecordHeaderError struct {
		Msg          string
		RecordHeader [5]byte
		Conn         net.Conn
	}
)

func (RecordHeaderError) Error() string                 { return errLeftOut.Error() }
func (c *Config) Clone() *Config                        { return c }
func (*Conn) Handshake() error                          { return errLeftOut }
func (*Conn) HandshakeContext(context.Context) error    { return errLeftOut }
func (*Conn) ConnectionState() (s ConnectionState)      { return s }
func (*Conn) VerifyHostname(string) error               { return errLeftOut }
func (c *Conn) NetConn() net.Conn                       { return c.Conn }
func (*Conn) CloseWrite() error                         { return errLeftOut }
func Client(c net.Conn, _ *Config) *Conn                { return &Conn{c} }
func Server(c net.Conn, _ *Config) *Conn                { return &Conn{c} }
func NewListener(l net.Listener, _ *Config) net.Listener { return l }
func Listen(_, _ string, _ *Config) (net.Listener, error) { return nil, errLeftOut }
func Dial(_, _ string, _ *Config) (*Conn, error)        { return nil, errLeftOut }
func DialWithDialer(*net.Dialer, string, string, *Config) (*Conn, error) {
	return nil, errLeftOut
}
func (*Dialer) DialContext(context.Context, string, string) (net.Conn, error) {
	return nil, errLeftOut
}
func LoadX509KeyPair(_, _ string) (c Certificate, _ error) { return c, errLeftOut }
func X509KeyPair(_, _ []byte) (c Certificate, _ error)     { return c, errLeftOut }
func NewLRUClientSessionCache(int) ClientSessionCache      { return nil }
`, "a twelfth"},
	// Names of hosts in other scripts: the browser keeps the connections, and the
	// pages speak to their own origin alone.
	{"vendor/golang.org/x/net/idna", `package idna

type Profile struct{}

var Lookup, Punycode, Display, Registration = &Profile{}, &Profile{}, &Profile{}, &Profile{}

func (*Profile) ToASCII(s string) (string, error)   { return s, nil }
func (*Profile) ToUnicode(s string) (string, error) { return s, nil }
func ToASCII(s string) (string, error)              { return s, nil }
func ToUnicode(s string) (string, error)            { return s, nil }
`, "an eightieth"},
}

// stubbed puts the stubs into an overlay, one file for all of a package's.
func stubbed(dir, root string, replace map[string]string) error {
	for i, s := range stubs {
		files, err := filepath.Glob(filepath.Join(root, "src", filepath.FromSlash(s.dir), "*.go"))
		if err != nil || len(files) == 0 {
			fmt.Fprintf(os.Stderr, "note: this Go has no %s: the program is %s larger\n", s.dir, s.what)
			continue
		}
		to := filepath.Join(dir, fmt.Sprintf("stub%d.go", i))
		if err := os.WriteFile(to, []byte(s.text), 0o600); err != nil {
			return err
		}
		for _, f := range files {
			replace[f] = "" // not there
		}
		replace[filepath.Join(root, "src", filepath.FromSlash(s.dir), "stub.go")] = to
	}
	return nil
}

// lean writes what `go build -overlay` reads, into a folder, and gives the
// flag. Where a Go has another line there, its file is left as it is: then the
// program is larger, and nothing else is different.
func lean(dir string) (flag string, err error) {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return "", fmt.Errorf("go env GOROOT: %w", err)
	}
	replace := map[string]string{}
	for i, c := range cuts {
		from := filepath.Join(strings.TrimSpace(string(root)), "src", filepath.FromSlash(c.file))
		source, err := os.ReadFile(from)
		if err != nil || strings.Count(string(source), c.line) != 1 {
			fmt.Fprintf(os.Stderr, "note: %s of this Go is another than expected: the program is %s larger\n", c.file, c.what)
			continue
		}
		to := filepath.Join(dir, fmt.Sprintf("%d.go", i))
		if err := os.WriteFile(to, []byte(strings.Replace(string(source), c.line, c.instead, 1)), 0o600); err != nil {
			return "", err
		}
		replace[from] = to
	}
	if err := stubbed(dir, strings.TrimSpace(string(root)), replace); err != nil {
		return "", err
	}
	if err := errors.Join(shortened(dir, replace), lighter(dir, replace)); err != nil {
		return "", err
	}
	list := filepath.Join(dir, "overlay.json")
	text, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return "", err
	}
	return "-overlay=" + list, os.WriteFile(list, text, 0o600)
}

// shortened puts the patterns that part words into an overlay as face.Fronted
// writes them.
func shortened(dir string, replace map[string]string) error {
	files, err := filesOf("jarmark/fonts", "hyphen-*.txt")
	if err != nil {
		return err
	}
	return carry(dir, replace, files, func(text []byte) ([]byte, error) { return []byte(face.Fronted(string(text))), nil })
}

// filesOf lists the files of a package's folder, by patterns of which each has some.
func filesOf(pkg string, patterns ...string) (files []string, err error) {
	out, err := exec.Command("go", "list", "-f", "{{.Dir}}", pkg).Output()
	if err != nil {
		return nil, fmt.Errorf("go list %s: %w", pkg, err)
	}
	for _, pattern := range patterns {
		found, err := filepath.Glob(filepath.Join(strings.TrimSpace(string(out)), filepath.FromSlash(pattern)))
		if err != nil || len(found) == 0 {
			return nil, fmt.Errorf("no %s: %w", pattern, errors.Join(err, os.ErrNotExist))
		}
		files = append(files, found...)
	}
	return files, nil
}

// carry puts files into the overlay as another text of each.
func carry(dir string, replace map[string]string, files []string, as func([]byte) ([]byte, error)) error {
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			return err
		}
		if text, err = as(text); err != nil {
			return fmt.Errorf("%s: %w", f, err)
		}
		to := filepath.Join(dir, fmt.Sprintf("carried%d%s", len(replace), filepath.Ext(f)))
		if err := os.WriteFile(to, text, 0o600); err != nil {
			return err
		}
		replace[f] = to
	}
	return nil
}
