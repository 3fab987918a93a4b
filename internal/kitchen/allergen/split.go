package allergen

import "strings"

// Item is one entry of a list of ingredients as a packet prints it: a name and,
// in brackets, what it is made of.
type Item struct {
	Name  string
	Parts []Item
}

// Heading reports whether the item is the word before a colon.
func (i Item) Heading() bool { return strings.HasSuffix(i.Name, ":") }

// Split reads a packet's list: "dark chocolate (cocoa mass, sugar, emulsifier:
// soy lecithin), salt" is two items, the first with three parts. Commas and
// semicolons part items, a colon ends a heading (an item of its own), and brackets
// may be nested or left open.
func Split(text string) []Item {
	if len(text) > most {
		text = text[:most]
	}
	s := splitter{text: text}
	return s.items(0)
}

type splitter struct {
	text string
	at   int
}

// deepest is how far brackets are nested; deeper ones are read as one level.
const deepest = 20

func (s *splitter) items(depth int) (out []Item) {
	var name strings.Builder
	var parts []Item
	end := func() {
		if n := strings.Join(strings.Fields(name.String()), " "); n != "" || len(parts) > 0 {
			out = append(out, Item{n, parts})
		}
		name.Reset()
		parts = nil
	}
	for s.at < len(s.text) {
		c := s.text[s.at]
		s.at++
		switch c {
		case ',', ';', '\n':
			end()
		case ':':
			name.WriteByte(c)
			end()
		case '(', '[', '{':
			if depth < deepest {
				parts = append(parts, s.items(depth+1)...)
				name.WriteByte(' ')
			}
		case ')', ']', '}':
			if depth > 0 {
				end()
				return out
			}
		default:
			name.WriteByte(c)
		}
	}
	end()
	return out
}
