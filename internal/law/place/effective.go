package place

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"jarmark/internal/kit/unit"
)

// Value is one value of a place's rules as they are in force, base included.
type Value struct {
	Table, Key, Value  string // "net", "form", "fpla"; Table is "" for the set itself
	Source, Confidence string // of its table
	Memory             []string
	ID, CheckedOn      string // of a row: a programme's or product's own; may be empty
}

// Row names the table a value stands in, a row by its id.
func (v Value) Row() string {
	if v.ID != "" {
		return v.ID
	}
	return v.Table
}

// Effective lists every value of a set in the order of its tables, for
// printing and for asking an agency about.
func (s *Set) Effective() []Value {
	var out []Value
	v := reflect.ValueOf(s.rules)
	for i := range v.NumField() {
		tag, f := v.Type().Field(i).Tag.Get("toml"), v.Field(i)
		switch {
		case f.IsZero():
		case f.Kind() == reflect.Pointer:
			out = append(out, tableValues(tag, f.Elem())...)
		case f.Kind() == reflect.Slice && f.Type().Elem().Kind() == reflect.Struct:
			for j := range f.Len() {
				out = append(out, tableValues(fmt.Sprintf("%s[%d]", tag, j), f.Index(j))...)
			}
		default:
			out = append(out, Value{Key: tag, Value: shown(f)})
		}
	}
	return out
}

// tableValues lists the values of one table, each with the table's origin.
func tableValues(name string, t reflect.Value) (out []Value) {
	of := Value{Table: name}
	for _, f := range reflect.VisibleFields(t.Type()) {
		x := t.FieldByIndex(f.Index)
		switch f.Tag.Get("toml") {
		case "source":
			of.Source = x.String()
		case "confidence":
			of.Confidence = x.String()
		case "memory":
			of.Memory = x.Interface().([]string)
		case "id":
			of.ID = x.String()
		case "checked_on":
			of.CheckedOn = x.String()
		}
	}
	for _, f := range reflect.VisibleFields(t.Type()) {
		tag := f.Tag.Get("toml")
		if tag == "" || tag == "source" || tag == "confidence" || !f.IsExported() || t.FieldByIndex(f.Index).IsZero() {
			continue
		}
		text := shown(t.FieldByIndex(f.Index))
		if key, nm := strings.CutSuffix(tag, "_nm"); nm {
			tag, text = key, unit.Length(t.FieldByIndex(f.Index).Int()).Format("metric")
		}
		of.Key, of.Value = tag, text
		out = append(out, of)
	}
	return out
}

// shown prints a value on one line, as a person would write it down.
func shown(v reflect.Value) string {
	switch v.Kind() {
	case reflect.Slice, reflect.Array:
		var parts []string
		sep := ", "
		for i := range v.Len() {
			switch x := v.Index(i); x.Kind() {
			case reflect.Slice: // a pair, or words of which one will do
				sep = "; "
				parts = append(parts, strings.ReplaceAll(shown(x), ", ", " "))
			case reflect.Struct:
				sep = "; "
				fallthrough
			default:
				parts = append(parts, shown(x))
			}
		}
		return strings.Join(parts, sep)
	case reflect.Map:
		var parts []string
		for _, k := range v.MapKeys() {
			parts = append(parts, shown(k)+" = "+shown(v.MapIndex(k)))
		}
		slices.Sort(parts)
		return strings.Join(parts, ", ")
	case reflect.Struct:
		return shownRow(v)
	case reflect.Pointer:
		return shown(v.Elem())
	}
	return fmt.Sprint(v.Interface())
}

// shownRow prints the fields of a row that say something: the first as the
// row's name, the others behind it by their keys.
func shownRow(v reflect.Value) string {
	var name string
	var rest []string
	for _, f := range reflect.VisibleFields(v.Type()) {
		x := v.FieldByIndex(f.Index)
		if !f.IsExported() || f.Anonymous || x.IsZero() {
			continue
		}
		switch text := shown(x); {
		case text == "":
		case name == "":
			name = text
		case f.Tag.Get("toml") != "":
			rest = append(rest, f.Tag.Get("toml")+" "+text)
		default:
			rest = append(rest, text)
		}
	}
	if len(rest) == 0 {
		return name
	}
	return name + " (" + strings.Join(rest, ", ") + ")"
}
