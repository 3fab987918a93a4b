package web

import (
	"context"
	"net"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"jarmark/internal/app/job"
)

// Serve listens on the loopback address alone and ends with its context.
func TestServe(t *testing.T) {
	env, _, err := job.NewEnv(nil)
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	told, ended := make(chan string, 1), make(chan error, 1)
	go func() {
		ended <- Serve(ctx, kitchenDir(t), 0, env, Options{Today: testDay, Open: func(u string) { told <- u }})
	}()
	address := <-told
	u, err := url.Parse(address)
	if err != nil || u.Hostname() != "127.0.0.1" || u.Port() == "0" {
		t.Fatal(address, err)
	}
	jar, _ := cookiejar.New(nil) // of nothing: cannot fail
	answer, err := (&http.Client{Jar: jar}).Get(address)
	if err != nil || answer.StatusCode != 200 {
		t.Fatal(answer, err)
	}
	answer.Body.Close()
	for _, a := range others(t) {
		if c, err := net.DialTimeout("tcp", net.JoinHostPort(a, u.Port()), time.Second); err == nil {
			c.Close()
			t.Errorf("%s answers on the port too", a)
		}
	}
	stop()
	select {
	case err := <-ended:
		if err != nil {
			t.Error(err)
		}
	case <-time.After(10 * time.Second):
		t.Error("it did not end")
	}
}

// others are the addresses of this machine that are not loopback.
func others(t *testing.T) (out []string) {
	all, err := net.InterfaceAddrs()
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range all {
		if n, ok := a.(*net.IPNet); ok && !n.IP.IsLoopback() && n.IP.To4() != nil {
			out = append(out, n.IP.String())
		}
	}
	return out
}

func TestServeWithoutAFolder(t *testing.T) {
	if err := Serve(context.Background(), filepath.Join(t.TempDir(), "none"), 0, nil, Options{}); err == nil {
		t.Error("a folder that is not there was served")
	}
}

func TestFirstKitchen(t *testing.T) {
	dir := t.TempDir()
	h := handlerOf(t, dir)
	if w := do(h, request("GET", "/", nil)); !strings.Contains(w.Body.String(), "Begin with your kitchen") {
		t.Error("an empty folder must lead to the kitchen")
	}
	w := do(h, request("GET", "/kitchen", nil))
	if !strings.Contains(w.Body.String(), `data-mark=""`) {
		t.Errorf("a kitchen not on disk yet must say so: %d", w.Code)
	}
	if left, _ := os.ReadDir(dir); len(left) > 0 {
		t.Error("looking wrote a file")
	}
	a := call[lookAnswer](t, h, "/do/look", lookAsk{File: "kitchen.toml", Text: thornfield, Pieces: []string{"wrap"}}, 200)
	if len(a.Labels) != 1 || !strings.Contains(a.Labels[0].SVG, "Thornfield") {
		t.Errorf("no sample label: %v", a.Findings)
	}
	call[saved](t, h, "/do/save", saveAsk{File: "kitchen.toml", Text: thornfield, Base: ""}, 200)
	if get(t, dir, "kitchen.toml") != thornfield {
		t.Error("not written")
	}
}
