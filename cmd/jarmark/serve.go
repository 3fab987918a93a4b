package main

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"os/signal"
	"runtime"

	"jarmark/internal/app/web"
)

// runServe opens the local page until it is interrupted.
func runServe(a *app, o *options, args []string) error {
	dir := "."
	if len(args) > 1 {
		return usagef("", "serve: name one folder")
	}
	if len(args) == 1 {
		dir = args[0]
	}
	if st, err := os.Stat(dir); err != nil || !st.IsDir() {
		return usagef("", "serve: %s is not a folder", dir)
	}
	env, err := a.plainEnv(dir)
	if err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	return web.Serve(ctx, dir, o.port, env, web.Options{Today: a.today, Open: func(url string) {
		fmt.Fprintf(a.out, "%s\nstop with Ctrl-C\n", url)
		if !o.noOpen {
			openBrowser(url)
		}
	}})
}

// openBrowser asks the system to show a page; when it cannot, the address has
// been printed.
func openBrowser(url string) {
	name, args := "xdg-open", []string{url}
	switch runtime.GOOS {
	case "darwin":
		name = "open"
	case "windows":
		name, args = "rundll32", []string{"url.dll,FileProtocolHandler", url}
	}
	if cmd := exec.Command(name, args...); cmd.Start() == nil {
		go cmd.Wait()
	}
}
