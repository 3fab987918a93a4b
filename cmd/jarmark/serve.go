package main

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"runtime"

	"jarmark/internal/app/site"
	"jarmark/internal/app/store"
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
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	how := web.Options{Today: a.today, Open: func(url string) { fmt.Fprintf(a.out, "%s\nstop with Ctrl-C\n", url) }}
	show := func(url string) {
		if !o.noOpen {
			openBrowser(url)
		}
	}
	if o.site {
		told := how.Open
		how.Open = func(url string) { told(url); show(url) }
		return serveSite(ctx, dir, o.port, how)
	}
	how.Browse = show
	how.Key, _ = store.Secret() // where it cannot be kept, each run has its own
	env, err := a.plainEnv(dir)
	if err != nil {
		return err
	}
	return web.Serve(ctx, dir, o.port, env, how)
}

// serveSite shows a folder that cmd/jarmark-page built.
func serveSite(ctx context.Context, dir string, port int, how web.Options) error {
	if _, err := os.Stat(filepath.Join(dir, "sw.js")); err != nil {
		return usagef("build it first, in the source tree: go run ./cmd/jarmark-page "+dir, "serve: %s does not hold the static site", dir)
	}
	return web.Listen(ctx, port, site.Handler(os.DirFS(dir)), how)
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
