package diag

import "fmt"

func (l *List) addf(s Severity, code, file, path, format string, args ...any) *Diagnostic {
	*l = append(*l, Diagnostic{Severity: s, Code: code, File: file, Path: path, Message: fmt.Sprintf(format, args...)})
	return &(*l)[len(*l)-1]
}
