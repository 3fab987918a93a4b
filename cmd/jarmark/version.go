package main

import (
	"encoding/json"
	"fmt"
	"runtime"
	"runtime/debug"
	"strings"
)

// build is what the program knows of its own making, as the Go toolchain wrote
// it in. No clock of the building machine is among it: one commit gives one text.
type build struct {
	Version  string   `json:"version"`
	Revision string   `json:"revision,omitempty"`
	Commit   string   `json:"commit_time,omitempty"`
	Changed  bool     `json:"changed"` // files differed from the commit
	Go       string   `json:"go"`
	For      string   `json:"for"`
	Modules  []string `json:"modules"`
}

func buildOf(info *debug.BuildInfo) build {
	b := build{Version: "unknown", Go: runtime.Version(), For: runtime.GOOS + "/" + runtime.GOARCH, Modules: []string{}}
	if info == nil {
		return b
	}
	if b.Version = strings.Trim(info.Main.Version, "()"); b.Version == "" {
		b.Version = "unknown"
	}
	for _, s := range info.Settings {
		switch s.Key {
		case "vcs.revision":
			b.Revision = s.Value
		case "vcs.time":
			b.Commit = s.Value
		case "vcs.modified":
			b.Changed = s.Value == "true"
		}
	}
	for _, m := range info.Deps {
		if m.Replace != nil {
			m = m.Replace
		}
		b.Modules = append(b.Modules, m.Path+" "+m.Version)
	}
	return b
}

func (b build) String() string {
	s := "jarmark " + b.Version
	if b.Revision != "" {
		s += "\ncommit " + b.Revision + " of " + b.Commit
		if b.Changed {
			s += ", with changes"
		}
	}
	return s + "\nbuilt with " + b.Go + " for " + b.For + "\n"
}

// runVersion says which program this is.
func runVersion(a *app, o *options, args []string) error {
	if len(args) > 0 {
		return usagef("jarmark version takes no arguments", "%q is one too many", args[0])
	}
	info, _ := debug.ReadBuildInfo()
	b := buildOf(info)
	if !o.json {
		_, err := fmt.Fprint(a.out, b)
		return err
	}
	e := json.NewEncoder(a.out)
	e.SetIndent("", "  ")
	return e.Encode(b)
}
