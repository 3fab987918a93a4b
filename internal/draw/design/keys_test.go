package design

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"jarmark/internal/draw/ornament"
)

// Every key a design file may hold changes the design: none is accepted and
// then ignored.
func TestEveryKeyIsRead(t *testing.T) {
	base := "name = \"x\"\n"
	var walk func(typ reflect.Type, table, head string)
	walk = func(typ reflect.Type, table, head string) {
		for i := range typ.NumField() {
			f := typ.Field(i)
			key, kind := f.Tag.Get("toml"), f.Type
			if kind.Kind() == reflect.Pointer {
				kind = kind.Elem()
			}
			switch {
			case kind.Kind() == reflect.Map && key == "piece":
				walk(kind.Elem(), "piece.lid", "[piece.lid]\n")
			case kind.Kind() == reflect.Map:
				walk(kind.Elem(), "voice.title", "[voice.title]\n")
			case kind == reflect.TypeFor[rawLook]():
				walk(kind, "look", "[look]\n")
			case kind == reflect.TypeFor[rawBand]() && strings.HasSuffix(table, "band"):
				if !changes(base+head, []string{"instead = { edge = \"left\", size = 0.1 }"}) {
					t.Errorf("%s.%s is not read", table, key)
				}
			case kind == reflect.TypeFor[rawBand]():
				walk(kind, table+".band", fmt.Sprintf("[%s.band]\nedge = \"top\"\n", table))
			case kind == reflect.TypeFor[[]rawOrnament]():
				walk(kind.Elem(), table+".ornament", fmt.Sprintf("[[%s.ornament]]\n", table))
			case kind == reflect.TypeFor[rawOrnament]():
				if !changes(base+head+"name = \"fir\"\n", []string{"instead = { name = \"fruit\" }"}) {
					t.Errorf("%s.%s is not read", table, key)
				}
			default:
				was := base + head
				if strings.HasSuffix(table, "ornament") && key != "name" {
					was += "name = \"fir\"\n"
				}
				if table == "" {
					was = ""
				}
				if strings.HasSuffix(table, "band") && key == "edge" {
					was = strings.Replace(was, "edge = \"top\"\n", "", 1)
				}
				if !changes(was, lines(key, kind)) {
					t.Errorf("%s.%s is not read", table, key)
				}
			}
		}
	}
	walk(reflect.TypeFor[rawDesign](), "", "")
}

// lines are ways to write a key.
func lines(key string, kind reflect.Type) (out []string) {
	switch kind.Kind() {
	case reflect.String:
		for _, words := range [][]string{Seasons, Aligns, Cases, Frames, Rules, Dividers, Edges, Patterns, Brands, Drawings, Spots, Colours, ornament.Names(), {"Caveat_600SemiBold"}} {
			for _, w := range words {
				out = append(out, fmt.Sprintf("%s = %q", key, w))
			}
		}
	case reflect.Slice:
		out = []string{key + ` = ["gift"]`, key + " = [0.3, 0.4]"}
	default:
		out = []string{key + " = 0.23", key + " = 1.1", key + " = 2"}
	}
	return out
}

// changes reports whether any of the lines gives another design.
func changes(base string, lines []string) bool {
	was, _ := Parse("x.toml", []byte(base))
	for _, line := range lines {
		text := base + line
		if base == "" && !strings.HasPrefix(line, "name") {
			text = "name = \"x\"\n" + line
			was, _ = Parse("x.toml", []byte("name = \"x\""))
		}
		if d, _ := Parse("x.toml", []byte(text)); d != nil && !reflect.DeepEqual(d, was) {
			return true
		}
	}
	return false
}

// Every value of a design is used by the layout or the list of designs.
func TestEveryValueIsUsed(t *testing.T) {
	code := ""
	for _, folder := range []string{"../compose", "../../app/job", "."} {
		files, err := filepath.Glob(folder + "/*.go")
		if err != nil || len(files) == 0 {
			t.Fatal(folder, err)
		}
		for _, f := range files {
			if folder == "." && filepath.Base(f) != "design.go" || strings.HasSuffix(f, "_test.go") {
				continue
			}
			data, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			code += string(data)
		}
	}
	for _, typ := range []reflect.Type{reflect.TypeFor[Design](), reflect.TypeFor[Voice](), reflect.TypeFor[Look](), reflect.TypeFor[Band](), reflect.TypeFor[Ornament](), reflect.TypeFor[Voices]()} {
		for i := range typ.NumField() {
			if name := typ.Field(i).Name; !strings.Contains(code, "."+name) {
				t.Errorf("%s.%s is used by nothing", typ.Name(), name)
			}
		}
	}
}
