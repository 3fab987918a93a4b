//go:build !js

package main

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// cuts are lines of the standard library that keep in the program what it
// never calls, each with what stands there instead in the browser's program.
var cuts = []struct{ file, line, instead, what string }{
	// Where text/template calls a method by its name: because of this one line
	// the linker keeps every exported method of every type. Our pages call none
	// (TestPagesCallNoMethods): an eighth smaller to load, and sooner started.
	{"text/template/exec.go", "method := ptr.MethodByName(fieldName)", "method := (reflect.Value{})", "an eighth"},
	// A table of 88 kB of the curve P-256, laid out before main: it does not
	// pack, and serves signatures and key exchanges alone. A page asks for
	// none: the browser keeps its connections.
	{"crypto/internal/fips140/nistec/p256.go", "\nfunc init() {\n\tp256GeneratorTablesPtr", "\nfunc _() {\n\tp256GeneratorTablesPtr", "a fortieth"},
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
	// Keys that hide the name of a host, which crypto/tls can ask for: the browser
	// keeps the connections.
	{"crypto/hpke", `package hpke

import "errors"

var errLeftOut = errors.New("crypto/hpke is left out of the browser's program")

type (
	PublicKey  interface{ Bytes() []byte }
	PrivateKey interface{ Bytes() []byte }
	KDF        interface{ ID() uint16 }
	AEAD       interface{ ID() uint16 }
	KEM        interface {
		NewPublicKey([]byte) (PublicKey, error)
		NewPrivateKey([]byte) (PrivateKey, error)
	}
	Sender    struct{}
	Recipient struct{}
)

func NewKEM(uint16) (KEM, error)   { return nil, errLeftOut }
func NewKDF(uint16) (KDF, error)   { return nil, errLeftOut }
func NewAEAD(uint16) (AEAD, error) { return nil, errLeftOut }
func NewSender(PublicKey, KDF, AEAD, []byte) ([]byte, *Sender, error) {
	return nil, nil, errLeftOut
}
func NewRecipient([]byte, PrivateKey, KDF, AEAD, []byte) (*Recipient, error) {
	return nil, errLeftOut
}
func (*Sender) Seal([]byte, []byte) ([]byte, error)    { return nil, errLeftOut }
func (*Recipient) Open([]byte, []byte) ([]byte, error) { return nil, errLeftOut }
`, "a hundredth"},
	// A way of agreeing on keys: the browser agrees on them.
	{"crypto/mlkem", `package mlkem

import (
	"crypto"
	"errors"
)

var errLeftOut = errors.New("crypto/mlkem is left out of the browser's program")

const (
	SeedSize                                     = 64
	CiphertextSize768, EncapsulationKeySize768   = 1088, 1184
	CiphertextSize1024, EncapsulationKeySize1024 = 1568, 1568
)

func NewDecapsulationKey768([]byte) (crypto.Decapsulator, error)  { return nil, errLeftOut }
func NewDecapsulationKey1024([]byte) (crypto.Decapsulator, error) { return nil, errLeftOut }
func NewEncapsulationKey768([]byte) (crypto.Encapsulator, error)  { return nil, errLeftOut }
func NewEncapsulationKey1024([]byte) (crypto.Encapsulator, error) { return nil, errLeftOut }
`, "a hundredth"},
	// Signatures of certificates: the browser looks at those.
	{"crypto/ed25519", `package ed25519

import (
	"crypto"
	"errors"
	"io"
)

var errLeftOut = errors.New("crypto/ed25519 is left out of the browser's program")

const (
	PublicKeySize, PrivateKeySize, SignatureSize, SeedSize = 32, 64, 64, 32
)

type (
	PublicKey  []byte
	PrivateKey []byte
)

func (PublicKey) Equal(crypto.PublicKey) bool   { return false }
func (PrivateKey) Equal(crypto.PrivateKey) bool { return false }
func (PrivateKey) Public() crypto.PublicKey     { return PublicKey(nil) }
func (PrivateKey) Seed() []byte                 { return nil }
func (PrivateKey) Sign(io.Reader, []byte, crypto.SignerOpts) ([]byte, error) {
	return nil, errLeftOut
}
func NewKeyFromSeed([]byte) PrivateKey                     { return nil }
func GenerateKey(io.Reader) (PublicKey, PrivateKey, error) { return nil, nil, errLeftOut }
func Verify(PublicKey, []byte, []byte) bool                { return false }
`, "a hundredth"},
	// The arithmetic of curves that keys are agreed on with: the browser agrees on them.
	{"crypto/internal/fips140/nistec/fiat", `package fiat

import "errors"

type element[size any] struct{}

type (
	P224Element = element[[28]byte]
	P256Element = element[[32]byte]
	P384Element = element[[48]byte]
	P521Element = element[[66]byte]
)

func (e *element[s]) One() *element[s]                            { return e }
func (e *element[s]) Equal(*element[s]) int                       { return 0 }
func (e *element[s]) IsZero() int                                 { return 0 }
func (e *element[s]) Set(*element[s]) *element[s]                 { return e }
func (e *element[s]) Bytes() []byte                               { return nil }
func (e *element[s]) Add(_, _ *element[s]) *element[s]            { return e }
func (e *element[s]) Sub(_, _ *element[s]) *element[s]            { return e }
func (e *element[s]) Mul(_, _ *element[s]) *element[s]            { return e }
func (e *element[s]) Square(*element[s]) *element[s]              { return e }
func (e *element[s]) Invert(*element[s]) *element[s]              { return e }
func (e *element[s]) Select(_, _ *element[s], _ int) *element[s]  { return e }
func (e *element[s]) SetBytes([]byte) (*element[s], error) {
	return nil, errors.New("elliptic curves are left out of the browser's program")
}
`, "a fiftieth"},
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
	list := filepath.Join(dir, "overlay.json")
	text, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return "", err
	}
	return "-overlay=" + list, os.WriteFile(list, text, 0o600)
}
