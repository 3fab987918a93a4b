package source

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"sort"
	"strings"

	"jarmark/internal/kit/diag"
)

// Loose is a text that may also stand without quotes as a number or a day:
// made = 2026-06-14, price = 9.50. It holds the value as written.
type Loose string

// OneOrMore is one text or a list of them, written like Loose.
type OneOrMore []string

// MaxFindings is how many findings of one file are listed.
const MaxFindings = 500

// Decode fills a struct from the file, strictly: every unknown key and every
// value of the wrong type is a finding at its exact place, and none of them
// stops the rest. Fields are named by their toml tags; absent keys leave a
// field as it is. A struct with a field tagged "name,short" may be written as
// a text alone, which fills that field.
func Decode(f *File, into any) diag.List {
	v := reflect.ValueOf(into)
	if f == nil || f.tree == nil || v.Kind() != reflect.Pointer || v.IsNil() {
		return nil
	}
	d := decoder{f: f, fields: map[reflect.Type]map[string][]int{}, short: map[reflect.Type][]int{}}
	d.root = d.fieldsOf(v.Elem().Type())
	d.table(f.tree, "", v.Elem())
	sort.SliceStable(d.l, func(i, j int) bool {
		a, b := d.l[i].Pos, d.l[j].Pos
		if a.Line != b.Line {
			return a.Line < b.Line
		}
		if a.Column != b.Column {
			return a.Column < b.Column
		}
		return d.l[i].Path < d.l[j].Path
	})
	return d.l.Capped(MaxFindings)
}

type decoder struct {
	f      *File
	l      diag.List
	fields map[reflect.Type]map[string][]int
	root   map[string][]int
	short  map[reflect.Type][]int // the field a bare text fills
}

// fieldsOf maps toml names to fields, those of embedded structs included.
func (d *decoder) fieldsOf(t reflect.Type) map[string][]int {
	if known, ok := d.fields[t]; ok {
		return known
	}
	out := map[string][]int{}
	if t.Kind() == reflect.Struct {
		for _, f := range reflect.VisibleFields(t) {
			tag, option, _ := strings.Cut(f.Tag.Get("toml"), ",")
			if !f.IsExported() || tag == "-" || f.Anonymous && tag == "" {
				continue
			}
			if tag == "" {
				tag = strings.ToLower(f.Name)
			}
			out[tag] = f.Index
			if option == "short" {
				d.short[t] = f.Index
			}
		}
	}
	d.fields[t] = out
	return out
}

// table fills a struct or map from a table.
func (d *decoder) table(m map[string]any, path string, v reflect.Value) {
	if v.Kind() == reflect.Map {
		d.mapping(m, path, v)
		return
	}
	fields := d.fieldsOf(v.Type())
	for key, value := range m {
		at := Join(path, key)
		index, ok := fields[key]
		if !ok {
			d.unknown(key, at, path, fields)
			continue
		}
		d.value(value, at, v.FieldByIndex(index))
	}
}

func (d *decoder) mapping(m map[string]any, path string, v reflect.Value) {
	if v.IsNil() {
		v.Set(reflect.MakeMap(v.Type()))
	}
	for key, value := range m {
		e := reflect.New(v.Type().Elem()).Elem()
		d.value(value, Join(path, key), e)
		v.SetMapIndex(reflect.ValueOf(key).Convert(v.Type().Key()), e)
	}
}

// unknown reports a key no field has.
func (d *decoder) unknown(key, at, path string, fields map[string][]int) {
	where := "at the top of the file"
	if path != "" {
		where = "in " + d.nameOf(path)
	}
	x := d.l.Errorf("unknown-key", d.f.Name, at, "%s is not known %s", quoted(key), where)
	x.Pos = d.f.KeySpan(at)
	names := slices.Sorted(maps.Keys(fields))
	_, top := d.root[key]
	if near, ok := diag.DidYouMean(key, names); ok {
		x.Meant(near).Instead = near // a name of ours, which needs no quotes
	} else if top && path != "" {
		x.Hint = key + " belongs at the top of the file, above the first [table]; move it there"
	} else if len(names) > 0 {
		x.Hint = "known here: " + strings.Join(names, ", ")
	}
}

// nameOf shows a table as it is written: [cook], [[ingredient]].
func (d *decoder) nameOf(path string) string {
	if e, ok := d.f.Entry(path); ok && (e.Type == Table || e.Type == Element) {
		return d.f.Text[e.Value.Start:e.Value.End]
	}
	return path
}

func quoted(key string) string {
	if r := []rune(key); len(r) > 40 {
		key = string(r[:40]) + "…"
	}
	return fmt.Sprintf("%q", key)
}

var (
	looseType = reflect.TypeFor[Loose]()
	moreType  = reflect.TypeFor[OneOrMore]()
)

// value fills one field.
func (d *decoder) value(x any, path string, v reflect.Value) {
	switch v.Type() {
	case looseType:
		if s, ok := d.loose(x, path); ok {
			v.SetString(s)
		}
		return
	case moreType:
		d.more(x, path, v)
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		e := reflect.New(v.Type().Elem())
		before := len(d.l)
		d.value(x, path, e.Elem())
		if len(d.l) == before || v.Type().Elem().Kind() == reflect.Struct {
			v.Set(e)
		}
	case reflect.Struct, reflect.Map:
		if m, ok := x.(map[string]any); ok {
			d.table(m, path, v)
			return
		}
		if !d.bareText(x, path, v) {
			d.notTable(x, path)
		}
	case reflect.Slice:
		d.list(x, path, v)
	case reflect.Interface:
		v.Set(reflect.ValueOf(x))
	default:
		d.scalar(x, path, v)
	}
}

// bareText fills a struct written as a text alone: the field tagged "short"
// takes it, so that contains = ["dextrose"] means [{ name = "dextrose" }].
func (d *decoder) bareText(x any, path string, v reflect.Value) bool {
	s, isText := x.(string)
	if !isText || v.Kind() != reflect.Struct {
		return false
	}
	d.fieldsOf(v.Type())
	index, ok := d.short[v.Type()]
	if ok {
		d.value(s, path, v.FieldByIndex(index))
	}
	return ok
}

func (d *decoder) notTable(x any, path string) {
	hint := fmt.Sprintf("write [%s] on a line of its own, its values below", path)
	if strings.Contains(path, "[") {
		hint = `write it in braces, like { name = "pectin" }`
	}
	if _, isList := x.([]map[string]any); isList {
		hint = fmt.Sprintf("write [%s] with single brackets, once", path)
	}
	d.mismatch(x, path, "a table", hint)
}

// list fills a slice, element by element.
func (d *decoder) list(x any, path string, v reflect.Value) {
	var items []any
	switch t := x.(type) {
	case []any:
		items = t
	case []map[string]any:
		for _, m := range t {
			items = append(items, m)
		}
	default:
		hint := "write it in square brackets, like [" + shorten(d.raw(path)) + "]"
		if _, isTable := x.(map[string]any); isTable {
			hint = fmt.Sprintf("write [[%s]] with double brackets", path)
		}
		d.mismatch(x, path, "a list", hint)
		return
	}
	out := reflect.MakeSlice(v.Type(), len(items), len(items))
	for i, item := range items {
		d.value(item, At(path, i), out.Index(i))
	}
	v.Set(out)
}

func (d *decoder) more(x any, path string, v reflect.Value) {
	items, isList := x.([]any)
	if !isList {
		if s, ok := d.loose(x, path); ok {
			v.Set(reflect.ValueOf(OneOrMore{s}))
		}
		return
	}
	out := make(OneOrMore, len(items))
	for i, item := range items {
		out[i], _ = d.loose(item, At(path, i))
	}
	v.Set(reflect.ValueOf(out))
}

// raw is a value as written.
func (d *decoder) raw(path string) string {
	e, _ := d.f.Entry(path)
	return d.f.Text[e.Value.Start:e.Value.End]
}

func shorten(s string) string {
	s, _, _ = strings.Cut(s, "\n")
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}
