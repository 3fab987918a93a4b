package web

import (
	"context"
	"net"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"testing"

	"jarmark/internal/app/job"
)

// Another account of the computer reaches the port, and gets nothing; the
// browser that came with the key stays in, after a restart too.
func TestDoor(t *testing.T) {
	dir := kitchenDir(t)
	env, _, err := job.NewEnv(nil)
	if err != nil {
		t.Fatal(err)
	}
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	maker, other := &http.Client{Jar: jar}, &http.Client{}
	get := func(c *http.Client, address string) int {
		t.Helper()
		answer, err := c.Get(address)
		if err != nil {
			t.Fatal(err)
		}
		answer.Body.Close()
		return answer.StatusCode
	}
	var last string
	for range 2 {
		ctx, stop := context.WithCancel(context.Background())
		told, browsed, ended := make(chan string, 1), make(chan string, 1), make(chan error, 1)
		go func() {
			ended <- Serve(ctx, dir, 0, env, Options{Today: testDay, Key: "the key of this account", Open: func(u string) { told <- u }, Browse: func(u string) { browsed <- u }})
		}()
		address, ticket := <-told, <-browsed
		u, err := url.Parse(address)
		if err != nil {
			t.Fatal(err)
		}
		bare := "http://" + u.Host + "/"
		if last != "" && bare != last {
			t.Errorf("served at %s, then at %s: a page left open would not find it", last, bare)
		}
		for _, path := range []string{"", "kitchen", "batch/plum.toml", "static/1/base.css", "do/alive", "?key=guessed", "?key="} {
			if code := get(other, bare+path); code != http.StatusForbidden {
				t.Errorf("%s without the key: %d", path, code)
			}
		}
		if last == "" {
			if code := get(maker, ticket); code != http.StatusOK {
				t.Errorf("the maker's browser: %d", code)
			}
			if code := get(other, ticket); code != http.StatusForbidden {
				t.Errorf("the address the browser was started with opens twice: %d", code)
			}
		}
		if code := get(maker, bare+"kitchen"); code != http.StatusOK {
			t.Errorf("the maker's browser, later: %d", code)
		}
		for _, c := range jar.Cookies(u) {
			if c.Value == "the key of this account" {
				t.Error("the cookie tells the key")
			}
		}
		last = bare
		stop()
		if err := <-ended; err != nil {
			t.Fatal(err)
		}
	}
}

// A port that is taken is left to who has it.
func TestPortTaken(t *testing.T) {
	dir := t.TempDir()
	first, err := listen(dir, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer first.Close()
	second, err := listen(dir, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer second.Close()
	if first.Addr().String() == second.Addr().String() {
		t.Error("one port twice")
	}
	if _, err := listen(dir, first.Addr().(*net.TCPAddr).Port); err == nil {
		t.Error("a port asked for that is taken must be an error")
	}
}
