package rule

import (
	"fmt"
	"reflect"
	"strings"
)

// Value is one value of a place's rules as they are in force, base included.
type Value struct {
	Table, Key, Value  string // "net", "form", "fpla"; Table is "" for the set itself
	Source, Confidence string // of its table
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
	origin := Origin{}
	for _, f := range reflect.VisibleFields(t.Type()) {
		switch f.Tag.Get("toml") {
		case "source":
			origin.Source = t.FieldByIndex(f.Index).String()
		case "confidence":
			origin.Confidence = t.FieldByIndex(f.Index).String()
		}
	}
	for _, f := range reflect.VisibleFields(t.Type()) {
		tag := f.Tag.Get("toml")
		if tag == "" || tag == "source" || tag == "confidence" || !f.IsExported() || t.FieldByIndex(f.Index).IsZero() {
			continue
		}
		out = append(out, Value{name, tag, shown(t.FieldByIndex(f.Index)), origin.Source, origin.Confidence})
	}
	return out
}

// shown prints a value on one line; maps come sorted by key from fmt.
func shown(v reflect.Value) string {
	switch {
	case v.Kind() == reflect.String:
		return v.String()
	case v.Kind() == reflect.Slice && v.Type().Elem().Kind() == reflect.Struct:
		var rows []string
		for i := range v.Len() {
			rows = append(rows, strings.TrimSpace(fmt.Sprintf("%+v", v.Index(i).Interface())))
		}
		return strings.Join(rows, "; ")
	case v.Kind() == reflect.Slice && v.Type().Elem().Kind() == reflect.Slice:
		var rows []string
		for i := range v.Len() {
			rows = append(rows, strings.Trim(fmt.Sprint(v.Index(i).Interface()), "[]"))
		}
		return strings.Join(rows, "; ")
	case v.Kind() == reflect.Slice && v.Type().Elem().Kind() == reflect.String:
		return strings.Join(v.Interface().([]string), ", ")
	}
	return fmt.Sprint(v.Interface())
}
