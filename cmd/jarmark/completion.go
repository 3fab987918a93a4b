package main

import (
	"flag"
	"fmt"
	"slices"
	"strings"
)

const completionHelp = `  bash   jarmark completion bash > ~/.local/share/bash-completion/completions/jarmark
  zsh    jarmark completion zsh > "${fpath[1]}/_jarmark"
  fish   jarmark completion fish > ~/.config/fish/completions/jarmark.fish`

// runCompletion prints what completes commands, flags and files in one shell.
func runCompletion(a *app, _ *options, args []string) error {
	text := ""
	if len(args) == 1 {
		switch args[0] {
		case "bash":
			text = bash()
		case "zsh":
			text = zsh()
		case "fish":
			text = fish()
		}
	}
	if text == "" {
		return usagef("jarmark completion bash, zsh or fish", "one shell is wanted, bash, zsh or fish")
	}
	_, err := fmt.Fprint(a.out, text)
	return err
}

// option is a flag as it is written, what it takes ("" = nothing), and its use.
type option struct{ name, takes, use string }

// options gives the flags of a command in the order of the alphabet.
func (c command) options() (out []option) {
	fs := flag.NewFlagSet(c.name, flag.ContinueOnError)
	if c.flags != nil {
		c.flags(fs, &options{})
	}
	fs.VisitAll(func(f *flag.Flag) {
		takes, use := flag.UnquoteUsage(f)
		out = append(out, option{dashed(f.Name), takes, use})
	})
	return out
}

func dashed(name string) string {
	if len(name) == 1 {
		return "-" + name
	}
	return "--" + name
}

func names() (out []string) {
	for _, c := range commands() {
		out = append(out, c.name)
	}
	return append(out, "help")
}

func bash() string {
	var b strings.Builder
	b.WriteString("# bash completion of jarmark: jarmark completion bash\n_jarmark() {\n" +
		"  local word=${COMP_WORDS[COMP_CWORD]} flags=\n" +
		"  if [ \"$COMP_CWORD\" -eq 1 ] || { [ \"$COMP_CWORD\" -eq 2 ] && [ \"${COMP_WORDS[1]}\" = help ]; }; then\n" +
		"    COMPREPLY=($(compgen -W \"" + strings.Join(names(), " ") + "\" -- \"$word\"))\n    return\n  fi\n" +
		"  case ${COMP_WORDS[1]} in\n")
	for _, c := range commands() {
		var flags []string
		for _, o := range c.options() {
			flags = append(flags, o.name)
		}
		fmt.Fprintf(&b, "    %s) flags=%q ;;\n", c.name, strings.Join(flags, " "))
	}
	b.WriteString("  esac\n  case $word in\n    -*) COMPREPLY=($(compgen -W \"$flags\" -- \"$word\")) ;;\n" +
		"    *) COMPREPLY=($(compgen -f -- \"$word\")) ;;\n  esac\n}\ncomplete -o filenames -F _jarmark jarmark\n")
	return b.String()
}

// zshText puts a text into the brackets and colons of _arguments, in single quotes.
var zshText = strings.NewReplacer("'", `'\''`, "[", `\[`, "]", `\]`, ":", `\:`)

func zsh() string {
	var b strings.Builder
	b.WriteString("#compdef jarmark\n# zsh completion: jarmark completion zsh\n_jarmark() {\n  if (( CURRENT == 2 )); then\n    local -a commands=(\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "      '%s:%s'\n", c.name, zshText.Replace(c.short))
	}
	b.WriteString("      'help:what a command does'\n    )\n    _describe command commands\n    return\n  fi\n  local command=$words[2]\n  shift words\n  (( CURRENT-- ))\n  case $command in\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "    %s) _arguments", c.name)
		for _, o := range c.options() {
			takes := ""
			if o.takes != "" {
				takes = ":" + zshText.Replace(o.takes) + ":_files"
			}
			fmt.Fprintf(&b, " \\\n      '%s[%s]%s'", o.name, zshText.Replace(o.use), takes)
		}
		b.WriteString(" \\\n      '*:file:_files' ;;\n")
	}
	fmt.Fprintf(&b, "    help) compadd %s ;;\n  esac\n}\n_jarmark \"$@\"\n", strings.Join(names(), " "))
	return b.String()
}

func fish() string {
	quote := func(s string) string { return "'" + strings.NewReplacer(`\`, `\\`, "'", `\'`).Replace(s) + "'" }
	var b strings.Builder
	b.WriteString("# fish completion of jarmark: jarmark completion fish\n")
	fmt.Fprintf(&b, "complete -c jarmark -n __fish_use_subcommand -f -a help -d 'what a command does'\n")
	fmt.Fprintf(&b, "complete -c jarmark -n '__fish_seen_subcommand_from help' -f -a %s\n", quote(strings.Join(slices.Clip(names()), " ")))
	for _, c := range commands() {
		fmt.Fprintf(&b, "complete -c jarmark -n __fish_use_subcommand -f -a %s -d %s\n", c.name, quote(c.short))
		for _, o := range c.options() {
			form := "-l " + strings.TrimPrefix(o.name, "--")
			if len(o.name) == 2 {
				form = "-s " + o.name[1:]
			}
			if o.takes != "" {
				form += " -r"
			}
			fmt.Fprintf(&b, "complete -c jarmark -n '__fish_seen_subcommand_from %s' %s -d %s\n", c.name, form, quote(o.use))
		}
	}
	return b.String()
}
