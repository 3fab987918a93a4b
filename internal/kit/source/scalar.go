package source

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"time"
)

// loose reads a text, a number or a day.
func (d *decoder) loose(x any, path string) (string, bool) {
	switch t := x.(type) {
	case string:
		return t, true
	case int64, float64:
		return strings.TrimPrefix(d.raw(path), "+"), true
	case time.Time:
		if raw := d.raw(path); len(raw) == len("2026-06-14") {
			return raw, true
		}
		d.mismatch(x, path, "a day", "write the day alone, like 2026-06-14")
		return "", false
	}
	d.mismatch(x, path, "text", `write one value in quotes`)
	return "", false
}

// scalar fills texts, numbers and truths.
func (d *decoder) scalar(x any, path string, v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		if s, ok := x.(string); ok {
			v.SetString(s)
			return
		}
		d.mismatch(x, path, "text", textHint(x, d.raw(path)))
	case reflect.Bool:
		if b, ok := x.(bool); ok {
			v.SetBool(b)
			return
		}
		d.mismatch(x, path, "true or false", "write true or false, without quotes")
	case reflect.Float32, reflect.Float64:
		d.float(x, path, v)
	default:
		d.integer(x, path, v)
	}
}

func textHint(x any, raw string) string {
	switch x.(type) {
	case []any, []map[string]any, map[string]any:
		return "write one text in quotes"
	}
	return fmt.Sprintf("write it in quotes: %q", shorten(raw))
}

func (d *decoder) float(x any, path string, v reflect.Value) {
	switch t := x.(type) {
	case int64:
		v.SetFloat(float64(t))
	case float64:
		if math.IsNaN(t) || math.IsInf(t, 0) {
			d.mismatch(x, path, "a number", "write a number like 65.5")
			return
		}
		v.SetFloat(t)
	default:
		d.noNumber(x, path, "a number")
	}
}

func (d *decoder) integer(x any, path string, v reflect.Value) {
	n, ok := x.(int64)
	if !ok || !v.CanInt() {
		if _, isFloat := x.(float64); isFloat {
			d.mismatch(x, path, "a whole number without a point", "write a whole number like 12")
			return
		}
		d.noNumber(x, path, "a whole number")
		return
	}
	if v.OverflowInt(n) {
		d.mismatch(x, path, "a smaller number", "check the number")
		return
	}
	v.SetInt(n)
}

// noNumber reports a text where a number belongs; one in quotes is taken out of
// them, if that is all there is to do.
func (d *decoder) noNumber(x any, path, want string) {
	s, ok := x.(string)
	s = strings.TrimSpace(s)
	if ok && s != "" && len(s) < 20 && strings.Trim(s, "0123456789.") == "" {
		d.mismatch(x, path, want, "write it without quotes: "+s)
		d.l[len(d.l)-1].Instead = s
		return
	}
	d.mismatch(x, path, want, "write a number without quotes and without a unit")
}

// mismatch reports a value of the wrong type.
func (d *decoder) mismatch(x any, path, want, hint string) {
	d.l.Errorf("wrong-type", d.f.Name, path, "%s must be %s, not %s", lastName(path), want, kindOf(x)).Hint = hint
	d.l[len(d.l)-1].Pos = d.f.Span(path)
}

// lastName is the key a path ends with, without indices.
func lastName(path string) string {
	steps, _ := SplitPath(path)
	for i := len(steps) - 1; i >= 0; i-- {
		if !steps[i].IsIndex {
			return steps[i].Key
		}
	}
	return path
}

func kindOf(x any) string {
	switch t := x.(type) {
	case string:
		return "text"
	case int64:
		return "a number"
	case float64:
		if math.IsNaN(t) || math.IsInf(t, 0) {
			return "nan or inf"
		}
		return "a number"
	case bool:
		return "true or false"
	case time.Time:
		return "a date"
	case map[string]any:
		return "a table"
	}
	return "a list"
}
