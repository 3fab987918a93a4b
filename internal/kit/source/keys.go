package source

import (
	"reflect"
	"strings"
)

// Key is one key that Decode reads, as its struct tag `help:"what|unit|example"`
// explains it. Unit and Example may be empty; Example is written as TOML.
type Key struct {
	Table   string // "", "cook", "fill"
	Many    bool   // the table stands as often as wanted: [[fill]]
	Key     string
	What    string
	Unit    string
	Example string
}

// Keys lists the keys Decode reads into a struct, in the order of its fields,
// those of the top first. Table types are explained by their own keys; a field
// with the help "-" is another spelling and is left out.
func Keys(v any) []Key {
	var top, rest []Key
	t := reflect.Indirect(reflect.ValueOf(v)).Type()
	for _, f := range reflect.VisibleFields(t) {
		name, _, _ := strings.Cut(f.Tag.Get("toml"), ",")
		if name == "" || name == "-" || f.Tag.Get("help") == "-" {
			continue
		}
		inner, many := tableType(f.Type)
		if inner == nil || f.Tag.Get("help") != "" {
			top = append(top, explain(f, name, "", false))
			continue
		}
		for _, g := range reflect.VisibleFields(inner) {
			key, _, _ := strings.Cut(g.Tag.Get("toml"), ",")
			if key != "" && key != "-" && g.Tag.Get("help") != "-" {
				rest = append(rest, explain(g, key, name, many))
			}
		}
	}
	return append(top, rest...)
}

func explain(f reflect.StructField, key, table string, many bool) Key {
	part := append(strings.Split(f.Tag.Get("help"), "|"), "", "")
	return Key{Table: table, Many: many, Key: key, What: part[0], Unit: part[1], Example: part[2]}
}

// tableType is the struct a field's table is read into, nil for a plain value.
func tableType(t reflect.Type) (inner reflect.Type, many bool) {
	if t.Kind() == reflect.Slice {
		t, many = t.Elem(), true
	}
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	if t.Kind() != reflect.Struct || t == reflect.TypeFor[Loose]() {
		return nil, false
	}
	return t, many
}
