package web

import "bytes"

// lineEnds gives a text the line ends of the one it came from, because a text
// field in a browser knows only \n: lines before and after the change have
// their own back, changed lines those that most lines have.
func lineEnds(was, text []byte) []byte {
	if !bytes.Contains(was, []byte("\r\n")) || bytes.Contains(text, []byte("\r\n")) {
		return text
	}
	old, now := bytes.SplitAfter(was, []byte("\n")), bytes.SplitAfter(text, []byte("\n"))
	head := 0
	for head < min(len(old), len(now)) && alike(old[head], now[head]) {
		head++
	}
	tail := 0
	for tail < min(len(old), len(now))-head && alike(old[len(old)-1-tail], now[len(now)-1-tail]) {
		tail++
	}
	crlf := 2*bytes.Count(was, []byte("\r\n")) >= bytes.Count(was, []byte("\n"))
	var out []byte
	for i, line := range now {
		switch {
		case i < head:
			line = old[i]
		case i >= len(now)-tail:
			line = old[len(old)-len(now)+i]
		case crlf && bytes.HasSuffix(line, []byte("\n")):
			line = append(bytes.Clone(line[:len(line)-1]), "\r\n"...)
		}
		out = append(out, line...)
	}
	return out
}

// alike compares two lines but for their ends.
func alike(a, b []byte) bool {
	return bytes.Equal(bytes.TrimSuffix(bytes.TrimSuffix(a, []byte("\n")), []byte("\r")), bytes.TrimSuffix(b, []byte("\n"))) &&
		bytes.HasSuffix(a, []byte("\n")) == bytes.HasSuffix(b, []byte("\n"))
}
