package sheet

import "reflect"

// Keys are all keys of a sheet file, those of tables with the table's name.
func Keys() (out []string) {
	typ := reflect.TypeFor[raw]()
	for i := range typ.NumField() {
		f := typ.Field(i)
		if f.Type.Kind() != reflect.Struct {
			out = append(out, f.Tag.Get("toml"))
			continue
		}
		for j := range f.Type.NumField() {
			out = append(out, f.Tag.Get("toml")+"."+f.Type.Field(j).Tag.Get("toml"))
		}
	}
	return out
}
