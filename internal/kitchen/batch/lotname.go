package batch

import "regexp"

// devices are names that mean a device on Windows, with any ending: Microsoft,
// "Naming Files, Paths, and Namespaces" (from memory).
var devices = regexp.MustCompile(`(?i)^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³]|conin\$|conout\$)$`)

// Reserved reports whether no file or folder can bear a name on some of the
// makers' systems.
func Reserved(name string) bool { return devices.MatchString(name) }
